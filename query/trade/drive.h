// SPDX-License-Identifier: GPL-2.0-or-later
// What a tool grips on a fastener, as people write it, and the one spelling of each.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/number.h"
#include "query/quantity/result.h"

namespace sheaf {

// "hexagon 27 mm", "17 mm AF", "hex socket 6 mm", "T30" (six-lobe), "E12" (six-lobe, external),
// "square 3/8 in", "cross PH2", "slot", "peg 5 mm", "castellated 4 slots", "twelve-point 14 mm".
struct Drive {
  enum class Shape {
    hexagon,
    hex_socket,
    six_lobe,
    six_lobe_external,
    square,
    cross,
    slot,
    peg,
    twelve_point,
    castellated,
    knurled,
  };
  Shape shape = Shape::hexagon;
  std::optional<Number> size;  // across flats, width, or the number of a T, E, PH or PZ drive
  std::string unit;            // "mm", "in", "PH", "PZ", "slots"; empty for T and E numbers
};

// At a prompt, the tool may stand for what it grips ("46mm socket", "17 mil nut") and mm may be left
// out; a sheet names the shape and the unit.
Result<Drive> parse_drive(std::string_view text, Input input);

std::string to_text(const Drive& drive);    // "hexagon 27 mm", "hex socket 6 mm", "T30", "cross PH2"
std::string drive_key(const Drive& drive);  // "hexagon-27", "hex-socket-6", "t30", "ph2", "hexagon-1/2in"

// "hexagon", "hex socket", "six-lobe": the shape in words.
std::string_view name_of(Drive::Shape shape);

// Across flats (or across the square) of the drives measured so; absent for the others.
std::optional<double> across_flats_mm(const Drive& drive);

}  // namespace sheaf
