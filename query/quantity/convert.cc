// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/convert.h"

#include <algorithm>
#include <string>

#include "query/quantity/arithmetic.h"
#include "query/quantity/scale.h"

namespace sheaf {
namespace {

constexpr std::int64_t three_digits = 100;  // the smallest number of three digits
constexpr int places_of_fraction = 3;       // 5/16 in is taken to a thousandth of an inch

// The decimal places to which the source states a number.
int stated_places(const Number& number) {
  return number.denominator == 1 ? number.places : places_of_fraction;
}

int stated_places(const Figure& figure) {
  int places = 0;
  const bool bounds_written = figure.form != Form::per_cent && figure.form != Form::plus_minus_uneven;
  if (figure.nominal) places = stated_places(*figure.nominal);
  if (bounds_written && figure.least) places = std::max(places, stated_places(*figure.least));
  if (bounds_written && figure.most) places = std::max(places, stated_places(*figure.most));
  return places;
}

// 6000 km and 12 months are round numbers: their zeros are not measured digits.
bool is_interval(const Figure& figure) {
  const Dimension dimension = figure.unit->dimension;
  return dimension == Dimension::distance || dimension == Dimension::time;
}

bool is_round_interval(const Figure& figure) {
  return is_interval(figure) && figure.nominal && figure.nominal->denominator == 1 &&
         figure.nominal->places == 0 && figure.nominal->digits % 100 == 0;
}

bool has_fraction(const Figure& figure) {
  for (const auto& number : {figure.nominal, figure.least, figure.most}) {
    if (number && number->denominator != 1) return true;
  }
  return false;
}

// The exact values of a figure in the other unit.
struct ExactFigure {
  std::optional<Fraction> nominal, least, most;

  // The one whose size decides how many digits are shown.
  const Fraction& leading() const { return nominal ? *nominal : most ? *most : *least; }
};

std::optional<ExactFigure> exact_in(const Figure& figure, const Scale& scale) {
  ExactFigure result;
  for (const auto& [number, value] :
       {std::pair{&figure.nominal, &result.nominal}, std::pair{&figure.least, &result.least},
        std::pair{&figure.most, &result.most}}) {
    if (!*number) continue;
    *value = apply(scale, exact(**number));
    if (!*value) return std::nullopt;
  }
  return result;
}

// Every part of the figure at so many places: the nominal to nearest, the bounds inward.
struct RoundedFigure {
  std::optional<Rounded> nominal, least, most;

  bool exact() const {
    return (!nominal || nominal->exact) && (!least || least->exact) && (!most || most->exact);
  }
  bool band_is_lost() const { return least && most && compare(least->number, most->number) >= 0; }
  // Rounded to nearest, a nominal that is its own bound may step over it; it steps back.
  void keep_nominal_inside() {
    if (nominal && least && compare(nominal->number, least->number) < 0) nominal = least;
    if (nominal && most && compare(nominal->number, most->number) > 0) nominal = most;
  }
  // Drops zeros that say nothing, down to the places that the source's own digits earn.
  void trim(int fewest) {
    while (trim_one(fewest)) {
    }
  }

