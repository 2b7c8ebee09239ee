// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/printed_pair.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "query/quantity/convert.h"
#include "query/quantity/scale.h"

namespace sheaf {
namespace {

std::optional<Interval> scaled(const Interval& interval, const Scale& scale) {
  const auto least = apply(scale, interval.least), most = apply(scale, interval.most);
  if (!least || !most) return std::nullopt;
  return Interval{*least, *most};
}

bool meet(const Interval& left, const Interval& right) {
  return compare(left.least, right.most) <= 0 && compare(right.least, left.most) <= 0;
}

using Part = std::optional<Number> Figure::*;
constexpr std::array<Part, 3> parts{&Figure::nominal, &Figure::least, &Figure::most};

// What a printed number may stand for: half a last digit to either side; a whole one where a careful
// printer rounded a bound inward.
Interval may_stand_for(const Number& number, Part part) {
  Interval interval = rounding_interval(number);
  const Fraction value = exact(number);
  if (number.denominator != 1) return interval;
  if (part == &Figure::least) interval.least = {value.numerator - 1, value.denominator};
  if (part == &Figure::most) interval.most = {value.numerator + 1, value.denominator};
  return interval;
}

// Everything the figure may be: from its least to its most, each as rounded.
Interval hull(const Figure& figure) {
  const Number& least = figure.least ? *figure.least : figure.nominal ? *figure.nominal : *figure.most;
  const Number& most = figure.most ? *figure.most : figure.nominal ? *figure.nominal : *figure.least;
  return {rounding_interval(least).least, rounding_interval(most).most};
}

// The number that tells the figure's size.
const Number& leading(const Figure& figure) {
  return figure.nominal ? *figure.nominal : figure.most ? *figure.most : *figure.least;
}

// Two figures and the scale from the first one's unit to the second one's.
class Comparison {
 public:
  Comparison(const Figure& primary, const Figure& printed, const Fraction& factor = {1, 1})
      : primary_(primary), printed_(printed), scale_(scale_between(*primary.unit, *printed.unit)) {
    const auto scaled_factor = multiply(scale_.factor, factor);
    possible_ = scaled_factor.has_value();
    if (possible_) scale_.factor = *scaled_factor;
  }

  bool agrees() const {
    if (!possible_) return false;
    bool compared = false, agree = true;
    for (const Part part : parts) {
      if (!(primary_.*part) || !(printed_.*part)) continue;
      compared = true;
      agree = agree && meets(rounding_interval(*(primary_.*part)), may_stand_for(*(printed_.*part), part));
    }
    return compared ? agree : meets(hull(primary_), hull(printed_));
  }

 private:
  bool meets(const Interval& primary, const Interval& printed) const {
    const auto converted = scaled(primary, scale_);
    return converted && meet(*converted, printed);
  }

