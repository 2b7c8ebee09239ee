// SPDX-License-Identifier: GPL-2.0-or-later
// What an entry is found by: the terms, values and spellings of its document in the index. The compiler
// writes them, a question asks for them, and both make them here. FORMAT.md lists all prefixes.
//
// The document's number is the entry's id (Library::entry_by_id). It holds no data and no positions,
// and the index keeps no lists of the terms of a document.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"
#include "query/library/word_groups.h"
#include "query/quantity/unit.h"
#include "query/trade/designation.h"

namespace sheaf {

// What a term says. The body that follows the prefix's letters never begins with a capital letter.
enum class Prefix : std::uint8_t {
  word,          // ""    a word of the name or of another name, folded
  stem,          // "Z"   its English stem
  other_stem,    // "XO"  stem of a word elsewhere: id, title, maker, machine, notes, choices, source
  exact_name,    // "XN"  the whole name, or another name, words parted by one space
  group,         // "XG"  a group of words that its names hold
  kind,          // "XK"  kind, or row kind of a table
  assembly,      // "XA"  assembly of its sheet
  machine,       // "XM"  make/model it fits; "any" if it is for no machine in particular
  make,          // "XMK" make it fits
  years,         // "XY"  make/model/block of years it fits; see year_terms()
  side,          // "XS"  side
  thread,        // "XT"  thread_key: "m8x1.25"
  diameter,      // "XTD" thread's diameter: "m8", "5/16"
  drive,         // "XD"  drive_key: "hexagon-27"
  size,          // "XZ"  size_key: "41x54x11"
  any_order,     // "XZA" the same, dimensions from small to large: "11x41x54"
  dimension,     // "XZD" each dimension alone, in its own unit: "41", "1.5in"
  dimension_at,  // "XZP" the same behind its place: "1/41" of an inside diameter; see dimension_at_body()
  bearing,       // "XB"  basic designation: "6203"
  part_number,   // "P"   its own number, squeezed
  other_number,  // "XP"  a number it replaces, is replaced by, or has elsewhere, squeezed
  code,          // "XI"  class, grade or code, squeezed: "10.9", "dot4"
  field,         // "XE"  key of a field that it has: "torque", "level"
  figure,        // "XQ"  dimension/step of the figures that it states: see figure_body()
  choice,        // "XV"  key=value of a choice or flag: "hand=left", "reuse=no", "withdrawn=yes"
};

struct PrefixDeclaration {
  Prefix prefix;
  std::string_view letters;
  std::string_view holds;
  std::string_view example;
};
std::span<const PrefixDeclaration> all_prefixes();
std::string_view letters_of(Prefix prefix);

// The whole term: letters, then the body. A body too long for the index (its limit is 245 bytes) is cut
// and ends in a hash of the whole, so that equal bodies still meet and unequal ones do not.
std::string term(Prefix prefix, std::string_view body);

// Bodies that take more than folding, for both sides of the index.
std::string machine_body(std::string_view make, std::string_view model);  // "haldrek/muleback 380"
std::string diameter_body(const Thread& thread);                          // "m8", "5/16", "#10", "g1/4"
std::string any_order_body(const Size& size);                             // "11x41x54"
std::vector<std::string> dimension_bodies(const Size& size);              // "41", "54", "11"; "1.5in"
std::string dimension_at_body(std::size_t place, std::string_view body);  // of the first (0): "1/41"

// All figures of a dimension that an entry states, by the step in which the least of them lies: four steps to
// a doubling, in the SI base unit: "torque/22"; "torque/wide" if the most is beyond twice the least, or the
// least is not positive. Only narrows down: whether it states something within a range, its values tell.
std::string figure_body(Dimension dimension, double least, double most);
// Of all that may state something within from..to; none if they are too many to be asked one by one.
std::vector<std::string> figure_bodies(Dimension dimension, double from, double to);

// Years are indexed in blocks of 1, 2, 4 ... 512 years, so that any range of years is a few terms and a
// question is always ten. An entry fits the machine in that year if it has any of the terms. With an
// empty machine (machine_body) the year alone is asked for. None for a year outside first..last.
inline constexpr int first_year = 1800;
inline constexpr int last_year = first_year + 511;
std::vector<std::string> year_terms(std::string_view machine, int year);
// The blocks that make up a range; 0 is an open end.
std::vector<std::string> year_range_terms(std::string_view machine, int from, int to);

// Numbers to search by range. Each slot holds Xapian's sortable_serialise of a double.
inline constexpr unsigned diameter_slot = 1;      // thread: major diameter, mm
inline constexpr unsigned across_flats_slot = 2;  // drive: across flats or square, mm
inline constexpr unsigned size_slot = 4;          // size: 4, 5, 6, 7 are its dimensions as written, mm
// All figures of that dimension that the entry states, in the SI base unit: the least and the most;
// an open end is infinite. To ask for lo..hi: least <= hi and most >= lo.
constexpr unsigned least_slot(Dimension dimension) { return 16 + 2 * static_cast<unsigned>(dimension); }
constexpr unsigned most_slot(Dimension dimension) { return least_slot(dimension) + 1; }

// weight is the within-document frequency; 0 is a filter, by which nothing is ranked.
struct Term {
  std::string text;
  unsigned weight = 0;
  friend auto operator<=>(const Term&, const Term&) = default;
};

struct SlotValue {
  unsigned slot = 0;
  double number = 0;
};

// Prefix::choice of a sheet whose tube is so wide: "tube=41", "tube=38.1".
std::string tube_choice(double mm);

struct IndexedEntry {
  std::vector<Term> terms;            // one may come several times: its weights add up
  std::vector<SlotValue> values;      // by slot
  std::vector<std::string> spelling;  // words for the spelling dictionary: none holds a digit
};

// Makes the documents of a sheet's entries. The sheet and the groups outlive it; the sheet's own list of
// entries is not looked at.
class EntryIndexer {
 public:
  EntryIndexer(const SheetRecord& sheet, const WordGroups& groups);
  IndexedEntry index(const EntryRecord& entry) const;

  // The same in two parts, for whoever indexes many: what the entries share that have the machines and the
  // source of their sheet, which are most; and what such an entry adds to it.
  const IndexedEntry& shared() const { return shared_; }
  bool shares(const EntryRecord& entry) const {
    return entry.fits == sheet_.fits && entry.source == sheet_.source;
  }
  IndexedEntry index_own(const EntryRecord& entry) const;

 private:
  const SheetRecord& sheet_;
  const WordGroups& groups_;
  IndexedEntry of_sheet_, of_fits_, of_source_, shared_;
};

// The words of the glossary for the spelling dictionary.
std::vector<std::string> spelling_of(const WordRecord& word);

}  // namespace sheaf
