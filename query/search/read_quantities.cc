// SPDX-License-Identifier: GPL-2.0-or-later
// Numbers with a unit: figures that an entry must state, and lengths, of which the words beside them say
// what they measure.
#include <array>
#include <cmath>
#include <functional>
#include <utility>

#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr std::size_t most_tokens_of_a_figure = 5;  // "over 40 lbf ft": what one figure may be typed in

// Words in front of a figure that ask for more or less than it.
struct Bound {
  std::string_view word;
  std::string_view form;  // as a figure says it
};
// clang-format off
constexpr std::array<Bound, 16> bounds = {{
    {"over", "min"}, {"above", "min"}, {"min", "min"}, {"minimum", "min"}, {"least", "min"}, {"more", "min"},
    {"under", "max"}, {"below", "max"}, {"max", "max"}, {"maximum", "max"}, {"most", "max"}, {"less", "max"},
    {"about", "about"}, {"around", "about"}, {"near", "about"}, {"roughly", "about"}}};
// clang-format on

const Bound* bound_at(const Draft& draft, std::size_t i) {
  if (draft.taken[i]) return nullptr;
  const auto found =
      std::ranges::find_if(bounds, [&](const Bound& each) { return draft.has_word(i, each.word); });
  return found == bounds.end() ? nullptr : &*found;
}

double half_of_last_digit(const Number& number) {
  return number.denominator == 1 ? 0.5 * std::pow(10.0, -static_cast<double>(number.places)) : 0;
}

// One value and nothing of conditions, which would be other words of the question.
bool is_bare(const Statement& statement) {
  return statement.stages.size() == 1 && statement.figure().unit && statement.conditions.empty() &&
         statement.per.empty() && !statement.printed;
}

bool is_one_value(const Figure& figure) {
  return figure.nominal && (figure.form == Form::nominal || figure.form == Form::about);
}

bool is_length(const Figure& figure) { return figure.unit->dimension == Dimension::length; }

// "6205 in the hub": where it is, no inches.
bool ends_before_place(const Draft& draft, std::size_t end) {
  constexpr std::string_view articles[] = {"the", "a",    "an",   "my",    "our", "his",
                                           "her", "this", "that", "which", "what"};
  if (!draft.has_word(end - 1, "in")) return false;
  if (end < draft.size() && !draft.token(end).has_digit && !readings(draft.token(end).typed).empty())
    return true;  // "450 in mm"
  return draft.has_any(end, articles);
}

// "32006 in causeway"
bool is_no_inches(const Draft& draft, std::size_t i, std::size_t count) {
  constexpr std::size_t most_digits = 3;
  return count == 2 && draft.has_word(i + 1, "in") && draft.token(i).typed.size() > most_digits &&
         is_digits(draft.token(i).typed);
}

// "rivet link 520 pt no": its part number.
bool is_no_pints(const Draft& draft, std::size_t i, std::size_t count) {
  return count == 2 && draft.has_word(i + 1, "pt") && draft.has_any(i + 2, {"no", "nr", "num", "number"});
}

// The longest figure that begins there, with the word before it; where it stands.
struct FigureFound {
  std::vector<Statement> readings;
  std::size_t count = 0;
};

// "between 20 and 30 nm"
FigureFound range_between(const Draft& draft, std::size_t i) {
  constexpr std::size_t before_last = 3;  // words
  const bool is_said = draft.has_word(i, "between") && draft.has_word(i + 2, "and") &&
                       draft.is_free(i, before_last + 1) && is_number(draft.token(i + 1));
  for (std::size_t count = 3; is_said && count > 0; --count) {
    if (!draft.is_free(i + before_last, count)) continue;
    auto readings = parse_readings(
        draft.question.typed(i + 1, 1) + ".." + draft.question.typed(i + before_last, count), std::nullopt);
    if (readings && is_bare(readings->front())) return {std::move(readings).value(), before_last + count};
  }
  return {};
}

