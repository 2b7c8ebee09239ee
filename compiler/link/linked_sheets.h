// SPDX-License-Identifier: GPL-2.0-or-later
// The sheets of a run with everything looked up: bases and shared fasteners filled in, variants parted,
// cautions in words, machines of each entry known. Rules examine this; the library is made from it.
//
//   for (const LinkedSheet& sheet : sheets.own())
//     for (const LinkedEntry& entry : sheet.entries)
//       if (const sheaf::Statement* torque = entry.figure("torque"))
//         sink.warning("...", entry.place("torque"), ...);
//   for (const LinkedEntry* row : sheets.rows("thread-size")) row->figure("stress-area");
//
// Every value keeps the place where it is written, which is another sheet's where it was inherited.
#pragma once

#include <deque>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "compiler/sheet/sheet.h"
#include "compiler/source/diagnostics.h"
#include "query/library/record.h"

namespace sheafc {

struct LinkedSheet;

// One machine and its years. A sheet without fits is for any machine.
struct Fit {
  std::string make, model;
  Years years;
  std::string market;
  Frames frames;
  std::string note;
  Span where;
};

// An entry as it holds for some machines, with all its fields: it is a list of Fields that knows where
// it belongs. Variants of an entry are entries of their own, side by side, with one address.
struct LinkedEntry : Fields {
  const LinkedSheet* sheet = nullptr;
  std::string id;
  std::string address;    // "sorvane-41-rod/top-plug"
  std::string variant;    // "2011..2012", "frames ..HK4-004999"; empty if it has none
  std::string_view kind;  // "fastener"; of a table's row "thread-size"
  const sheaf::KindDeclaration* declaration = nullptr;  // null for a row
  std::string name;
  std::vector<Fit> fits;                 // its own, else its sheet's; narrowed to the variant
  std::vector<const Caution*> cautions;  // its own and its sheet's, each once
  const Fields* source = nullptr;        // title, publisher ...: its own, else of the sheet that states it
  const Fields* checked = nullptr;       // on, by, against, second
  std::string_view status;               // its own, else its sheet's; may be empty
  bool critical = false;                 // a wrong figure can let brakes, steering or a wheel go
  bool inherited = false;                // its sheet says nothing of it: all comes from the base
  std::vector<std::string> formerly;     // old addresses
  Span where;                            // the entry's id; of a variant, the variant

  const Allowances* allowances() const;
  bool has_fits() const { return !fits.empty(); }
};

struct LinkedSheet : Fields {
  std::string name;
  const FormDeclaration* form = nullptr;
  const Sheet* sheet = nullptr;  // as its file states it
  const LinkedSheet* base = nullptr;
  std::string_view row_kind;  // of a table
  std::vector<Fit> fits;
  std::vector<LinkedEntry> entries;  // those of the base first, then its own in order; variants side by side
  bool borrowed = false;  // from a library that this run builds against: neither checked nor written

  std::string_view title() const { return text("title"); }
  std::string_view assembly() const { return text("assembly"); }
  Span where() const { return sheet->place; }
};

class LinkedSheets {
 public:
  LinkedSheets();
  ~LinkedSheets();
  LinkedSheets(LinkedSheets&&) noexcept;
  LinkedSheets& operator=(LinkedSheets&&) noexcept;

  // Sorted by name; the borrowed ones are not among them.
  const std::deque<LinkedSheet>& own() const { return own_; }
  const std::deque<LinkedSheet>& borrowed() const { return borrowed_; }

  const LinkedSheet* sheet_named(std::string_view name) const;  // own or borrowed

  // The rows of every table of that kind, own and borrowed: "thread-size".
  const std::vector<const LinkedEntry*>& rows(std::string_view row_kind) const;

  const Caution* caution_named(std::string_view name) const;

  // The groups of the run's own sheets.
  const std::vector<const WordGroup*>& words() const { return words_; }

  // The path, under its folder of sheets, of a file that a Span names.
  std::string_view path_of(std::string_view shown_name) const;

 private:
  friend class Linker;
  std::deque<LinkedSheet> own_, borrowed_;
  std::unordered_map<std::string_view, const LinkedSheet*> by_name_;
  std::map<std::string, std::vector<const LinkedEntry*>, std::less<>> rows_;
  std::unordered_map<std::string_view, const Caution*> cautions_;
  std::vector<const WordGroup*> words_;
  std::unordered_map<std::string_view, std::string_view> paths_;
};

// Looks up everything that the sheets refer to, in their own folder and in `borrowed` sheets (of a
// library that the run builds against). What cannot be found is reported, with the near name where one
// is near; what could be linked is, so that the rules can go on. `unread` names sheets that are there and
// could not be read: that they cannot be found is no second fault. `names` are those of all sheets of the
// run, where these are some of them: for suggestions. The sheets must outlive the answer. Former addresses
// are looked at by Addresses.
LinkedSheets link_sheets(std::span<const std::shared_ptr<Sheet>> sheets,
                         std::span<const std::shared_ptr<Sheet>> borrowed, Diagnostics& sink,
                         std::span<const std::string> unread = {}, std::span<const std::string> names = {});

// What the library keeps of one sheet.
sheaf::SheetRecord record_of(const LinkedSheets& sheets, const LinkedSheet& sheet);
std::vector<sheaf::WordRecord> words_of(const LinkedSheets& sheets);
// All of it: the run's own sheets, sorted by name.
sheaf::LibraryContent content_of(const LinkedSheets& sheets, std::string name);

}  // namespace sheafc
