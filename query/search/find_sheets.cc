// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets are few beside entries, so each is looked at: by its assembly, its title and what it fits.
#include "query/search/find_sheets.h"

#include <algorithm>
#include <set>

#include "query/library/fold.h"
#include "query/search/filters.h"
#include "query/search/meets.h"
#include "query/search/read.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

using Names = std::set<std::string, std::less<>>;

// What words may call a sheet: by its assembly first, by its title and its own name as well.
class SheetNames {
 public:
  SheetNames(const SheetRecord& sheet, Lexicon& lexicon) : lexicon_(lexicon) {
    add(sheet.assembly, assembly_stems_, assembly_groups_);
    for (const auto& text : {sheet.title, sheet.name, sheet.maker}) add(text, stems_, groups_);
    add(sheet.assembly, stems_, groups_);
  }

  bool is_called(const PartAsked& part) const { return holds(part, stems_, groups_); }
  bool is_of_assembly(const PartAsked& part) const { return holds(part, assembly_stems_, assembly_groups_); }
  bool has_word(std::string_view word) const { return stems_.contains(stem_of(word)); }

 private:
  void add(const std::string& text, Names& stems, Names& groups) {
    const auto words = words_of(fold(text));
    for (const auto& word : words) stems.insert(stem_of(word));
    for (const auto& match : lexicon_.groups_in(words)) groups.insert(match.group);
  }

  static bool holds(const PartAsked& part, const Names& stems, const Names& groups) {
    const auto in_groups = [&](const std::string& group) { return groups.contains(group); };
    const auto in_stems = [&](const std::string& word) { return stems.contains(stem_of(word)); };
    return std::ranges::any_of(part.groups, in_groups) ||
           (!part.words.empty() && std::ranges::all_of(part.words, in_stems));
  }

  Lexicon& lexicon_;
  Names stems_, groups_, assembly_stems_, assembly_groups_;
};

// Every word of the question that a sheet must answer to.
std::vector<PartAsked> parts_of(const QuestionReading& reading) {
  std::vector<PartAsked> parts = reading.parts;
  for (const auto& length : reading.lengths)
    parts.push_back({length.typed, words_of(fold(length.typed)), {}});
  for (const auto& figure : reading.figures) parts.push_back({figure, {fold(figure)}, {"kind-" + figure}});
  for (const auto& word : reading.unread) parts.push_back({word, words_of(fold(word)), {}});
  return parts;
}

bool is_of_side(const SheetRecord& sheet, const SheetNames& names, std::string_view side) {
  const std::string_view end = end_of_assembly(sheet.assembly);
  if (names.has_word(side) || end == side) return true;
  return end != opposite_of(side) && !names.has_word(opposite_of(side));
}

// How much of what was asked only the title says; none if the sheet is not what was asked.
std::optional<int> distance(const SheetRecord& sheet, const QuestionReading& reading, Lexicon& lexicon) {
  const auto& wanted = reading.assemblies;
  if (!wanted.empty() && std::ranges::find(wanted, sheet.assembly) == wanted.end()) return std::nullopt;
  const SheetNames names(sheet, lexicon);
  int far = 0;
  for (const auto& part : parts_of(reading)) {
    if (!names.is_called(part)) return std::nullopt;
    far += names.is_of_assembly(part) ? 0 : 1;
  }
  for (const auto& side : reading.sides)
    if (!is_of_side(sheet, names, side)) return std::nullopt;
  return far;
}

bool fits(const SheetRecord& sheet, const QuestionReading& reading, bool with_year) {
  EntryRecord any;
  any.fits = sheet.fits;
  return fits_machine(any, reading, with_year);
}

class SheetFinder {
 public:
  SheetFinder(const SheetRequest& request, Lexicon& lexicon) : request_(request), lexicon_(lexicon) {}

  Result<SheetFindings> run() {
    auto fault = by_name();
    if (!fault && found_.sheets.empty() && found_.near.empty()) fault = by_words();
    for (auto& hit : found_.sheets)
      if (!fault) fault = load(hit);
    if (!fault) fault = lexicon_.failure();
    if (fault) return *fault;
    return std::move(found_);
  }

 private:
  using Fault = std::optional<Failure>;
  struct Candidate {
    SheetHit hit;
    int far = 0;
    bool fits_year = false;
  };

