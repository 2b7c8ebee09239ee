// SPDX-License-Identifier: GPL-2.0-or-later
// How much each sign counts for an entry (or, of a doubt, for there being no answer): natural logarithms of odds, as
// tests/phrases/fit_weights.py found them from the questions of tests/phrases. Internal to search.
#pragma once

#include "query/search/evidence.h"

namespace sheaf {

inline constexpr Evidence evidence_weights = {
    .words = {{// name, brief, place, told, nowhere
               {1.42, 0.00, 0.65, -0.56, -1.30},    // part
               {1.15, 0.00, -0.00, -0.67, -0.69},    // kind
               {2.80, 0.00, -1.10, 0.27, -1.45},    // free
               {1.90, 0.00, -0.70, 0.73, -0.78},    // around
               {0.00, 0.85, 0.07, 1.64, -1.16}}},  // unknown
    .unasked = {-0.15, -1.62, -0.39, -1.35, -1.40, -1.51, -1.37},
    .figures = {1.46, 1.35, 0.90, -1.39},
    .sides = {2.38, -0.55},
    .measures = {2.29, -0.52, 1.36, -3.16},
    .designations = {3.23, -2.53},
    .units = {1.08, -0.31},
    .whose = {-0.54, -1.55},
    .first = {-0.79, -0.90},
    .kind = {-1.47, 1.13, -0.06, 0.27},
    .kind_of_figure = {-1.34, -0.90, 0.55, 0.03},
    .row = {-0.44}};

inline constexpr Doubt doubt_weights = {.always = {1.80}, .open = {1.00}, .designated = {-1.15}, .words = {-0.21, 0.22, -0.52, -1.15, -1.40}};

}  // namespace sheaf
