// SPDX-License-Identifier: GPL-2.0-or-later
// A figure: a number with its unit and what the source says of its tolerance, kept as written.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/number.h"
#include "query/quantity/unit.h"

namespace sheaf {

struct Quantity {
  Number value;
  const Unit* unit = nullptr;

  friend bool operator==(const Quantity&, const Quantity&) = default;
};

// How the tolerance was written; it decides how the figure is printed, never how wide it is.
enum class Form { nominal, plus_minus, per_cent, plus_minus_uneven, range, minimum, maximum, about };

// One value with its band. least/most are absent where the source gives none.
//   "28 N·m"        nominal 28
//   "28 ± 3 N·m"    nominal 28, least 25, most 31, spread 3
//   "28 +4 -1 N·m"  nominal 28, least 27, most 32
//   "28 N·m ± 5 %"  nominal 28, least 26.6, most 29.4, spread 5
//   "25..31 N·m"    least 25, most 31
//   "min 2.0 mm"    least 2.0          "max 0.2 mm"  most 0.2
//   "about 28 N·m"  nominal 28
//   "28 (25..31) N·m" nominal 28, least 25, most 31, form range
struct Figure {
  Form form = Form::nominal;
  std::optional<Number> nominal, least, most;
  std::optional<Number> spread;  // as written, for plus_minus and per_cent
  const Unit* unit = nullptr;

  friend bool operator==(const Figure&, const Figure&) = default;
};

// One step of a tightening, or the only one.
//   "20 N·m, 40 N·m + 90°"   "40 N·m, loosen 180°, 25 N·m + 60°"   "hand tight + 3/4 turn"
enum class Act { tighten, turn_further, loosen, loosen_fully };
struct Stage {
  Act act = Act::tighten;
  Figure figure;            // torque; or an angle (°, turns) for turn_further and loosen
  bool hand_tight = false;  // tighten by hand: no figure, figure.unit is null (so for loosen_fully)

  friend bool operator==(const Stage&, const Stage&) = default;
};

// Everything that one line of a sheet says of one value.
//   "512 mL per leg"  "32 mm²/s at 40 °C"  "118 mm below the rim, spring out, fork compressed"
//   "35 N·m (26 lbf·ft)"
struct Statement {
  std::vector<Stage> stages;            // one, unless the figure is a staged torque
  std::string per;                      // "leg", "side", "wheel"; empty if it is the whole
  std::optional<Quantity> at;           // "at 40 °C"
  std::vector<std::string> conditions;  // "below the rim", "spring out"
  std::optional<Figure> printed;        // the converted value that the source prints beside it

  const Figure& figure() const { return stages.front().figure; }
  friend bool operator==(const Statement&, const Statement&) = default;
};

// Reads one statement of at most 1000 bytes. With a dimension, a unit of another dimension fails and says
// which are meant; without one, the unit decides. Failure.at/length mark the characters at fault. An
// ambiguous unit fails and names the choices; a bare number fails and names the units.
Result<Statement> parse_statement(std::string_view text, std::optional<Dimension> dimension, Input input);

// Every way to read the statement, where a unit in it is ambiguous ("17.5 oz"): one statement a reading,
// never none. For a prompt; a sheet says what it means.
Result<std::vector<Statement>> parse_readings(std::string_view text, std::optional<Dimension> dimension);

// Reads a single figure with nothing after it. Allocates only for a failure.
Result<Figure> parse_figure(std::string_view text, std::optional<Dimension> dimension, Input input);

// As `sheafc format` writes it, and as parse_statement reads it back to an equal statement.
std::string to_text(const Statement& statement);
std::string to_text(const Figure& figure);
std::string to_text(const Quantity& quantity);

// As an answer shows it: "25–31 N·m", "28 N·m", true minus sign, no-break space before the unit.
std::string shown(const Number& number);
std::string shown(const Figure& figure);
std::string shown(const Quantity& quantity);
std::string shown(const Statement& statement);

// The same without allocation, into a buffer of the caller's, which any figure fits.
using FigureBuffer = std::array<char, 320>;
std::string_view to_text(const Figure& figure, FigureBuffer& buffer);
std::string_view shown(const Figure& figure, FigureBuffer& buffer);

// The band in the unit's base unit (base_of), for searching by range: absent ends are ±infinity; a
// nominal without tolerance gives its own value twice.
struct BaseBand {
  double least = 0;
  double most = 0;
};
BaseBand base_band(const Figure& figure);

}  // namespace sheaf
