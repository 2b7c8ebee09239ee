// SPDX-License-Identifier: GPL-2.0-or-later
// The units of the workshop, declared once (unit_table.h): spelling, size, dimension and source.
//
//   unit_from("ft-lb")                        // lbf·ft
//   unit_from("nm", Dimension::torque)        // N·m
//   unit_from("gal")                          // Failure: "gal" may be US gal or imp gal
//   unit_from("mm", Dimension::torque)        // Failure: "mm" is a length; a torque is meant: N·m, ...
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/result.h"

namespace sheaf {

// What a quantity measures. Two dimensions never mix, even where SI gives them the same base
// units: torque is not energy, a temperature is not a temperature difference.
// clang-format off
enum class Dimension : std::uint8_t {
  torque, length, area, volume, mass, force, pressure, stress, temperature, temperature_difference,
  kinematic_viscosity, dynamic_viscosity, saybolt_viscosity, spring_rate, rotation_speed, speed,
  angle, clicks, energy, power, time, distance, ratio, voltage, current, resistance, density,
};
// clang-format on

// "torque", "kinematic viscosity": the dimension in words, as messages and the JSON name it.
std::string_view name_of(Dimension dimension);
// "a torque", "an angle".
std::string with_article(Dimension dimension);
// The unit that factors lead to: "N·m", "m", "°" (a degree is no rational number of radians).
std::string_view base_of(Dimension dimension);

struct Rational {
  std::int64_t numerator = 1;
  std::int64_t denominator = 1;
};

// base value = value · factor + offset, in the dimension's base unit. Exact where `exact`.
struct Unit {
  std::string_view symbol;  // as shown: "N·m", "US fl oz"
  std::string_view name;    // "newton metre"
  Dimension dimension;
  Rational factor;
  Rational offset{0, 1};  // not 0 for °C and °F only
  bool exact = true;
  bool workshop = false;            // among the units that a bare `convert` answers with
  std::string_view source = {};     // who defines the factor
  std::string_view spellings = {};  // further ones, separated by '|'
  std::string_view singular = {};   // "turn" beside "turns"; empty where the symbol never changes
};

std::span<const Unit> all_units();
std::span<const Unit> units_of(Dimension dimension);

// Every spelling that reads as this unit, the shown symbol first.
std::vector<std::string_view> spellings_of(const Unit& unit);

// Every unit the spelling may mean, in table order; none if unknown, several if ambiguous ("lb",
// "oz", "gal"). With a dimension, only the readings of that dimension ("nm" for torque is N·m). One
// unit that serves two dimensions (psi, km) counts once.
std::vector<const Unit*> readings(std::string_view spelling, std::optional<Dimension> dimension = {});

// The one unit meant, or a Failure that names the choices, or the units of that dimension.
Result<const Unit*> unit_from(std::string_view spelling, std::optional<Dimension> dimension = {});

}  // namespace sheaf
