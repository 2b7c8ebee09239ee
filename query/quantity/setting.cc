// SPDX-License-Identifier: GPL-2.0-or-later
// The value to set on a scale: whole steps inside the band, as near to the nominal as they come.
#include <algorithm>

#include "query/quantity/convert.h"
#include "query/quantity/scale.h"

namespace sheaf {
namespace {

// What a scale is searched for, in steps of it: the least and the most allowed, and where to aim.
struct Target {
  std::optional<Fraction> least, most, aim;
};

Failure does_not_fit() { return {"the figure has too many digits to be set on a scale"}; }

std::optional<Fraction> middle(const Fraction& least, const Fraction& most) {
  const auto sum = add(least, most);
  return sum ? multiply(*sum, Fraction{1, 2}) : std::nullopt;
}

std::optional<Fraction> in_steps(const Fraction& value, const Scale& scale, const Number& step) {
  const auto converted = apply(scale, value);
  const Fraction size = exact(step);
  return converted ? multiply(*converted,
                              {static_cast<Int128>(size.denominator), static_cast<UInt128>(size.numerator)})
                   : std::nullopt;
}

// The band is the one stated; without one, all that rounds to the figure as written.
std::optional<Target> target_of(const Figure& figure, const Scale& scale, const Number& step) {
  std::optional<Fraction> least, most, aim;
  if (figure.least) least = exact(*figure.least);
  if (figure.most) most = exact(*figure.most);
  if (figure.nominal) aim = exact(*figure.nominal);
  if (!least && !most) {
    const Interval band = rounding_interval(*figure.nominal);
    least = band.least;
    most = band.most;
  }
  if (!aim) aim = least && most ? middle(*least, *most) : least ? least : most;
  if (!aim) return std::nullopt;
  Target target;
  for (const auto& [value, steps] :
       {std::pair{&least, &target.least}, std::pair{&most, &target.most}, std::pair{&aim, &target.aim}}) {
    if (!*value) continue;
    *steps = in_steps(**value, scale, step);
    if (!*steps) return std::nullopt;
  }
  return target;
}

// So many whole steps of the scale.
struct Steps {
  std::int64_t count = 0;
  bool inside = false;
};

std::optional<Steps> nearest_inside(const Target& target) {
  std::int64_t least = -max_digits, most = max_digits;
  const auto set = [](const std::optional<Fraction>& value, Rounding rounding, std::int64_t& steps) {
    if (!value) return true;
    const auto rounded = round_to(*value, 0, rounding);
    if (rounded) steps = rounded->number.digits;
    return rounded.has_value();
  };
  std::int64_t aim = 0;
  if (!set(target.aim, Rounding::nearest, aim) || !set(target.least, Rounding::up, least) ||
      !set(target.most, Rounding::down, most)) {
    return std::nullopt;
  }
  const bool inside = least <= most;
  return Steps{inside ? std::clamp(aim, least, most) : aim, inside};
}

std::optional<Number> times(const Number& step, std::int64_t count) {
  Number value = step;
  if (__builtin_mul_overflow(count, step.digits, &value.digits)) return std::nullopt;
  if (value.digits <= -max_digits || value.digits >= max_digits) return std::nullopt;
  return value;
}

}  // namespace

Result<Setting> set_on_scale(const Figure& figure, const Unit& unit, const Number& step) {
  if (figure.unit->dimension != unit.dimension) return convert(figure, unit).failure();
  if (step.digits <= 0) return Failure{"the step of a scale is more than nothing"};
  const auto target = target_of(figure, scale_between(*figure.unit, unit), step);
  const auto steps = target ? nearest_inside(*target) : std::nullopt;
  const auto value = steps ? times(step, steps->count) : std::nullopt;
  if (!value) return does_not_fit();
  return Setting{*value, steps->inside, figure.least || figure.most};
}

}  // namespace sheaf
