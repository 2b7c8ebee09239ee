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

Failure does_not_fit() { return {"the figure has too many digits to be set on a scale", 0, 0}; }

std::optional<Fraction> middle(const Fraction& least, const Fraction& most) {
  const auto sum = add(least, most);
  return sum ? multiply(*sum, Fraction{1, 2}) : std::nullopt;
}

std::optional<Fraction> in_steps(const Fraction& value, const Scale& scale, const Number& step) {
  const auto converted = apply(scale, value);
  const Fraction size = exact(step);
  return converted ? multiply(*converted, {static_cast<Int128>(size.denominator), static_cast<UInt128>(size.numerator)})
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
  for (const auto& [value, steps] : {std::pair{&least, &target.least}, std::pair{&most, &target.most},
                                     std::pair{&aim, &target.aim}}) {
    if (!*value) continue;
    *steps = in_steps(**value, scale, step);
    if (!*steps) return std::nullopt;
  }
  return target;
}

std::optional<Number> steps_to_number(std::int64_t steps, const Number& step) {
  Number value = step;
  if (__builtin_mul_overflow(steps, step.digits, &value.digits)) return std::nullopt;
  if (value.digits <= -max_digits || value.digits >= max_digits) return std::nullopt;
  return value;
}

}  // namespace

Result<Setting> set_on_scale(const Figure& figure, const Unit& unit, const Number& step) {
  if (figure.unit->dimension != unit.dimension) return convert(figure, unit).failure();
  if (step.digits <= 0) return Failure{"the step of a scale is more than nothing", 0, 0};
  const auto target = target_of(figure, scale_between(*figure.unit, unit), step);
  if (!target) return does_not_fit();
  const auto aim = round_to(*target->aim, 0, Rounding::nearest);
  const auto least = target->least ? round_to(*target->least, 0, Rounding::up) : std::nullopt;
  const auto most = target->most ? round_to(*target->most, 0, Rounding::down) : std::nullopt;
  if (!aim || (target->least && !least) || (target->most && !most)) return does_not_fit();

  std::int64_t steps = aim->number.digits;
  const bool inside = !least || !most || least->number.digits <= most->number.digits;
  if (inside && least) steps = std::max(steps, least->number.digits);
  if (inside && most) steps = std::min(steps, most->number.digits);
  const auto value = steps_to_number(steps, step);
  if (!value) return does_not_fit();
  return Setting{*value, inside, figure.least || figure.most};
}

}  // namespace sheaf
