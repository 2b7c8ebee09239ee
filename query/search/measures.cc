// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/measures.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <optional>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/digits.h"
#include "query/search/figures.h"
#include "query/search/part_names.h"
#include "query/search/reach.h"

namespace sheaf {
namespace {

constexpr double other_range = 0.3;  // of a tool that meets the range asked for, and has not just that
constexpr double never = std::numeric_limits<double>::max();

// One stated value: its ends in the base unit of its dimension, and in what sense it is a length.
struct Measure {
  Dimension dimension = Dimension::length;
  LengthOf sense = LengthOf::anything;
  std::string_view name;  // of a dimension of a size: "inside"; else empty
  double least = 0, most = 0;
};

constexpr std::array<std::string_view, 4> dimension_names = {"inside", "outside", "height", "fourth"};
constexpr double metres_per_mm = 0.001;

void add_size(std::vector<Measure>& measures, const Size& size) {
  for (int i = 0; i < size.count; ++i) {
    const double metres = dimension_mm(size, i) * metres_per_mm;
    const auto sense = i == 0 ? LengthOf::inside : i == 1 ? LengthOf::outside : LengthOf::dimension;
    measures.push_back(
        {Dimension::length, sense, dimension_names[static_cast<std::size_t>(i)], metres, metres});
  }
  if (size.step) {
    Size stepped = size;
    stepped.value[static_cast<std::size_t>(size.count - 1)] = *size.step;
    const double metres = dimension_mm(stepped, size.count - 1) * metres_per_mm;
    measures.push_back({Dimension::length, LengthOf::dimension, "height", metres, metres});
  }
}

void add_length(std::vector<Measure>& measures, std::optional<double> mm, LengthOf sense,
                std::string_view name) {
  if (mm) measures.push_back({Dimension::length, sense, name, *mm * metres_per_mm, *mm * metres_per_mm});
}

void add_statement(std::vector<Measure>& measures, const Statement& statement, LengthOf sense) {
  for (const auto& stage : statement.stages) {
    if (!stage.figure.unit) continue;
    BaseBand band = base_band(stage.figure);  // a minimum or maximum states one value
    if (std::isinf(band.least)) band.least = band.most;
    if (std::isinf(band.most)) band.most = band.least;
    measures.push_back({stage.figure.unit->dimension, sense, {}, band.least, band.most});
  }
}

LengthOf sense_of(std::string_view key) {
  if (key == "tube" || key == "inside") return LengthOf::inside;
  if (key == "bore" || key == "outside") return LengthOf::outside;
  return LengthOf::anything;
}

void add_field(std::vector<Measure>& measures, const FieldRecord& field, const FieldDeclaration* declared) {
  if (field.key == "bottles") return;  // what it is bought in is not what is filled in
  const auto type = declared ? declared->type : ValueType::text;
  if (type == ValueType::size || !declared || field.key == "size") {
    if (const auto size = parse_size(field.text, Input::sheet)) return add_size(measures, *size);
  }
  if (type == ValueType::thread || !declared) {
    if (const auto thread = parse_thread(field.text, Input::sheet))
      return add_length(measures, diameter_mm(*thread), LengthOf::diameter, "thread");
  }
  if (type == ValueType::drive) {
    if (const auto drive = parse_drive(field.text, Input::sheet))
      return add_length(measures, across_flats_mm(*drive), LengthOf::across_flats, "across flats");
  }
  const bool is_figure = type == ValueType::figure || type == ValueType::torque || !declared;
  if (!is_figure) return;
  const auto dimension = declared ? declared->dimension : std::nullopt;
  if (const auto statement = parse_statement(field.text, dimension, Input::sheet))
    add_statement(measures, *statement, sense_of(field.key));
}

// "IT7 at 25 mm": a row that holds from over one size up to another holds all between, and the upper end.
std::optional<Measure> span_of(const EntryRecord& entry) {
  constexpr double nothing = 1e-9;  // metres, by which what it is over is passed
  const auto metres_in = [&](std::string_view key) -> std::optional<double> {
    const auto field = std::ranges::find(entry.fields, key, &FieldRecord::key);
    if (field == entry.fields.end()) return std::nullopt;
    const auto statement = parse_statement(field->text, Dimension::length, Input::sheet);
    if (!statement || statement->stages.empty() || !statement->stages.front().figure.unit)
      return std::nullopt;
    return base_band(statement->stages.front().figure).most;
  };
  const auto over = metres_in("over"), to = metres_in("up-to");
  if (!over || !to) return std::nullopt;
  return Measure{Dimension::length, LengthOf::anything, "range", *over + nothing, *to};
}

std::vector<Measure> measures_of(const EntryRecord& entry) {
  const auto* kind = kind_named(entry.kind);
  std::vector<Measure> measures;
  const auto span = kind ? std::nullopt : span_of(entry);
  if (span) measures.push_back(*span);
  for (const auto& field : entry.fields) {
    if (span && (field.key == "over" || field.key == "up-to")) continue;
    const std::size_t before = measures.size();
    add_field(measures, field, kind ? field_of(*kind, field.key) : nullptr);
    if (entry.kind == "bushing" && field.key == "length" && measures.size() > before)
      measures.back().sense = LengthOf::dimension;
  }
  return measures;
}

bool is_of_sense(const Measure& measure, LengthOf asked) {
  switch (asked) {
    case LengthOf::anything:
      return true;
    case LengthOf::dimension:
      return measure.sense == LengthOf::inside || measure.sense == LengthOf::outside ||
             measure.sense == LengthOf::dimension;
    default:
      return measure.sense == asked;
  }
}

// Which sense a bare length most likely has, on an entry of that kind: the tube of a seal, the spanner of a
// nut.
double cost_of_sense(const Measure& measure, std::string_view kind) {
  const bool is_ring = kind == "seal" || kind == "bearing" || kind == "o-ring" || kind == "bushing";
  switch (measure.sense) {
    case LengthOf::inside:
      return is_ring ? 0 : 0.2;
    case LengthOf::outside:
      return 0.2;
    case LengthOf::across_flats:
      return 0;
    case LengthOf::diameter:
      return 0.1;
    case LengthOf::dimension:
      return 0.3;
    case LengthOf::anything:
      return kind == "fastener" ? 0.3 : 0.1;
  }
  return 0;
}

// How far the value lies from the measure: negative below what is stated, 0 within it.
double gap_to(const Measure& measure, double least, double most) {
  if (most < measure.least) return measure.least - most;
  if (least > measure.most) return measure.most - least;
  return 0;
}

struct Nearest {
  const Measure* measure = nullptr;
  double gap = never, cost = never;
};

template <typename Allow>
Nearest nearest(const std::vector<Measure>& measures, double least, double most, std::string_view kind,
                Allow allow) {
  Nearest best;
  for (const auto& measure : measures) {
    if (!allow(measure)) continue;
    const double gap = gap_to(measure, least, most);
    const double cost = cost_of_sense(measure, kind);
    const bool better = std::abs(gap) < std::abs(best.gap) || (gap == best.gap && cost < best.cost);
    if (better) best = {&measure, gap, cost};
  }
  return best;
}

void add_difference(Meeting& meeting, const Nearest& found, std::string_view unit, double per_unit) {
  if (found.gap == 0) return;
  if (!meeting.differs.empty()) meeting.differs += ", ";
  if (!found.measure->name.empty()) meeting.differs += std::string(found.measure->name) + " ";
  meeting.differs += signed_amount(found.gap / per_unit, unit);
}

void count_in(Meeting& meeting, const Nearest& found, double reach) {
  if (!found.measure) {
    meeting.meets = meeting.is_near = false;
    return;
  }
  const double share = std::abs(found.gap) / reach;
  meeting.meets = meeting.meets && found.gap == 0;
  meeting.is_near = meeting.is_near && share <= 1;
  meeting.distance += share;
  meeting.cost += found.cost;
}

// A number without a unit is a size; only where a figure is asked for, or of how far something may wear, may
// it be one that is stated.
void meet_length(Meeting& meeting, const std::vector<Measure>& measures, const LengthAsked& asked,
                 std::string_view kind, bool asks_figure) {
  const double reach = exact_reach(asked) * metres_per_mm;
  const double value = asked.mm * metres_per_mm;
  const auto found = nearest(measures, value - reach, value + reach, kind, [&](const Measure& measure) {
    const bool is_size = measure.sense != LengthOf::anything;
    return measure.dimension == Dimension::length && is_of_sense(measure, asked.of) &&
           (is_size || !asked.bare || asks_figure || kind == "limit" || kind == "clearance");
  });
  const bool is_figure = found.measure && found.measure->name.empty();
  count_in(
      meeting, found,
      is_figure ? std::max(value * near_share, near_length * metres_per_mm) : near_length * metres_per_mm);
  if (found.measure) add_difference(meeting, found, "mm", metres_per_mm);
}

// "wrench 10-60 nm": that very range, and not one that it meets.
bool has_just(const Measure& measure, const Figure& asked) {
  constexpr double rounding = 1e-6;
  const BaseBand band = base_band(asked);
  const auto is_same = [](double left, double right) {
    return std::isfinite(left) && std::isfinite(right) &&
           std::abs(left - right) <= rounding * std::max(std::abs(left), std::abs(right));
  };
  return is_same(measure.least, band.least) && is_same(measure.most, band.most);
}

void meet_quantity(Meeting& meeting, const std::vector<Measure>& measures, const QuantityAsked& asked,
                   std::string_view kind) {
  Nearest best;
  const Figure* best_figure = &asked.figures.front();
  for (const auto& figure : asked.figures) {
    const BaseBand band = base_band(figure);
    const double reach = asked.is_range ? 0 : exact_reach(figure);
    const auto found =
        nearest(measures, band.least - reach, band.most + reach, kind,
                [&](const Measure& measure) { return measure.dimension == figure.unit->dimension; });
    if (std::abs(found.gap) < std::abs(best.gap)) best = found, best_figure = &figure;
  }
  const double value = std::abs(base_band(*best_figure).least);
  const bool is_other =
      asked.is_range && kind == "wrench" && best.measure && !has_just(*best.measure, *best_figure);
  best.cost = is_other ? other_range : 0;
  count_in(meeting, best, asked.is_range ? never : std::max(value * near_share, 1e-12));
  if (best.measure)
    add_difference(meeting, best, best_figure->unit->symbol, base_per_unit(*best_figure->unit));
}

bool has_word(const std::string& text, const std::string& word) {
  const auto words = words_of(fold(text));
  return std::ranges::find(words, word) != words.end();
}

bool describes(const EntryRecord& entry, const std::string& word) {
  return std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
    return (field.key == "description" || (field.key == "size" && entry.kind == "part")) &&
           has_word(field.text, word);
  });
}

