// SPDX-License-Identifier: GPL-2.0-or-later
// How the trade writes threads, drives and sizes, in every spelling, and the one canonical spelling
// of each. The index and the question go through the same functions, so that sizes match by number.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/number.h"
#include "query/quantity/result.h"

namespace sheaf {

// "M8", "M8x1.25", "m8 × 1,25", "5/16-18 UNC", "5/16 unc", "#10-32", "10-32 unf", "1/4\"-20", "G1/4".
// A bare "M8" names the diameter only; what its coarse pitch is, is a row of a table, not known here.
struct Thread {
  enum class System { metric, unified, pipe };
  System system = System::metric;
  std::string diameter;            // "8", "5/16", "#10": digits as in the standard
  std::optional<Number> pitch;     // mm (metric)
  std::optional<Number> per_inch;  // threads per inch (unified, pipe)
  std::string series;              // "UNC", "UNF", "UNEF", "G", or empty
  bool left_hand = false;          // "M10x1.25 LH"
};
Result<Thread> parse_thread(std::string_view text, Input input);
std::string to_text(const Thread& thread);           // "M8x1.25", "5/16-18 UNC", "#10-32 UNF"
double diameter_mm(const Thread& thread);            // nominal (major) diameter
std::optional<double> pitch_mm(const Thread& thread);

// What a tool grips: "hexagon 27 mm", "hex socket 6 mm", "T30" (six-lobe), "square 3/8 in",
// "cross PH2", "slot", "pin 5 mm", "castellated 4 slots". `af` is across flats.
struct Drive {
  enum class Shape { hexagon, hex_socket, six_lobe, six_lobe_external, square, cross, slot, peg, twelve_point, knurled };
  Shape shape = Shape::hexagon;
  std::optional<Number> size;      // across flats, or the number of a T or PH drive
  std::string unit;                // "mm", "in", or empty for T and PH numbers
};
Result<Drive> parse_drive(std::string_view text, Input input);
std::string to_text(const Drive& drive);

// "41x54x11", "41 × 54 × 11", "41 54 11", "43*55*9.5/10.5", "1.69 x 2.2 in": two to four dimensions in
// the order written; a stepped last dimension keeps both heights.
struct Size {
  std::array<Number, 4> value{};
  int count = 0;
  std::optional<Number> step;      // the second height of "9.5/10.5"
  std::string unit = "mm";         // or "in"
};
Result<Size> parse_size(std::string_view text, Input input);
std::string to_text(const Size& size);               // "41x54x11", "43x55x9.5/10.5", "1.5x2.0 in"

// Canonical key of a size for matching by number: trailing zeros gone, always mm when metric.
std::string size_key(const Size& size);              // "41x54x11"
std::string thread_key(const Thread& thread);        // "m8x1.25", "5/16-18", "#10-32"

// "6203-2RS C3": basic designation, suffixes, and what each says.
struct Bearing {
  std::string basic;               // "6203"
  std::string suffix;              // "2RS C3", canonical spacing
  std::optional<double> bore_mm;   // from the bore code where the designation gives it
};
Result<Bearing> parse_bearing(std::string_view text, Input input);
std::string to_text(const Bearing& bearing);

}  // namespace sheaf
