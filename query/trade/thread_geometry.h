// SPDX-License-Identifier: GPL-2.0-or-later
// The basic profile of 60° screw threads, and the stress area of a screw.
//
//   height of the sharp triangle   H  = √3/2 · P                      ISO 68-1, ASME B1.1
//   pitch diameter                 d2 = d − 3/4 H   = d − 0.649519 P   ISO 724, ASME B1.1
//   minor diameter of the nut      D1 = d − 5/4 H   = d − 1.082532 P   ISO 724, ASME B1.1
//   minor diameter of the screw    d3 = d − 17/12 H = d − 1.226869 P   ISO 898-1 (metric)
//   stress area, metric            As = π/4 · ((d2 + d3)/2)²          ISO 898-1
//   stress area, inch              As = π/4 · (d − 0.9743 P)²         ASME B1.1
//
// Lengths in mm, areas in mm². Diameters 0.25 to 1000 mm, pitch at most half the diameter; outside
// that, and for pipe threads (55°, or tapered), a Failure.
#pragma once

#include "query/quantity/result.h"
#include "query/trade/thread.h"

namespace sheaf {

struct ThreadGeometry {
  double diameter = 0;        // d, nominal
  double pitch = 0;           // P
  double pitch_diameter = 0;  // d2 = D2
  double minor_nut = 0;       // D1
  double minor_screw = 0;     // d3
  double stress_area = 0;     // As
  double load_area = 0;       // As as loads are reckoned from it: metric to three figures (ISO 898-1 Table 4)
};

Result<ThreadGeometry> metric_geometry(double diameter_mm, double pitch_mm);
Result<ThreadGeometry> inch_geometry(double diameter_mm, double pitch_mm);

// Fails too on a thread that leaves its pitch to a table ("M8"): see thread_series.h.
Result<ThreadGeometry> geometry_of(const Thread& thread);

// The drill that leaves about three quarters of the thread's height: d − P, common practice.
double tap_drill_mm(const ThreadGeometry& geometry);

}  // namespace sheaf
