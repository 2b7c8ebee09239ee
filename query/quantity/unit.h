// SPDX-License-Identifier: GPL-2.0-or-later
// The units of the workshop, declared once (unit_table.cc): spelling, size, dimension and source.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "query/quantity/result.h"

namespace sheaf {

// What a quantity measures. Two dimensions never mix, even where SI gives them the same base
// units: torque is not energy, a temperature is not a temperature difference.
enum class Dimension : std::uint8_t {
  torque, length, area, volume, mass, force, pressure, stress, temperature, temperature_difference,
  kinematic_viscosity, dynamic_viscosity, saybolt_viscosity, spring_rate, rotation_speed, speed,
  angle, clicks, energy, power, time, distance, ratio, voltage, current, resistance, density,
};

// "torque", "kinematic viscosity": the dimension in words, as messages and the JSON name it.
std::string_view name_of(Dimension dimension);

struct Rational {
  std::int64_t numerator = 1;
  std::int64_t denominator = 1;
};

// base value = value · factor + offset, in the dimension's SI unit. Exact where `exact`.
struct Unit {
  std::string_view symbol;   // as shown: "N·m", "US fl oz"
  std::string_view name;     // "newton metre"
  Dimension dimension;
  Rational factor;
  Rational offset{0, 1};     // not 0 for °C and °F only
  bool exact = true;
  bool workshop = false;     // among the units that a bare `convert` answers with
  std::string_view source;   // who defines the factor
};

std::span<const Unit> all_units();
// Every spelling that reads as this unit, the shown symbol first.
std::vector<std::string_view> spellings_of(const Unit& unit);

// Every unit the spelling may mean, in table order; none if unknown, several if ambiguous ("lb",
// "oz", "gal"). With a dimension, only the readings of that dimension ("nm" for torque is N·m).
std::vector<const Unit*> readings(std::string_view spelling, std::optional<Dimension> dimension = {});

// The one unit meant, or a Failure that names the choices, or the units of that dimension.
Result<const Unit*> unit_from(std::string_view spelling, std::optional<Dimension> dimension = {});

}  // namespace sheaf
