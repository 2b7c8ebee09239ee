// SPDX-License-Identifier: GPL-2.0-or-later
// Screw threads as people write them, and the one spelling of each.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/number.h"
#include "query/quantity/result.h"
#include "query/trade/found.h"

namespace sheaf {

// "M8", "M8x1.25", "m8 × 1,25", "5/16-18 UNC", "5/16 unc", "#10-32", "10-32 unf", "1/4\"-20", "G1/4".
// A bare "M8" names the diameter only; what its coarse pitch is, is a row of a table, not known here.
struct Thread {
  enum class System { metric, unified, pipe };
  System system = System::metric;
  std::string diameter;            // "8", "5/16", "#10": in the standard's own spelling
  std::optional<Number> pitch;     // mm (metric)
  std::optional<Number> per_inch;  // threads per inch (unified, pipe)
  std::string series;              // "UNC", "UNF", "UNEF", "UN", "UNS"; pipe "G", "R", "BSP", "NPT"; or empty
  std::string tolerance;           // "6g", "6H", "2A" where written: "M8x1.25-6g"
  std::optional<Number> length;    // of the screw, mm, where a prompt gives it: "M8x1.25x30", "M8x30"
  bool left_hand = false;          // "M10x1.25 LH"
};

// The whole text must be a thread. A failure marks the characters at fault.
Result<Thread> parse_thread(std::string_view text, Input input);

// The longest thread at the start of the text, which may go on: "m8 x 1.25 10.9" gives M8x1.25. A bare
// "lh" behind it is left alone, since it may be the left side.
std::optional<Found<Thread>> thread_at(std::string_view text, Input input);

std::string to_text(const Thread& thread);  // "M8x1.25", "5/16-18 UNC", "#10-32 UNF", "M10x1.25 LH"

// For matching by number: spelling, series, tolerance, length and hand are gone where the pitch says it all.
std::string thread_key(const Thread& thread);  // "m8", "m8x1.25", "5/16-18", "5/16 unc", "#10-32", "g1/4"

// Nominal (major) diameter. Absent for pipe threads, which are named after a bore, not a diameter.
std::optional<double> diameter_mm(const Thread& thread);

// Absent where the designation leaves it to a table ("M8", "5/16 UNC").
std::optional<double> pitch_mm(const Thread& thread);

}  // namespace sheaf
