// SPDX-License-Identifier: GPL-2.0-or-later
// Which words, sizes and figures of an entry become which terms.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "query/library/field_band.h"
#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/library/vocabulary.h"

namespace sheaf {
namespace {

constexpr unsigned name_weight = 3;   // what a part is called counts more than
constexpr unsigned other_weight = 1;  // what else is said of it

bool has_digit(std::string_view word) {
  return std::ranges::any_of(word, [](char byte) { return byte >= '0' && byte <= '9'; });
}

// Whether a misspelt word may be set right to this one: never where a digit could change.
bool may_be_suggested(std::string_view word) { return word.size() >= 3 && word.size() <= 40 && !has_digit(word); }

// The key of a field without the record and the number it stands in: "other-numbers.1.number".
std::string_view first_part(std::string_view key) { return key.substr(0, key.find('.')); }
std::string_view last_part(std::string_view key) { return key.substr(key.rfind('.') + 1); }

// Words parted by spaces where the vocabulary joins them: "fork-oil" -> "fork oil".
std::string spaced(std::string_view name) {
  std::string words(name);
  std::ranges::replace(words, '-', ' ');
  return words;
}

class Collector {
 public:
  explicit Collector(const WordGroups& groups) : groups_(groups) {}

  void filter(Prefix prefix, std::string_view body) {
    if (!body.empty()) weights_.try_emplace(term(prefix, body), 0);
  }
  void filter_term(std::string text) { weights_.try_emplace(std::move(text), 0); }
  void ranked(Prefix prefix, std::string_view body, unsigned weight) {
    if (!body.empty()) weights_[term(prefix, body)] += weight;
  }
  void number(unsigned slot, double value) { values_[slot] = value; }
  void band(const FieldBand& band);
  void spell(std::string_view text);

  void name(std::string_view text);
  void other(std::string_view text);
  void groups_in(std::string_view text);
  void code(std::string_view text);

  IndexedEntry finish() &&;