FigureFound figure_at(const Draft& draft, std::size_t i) {
  if (draft.has_word(i, "between")) return range_between(draft, i);
  const Bound* bound = bound_at(draft, i);
  std::size_t first = i + (bound ? 1 : 0);
  if (bound && draft.has_word(first, "than")) ++first;
  if (first >= draft.size() || !draft.token(first).has_digit) return {};
  for (std::size_t count = most_tokens_of_a_figure; count > 0; --count) {
    if (!draft.is_free(first, count) || ends_before_place(draft, first + count) ||
        is_no_inches(draft, first, count) || is_no_pints(draft, first, count))
      continue;
    const std::string typed = draft.question.typed(first, count);
    auto readings = parse_readings(bound ? std::string(bound->form) + " " + typed : typed, std::nullopt);
    if (readings && is_bare(readings->front())) return {std::move(readings).value(), first - i + count};
  }
  return {};
}

// What the words behind a length say of it, and how many of them say only that.
std::pair<LengthOf, std::size_t> meaning_behind(const Draft& draft, std::size_t next) {
  const bool names_screw =
      draft.has_any(next, {"bolt", "bolts", "screw", "screws", "stud", "studs", "thread"});
  const bool names_head = draft.has_any(next + 1, {"head", "heads"});
  const bool is_of_fastener = draft.says_any({"bolt", "bolts", "screw", "screws", "nut", "nuts"});
  const bool is_head_alone = draft.has_any(next, {"head", "heads", "hd"}) &&
                             !draft.has_any(next + 1, {"bolt", "bolts", "screw", "screws", "nut", "nuts",
                                                       "stud", "studs", "gasket", "bearing", "bearings"});
  if (is_of_fastener && is_head_alone) return {LengthOf::across_flats, 1};  // "pinch bolts, 10 mm head"
  if (names_screw)
    return names_head ? std::pair(LengthOf::across_flats, 2) : std::pair(LengthOf::diameter, 0);
  if (draft.has_any(next, {"inner"}) && draft.has_any(next + 1, {"tube", "tubes"}))
    return {LengthOf::anything, 0};  // of a tyre
  if (draft.has_any(next, {"inner", "outer"}) &&
      draft.has_any(next + 1, {"bush", "bushes", "bushing", "bushings"}))
    return {LengthOf::anything, 0};
  if (draft.has_any(next, {"od", "outside", "outer"})) return {LengthOf::outside, 1};
  if (draft.has_any(next, {"id", "inside", "inner"})) return {LengthOf::inside, 1};
  if (draft.has_any(next, {"tube", "tubes", "stanchion", "stanchions", "shaft"}))
    return {LengthOf::inside, 1};
  if (draft.has_word(next, "bore") && draft.has_any(next + 1, {"wear", "limit", "max", "gauge", "size"}))
    return {LengthOf::anything, 0};  // "82 mm bore wear limit": of a cylinder
  if (draft.has_any(next, {"bore", "housing"})) return {LengthOf::outside, 1};
  if (draft.has_any(next, {"long", "lang", "largo", "lungo"})) return {LengthOf::anything, 1};
  if (draft.has_any(next, {"seal", "seals", "bearing", "bearings"})) return {LengthOf::dimension, 0};
  return {LengthOf::anything, 0};
}

double in_mm(double value, const Unit& unit) {
  return value * static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator) *
         1000;
}

void add_doubts(QuestionReading& reading, const LengthAsked& asked) {
  if (asked.of == LengthOf::across_flats)
    reading.doubts.push_back("“" + asked.typed +
                             "” is read as the width of the head; for the thread, type M" +
                             asked.typed.substr(0, asked.typed.find_first_not_of("0123456789.")) + ".");
}

// Of an ounce or a pint, the fluid one is meant: no sheet weighs what is poured.
void prefer_volumes(std::vector<Figure>& figures) {
  const auto is_volume = [](const Figure& figure) { return figure.unit->dimension == Dimension::volume; };
  if (std::ranges::any_of(figures, is_volume)) std::erase_if(figures, std::not_fn(is_volume));
}