// "chain length over 20 pitches", "525 chain": the number is part of what it is called or described as.
bool stands_in_name(const LengthAsked& asked, const EntryRecord& entry) {
  return asked.bare && (has_word(entry.name, asked.typed) || describes(entry, asked.typed));
}

// "spring rate 138": the number of the figure asked for.
bool is_of_figure(const LengthAsked& asked, const EntryRecord& entry, const QuestionReading& reading) {
  return asked.bare && std::ranges::any_of(reading.figures, [&](const std::string& figure) {
           const auto fields = fields_of_figure(figure);
           return std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
             return std::ranges::find(fields, field.key) != fields.end() && has_word(field.text, asked.typed);
           });
         });
}

// "shock spring 138": a spring is known by its rate.
bool is_rate(const LengthAsked& asked, const EntryRecord& entry) {
  return asked.bare && entry.kind == "spring" &&
         std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
           return field.key == "rate" && has_word(field.text, asked.typed);
         });
}

// A unit of what one of the figures measures; degrees are said of heat too.
bool is_such_unit(const std::string& text, const QuantityAsked& asked) {
  return std::ranges::any_of(readings(text), [&](const Unit* unit) {
    return std::ranges::any_of(asked.figures, [&](const Figure& figure) {
      const Dimension dimension = figure.unit->dimension;
      return unit->dimension == dimension ||
             (dimension == Dimension::angle && unit->dimension == Dimension::temperature);
    });
  });
}