  // A sheet's name, or an address; what they were formerly leads there too.
  Fault by_name() {
    const std::string& word = request_.words;
    if (word.empty() || word.find(' ') != std::string::npos) return std::nullopt;
    for (std::size_t i = 0; i < lexicon_.libraries().size() && found_.sheets.empty(); ++i) {
      Library& library = *lexicon_.libraries()[i];
      std::string name = word;
      if (word.find('/') != std::string::npos) {
        const auto entries = library.entries_at(word);
        if (!entries) return entries.failure();
        if (entries->empty()) continue;
        name = entries->front().address.substr(0, entries->front().address.find('/'));
      }
      const auto sheets = library.sheet_without_entries(name);
      if (!sheets) return sheets.failure();
      for (const auto& sheet : *sheets) found_.sheets.push_back({i, sheet});
    }
    if (auto fault = apply_filters(request_.filters, found_.reading, lexicon_)) return fault;
    if (!found_.sheets.empty() && !found_.sheets.front().sheet.fits.empty() &&
        !fits(found_.sheets.front().sheet, found_.reading, true))
      std::swap(found_.sheets, found_.near);
    return std::nullopt;
  }

  Fault by_words() {
    found_.reading = read_question(request_.words, lexicon_);
    if (auto fault = apply_filters(request_.filters, found_.reading, lexicon_)) return fault;
    if (asks_for_nothing()) return std::nullopt;
    std::vector<Candidate> all;
    for (std::size_t i = 0; i < lexicon_.libraries().size(); ++i)
      if (auto fault = add_candidates(i, all)) return fault;
    keep_the_nearest(all);
    return std::nullopt;
  }

  bool asks_for_nothing() const {
    const auto& reading = found_.reading;
    return parts_of(reading).empty() && reading.machines.empty() && reading.assemblies.empty() &&
           reading.sides.empty();
  }

  Fault add_candidates(std::size_t library, std::vector<Candidate>& all) {
    auto sheets = lexicon_.libraries()[library]->sheets();
    if (!sheets) return sheets.failure();
    for (auto& sheet : std::move(sheets).value()) {
      const bool known =
          std::ranges::any_of(all, [&](const Candidate& each) { return each.hit.sheet.name == sheet.name; });
      if (sheet.form != "assembly" || known) continue;
      const bool formerly = std::ranges::any_of(sheet.fields, [&](const FieldRecord& field) {
        return field.key == "formerly" && field.text == request_.words;
      });
      if (!formerly && !fits(sheet, found_.reading, false)) continue;
      const auto far = formerly ? std::optional(-1) : distance(sheet, found_.reading, lexicon_);
      const bool fits_year = formerly || fits(sheet, found_.reading, true);
      if (far) all.push_back({{library, std::move(sheet)}, *far, fits_year});
    }
    return std::nullopt;
  }

  void keep_the_nearest(std::vector<Candidate>& all) {
    const auto name_of = [](const Candidate& each) { return each.hit.sheet.name; };
    std::ranges::stable_sort(all, std::less<>(), name_of);
    for (const bool with_year : {true, false}) {
      int nearest = 1000;
      for (const auto& each : all)
        if (each.fits_year == with_year) nearest = std::min(nearest, each.far);
      for (auto& each : all)
        if (each.fits_year == with_year && each.far == nearest)
          (with_year ? found_.sheets : found_.near).push_back(std::move(each.hit));
      if (with_year && !found_.sheets.empty()) return;
    }
  }

  Fault load(SheetHit& hit) {
    auto sheets = lexicon_.libraries()[hit.library]->sheet(hit.sheet.name);
    if (!sheets) return sheets.failure();
    if (sheets->empty()) return Failure{"the sheet " + hit.sheet.name + " has gone"};
    hit.sheet = std::move(sheets).value().front();
    std::erase_if(hit.sheet.entries, [&](const EntryRecord& entry) {
      return !entry.fits.empty() && !fits_machine(entry, found_.reading, true);
    });
    return std::nullopt;
  }

  const SheetRequest& request_;
  Lexicon& lexicon_;
  SheetFindings found_;
};

}  // namespace

Result<SheetFindings> find_sheets(const SheetRequest& request, Lexicon& lexicon) {
  return SheetFinder(request, lexicon).run();
}

}  // namespace sheaf
