// SPDX-License-Identifier: GPL-2.0-or-later
// Which words, sizes and figures of an entry become which terms.
#include <algorithm>
#include <cmath>
#include <iterator>
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
bool may_be_suggested(std::string_view word) {
  return word.size() >= 3 && word.size() <= 40 && !has_digit(word);
}

// The key of a field without the record and the number it stands in: "other-numbers.1.number".
std::string_view first_part(std::string_view key) { return key.substr(0, key.find('.')); }
std::string_view last_part(std::string_view key) { return key.substr(key.rfind('.') + 1); }

std::vector<std::string> words_in(std::string_view text) { return words_of(fold(text)); }

class Collector {
 public:
  explicit Collector(const WordGroups& groups) : groups_(groups) {}

  void filter(Prefix prefix, std::string_view body) { add(prefix, body, 0); }
  void filter_term(std::string text) { terms_.push_back({std::move(text), 0}); }
  void number(unsigned slot, double value) { values_[slot] = value; }
  void band(const FieldBand& band);
  void spell(const std::vector<std::string>& words);

  void name(std::string_view text);
  void other(const std::vector<std::string>& words);
  void groups_in(const std::vector<std::vector<std::string>>& spellings);
  void code(const std::vector<std::string>& words);

  void take(const IndexedEntry& more);
  void steps();
  IndexedEntry finish() &&;

 private:
  void add(Prefix prefix, std::string_view body, unsigned weight) {
    if (!body.empty()) terms_.push_back({term(prefix, body), weight});
  }
  void add_once(Prefix prefix, std::string_view body) { once_.push_back({term(prefix, body), 1}); }

  const WordGroups& groups_;
  std::vector<Term> terms_;
  std::vector<Term> once_;  // that count 1, however often they come
  std::map<unsigned, double> values_;
  std::set<Dimension> stated_;
  std::vector<std::string> spelling_;
};

void Collector::spell(const std::vector<std::string>& words) {
  std::ranges::copy_if(words, std::back_inserter(spelling_), may_be_suggested);
}

void Collector::groups_in(const std::vector<std::vector<std::string>>& spellings) {
  for (const std::vector<std::string>& words : spellings) {
    for (const GroupMatch& match : groups_.match(words)) add_once(Prefix::group, match.group);
  }
}

// The whole and each two neighbours of which one has a digit: "SAE 10W-40" gives sae10w40, sae10w, 10w40.
void Collector::code(const std::vector<std::string>& words) {
  if (std::ranges::none_of(words, has_digit)) return;
  std::string whole;
  for (const std::string& word : words) whole += word;
  filter(Prefix::code, whole);
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (has_digit(words[i]) || has_digit(words[i + 1])) filter(Prefix::code, words[i] + words[i + 1]);
  }
}

void Collector::name(std::string_view text) {
  const std::vector<std::vector<std::string>> spellings = spellings_of(text);
  for (const std::vector<std::string>& words : spellings) {
    std::string whole;
    for (const std::string& word : words) {
      // Another spelling adds the words that it alone has.
      if (&words == &spellings.front() ||
          std::ranges::find(spellings.front(), word) == spellings.front().end()) {
        add(Prefix::word, word, name_weight);
        add(Prefix::stem, stem_of(word), name_weight);
      }
      whole += whole.empty() ? word : ' ' + word;
    }
    add_once(Prefix::exact_name, whole);
  }
  if (spellings.empty()) return;
  groups_in(spellings);
  code(spellings.front());
  for (const std::vector<std::string>& words : spellings) spell(words);
}

void Collector::other(const std::vector<std::string>& words) {
  for (const std::string& word : words) add(Prefix::other_stem, stem_of(word), other_weight);
}

// A minimum or a maximum states one value.
void Collector::band(const FieldBand& stated) {
  FieldBand band = stated;
  stated_.insert(band.dimension);
  if (std::isinf(band.least)) band.least = band.most;
  if (std::isinf(band.most)) band.most = band.least;
  const auto [least, least_is_new] = values_.try_emplace(least_slot(band.dimension), band.least);
  if (!least_is_new) least->second = std::min(least->second, band.least);
  const auto [most, most_is_new] = values_.try_emplace(most_slot(band.dimension), band.most);
  if (!most_is_new) most->second = std::max(most->second, band.most);
}

void Collector::take(const IndexedEntry& more) {
  terms_.insert(terms_.end(), more.terms.begin(), more.terms.end());
  spelling_.insert(spelling_.end(), more.spelling.begin(), more.spelling.end());
}