 private:
  bool trim_one(int fewest) {
    std::optional<Rounded>* const parts[] = {&nominal, &least, &most};
    for (const auto* part : parts) {
      if (*part && ((*part)->number.places <= fewest || (*part)->number.digits % 10 != 0)) return false;
    }
    for (auto* part : parts) {
      if (!*part) continue;
      (*part)->number.digits /= 10;
      --(*part)->number.places;
    }
    return true;
  }
};

std::optional<RoundedFigure> rounded_to(const ExactFigure& value, int places) {
  RoundedFigure result;
  if (value.nominal) result.nominal = round_to(*value.nominal, places, Rounding::nearest);
  if (value.least) result.least = round_to(*value.least, places, Rounding::up);
  if (value.most) result.most = round_to(*value.most, places, Rounding::down);
  const bool fits =
      (!value.nominal || result.nominal) && (!value.least || result.least) && (!value.most || result.most);
  if (!fits) return std::nullopt;
  return result;
}

// The fewest places, from so many up, that show three digits of the value.
int places_for_three_digits(const Fraction& value, int fewest) {
  for (int places = fewest; places < max_places; ++places) {
    const auto rounded = round_to(value, places, Rounding::nearest);
    if (!rounded || (rounded->exact && rounded->number.digits == 0)) return fewest;
    if (rounded->number.digits >= three_digits || rounded->number.digits <= -three_digits) return places;
  }
  return fewest;
}

// At so many places every figure would fall right between two steps, and half of them not come back.
bool shifts_by_half_a_step(const Scale& scale, int places) {
  if (scale.shift.numerator == 0 || places >= max_places) return false;
  const auto shift = round_to(scale.shift, places + 1, Rounding::nearest);
  return shift && shift->exact && shift->number.digits % 10 != 0 && shift->number.digits % 5 == 0;
}

// The fewest places at which a step is no more than a step of the source.
int earned_places(const Figure& figure, const Scale& scale) {
  if (is_round_interval(figure)) return 0;
  const int places = std::max(0, stated_places(figure) + scale.places);
  return shifts_by_half_a_step(scale, places) ? places + 1 : places;  // 7.9 °C is 281.05 K
}

// The places of an exact result that zeros may fill: as many as the nearest power of ten to a step of the
// source; none where the source is a fraction or a round interval.
int zero_places(const Figure& figure, const Scale& scale) {
  if (is_interval(figure) || has_fraction(figure)) return 0;
  return std::max(0, stated_places(figure) + scale.nearest_places);
}

// With so many places, and more only where a narrow band would be lost between two steps.
std::optional<RoundedFigure> round_inward(const ExactFigure& value, int first) {
  for (int places = first; places <= max_places; ++places) {
    auto rounded = rounded_to(value, places);
    if (!rounded) return std::nullopt;
    if (rounded->band_is_lost()) continue;
    rounded->keep_nominal_inside();
    return rounded;
  }
  return std::nullopt;
}

Failure does_not_fit(const Unit& unit) {
  return {"the figure has too many digits to be shown in " + std::string(unit.symbol)};
}

// A form whose numbers all came out exactly is kept; otherwise the band is given by its ends.
Form converted_form(const Figure& source, const Scale& scale, bool all_exact) {
  switch (source.form) {
    case Form::plus_minus:
    case Form::plus_minus_uneven:
      return all_exact ? source.form : Form::range;
    case Form::per_cent:
      return all_exact && scale.shift.numerator == 0 ? source.form : Form::range;
    default:
      return source.form;
  }
}

template <typename T>
std::optional<Number> number_of(const std::optional<T>& rounded) {
  return rounded ? std::optional(rounded->number) : std::nullopt;
}

}  // namespace

Result<Converted> convert(const Figure& figure, const Unit& unit) {
  if (figure.unit->dimension != unit.dimension) {
    return Failure{std::string(figure.unit->symbol) + " is " + with_article(figure.unit->dimension) + ", " +
                   std::string(unit.symbol) + " is " + with_article(unit.dimension)};
  }
  if (figure.unit == &unit) return Converted{figure, true};
  const Scale& scale = scale_between(*figure.unit, unit);
  const auto value = exact_in(figure, scale);
  if (!value) return does_not_fit(unit);

  auto rounded =
      round_inward(*value, places_for_three_digits(value->leading(), earned_places(figure, scale)));
  if (!rounded) return does_not_fit(unit);
  if (rounded->exact()) rounded->trim(zero_places(figure, scale));

  Converted result;
  result.exact = rounded->exact() && scale.exact;
  result.figure.unit = &unit;
  result.figure.nominal = number_of(rounded->nominal);
  result.figure.least = number_of(rounded->least);
  result.figure.most = number_of(rounded->most);
  result.figure.form = converted_form(figure, scale, rounded->exact());
  if (result.figure.form == Form::per_cent) result.figure.spread = figure.spread;
  if (result.figure.form == Form::plus_minus) {
    result.figure.spread = subtract(*result.figure.most, *result.figure.nominal);
  }
  return result;
}

int places_in(const Figure& figure, const Unit& unit) {
  const Scale& scale = scale_between(*figure.unit, unit);
  const int fewest = earned_places(figure, scale);
  const auto value = exact_in(figure, scale);
  return value ? places_for_three_digits(value->leading(), fewest) : fewest;
}

std::optional<Number> convert_to_places(const Quantity& quantity, const Unit& unit, int places) {
  const auto value = apply(scale_between(*quantity.unit, unit), exact(quantity.value));
  const auto rounded = value ? round_to(*value, places, Rounding::nearest) : std::nullopt;
  return number_of(rounded);
}

std::vector<const Unit*> useful_units(const Unit& unit) {
  std::vector<const Unit*> useful;
  for (const Unit& other : units_of(unit.dimension)) {
    const bool same_size = compare(scale_between(unit, other).factor, Fraction{1, 1}) == 0 &&
                           scale_between(unit, other).shift.numerator == 0;
    if (other.workshop && !same_size) useful.push_back(&other);
  }
  return useful;
}

}  // namespace sheaf
