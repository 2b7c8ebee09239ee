// SPDX-License-Identifier: GPL-2.0-or-later
// Everything that carries its own meaning in digits and signs: threads, drives, sizes, bearings, codes
// and quantities with their units. The longest reading at a place wins; where two readings are equally
// long, the one that the trade means more often.
#include <array>
#include <cmath>

#include "query/library/fold.h"
#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr std::size_t most_tokens_of_a_figure = 5;  // "over 40 lbf ft": what one figure may be typed in
constexpr std::size_t most_tokens_of_a_drive = 4;   // "12 mm hex key"
constexpr std::size_t most_tokens_of_a_code = 3;    // "SAE 10W 40"

bool is_number(const Token& token) {
  return token.has_digit && token.typed.find_first_not_of("0123456789.,") == std::string::npos;
}

// Words that ask for more or less than a figure, in front of it.
struct Bound {
  std::string_view word;
  std::string_view form;  // as a figure says it
};
constexpr std::array<Bound, 17> bounds = {{{"over", "min"},
                                           {"above", "min"},
                                           {"min", "min"},
                                           {"minimum", "min"},
                                           {"least", "min"},
                                           {"more", "min"},
                                           {"from", "min"},
                                           {"under", "max"},
                                           {"below", "max"},
                                           {"max", "max"},
                                           {"maximum", "max"},
                                           {"most", "max"},
                                           {"less", "max"},
                                           {"about", "about"},
                                           {"around", "about"},
                                           {"near", "about"},
                                           {"roughly", "about"}}};

const Bound* bound_at(const Draft& draft, std::size_t i) {
  if (i >= draft.size() || draft.taken[i]) return nullptr;
  for (const auto& bound : bounds)
    if (draft.has_word(i, bound.word)) return &bound;
  return nullptr;
}

// "dot 5.1", "10w40", "10.9": letters and digits that stand as a code on some sheet.
bool read_code(Draft& draft, std::size_t i) {
  for (std::size_t count = most_tokens_of_a_code; count > 0; --count) {
    if (!draft.is_free(i, count)) continue;
    const std::string code = squeeze(draft.question.typed(i, count));
    const bool has_digit = code.find_first_of("0123456789") != std::string::npos;
    const bool is_bare = code.find_first_not_of("0123456789") == std::string::npos;
    if (!has_digit || is_bare || !draft.lexicon.has_term(Prefix::code, code)) continue;
    draft.reading.codes.push_back(code);
    draft.take(i, count);
    return true;
  }
  return false;
}

// "10W", "5wt", "15 wt", "10W30": what is printed on a bottle.
bool read_label(Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  const std::size_t digits = typed.find_first_not_of("0123456789.,");
  if (digits == 0) return false;
  const auto is_weight = [](std::string_view unit) {
    return unit == "w" || unit == "wt" || unit == "weight";
  };
  const std::string unit = digits == std::string::npos ? std::string() : fold(typed.substr(digits));
  const bool has_second =
      unit.size() > 1 && unit[0] == 'w' && unit.find_first_not_of("-0123456789", 1) == std::string::npos;
  const bool parted = digits == std::string::npos && i + 1 < draft.size() && draft.is_free(i, 2) &&
                      draft.token(i + 1).words.size() == 1 && is_weight(draft.token(i + 1).words.front());
  if (!is_weight(unit) && !has_second && !parted) return false;
  const std::size_t count = parted ? 2 : 1;
  draft.reading.labels.push_back(draft.question.typed(i, count));
  draft.take(i, count);
  return true;
}

double half_of_last_digit(const Number& number) {
  return number.denominator == 1 ? 0.5 * std::pow(10.0, -static_cast<double>(number.places)) : 0;
}

bool is_one_value(const Figure& figure) {
  return figure.nominal && (figure.form == Form::nominal || figure.form == Form::about);
}

bool is_one_of(const Draft& draft, std::size_t i, std::initializer_list<std::string_view> words) {
  return std::ranges::any_of(words, [&](std::string_view word) { return draft.has_word(i, word); });
}

// What the word behind a bare length says of it, and how many tokens say so.
std::pair<LengthOf, std::size_t> length_meaning(const Draft& draft, std::size_t next) {
  const bool names_screw =
      is_one_of(draft, next, {"bolt", "bolts", "screw", "screws", "stud", "studs", "thread"});
  if (names_screw && !is_one_of(draft, next + 1, {"head", "heads"})) return {LengthOf::diameter, 0};
  if (names_screw) return {LengthOf::across_flats, 2};
  if (is_one_of(draft, next, {"od", "outside", "outer"})) return {LengthOf::outside, 1};
  if (is_one_of(draft, next, {"id", "inside", "inner"})) return {LengthOf::inside, 1};
  if (is_one_of(draft, next, {"tube", "tubes", "stanchion", "stanchions", "shaft"}))
    return {LengthOf::inside, 1};
  if (is_one_of(draft, next, {"bore", "housing"})) return {LengthOf::outside, 1};
  if (is_one_of(draft, next, {"seal", "seals"})) return {LengthOf::dimension, 0};
  return {LengthOf::anything, 0};
}