void take_figure(Draft& draft, std::size_t i, std::size_t count, const std::vector<Statement>& readings) {
  QuantityAsked asked;
  asked.typed = draft.question.typed(i, count);
  for (const auto& statement : readings) asked.figures.push_back(statement.figure());
  prefer_volumes(asked.figures);
  asked.is_range = !is_one_value(asked.figures.front());
  draft.reading.quantities.push_back(std::move(asked));
  draft.take(i, count);
}

}  // namespace

LengthAsked length_of(const std::string& typed, const Number& number, LengthOf of) {
  LengthAsked asked;
  asked.typed = typed;
  asked.figure.nominal = number;
  asked.figure.unit = readings(number.denominator > 1 ? "in" : "mm", Dimension::length).front();
  asked.mm = in_mm(approximate(number), *asked.figure.unit);
  asked.half_digit = in_mm(half_of_last_digit(number), *asked.figure.unit);
  asked.of = of;
  asked.bare = true;
  return asked;
}

bool begins_quantity(const Draft& draft, std::size_t i) {
  return draft.token(i).has_digit || bound_at(draft, i) || draft.has_word(i, "between");
}

bool read_figure(Draft& draft, std::size_t i) {
  const auto [readings, count] = figure_at(draft, i);
  if (readings.empty() || is_length(readings.front().figure())) return false;
  take_figure(draft, i, count, readings);
  return true;
}

// "54 bore", "43 tube", "55.3 od": the word behind a bare number says what it measures; but nothing here is
// as large as "1990 outer screw" would have it, which is a year; and "6205 bore" asks for a bearing's.
bool read_named_number(Draft& draft, std::size_t i) {
  if (year_in(draft.token(i).typed) || draft.lexicon.has_term(Prefix::bearing, draft.token(i).typed))
    return false;
  const auto is_dimension = [&](const std::string& typed) {
    return typed.find_first_not_of("0123456789.,") == std::string::npos && !year_in(typed) &&
           draft.lexicon.machines_with(typed).empty();
  };
  if (i > 0 && !draft.taken[i - 1] && is_dimension(draft.token(i - 1).typed))
    return false;  // "18 30 5 shaft seal"
  const auto number = parse_number(draft.token(i).typed, Input::prompt);
  const auto [of, more] = meaning_behind(draft, i + 1);
  if (!number || more == 0 || of == LengthOf::across_flats) return false;
  draft.reading.lengths.push_back(length_of(draft.question.typed(i, 1), *number, of));
  if (of == LengthOf::anything) draft.reading.lengths.back().bare = false;
  draft.take(i, 1 + more);
  return true;
}

// Where a length is ambiguous (a mil is a millimetre in one shop, a thousandth of an inch in the next),
// the first reading is the one that workshops mean.
bool read_length(Draft& draft, std::size_t i) {
  if (read_named_number(draft, i)) return true;
  const auto [readings, count] = figure_at(draft, i);
  if (readings.empty() || !is_length(readings.front().figure())) return false;
  const Figure& figure = readings.front().figure();
  if (!is_one_value(figure)) {
    take_figure(draft, i, count, readings);
    return true;
  }
  auto [of, more] = meaning_behind(draft, i + count);
  LengthAsked asked;
  asked.typed = draft.question.typed(i, count);
  asked.figure = figure;
  asked.mm = in_mm(approximate(*figure.nominal), *figure.unit);
  asked.half_digit = in_mm(half_of_last_digit(*figure.nominal), *figure.unit);
  if (of == LengthOf::inside && is_of_wheel(asked)) of = LengthOf::anything, more = 0;  // "21 inch tube"
  asked.of = of;
  add_doubts(draft.reading, asked);
  draft.reading.lengths.push_back(std::move(asked));
  draft.take(i, count + more);
  return true;
}

}  // namespace sheaf