 private:
  const WordGroups& groups_;
  std::map<std::string, unsigned> weights_;
  std::map<unsigned, double> values_;
  std::set<std::string> spelling_;
};

void Collector::spell(std::string_view text) {
  for (std::string& word : words_of(fold(text))) {
    if (may_be_suggested(word)) spelling_.insert(std::move(word));
  }
}

void Collector::groups_in(std::string_view text) {
  for (const std::vector<std::string>& words : spellings_of(text)) {
    for (const GroupMatch& match : groups_.match(words)) weights_.try_emplace(term(Prefix::group, match.group), 1);
  }
}

// The whole and each two neighbours of which one has a digit: "SAE 10W-40" gives sae10w40, sae10w, 10w40.
void Collector::code(std::string_view text) {
  const std::vector<std::string> words = words_of(fold(text));
  const std::string whole = squeeze(text);
  if (has_digit(whole)) filter(Prefix::code, whole);
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (has_digit(words[i]) || has_digit(words[i + 1])) filter(Prefix::code, words[i] + words[i + 1]);
  }
}

void Collector::name(std::string_view text) {
  bool as_written = true;
  for (const std::vector<std::string>& words : spellings_of(text)) {
    std::string whole;
    for (const std::string& word : words) {
      // Another spelling adds the words that it alone has; those of the first count once.
      if (as_written || !weights_.contains(term(Prefix::word, word))) {
        ranked(Prefix::word, word, name_weight);
        ranked(Prefix::stem, stem_of(word), name_weight);
      }
      whole += whole.empty() ? word : ' ' + word;
    }
    weights_.try_emplace(term(Prefix::exact_name, whole), 1);
    as_written = false;
  }
  groups_in(text);
  code(text);
  spell(text);
}

void Collector::other(std::string_view text) {
  for (const std::string& word : words_of(fold(text))) ranked(Prefix::other_stem, stem_of(word), other_weight);
}

void Collector::band(const FieldBand& band) {
  const auto [least, least_is_new] = values_.try_emplace(least_slot(band.dimension), band.least);
  if (!least_is_new) least->second = std::min(least->second, band.least);
  const auto [most, most_is_new] = values_.try_emplace(most_slot(band.dimension), band.most);
  if (!most_is_new) most->second = std::max(most->second, band.most);
}

IndexedEntry Collector::finish() && {
  IndexedEntry indexed;
  for (auto& [text, weight] : weights_) indexed.terms.push_back({text, weight});
  for (const auto& [slot, number] : values_) {
    if (!std::isnan(number)) indexed.values.push_back({slot, number});
  }
  indexed.spelling.assign(spelling_.begin(), spelling_.end());
  return indexed;
}

// --- fields, by the type that the vocabulary declares -------------------------------------------

void add_thread(Collector& to, const Thread& thread) {
  to.filter(Prefix::thread, thread_key(thread));
  to.filter(Prefix::diameter, diameter_body(thread));
  if (const auto diameter = diameter_mm(thread)) to.number(diameter_slot, *diameter);
}

void add_drive(Collector& to, const Drive& drive) {
  to.filter(Prefix::drive, drive_key(drive));
  if (const auto width = across_flats_mm(drive)) to.number(across_flats_slot, *width);
}

void add_size(Collector& to, const Size& size) {
  to.filter(Prefix::size, size_key(size));
  to.filter(Prefix::any_order, any_order_body(size));
  for (const std::string& body : dimension_bodies(size)) to.filter(Prefix::dimension, body);
  for (int i = 0; i < size.count; ++i) to.number(size_slot + static_cast<unsigned>(i), dimension_mm(size, i));
}

void add_bearing(Collector& to, const Bearing& bearing) {
  to.filter(Prefix::bearing, fold(bearing.basic));
  to.filter(Prefix::code, squeeze(to_text(bearing)));
}

void add_choice(Collector& to, const FieldRecord& field) {
  to.filter(Prefix::choice, field.key + '=' + fold(field.text));
  if (field.key == "side") to.filter(Prefix::side, fold(field.text));
  to.other(spaced(field.text));
  if (field.key == "purpose") to.groups_in(spaced(field.text));
}

void add_text(Collector& to, const FieldRecord& field) {
  const std::string_view list = first_part(field.key);
  if (list == "also") return to.name(field.text);
  if (list == "part-number") return to.filter(Prefix::part_number, squeeze(field.text));
  if (list == "supersedes") return to.filter(Prefix::other_number, squeeze(field.text));
  if (list == "grade" || list == "class" || list == "code") to.code(field.text);
  to.other(field.text);
}

void add_record(Collector& to, const FieldRecord& field) {
  const std::string_view list = first_part(field.key);
  const bool names_a_number = last_part(field.key) == "number";
  if (names_a_number && (list == "superseded-by" || list == "other-numbers")) {
    to.filter(Prefix::other_number, squeeze(field.text));
  } else {
    to.other(field.text);
  }
}

void add_field_of_kind(Collector& to, const FieldRecord& field, const FieldDeclaration& declared) {
  const auto with = [&](const auto& value, auto add) {
    if (value) add(to, *value);
  };
  switch (declared.type) {
    case ValueType::thread: return with(parse_thread(field.text, Input::sheet), add_thread);
    case ValueType::drive: return with(parse_drive(field.text, Input::sheet), add_drive);
    case ValueType::size: return with(parse_size(field.text, Input::sheet), add_size);
    case ValueType::bearing: return with(parse_bearing(field.text, Input::sheet), add_bearing);
    case ValueType::choice:
    case ValueType::flag: return add_choice(to, field);
    case ValueType::text: return add_text(to, field);
    case ValueType::record: return add_record(to, field);
    default: return;  // figures are bands; dates, counts, references: shown, not searched
  }
}

// A column of a table has no declared type here: what reads as a thread, a size or a bearing is one;
// the rest is words and codes.
void add_field_of_row(Collector& to, const FieldRecord& field) {
  if (const auto thread = parse_thread(field.text, Input::sheet)) return add_thread(to, *thread);
  if (const auto size = parse_size(field.text, Input::sheet)) return add_size(to, *size);
  if (const auto bearing = parse_bearing(field.text, Input::sheet)) return add_bearing(to, *bearing);
  to.code(field.text);
  to.other(field.text);
}

void add_fields(Collector& to, const EntryRecord& entry) {
  const KindDeclaration* kind = kind_named(entry.kind);
  for (const FieldRecord& field : entry.fields) {
    const std::string key(first_part(field.key));
    to.filter(Prefix::field, key);
    to.spell(spaced(key));
    const std::vector<FieldBand> bands = bands_of(entry.kind, field);
    for (const FieldBand& band : bands) to.band(band);
    if (!bands.empty()) continue;
    if (!kind) {
      key == "also" ? to.name(field.text) : add_field_of_row(to, field);
    } else if (const FieldDeclaration* declared = field_of(*kind, key)) {
      add_field_of_kind(to, field, *declared);
    }
  }
}

// --- what holds for the entry as a whole --------------------------------------------------------

void add_fit(Collector& to, const FitRecord& fit) {
  const std::string machine = machine_body(fit.make, fit.model);
  to.filter(Prefix::machine, machine);
  to.filter(Prefix::make, fold(fit.make));
  for (const std::string_view of : {std::string_view(machine), std::string_view()}) {
    for (std::string& block : year_range_terms(of, fit.year_from, fit.year_to)) to.filter_term(std::move(block));
  }
  to.other(fit.make);
  to.other(fit.model);
  to.spell(fit.make);
  to.spell(fit.model);
}

void add_place_in_library(Collector& to, const EntryRecord& entry, const SheetRecord& sheet) {
  to.filter(Prefix::kind, entry.kind);
  to.filter(Prefix::assembly, sheet.assembly);
  to.filter(Prefix::sheet, sheet.name);
  to.filter(Prefix::address, entry.address);
  for (const std::string& old : entry.formerly) to.filter(Prefix::old_address, old);
  if (!entry.status.empty()) to.filter(Prefix::choice, "status=" + entry.status);
  if (!entry.withdrawn.empty()) to.filter(Prefix::choice, "withdrawn=yes");
  if (entry.critical) to.filter(Prefix::choice, "critical=yes");
}

void add_words_of_sheet(Collector& to, const SheetRecord& sheet) {
  to.other(sheet.title);
  to.other(sheet.maker);
  to.other(spaced(sheet.assembly));
  to.spell(sheet.title);
  to.spell(sheet.maker);
  to.spell(spaced(sheet.assembly));
}

}  // namespace

IndexedEntry index_entry(const EntryRecord& entry, const SheetRecord& sheet, const WordGroups& groups) {
  Collector to(groups);
  to.name(entry.name);
  add_fields(to, entry);
  for (const FitRecord& fit : entry.fits) add_fit(to, fit);
  if (entry.fits.empty()) to.filter(Prefix::machine, "any");
  add_place_in_library(to, entry, sheet);
  add_words_of_sheet(to, sheet);
  to.other(entry.source.title);
  to.spell(spaced(entry.kind));
  return std::move(to).finish();
}

std::vector<std::string> spelling_of(const WordRecord& word) {
  std::set<std::string> spelling;
  for (const std::vector<std::string>& words : spellings_of(word.word)) {
    for (const std::string& part : words) {
      if (may_be_suggested(part)) spelling.insert(part);
    }
  }
  return {spelling.begin(), spelling.end()};
}

}  // namespace sheaf