void take_length(Draft& draft, std::size_t i, std::size_t count, const Figure& figure) {
  const Quantity one{Number{1, 0, 1}, figure.unit};
  Figure unit_figure;
  unit_figure.nominal = one.value;
  unit_figure.unit = one.unit;
  const double mm_per_unit = base_band(unit_figure).least * 1000;
  const auto [of, more] = length_meaning(draft, i + count);
  LengthAsked asked;
  asked.typed = draft.question.typed(i, count);
  asked.mm = approximate(*figure.nominal) * mm_per_unit;
  asked.half_digit = half_of_last_digit(*figure.nominal) * mm_per_unit;
  asked.inches = figure.unit->symbol != "mm";
  asked.of = of;
  draft.reading.lengths.push_back(std::move(asked));
  draft.take(i, count + more);
}

void take_quantity(Draft& draft, std::size_t i, std::size_t count, const std::vector<Statement>& readings) {
  QuantityAsked asked;
  asked.typed = draft.question.typed(i, count);
  for (const auto& statement : readings) asked.figures.push_back(statement.figure());
  asked.is_range = !is_one_value(asked.figures.front());
  draft.reading.quantities.push_back(std::move(asked));
  draft.take(i, count);
}

// A figure with its unit, perhaps behind a word such as "over". A single length is a measure.
bool read_quantity(Draft& draft, std::size_t i) {
  const Bound* bound = bound_at(draft, i);
  std::size_t first = i + (bound ? 1 : 0);
  if (bound && draft.has_word(first, "than")) ++first;
  if (first >= draft.size() || !draft.token(first).has_digit) return false;
  for (std::size_t count = most_tokens_of_a_figure; count > 0; --count) {
    if (!draft.is_free(first, count)) continue;
    const std::string typed = draft.question.typed(first, count);
    const std::string text = bound ? std::string(bound->form) + " " + typed : typed;
    auto readings = parse_readings(text, std::nullopt);
    if (!readings || readings->front().stages.size() != 1 || !readings->front().figure().unit) continue;
    const Figure& figure = readings->front().figure();
    const std::size_t whole = first - i + count;
    const bool is_length = figure.unit->dimension == Dimension::length && is_one_value(figure);
    is_length ? take_length(draft, i, whole, figure) : take_quantity(draft, i, whole, *readings);
    return true;
  }
  return false;
}

template <typename Value>
bool take_found(Draft& draft, std::size_t i, std::optional<Found<Value>> found, std::vector<Value>& into) {
  if (!found) return false;
  const std::size_t count = draft.question.tokens_within(i, static_cast<std::size_t>(found->length));
  if (!draft.is_free(i, count)) return false;
  into.push_back(std::move(found->value));
  draft.take(i, count);
  return true;
}

bool read_thread(Draft& draft, std::size_t i) {
  return take_found(draft, i, thread_at(draft.question.from(i), Input::prompt), draft.reading.threads);
}

bool read_size(Draft& draft, std::size_t i) {
  return take_found(draft, i, size_at(draft.question.from(i), Input::prompt), draft.reading.sizes);
}

// Digits alone may be a model, a year or a size: they wait until the machines have been read.
bool read_bearing(Draft& draft, std::size_t i) {
  if (is_number(draft.token(i)) && !draft.has_word(i + 1, "2rs") && !draft.has_word(i + 1, "zz"))
    return false;
  return take_found(draft, i, bearing_at(draft.question.from(i), Input::prompt), draft.reading.bearings);
}

// "46mm socket", "T30", "17 mil nut". A length alone is no drive, though a tool could have that width.
bool read_drive(Draft& draft, std::size_t i) {
  for (std::size_t count = most_tokens_of_a_drive; count > 0; --count) {
    if (!draft.is_free(i, count)) continue;
    const std::string typed = draft.question.typed(i, count);
    if (typed.find_first_of("0123456789") == std::string::npos) continue;
    auto drive = parse_drive(typed, Input::prompt);
    if (!drive || !drive->size) continue;
    const bool is_length_alone = drive->shape == Drive::Shape::hexagon &&
                                 fold(typed).find_first_not_of("0123456789., mil\"/in-") == std::string::npos;
    if (is_length_alone) return false;
    draft.reading.drives.push_back(*std::move(drive));
    draft.take(i, count);
    return true;
  }
  return false;
}

// "ø43", "43 dia"
bool read_diameter_sign(Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  if (!typed.starts_with("ø") && !typed.starts_with("Ø") && !typed.starts_with("⌀")) return false;
  auto size = parse_size(typed, Input::prompt);
  if (!size) return false;
  LengthAsked asked;
  asked.typed = typed;
  asked.mm = dimension_mm(*size, 0);
  asked.half_digit = half_of_last_digit(size->value[0]);
  asked.of = LengthOf::dimension;
  draft.reading.lengths.push_back(std::move(asked));
  draft.take(i, 1);
  return true;
}

bool begins_figure(const Draft& draft, std::size_t i) {
  return draft.token(i).has_digit || bound_at(draft, i);
}

// A thread or bearing in a name is indexed as a code too ("M8 flange"): it is read as what it is.
bool is_thread_or_bearing(const Draft& draft, std::size_t i) {
  const auto rest = draft.question.from(i);
  return thread_at(rest, Input::prompt) || bearing_at(rest, Input::prompt);
}

}  // namespace

void read_designations(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i]) continue;
    if (!is_thread_or_bearing(draft, i) && read_code(draft, i)) continue;
    if (!begins_figure(draft, i)) continue;
    read_label(draft, i) || read_diameter_sign(draft, i) || read_drive(draft, i) || read_quantity(draft, i) ||
        read_thread(draft, i) || read_size(draft, i) || read_bearing(draft, i);
  }
}

}  // namespace sheaf