// "silencer wool 300 g", which is said of it in words: that very number, and such a unit behind it.
bool is_described(const QuantityAsked& asked, const EntryRecord& entry) {
  const std::string number = number_typed(asked);
  if (asked.is_range || number.empty()) return false;
  const auto says_it = [&](const std::string& text) {
    constexpr std::string_view of_numbers = "0123456789.,";
    for (std::size_t at = text.find(number); at != std::string::npos; at = text.find(number, at + 1)) {
      const std::size_t end = at + number.size();
      if (at > 0 && of_numbers.find(text[at - 1]) != std::string_view::npos) continue;
      if (end < text.size() && text[end] >= '0' && text[end] <= '9') continue;
      const std::size_t unit = text.find_first_not_of(' ', end);
      if (unit != std::string::npos &&
          is_such_unit(text.substr(unit, text.find_first_of(" ,;", unit) - unit), asked))
        return true;
    }
    return false;
  };
  return std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
    return field.key == "description" && says_it(field.text);
  });
}

std::string text_of(const EntryRecord& entry, std::string_view key) {
  const auto field = std::ranges::find(entry.fields, key, &FieldRecord::key);
  return field == entry.fields.end() ? std::string() : field->text;
}

// As a field of its own, or in the columns of a row; a taper bearing's by either of its widths.
std::vector<Size> sizes_of(const EntryRecord& entry) {
  const auto number = [&](std::string_view key) {
    return text_of(entry, key).substr(0, text_of(entry, key).find(' '));
  };
  const std::string ring = number("bore") + "x" + number("outside") + "x";
  std::vector<Size> sizes;
  for (const std::string& text : {text_of(entry, "size"), ring + number("width"), ring + number("assembled")})
    if (auto size = parse_size(text, Input::sheet)) sizes.push_back(*std::move(size));
  return sizes;
}

