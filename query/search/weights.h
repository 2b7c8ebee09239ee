// SPDX-License-Identifier: GPL-2.0-or-later
// How much each sign counts for an entry (or, of a doubt, for there being no answer): natural logarithms of odds, as
// tests/phrases/fit_weights.py found them from the questions of tests/phrases. Internal to search.
#pragma once

#include "query/search/evidence.h"

namespace sheaf {

inline constexpr Evidence evidence_weights = {
    .words = {{// name, brief, place, told, nowhere
               {1.36, 0.00, 0.73, -0.48, -1.35},    // part
               {0.35, 0.00, 2.45, -1.58, -0.66},    // kind
               {2.57, 0.00, -1.03, 0.11, -1.45},    // free
               {1.70, 0.00, 0.08, 0.64, -1.02},    // around
               {0.00, -0.16, 0.26, 2.20, -1.09}}},  // unknown
    .unasked = {-0.30, -1.52, -0.46, -1.59, -1.30, -1.08, -1.47},
    .figures = {1.76, 1.93, 1.08, -1.14},
    .sides = {2.32, -0.86},
    .measures = {2.18, -0.48, 0.86, -2.94},
    .designations = {3.86, -2.88},
    .units = {1.64, -0.25},
    .whose = {-0.35, -1.68},
    .first = {-0.90, -1.08},
    .kind = {-1.38, 1.32, 0.07, 0.43},
    .kind_of_figure = {-1.81, -0.14, 0.11, -0.31},
    .row = {-0.48}};

inline constexpr Doubt doubt_weights = {.always = {1.70}, .open = {1.10}, .designated = {-1.11}, .words = {-0.26, -0.56, -0.20, -1.41, -1.21}};

}  // namespace sheaf
