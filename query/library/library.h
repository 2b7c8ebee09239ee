// SPDX-License-Identifier: GPL-2.0-or-later
// A library file, opened for reading.
//
//   auto library = open_library("orrindale.sheaf");
//   if (!library) return library.failure();
//   auto entries = library->entries_at("sorvane-41-rod/top-plug");
//
// Opening reads a few pages, whatever the size of the file. Every record carries a checksum that is
// tested when it is read, and so does every block of the index: a damaged one is a Failure, never a
// wrong figure. Damage in the lists by which records are found can hide one, so that "there is none"
// is certain only after verify(). A file that is replaced while it is open goes on answering as it was.
//
// One Library is for one thread at a time; each thread opens its own.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"
#include "query/library/word_groups.h"
#include "query/quantity/result.h"

namespace sheaf {

// What a library says of itself.
struct LibraryFacts {
  std::string path;
  std::string name;       // "orrindale"
  std::string digest;     // SHA-256 of the file's content, 64 hexadecimal digits
  std::string data_date;  // the newest date of checking in it; empty if it has none
  int format = 0;
  std::int64_t bytes = 0;
  std::int64_t sheets = 0, entries = 0, words = 0;
  std::string sqlite_version, xapian_version;  // that wrote it
};

// A machine that at least one entry fits. Years 0 are open ends; between them may lie years that no
// entry fits.
struct Machine {
  std::string make, model;
  int year_from = 0, year_to = 0;
};

using EntryPtr = std::shared_ptr<const EntryRecord>;
using SheetPtr = std::shared_ptr<const SheetRecord>;

struct EntryOnSheet {
  EntryPtr entry;
  SheetPtr sheet;  // without entries
};

class Index;

class Library {
 public:
  Library(Library&&) noexcept;
  Library& operator=(Library&&) noexcept;
  ~Library();

  const LibraryFacts& facts() const;
  // What tells it from the others that are asked with it (label_libraries); empty while it is alone. Every
  // entry and sheet that is read from it says so.
  const std::string& label() const;

  // Every variant of the entry with that address, or that had it formerly; none if there is none.
  Result<std::vector<EntryRecord>> entries_at(std::string_view address);
  // A Failure if there is no such entry. Those read last are kept: questions, and what is typed of one, read
  // the same again.
  Result<EntryOnSheet> entry_by_id(EntryId id);

  // The sheet with all its entries, or without: one, or none if there is no such sheet.
  Result<std::vector<SheetRecord>> sheet(std::string_view name);
  Result<std::vector<SheetRecord>> sheet_without_entries(std::string_view name);
  // All sheets, without entries, by name.
  Result<std::vector<SheetRecord>> sheets();

  // By make and model, one of each; those whose folded make or model has that word, or one that begins so.
  Result<std::vector<Machine>> machines();
  Result<std::vector<Machine>> machines_with_word(std::string_view folded);
  Result<std::vector<Machine>> machines_beginning(std::string_view folded);

  // The whole glossary; the words that begin with this stem, for match_groups; a group's words.
  Result<std::vector<WordRecord>> words();
  Result<WordsBeginningPtr> group_words(std::string_view first_stem);
  Result<std::vector<WordRecord>> words_of_group(std::string_view group);

  // In order of ids, until `visit` returns false. The sheet comes without entries.
  using Visit = std::function<bool(EntryId, const EntryRecord&, const SheetRecord&)>;
  std::optional<Failure> for_each_entry(const Visit& visit);

  // Reads and checks every byte, and every record, table and list of the index. One sentence for each
  // fault; none if the library is sound.
  std::vector<std::string> verify();

 private:
  friend void label_libraries(const std::vector<Library*>& together);
  friend Result<Library> open_library(const std::string& path);
  friend Index& index_of(Library& library);
  struct State;
  explicit Library(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

// Fails, with the path in the message, if there is no such file, it cannot be read, is no library, is
// damaged or cut off, or was written by a newer or older sheafc (both formats are named).
Result<Library> open_library(const std::string& path);

// Before the first question to several: their names, or their paths where two bear one name.
void label_libraries(const std::vector<Library*>& together);

}  // namespace sheaf
