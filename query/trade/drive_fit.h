// SPDX-License-Identifier: GPL-2.0-or-later
// Whether a drive belongs to a thread: by the tables of hexagons (current, former, small), and by what
// no table can change: a hexagon is wider than the thread it stands on, a hex socket narrower.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "query/trade/drive.h"

namespace sheaf {

// One width in use for a thread diameter. The tables say whose: "current" (ISO 272), "former", ...
struct DriveRow {
  double diameter_mm = 0;
  Drive::Shape shape = Drive::Shape::hexagon;  // hexagon or hex_socket
  double across_mm = 0;
  std::string kind;
};

struct DriveVerdict {
  enum class Fit {
    listed,      // some row has this width for this thread; `kinds` say which
    unlisted,    // the tables have the thread, but not this width
    impossible,  // a hexagon no wider than its thread, a socket no narrower
    unjudged,    // another shape, no width, or a thread that the tables do not have
  };
  Fit fit = Fit::unjudged;
  std::vector<std::string> kinds;  // of the rows that match
  std::vector<double> usual_mm;    // every width in the tables for this thread and shape, ascending
};

DriveVerdict judge_drive(const Drive& drive, double diameter_mm, std::span<const DriveRow> rows);

}  // namespace sheaf