// "25x32x25" is no 25x32x20, though that has all of its dimensions.
bool is_same_in_some_order(const Size& asked, const Size& stated, double reach) {
  if (asked.count != stated.count || stated.step) return true;
  std::vector<double> left, right;
  for (int i = 0; i < asked.count; ++i)
    left.push_back(dimension_mm(asked, i)), right.push_back(dimension_mm(stated, i));
  std::ranges::sort(left);
  std::ranges::sort(right);
  return std::ranges::equal(left, right,
                            [&](double one, double other) { return std::abs(one - other) <= reach; });
}

// In whatever order, almost everything is near something.
bool is_near_in_order(const Size& asked, const Size& stated) {
  if (asked.count != stated.count) return true;
  for (int i = 0; i < asked.count; ++i)
    if (std::abs(dimension_mm(asked, i) - dimension_mm(stated, i)) > near_size + same_length) return false;
  return true;
}

// Each dimension of the size must be one of the entry's, whatever the order.
void meet_size(Meeting& meeting, const std::vector<Measure>& measures, const Size& asked,
               const EntryRecord& entry) {
  const double reach = (asked.unit == "mm" ? same_length : caliper) * metres_per_mm;
  for (int i = 0; i < asked.count; ++i) {
    const double value = dimension_mm(asked, i) * metres_per_mm;
    auto found = nearest(measures, value - reach, value + reach, "seal",
                         [](const Measure& measure) { return is_of_sense(measure, LengthOf::dimension); });
    found.cost = 0;
    count_in(meeting, found, near_size * metres_per_mm);
    if (found.measure) add_difference(meeting, found, "mm", metres_per_mm);
  }
  const auto stated = sizes_of(entry);
  if (stated.empty()) return;
  const auto is_same = [&](const Size& size) {
    return is_same_in_some_order(asked, size, reach / metres_per_mm);
  };
  const auto is_near = [&](const Size& size) { return is_near_in_order(asked, size); };
  meeting.meets = meeting.meets && std::ranges::any_of(stated, is_same);
  if (!meeting.meets) meeting.is_near = meeting.is_near && std::ranges::any_of(stated, is_near);
}

}  // namespace

std::string signed_amount(double amount, std::string_view unit) {
  const double size = std::abs(amount);
  const double step = size >= 100 ? 1 : size >= 10 ? 0.1 : 0.01;
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::round(size / step) * step,
                                 std::chars_format::general, 4);
  return (amount < 0 ? "−" : "+") + std::string(buffer.data(), end.ptr) + "\u00A0" + std::string(unit);
}

bool is_described(const LengthAsked& asked, const EntryRecord& entry) {
  const std::string number = asked.typed.substr(0, asked.typed.find_first_not_of("0123456789.,"));
  return !number.empty() && (has_word(entry.name, number) || describes(entry, number));
}