template <typename List>
void keep_each_once(List& list) {
  std::ranges::sort(list);
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

// One for each dimension of which some figure is stated.
void Collector::steps() {
  for (const Dimension dimension : stated_) {
    const double least = values_.at(least_slot(dimension)), most = values_.at(most_slot(dimension));
    filter(Prefix::figure, figure_body(dimension, least, most));
  }
}

IndexedEntry Collector::finish() && {
  steps();
  keep_each_once(once_);
  std::ranges::move(once_, std::back_inserter(terms_));
  keep_each_once(spelling_);
  IndexedEntry indexed{std::move(terms_), {}, std::move(spelling_)};
  for (const auto& [slot, number] : values_) {
    if (!std::isnan(number)) indexed.values.push_back({slot, number});
  }
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
  const auto bodies = dimension_bodies(size);
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    to.filter(Prefix::dimension, bodies[i]);
    to.filter(Prefix::dimension_at, dimension_at_body(i, bodies[i]));
  }
  for (int i = 0; i < size.count; ++i) to.number(size_slot + static_cast<unsigned>(i), dimension_mm(size, i));
}

void add_bearing(Collector& to, const Bearing& bearing) {
  to.filter(Prefix::bearing, fold(bearing.basic));
  to.filter(Prefix::code, squeeze(to_text(bearing)));
}

void add_choice(Collector& to, const FieldRecord& field) {
  to.filter(Prefix::choice, field.key + '=' + fold(field.text));
  if (field.key == "side") to.filter(Prefix::side, fold(field.text));
  to.other(words_in(field.text));
  if (field.key == "purpose") to.groups_in({words_in(field.text)});
}

void add_text(Collector& to, const FieldRecord& field) {
  const std::string_view list = first_part(field.key);
  if (list == "also") return to.name(field.text);
  if (list == "part-number") return to.filter(Prefix::part_number, squeeze(field.text));
  if (list == "supersedes") return to.filter(Prefix::other_number, squeeze(field.text));
  if (list == "grade" || list == "class" || list == "code") to.code(words_in(field.text));
  if (list == "size")  // of a part: "12x18x1.5 mm", but also "112 links"
    if (const auto size = parse_size(field.text, Input::sheet); size && size->count > 1) add_size(to, *size);
  if (list == "load") to.groups_in({words_in(field.text)});  // "rider alone" tells two pressures apart
  to.other(words_in(field.text));
}

void add_record(Collector& to, const FieldRecord& field) {
  const std::string_view list = first_part(field.key);
  const bool names_a_number = last_part(field.key) == "number";
  if (names_a_number && (list == "superseded-by" || list == "other-numbers")) {
    to.filter(Prefix::other_number, squeeze(field.text));
  } else {
    to.other(words_in(field.text));
  }
}

void add_field_of_kind(Collector& to, const FieldRecord& field, const FieldDeclaration& declared) {
  const auto with = [&](const auto& value, auto add) {
    if (value) add(to, *value);
  };
  switch (declared.type) {
    case ValueType::thread:
      return with(parse_thread(field.text, Input::sheet), add_thread);
    case ValueType::drive:
      return with(parse_drive(field.text, Input::sheet), add_drive);
    case ValueType::size:
      return with(parse_size(field.text, Input::sheet), add_size);
    case ValueType::bearing:
      return with(parse_bearing(field.text, Input::sheet), add_bearing);
    case ValueType::choice:
    case ValueType::flag:
      return add_choice(to, field);
    case ValueType::text:
      return add_text(to, field);
    case ValueType::record:
      return add_record(to, field);
    default:
      return;  // figures are bands; dates, counts, references: shown, not searched
  }
}

// A column of a table has no declared type here: what reads as a thread, a size or a bearing is one;
// the rest is words and codes.
void add_field_of_row(Collector& to, const FieldRecord& field) {
  if (const auto thread = parse_thread(field.text, Input::sheet)) return add_thread(to, *thread);
  if (const auto size = parse_size(field.text, Input::sheet)) return add_size(to, *size);
  if (const auto bearing = parse_bearing(field.text, Input::sheet)) return add_bearing(to, *bearing);
  to.code(words_in(field.text));
  to.other(words_in(field.text));
}

void add_size_of(Collector& to, const EntryRecord& entry, std::string_view inside, std::string_view width) {
  std::string whole;
  for (const std::string_view key : {inside, std::string_view("outside"), width}) {
    const auto column = std::ranges::find(entry.fields, key, &FieldRecord::key);
    if (column == entry.fields.end()) return;
    whole += (whole.empty() ? "" : "x") + column->text.substr(0, column->text.find(' '));
  }
  if (const auto size = parse_size(whole, Input::sheet)) add_size(to, *size);
}

// A row that gives bore, outside and width in columns of their own is asked for as "12x32x10"; a taper
// bearing also by its width over both rings.
void add_size_of_row(Collector& to, const EntryRecord& entry) {
  for (const std::string_view width : {"width", "assembled"}) add_size_of(to, entry, "bore", width);
}

