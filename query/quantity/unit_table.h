// SPDX-License-Identifier: GPL-2.0-or-later
// Every unit, declared once. Parsing, printing, conversion, help and the manual all read this table;
// nobody else includes it: all_units() hands it out.
//
// One row is: symbol, name, dimension, factor and offset to the dimension's base unit, exact, workshop,
// source of the factor, other spellings, singular. Spellings are compared without regard to case and to
// the marks between unit parts (space . - * · ^), so "ft lb" also stands for "ft-lb", "FT.LB" and "ftlb".
// A spelling on several rows with different symbols is ambiguous, on purpose. Rows of one dimension stand
// together, and a dimension that claims a spelling first has it where no dimension is asked for.
#pragma once

#include "query/quantity/unit.h"

namespace sheaf {
namespace table {

using enum Dimension;
inline constexpr Rational zero{0, 1};
inline constexpr bool exact = true, rounded = false;
inline constexpr bool workshop = true, seldom = false;

// Where the factors come from. The rational numbers are recomputed from these definitions in the tests.
inline constexpr std::string_view si = "SI brochure, 9th edition (BIPM, 2019)";
inline constexpr std::string_view accepted = "SI brochure, 9th edition (BIPM, 2019), table 8";
inline constexpr std::string_view inch_pound =
    "1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly (1959); 1 kgf = 9.80665 N exactly (3rd CGPM, 1901); "
    "NIST SP 811 (2008), B.8";
inline constexpr std::string_view kilogram_force =
    "standard gravity 9.80665 m/s² exactly (3rd CGPM, 1901); NIST SP 811 (2008), B.8";
inline constexpr std::string_view us_volume = "1 US gal = 231 in³ exactly; NIST SP 811 (2008), B.8";
inline constexpr std::string_view imperial_volume =
    "1 imp gal = 4.54609 L exactly; UK Weights and Measures Act 1985; NIST SP 811 (2008), B.8";
inline constexpr std::string_view celsius = "T/K = t/°C + 273.15 exactly; NIST SP 811 (2008), B.8";
inline constexpr std::string_view fahrenheit = "T/K = (t/°F + 459.67) / 1.8 exactly; NIST SP 811 (2008), B.8";
inline constexpr std::string_view mercury =
    "conventional mercury of 13 595.1 kg/m³ under standard gravity; NIST SP 811 (2008), B.8 to seven digits";
inline constexpr std::string_view cgs = "NIST SP 811 (2008), B.8, exact";
inline constexpr std::string_view d2161 = "no factor: ASTM D2161, see saybolt.h";
inline constexpr std::string_view calendar = "mean Gregorian year of 365.2425 days, a month its twelfth";
inline constexpr std::string_view by_count = "counted";

// One row a unit, however long.
// clang-format off
inline constexpr Unit units[] = {
    // torque, in N·m
    {"N·m", "newton metre", torque, {1, 1}, zero, exact, workshop, si, "newton meter|newton meters|newton metres"},
    {"lbf·ft", "pound-force foot", torque, {3389544870828501, 2500000000000000}, zero, exact, workshop, inch_pound,
     "ft lb|ft lbs|lb ft|lbs ft|ft lbf|ft/lb|ft/lbs|lb/ft|foot pound|foot pounds|pound foot|pound feet|pounds feet|pounds foot|"
     "foot lb|foot lbs|feet lbs|foot pound force"},
    {"lbf·in", "pound-force inch", torque, {1129848290276167, 10000000000000000}, zero, exact, workshop, inch_pound,
     "in lb|in lbs|lb inch|lbs inch|lb in|lbs in|in lbf|in/lb|in/lbs|inch pound|inch pounds|pound inch|pound inches|inch lb|inch lbs|"
     "inch pound force"},
    {"kgf·m", "kilogram-force metre", torque, {196133, 20000}, zero, exact, workshop, kilogram_force,
     "kg m|m kg|m kgf|m kp|kp m|kilogram metre|kilogram meter|kilopond metre|kilopond meter"},
    {"ozf·in", "ounce-force inch", torque, {1129848290276167, 160000000000000000}, zero, exact, seldom, inch_pound,
     "oz in|in oz|in ozf|ounce inch|ounce inches|inch ounce|inch ounces"},
    {"cN·m", "centinewton metre", torque, {1, 100}, zero, exact, seldom, si, "centinewton meter"},
    {"daN·m", "decanewton metre", torque, {10, 1}, zero, exact, seldom, si, "m daN|decanewton meter"},
    {"kN·m", "kilonewton metre", torque, {1000, 1}, zero, exact, seldom, si, "kilonewton meter"},
    {"kgf·cm", "kilogram-force centimetre", torque, {196133, 2000000}, zero, exact, seldom, kilogram_force,
     "kg cm|cm kg|cm kgf|kp cm"},

    // distance, in m: the way ridden, as of service intervals. Before length, so that a bare "km" is one.
    {"km", "kilometre", distance, {1000, 1}, zero, exact, workshop, si, "kilometer|kilometers|kilometres|kms"},
    {"mi", "mile", distance, {201168, 125}, zero, exact, workshop, inch_pound, "miles"},

    // length, in m
    {"mm", "millimetre", length, {1, 1000}, zero, exact, workshop, si, "millimeter|millimeters|millimetres|mil|mill"},
    {"in", "inch", length, {127, 5000}, zero, exact, workshop, inch_pound, "inches|\""},
    {"thou", "thousandth of an inch", length, {127, 5000000}, zero, exact, workshop, inch_pound,
     "mil|mils|thous|thousandth|thousandths"},
    {"µm", "micrometre", length, {1, 1000000}, zero, exact, seldom, si, "micrometer|micron|microns"},
    {"cm", "centimetre", length, {1, 100}, zero, exact, seldom, si, "centimeter|centimeters|centimetres"},
    {"m", "metre", length, {1, 1}, zero, exact, seldom, si, "meter|meters|metres"},
    {"ft", "foot", length, {381, 1250}, zero, exact, seldom, inch_pound, "feet|'"},
    {"yd", "yard", length, {1143, 1250}, zero, exact, seldom, inch_pound, "yards|yds"},
    {"km", "kilometre", length, {1000, 1}, zero, exact, seldom, si, "kilometer|kilometers|kilometres|kms"},
    {"mi", "mile", length, {201168, 125}, zero, exact, seldom, inch_pound, "miles"},

    // area, in m²
    {"mm²", "square millimetre", area, {1, 1000000}, zero, exact, workshop, si, "sq mm|square millimeter"},
    {"cm²", "square centimetre", area, {1, 10000}, zero, exact, workshop, si, "sq cm|square centimeter"},
    {"in²", "square inch", area, {16129, 25000000}, zero, exact, workshop, inch_pound, "sq in|square inches"},
    {"ft²", "square foot", area, {145161, 1562500}, zero, exact, seldom, inch_pound, "sq ft|square feet"},

    // volume, in m³
    {"mL", "millilitre", volume, {1, 1000000}, zero, exact, workshop, accepted,
     "milliliter|milliliters|millilitres|mls"},
    {"L", "litre", volume, {1, 1000}, zero, exact, workshop, accepted, "liter|liters|litres|ltr"},
    {"US fl oz", "US fluid ounce", volume, {473176473, 16000000000000}, zero, exact, workshop, us_volume,
     "fl oz|fluid ounce|fluid ounces|oz|ounce|ounces|fl oz US|US fluid ounces|US oz|US ounce|US ounces|US fluid oz"},
    {"imp fl oz", "imperial fluid ounce", volume, {454609, 16000000000}, zero, exact, workshop, imperial_volume,
     "fl oz|fluid ounce|fluid ounces|oz|ounce|ounces|fl oz imp|imperial fluid ounces|imp oz|UK fl oz|UK oz|"
     "imperial fl oz|UK fluid ounce|UK fluid ounces"},
    {"cc", "cubic centimetre", volume, {1, 1000000}, zero, exact, seldom, si,
     "ccm|ccs|cm3|cubic centimeter|cubic centimeters|cubic centimetres"},
    {"cL", "centilitre", volume, {1, 100000}, zero, exact, seldom, accepted, "centiliter|centilitres"},
    {"dL", "decilitre", volume, {1, 10000}, zero, exact, seldom, accepted, "deciliter|decilitres"},
    {"in³", "cubic inch", volume, {2048383, 125000000000}, zero, exact, seldom, inch_pound,
     "cu in|cubic inches|ci|cui"},
    {"US pt", "US liquid pint", volume, {473176473, 1000000000000}, zero, exact, seldom, us_volume,
     "pt|pint|pints|pts|US pint|US pints|US pts|pt US"},
    {"US qt", "US liquid quart", volume, {473176473, 500000000000}, zero, exact, seldom, us_volume,
     "qt|quart|quarts|qts|US quart|US quarts|US qts|qt US"},
    {"US gal", "US gallon", volume, {473176473, 125000000000}, zero, exact, seldom, us_volume,
     "gal|gallon|gallons|gals|US gallons|US gals|gal US"},
    {"imp pt", "imperial pint", volume, {454609, 800000000}, zero, exact, seldom, imperial_volume,
     "pt|pint|pints|pts|imp pint|imp pints|imperial pints|UK pint|UK pints|UK pt|pt imp"},
    {"imp qt", "imperial quart", volume, {454609, 400000000}, zero, exact, seldom, imperial_volume,
     "qt|quart|quarts|qts|imp quart|imp quarts|imperial quarts|UK quart|UK quarts|UK qt|qt imp"},
    {"imp gal", "imperial gallon", volume, {454609, 100000000}, zero, exact, seldom, imperial_volume,
     "gal|gallon|gallons|gals|imperial gallons|imp gallon|imp gallons|UK gallon|UK gallons|UK gal|gal imp"},

    // mass, in kg
    {"g", "gram", mass, {1, 1000}, zero, exact, workshop, si, "grams|gramme|grammes|gm|gms"},
    {"kg", "kilogram", mass, {1, 1}, zero, exact, workshop, si, "kilograms|kilo|kilos|kgs"},
    {"oz", "ounce (avoirdupois)", mass, {45359237, 1600000000}, zero, exact, workshop, inch_pound,
     "ounce|ounces|oz av|oz mass"},
    {"lb", "pound (avoirdupois)", mass, {45359237, 100000000}, zero, exact, workshop, inch_pound,
     "lbs|pound|pounds|lb mass|lbm"},
    {"mg", "milligram", mass, {1, 1000000}, zero, exact, seldom, si, "milligrams"},
    {"t", "tonne", mass, {1000, 1}, zero, exact, seldom, accepted, "tonnes"},

    // force, in N
    {"N", "newton", force, {1, 1}, zero, exact, workshop, si, "newtons"},
    {"kgf", "kilogram-force", force, {196133, 20000}, zero, exact, workshop, kilogram_force, "kp|kilopond|kg force"},
    {"lbf", "pound-force", force, {8896443230521, 2000000000000}, zero, exact, workshop, inch_pound,
     "lb|lbs|pound|pounds|lb force|lbs force|pounds force"},
    {"kN", "kilonewton", force, {1000, 1}, zero, exact, seldom, si, "kilonewtons"},
    {"daN", "decanewton", force, {10, 1}, zero, exact, seldom, si, "decanewtons"},
    {"ozf", "ounce-force", force, {8896443230521, 32000000000000}, zero, exact, seldom, inch_pound,
     "oz force|ounces force"},
    {"kip", "thousand pounds-force", force, {8896443230521, 2000000000}, zero, exact, seldom, inch_pound, "kips"},

    // pressure, in Pa
    {"bar", "bar", pressure, {100000, 1}, zero, exact, workshop, accepted, "bars"},
    {"kPa", "kilopascal", pressure, {1000, 1}, zero, exact, workshop, si, "kilopascals"},
    {"psi", "pound-force per square inch", pressure, {8896443230521, 1290320000}, zero, exact, workshop, inch_pound,
     "p.s.i.|lbf/in2|lb/in2|lbs/in2|lb/sq in|lbs/sq in|pounds per square inch"},
    {"MPa", "megapascal", pressure, {1000000, 1}, zero, exact, seldom, si, "megapascals"},
    {"N/mm²", "newton per square millimetre", pressure, {1000000, 1}, zero, exact, seldom, si, "N/sq mm"},
    {"kgf/cm²", "kilogram-force per square centimetre", pressure, {196133, 2}, zero, exact, seldom, kilogram_force,
     "kg/cm2|kp/cm2|kg/sq cm|technical atmosphere"},
    {"Pa", "pascal", pressure, {1, 1}, zero, exact, seldom, si, "pascals"},
    {"mbar", "millibar", pressure, {100, 1}, zero, exact, seldom, accepted, "millibars"},
    {"ksi", "thousand pounds-force per square inch", pressure, {8896443230521, 1290320}, zero, exact, seldom,
     inch_pound, "kpsi|kip/in2"},
    {"atm", "standard atmosphere", pressure, {101325, 1}, zero, exact, seldom, cgs, "atmosphere|atmospheres"},
    {"mmHg", "conventional millimetre of mercury", pressure, {26664477483, 200000000}, zero, exact, seldom, mercury,
     "millimetres of mercury"},
    {"inHg", "conventional inch of mercury", pressure, {3386388640341, 1000000000}, zero, exact, seldom, mercury,
     "inches of mercury|\"Hg"},

    // stress, in Pa: the strength of a material, as of property classes
    {"MPa", "megapascal", stress, {1000000, 1}, zero, exact, workshop, si, "megapascals"},
    {"N/mm²", "newton per square millimetre", stress, {1000000, 1}, zero, exact, workshop, si, "N/sq mm"},
    {"psi", "pound-force per square inch", stress, {8896443230521, 1290320000}, zero, exact, seldom, inch_pound,
     "p.s.i.|lbf/in2|lb/in2|lbs/in2|lb/sq in|lbs/sq in|pounds per square inch"},
    {"ksi", "thousand pounds-force per square inch", stress, {8896443230521, 1290320}, zero, exact, workshop,
     inch_pound, "kpsi|kip/in2"},

    // temperature, in K
    {"°C", "degree Celsius", temperature, {1, 1}, {5463, 20}, exact, workshop, celsius,
     "C|celsius|centigrade|deg C|degree C|degrees C|degrees celsius"},
    {"°F", "degree Fahrenheit", temperature, {5, 9}, {45967, 180}, exact, workshop, fahrenheit,
     "F|fahrenheit|deg F|degree F|degrees F|degrees fahrenheit"},
    {"K", "kelvin", temperature, {1, 1}, zero, exact, seldom, si, "kelvins"},
    {"°R", "degree Rankine", temperature, {5, 9}, zero, exact, seldom, fahrenheit, "rankine|deg R|degrees rankine"},

    // temperature difference, in K: how much warmer, never how warm
    {"K", "kelvin", temperature_difference, {1, 1}, zero, exact, workshop, si, "kelvins"},
    {"°C", "degree Celsius", temperature_difference, {1, 1}, zero, exact, workshop, celsius,
     "C|celsius|centigrade|deg C|degree C|degrees C|degrees celsius"},
    {"°F", "degree Fahrenheit", temperature_difference, {5, 9}, zero, exact, workshop, fahrenheit,
     "F|fahrenheit|deg F|degree F|degrees F|degrees fahrenheit"},

    // kinematic viscosity, in m²/s
    {"mm²/s", "square millimetre per second", kinematic_viscosity, {1, 1000000}, zero, exact, workshop, si,
     "mm2/sec|sq mm/s"},
    {"cSt", "centistokes", kinematic_viscosity, {1, 1000000}, zero, exact, seldom, cgs, "centistoke"},
    {"St", "stokes", kinematic_viscosity, {1, 10000}, zero, exact, seldom, cgs, "stoke"},

    // dynamic viscosity, in Pa·s
    {"mPa·s", "millipascal second", dynamic_viscosity, {1, 1000}, zero, exact, workshop, si, "millipascal seconds"},
    {"cP", "centipoise", dynamic_viscosity, {1, 1000}, zero, exact, seldom, cgs, "cps"},
    {"P", "poise", dynamic_viscosity, {1, 10}, zero, exact, seldom, cgs, ""},
    {"Pa·s", "pascal second", dynamic_viscosity, {1, 1}, zero, exact, seldom, si, "pascal seconds"},

    // Saybolt viscosity, in s of flow: a scale, not a factor
    {"SUS", "Saybolt Universal second", saybolt_viscosity, {1, 1}, zero, exact, workshop, d2161,
     "SSU|saybolt|saybolt seconds|saybolt universal seconds"},

    // spring rate, in N/m
    {"N/mm", "newton per millimetre", spring_rate, {1000, 1}, zero, exact, workshop, si, "newtons per mm"},
    {"kgf/mm", "kilogram-force per millimetre", spring_rate, {196133, 20}, zero, exact, workshop, kilogram_force,
     "kg/mm|kp/mm"},
    {"lbf/in", "pound-force per inch", spring_rate, {8896443230521, 50800000000}, zero, exact, workshop, inch_pound,
     "lb/in|lbs/in|lb/inch|lbs/inch|lb per in|lbs per in|lb per inch|lbs per inch|pounds per inch"},
    {"N/m", "newton per metre", spring_rate, {1, 1}, zero, exact, seldom, si, "newtons per metre"},
    {"lbf/ft", "pound-force per foot", spring_rate, {8896443230521, 609600000000}, zero, exact, seldom, inch_pound,
     "lb/ft|lbs/ft|pounds per foot"},

    // rotation speed, in revolutions per second
    {"rpm", "revolution per minute", rotation_speed, {1, 60}, zero, exact, workshop, accepted,
     "r.p.m.|r/min|rev/min|revs/min|revolutions per minute"},

    // speed, in m/s
    {"km/h", "kilometre per hour", speed, {5, 18}, zero, exact, workshop, accepted, "kmh|kph|km/hr|kilometers per hour"},
    {"mph", "mile per hour", speed, {1397, 3125}, zero, exact, workshop, inch_pound, "m.p.h.|mi/h|miles per hour"},
    {"m/s", "metre per second", speed, {1, 1}, zero, exact, seldom, si, "m/sec"},
    {"ft/min", "foot per minute", speed, {127, 25000}, zero, exact, seldom, inch_pound, "fpm|feet per minute"},

    // angle, in degrees, for a degree is no rational number of radians
    {"°", "degree", angle, {1, 1}, zero, exact, workshop, accepted, "degrees|degs"},
    {"turns", "turns", angle, {360, 1}, zero, exact, workshop, by_count,
     "rev|revs|revolution|revolutions|rotation|rotations", "turn"},
    {"rad", "radian", angle, {894512624400143879, 15612190496437878}, zero, rounded, seldom, si, "radians"},

    // clicks of an adjuster
    {"clicks", "clicks", clicks, {1, 1}, zero, exact, workshop, by_count, "", "click"},

    // energy, in J
    {"J", "joule", energy, {1, 1}, zero, exact, workshop, si, "joules"},
    {"kJ", "kilojoule", energy, {1000, 1}, zero, exact, seldom, si, "kilojoules"},
    {"ft·lbf", "foot pound-force of energy", energy, {3389544870828501, 2500000000000000}, zero, exact, workshop,
     inch_pound, ""},

    // power, in W
    {"kW", "kilowatt", power, {1000, 1}, zero, exact, workshop, si, "kilowatts"},
    {"hp", "mechanical horsepower (550 ft·lbf/s)", power, {37284993579113511, 50000000000000}, zero, exact, workshop,
     inch_pound, "horsepower|bhp"},
    {"PS", "metric horsepower (75 kgf·m/s)", power, {588399, 800}, zero, exact, workshop, kilogram_force,
     "metric hp|metric horsepower|cv"},
    {"W", "watt", power, {1, 1}, zero, exact, seldom, si, "watts"},

    // time, in s
    {"h", "hour", time, {3600, 1}, zero, exact, workshop, accepted, "hours|hr|hrs"},
    {"min", "minute", time, {60, 1}, zero, exact, workshop, accepted, "minutes|mins"},
    {"s", "second", time, {1, 1}, zero, exact, seldom, si, "seconds|sec|secs"},
    {"months", "months", time, {2629746, 1}, zero, rounded, workshop, calendar, "", "month"},
    {"years", "years", time, {31556952, 1}, zero, rounded, workshop, calendar, "yr|yrs", "year"},
    {"days", "days", time, {86400, 1}, zero, exact, seldom, accepted, "", "day"},
    {"weeks", "weeks", time, {604800, 1}, zero, exact, seldom, accepted, "", "week"},

    // ratio
    {"%", "per cent", ratio, {1, 100}, zero, exact, workshop, si, "percent|pct"},

    // electricity, in V, A, Ω
    {"V", "volt", voltage, {1, 1}, zero, exact, workshop, si, "volts"},
    {"mV", "millivolt", voltage, {1, 1000}, zero, exact, seldom, si, "millivolts"},
    {"kV", "kilovolt", voltage, {1000, 1}, zero, exact, seldom, si, "kilovolts"},
    {"A", "ampere", current, {1, 1}, zero, exact, workshop, si, "amp|amps|amperes"},
    {"mA", "milliampere", current, {1, 1000}, zero, exact, workshop, si, "milliamp|milliamps"},
    {"Ω", "ohm", resistance, {1, 1}, zero, exact, workshop, si, "ohms"},
    {"kΩ", "kilohm", resistance, {1000, 1}, zero, exact, workshop, si, "kohms|kiloohm|kiloohms|kilohms"},

    // density, in kg/m³
    {"g/cm³", "gram per cubic centimetre", density, {1000, 1}, zero, exact, workshop, si, "g/cc|g/ml|kg/L"},
    {"kg/m³", "kilogram per cubic metre", density, {1, 1}, zero, exact, workshop, si, ""},
};
// clang-format on

inline constexpr std::size_t unit_count = sizeof units / sizeof units[0];
inline constexpr std::size_t dimension_count = static_cast<std::size_t>(density) + 1;

}  // namespace table
}  // namespace sheaf