  const Figure& primary_;
  const Figure& printed_;
  Scale scale_;
  bool possible_ = false;
};

bool agree(const Figure& primary, const Figure& printed) { return Comparison(primary, printed).agrees(); }

Figure in_unit(Figure figure, const Unit& unit) {
  figure.unit = &unit;
  return figure;
}

bool same_numbers(const Figure& left, const Figure& right) {
  for (const Part part : parts) {
    if ((left.*part).has_value() != (right.*part).has_value()) return false;
    if ((left.*part) && compare(*(left.*part), *(right.*part)) != 0) return false;
  }
  return true;
}

// Whether the figures agree once two neighbouring digits of one number of `slipped` are exchanged.
template <typename Agree>
bool digits_swapped(const Figure& slipped, Agree agree_with) {
  for (const Part part : parts) {
    if (!(slipped.*part)) continue;
    for (std::int64_t power = 1; power <= max_digits / 100; power *= 10) {
      Figure candidate = slipped;
      std::int64_t& digits = (candidate.*part)->digits;
      const std::int64_t right = digits / power % 10, left = digits / power / 10 % 10;
      digits += (left - right) * power + (right - left) * power * 10;
      if (left != right && agree_with(candidate)) return true;
    }
  }
  return false;
}

struct FactorSlip {
  Slip slip;
  Fraction factor;
  std::string_view words;
};
// 1.356 and 9.81 as exactly as the unit table has them.
constexpr std::array<FactorSlip, 4> factor_slips{{
    {Slip::factor_10, {10, 1}, "a factor of 10: a slipped decimal"},
    {Slip::factor_12, {12, 1}, "a factor of 12, as between lbf·in and lbf·ft"},
    {Slip::factor_1_356,
     {3389544870828501, 2500000000000000},
     "a factor of 1.356, as between N·m and lbf·ft"},
    {Slip::factor_9_81, {196133, 20000}, "a factor of 9.81, as between N·m and kgf·m"},
}};

struct Explanation {
  Slip slip;
  std::string words;
};

// How many times too large the printed number is, for choosing between factors that both would do.
double ratio_of(const Figure& primary, const Figure& printed) {
  const BaseBand is = base_band({Form::nominal, leading(printed), {}, {}, {}, printed.unit});
  const BaseBand should_be = base_band({Form::nominal, leading(primary), {}, {}, {}, primary.unit});
  return std::abs(std::log(is.least / should_be.least));
}

std::optional<Explanation> by_factor(const Figure& primary, const Figure& printed) {
  const FactorSlip* best = nullptr;
  double nearest = std::numeric_limits<double>::infinity();
  for (const FactorSlip& entry : factor_slips) {
    const Fraction inverse{static_cast<Int128>(entry.factor.denominator),
                           static_cast<UInt128>(entry.factor.numerator)};
    if (!Comparison(primary, printed, entry.factor).agrees() &&
        !Comparison(primary, printed, inverse).agrees())
      continue;
    const double size =
        static_cast<double>(entry.factor.numerator) / static_cast<double>(entry.factor.denominator);
    const double distance = std::abs(ratio_of(primary, printed) - std::log(size));
    if (best == nullptr || distance < nearest) {
      best = &entry;
      nearest = distance;
    }
  }
  if (best == nullptr) return std::nullopt;
  return Explanation{best->slip, "the two differ by " + std::string(best->words)};
}

std::optional<Explanation> by_other_unit(const Figure& primary, const Figure& printed) {
  for (const Unit& unit : units_of(printed.unit->dimension)) {
    if (&unit == printed.unit || !agree(primary, in_unit(printed, unit))) continue;
    return Explanation{Slip::other_unit, "the printed number is right in " + std::string(unit.symbol)};
  }
  return std::nullopt;
}

Explanation explain(const Figure& primary, const Figure& printed) {
  if (same_numbers(primary, printed))
    return {Slip::not_converted, "the same number was printed in both units"};
  if (auto factor = by_factor(primary, printed)) return *factor;
  if (digits_swapped(printed, [&](const Figure& figure) { return agree(primary, figure); }) ||
      digits_swapped(primary, [&](const Figure& figure) { return agree(figure, printed); })) {
    return {Slip::swapped_digits, "two digits were swapped"};
  }
  if (agree(in_unit(primary, *printed.unit), in_unit(printed, *primary.unit))) {
    return {Slip::wrong_way, "it was converted the wrong way round"};
  }
  if (auto unit = by_other_unit(primary, printed)) return *unit;
  return {Slip::unexplained, "no usual slip explains it"};
}

}  // namespace

PairVerdict compare_printed(const Figure& primary, const Figure& printed) {
  const auto converted = convert(primary, *printed.unit);
  if (primary.unit->dimension != printed.unit->dimension) {
    return {false, Slip::unexplained, converted.failure().message};
  }
  if (agree(primary, printed)) return {true, Slip::none, {}};
  const Explanation explanation = explain(primary, printed);
  const std::string right = converted ? " is " + to_text(converted->figure) + ", not " : " is not ";
  return {false, explanation.slip, to_text(primary) + right + to_text(printed) + ": " + explanation.words};
}

}  // namespace sheaf