void add_fields(Collector& to, const EntryRecord& entry) {
  const KindDeclaration* kind = kind_named(entry.kind);
  if (!kind) add_size_of_row(to, entry);
  if (entry.kind == "bushing") add_size_of(to, entry, "inside", "length");
  for (const FieldRecord& field : entry.fields) {
    const std::string key(first_part(field.key));
    to.filter(Prefix::field, key);
    to.spell(words_of(key));
    const FieldFigures figures = figures_of(entry.kind, field);
    for (const FieldBand& band : figures.bands) to.band(band);
    for (const std::string& condition : figures.conditions) to.other(words_in(condition));
    if (!figures.bands.empty()) continue;
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
  if (!fit.market.empty()) to.filter(Prefix::choice, "market=" + fold(fit.market));
  for (const std::string_view of : {std::string_view(machine), std::string_view()}) {
    for (std::string& block : year_range_terms(of, fit.year_from, fit.year_to)) {
      to.filter_term(std::move(block));
    }
  }
  const std::vector<std::string> words = words_in(fit.make + ' ' + fit.model);
  to.other(words);
  to.spell(words);
}

void add_fits(Collector& to, const std::vector<FitRecord>& fits) {
  for (const FitRecord& fit : fits) add_fit(to, fit);
  if (fits.empty()) to.filter(Prefix::machine, "any");
}

void add_standing(Collector& to, const EntryRecord& entry) {
  to.filter(Prefix::kind, entry.kind);
  to.spell(words_of(entry.kind));
  to.other(words_in(entry.address.substr(entry.address.find('/') + 1)));
  if (!entry.status.empty()) to.filter(Prefix::choice, "status=" + entry.status);
  if (!entry.withdrawn.empty()) to.filter(Prefix::choice, "withdrawn=yes");
  if (entry.critical) to.filter(Prefix::choice, "critical=yes");
}

// What is stamped or cast on it, by which it is told from others: "S46M".
void add_marks(Collector& to, std::string_view text) {
  std::vector<std::string> words = words_in(text);
  std::erase_if(words, [](const std::string& word) {
    return !has_digit(word) || word.find_first_not_of("0123456789.") == std::string::npos;
  });
  to.other(words);
}

void add_sheet(Collector& to, const SheetRecord& sheet) {
  to.filter(Prefix::assembly, sheet.assembly);
  const std::vector<std::string> words = words_in(sheet.title + ' ' + sheet.maker + ' ' + sheet.assembly);
  to.other(words);
  to.spell(words);
  for (const FieldRecord& field : sheet.fields) {
    if (first_part(field.key) == "identify") add_marks(to, field.text);
    if (field.key == "tube")
      if (const auto size = parse_size(field.text, Input::sheet))
        to.filter(Prefix::choice, tube_choice(dimension_mm(*size, 0)));
    if (field.key != "also") continue;  // words for every row of a table
    to.other(words_in(field.text));
    to.spell(words_in(field.text));
    to.groups_in(spellings_of(field.text));
  }
}

}  // namespace

EntryIndexer::EntryIndexer(const SheetRecord& sheet, const WordGroups& groups)
    : sheet_(sheet), groups_(groups) {
  Collector of_sheet(groups), of_fits(groups), of_source(groups), shared(groups);
  add_sheet(of_sheet, sheet);
  add_fits(of_fits, sheet.fits);
  of_source.other(words_in(sheet.source.title));
  of_sheet_ = std::move(of_sheet).finish();
  of_fits_ = std::move(of_fits).finish();
  of_source_ = std::move(of_source).finish();
  for (const IndexedEntry* part : {&of_sheet_, &of_fits_, &of_source_}) shared.take(*part);
  shared_ = std::move(shared).finish();
}

namespace {

void add_own(Collector& to, const EntryRecord& entry) {
  to.name(entry.name);
  add_fields(to, entry);
  add_standing(to, entry);
}

}  // namespace

IndexedEntry EntryIndexer::index_own(const EntryRecord& entry) const {
  Collector to(groups_);
  add_own(to, entry);
  IndexedEntry own = std::move(to).finish();
  std::erase_if(own.spelling,
                [&](const std::string& word) { return std::ranges::binary_search(shared_.spelling, word); });
  return own;
}

IndexedEntry EntryIndexer::index(const EntryRecord& entry) const {
  Collector to(groups_);
  add_own(to, entry);
  to.take(of_sheet_);
  entry.fits == sheet_.fits ? to.take(of_fits_) : add_fits(to, entry.fits);
  entry.source == sheet_.source ? to.take(of_source_) : to.other(words_in(entry.source.title));
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