bool is_numbered(const EntryRecord& entry) {
  const auto words = words_of(fold(entry.name));
  return std::ranges::any_of(words, [](const std::string& word) { return is_digits(word); });
}

bool is_called(const EntryRecord& entry, const std::string& word) { return has_word(entry.name, word); }

bool measures_beside_axle(const EntryRecord& entry, const QuestionReading& reading) {
  const auto is_axle = [](const PartAsked& part) { return part.words.back() == "axle" && !part.is_context; };
  const auto is_other = [&](const PartAsked& part) {
    return !part.is_context && !is_axle(part) && names_a_part(part);
  };
  if (std::ranges::any_of(reading.parts, is_other)) return false;
  return reading.asks("limit") && is_measure(entry.kind) && !is_called(entry, "axle") &&
         std::ranges::any_of(reading.parts, is_axle);
}

bool states(const EntryRecord& entry, Dimension dimension) {
  return std::ranges::any_of(measures_of(entry),
                             [&](const Measure& each) { return each.dimension == dimension; });
}

Meeting meet_measures(const EntryRecord& entry, const QuestionReading& reading) {
  Meeting meeting;
  if (reading.lengths.empty() && reading.quantities.empty() && reading.sizes.empty()) return meeting;
  const auto measures = measures_of(entry);
  for (const auto& length : reading.lengths)
    if (counts_teeth(length))
      meeting.meets = meeting.is_near =
          meeting.meets && describes(entry, length.typed.substr(0, length.typed.size() - 1));
    else if (!stands_in_name(length, entry) && !is_of_figure(length, entry, reading) &&
             !is_rate(length, entry))
      meet_length(meeting, measures, length, entry.kind, !reading.figures.empty());
  for (const auto& quantity : reading.quantities)
    if (!is_described(quantity, entry)) meet_quantity(meeting, measures, quantity, entry.kind);
  if (reading.sizes.size() == 1) meet_size(meeting, measures, reading.sizes.front(), entry);
  return meeting;
}

bool has_hand(const EntryRecord& entry, const std::string& hand) {
  return std::ranges::any_of(
      entry.fields, [&](const FieldRecord& field) { return field.key == "hand" && field.text == hand; });
}

bool has_pattern(const EntryRecord& entry, const std::string& pattern) {
  return std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
    return field.key == "pattern" && field.text == pattern;
  });
}

bool has_stages(const EntryRecord& entry, const std::vector<std::string>& numbers) {
  std::vector<double> stated;
  for (const auto& field : entry.fields)
    if (field.key == "torque")
      if (const auto statement = parse_statement(field.text, std::nullopt, Input::sheet);
          statement && statement->stages.size() > 1)
        for (const auto& stage : statement->stages)
          if (stage.figure.nominal) stated.push_back(approximate(*stage.figure.nominal));
  return std::ranges::all_of(numbers, [&](const std::string& each) {
    const auto number = parse_number(each, Input::prompt);
    const auto found = number ? std::ranges::find(stated, approximate(*number)) : stated.end();
    if (found == stated.end()) return false;
    stated.erase(found);
    return true;
  });
}

std::string number_typed(const QuantityAsked& asked) {
  return asked.typed.substr(0, asked.typed.find_first_not_of("0123456789.,"));
}

bool states_some(const EntryRecord& entry, const std::vector<const Unit*>& units) {
  return std::ranges::any_of(units, [&](const Unit* unit) { return states(entry, unit->dimension); });
}

bool describes_in(const EntryRecord& entry, const std::vector<const Unit*>& units) {
  return std::ranges::any_of(units, [&](const Unit* unit) { return describes(entry, fold(unit->symbol)); });
}

std::vector<const Unit*> units_that_tell(const QuestionReading& reading) {
  std::vector<const Unit*> units;
  const auto tells = [](const Unit* unit) {
    return unit->dimension != Dimension::torque && unit->dimension != Dimension::length;
  };
  std::ranges::copy_if(reading.units, std::back_inserter(units), tells);
  return units;
}

bool is_measure(std::string_view kind) {
  return kind == "limit" || kind == "clearance" || kind == "setting" || kind == "pressure";
}

}  // namespace sheaf
