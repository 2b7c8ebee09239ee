// SPDX-License-Identifier: GPL-2.0-or-later
// How much each sign counts for an entry (or, of a doubt, for there being no answer): natural logarithms of odds, as
// tests/phrases/fit_weights.py found them from the questions of tests/phrases. Internal to search.
#pragma once

#include "query/search/evidence.h"

namespace sheaf {

inline constexpr Evidence evidence_weights = {
    .words = {{// name, brief, place, told, nowhere
               {1.38, 0.00, 0.73, -0.60, -1.29},    // part
               {0.34, 0.00, 2.60, -1.55, -0.89},    // kind
               {2.56, 0.00, -1.16, 0.17, -1.30},    // free
               {1.68, 0.00, 0.00, 0.87, -1.07},    // around
               {0.00, -0.14, 0.19, 2.10, -0.91}}},  // unknown
    .unasked = {-0.23, -1.48, -0.39, -1.48, -1.23, -1.03, -1.42},
    .figures = {1.87, 1.79, 1.20, -1.14},
    .sides = {2.27, -0.81},
    .measures = {2.15, -0.41, 0.82, -2.94},
    .designations = {3.79, -2.89},
    .units = {1.21, -0.12},
    .whose = {-0.41, -1.66},
    .first = {-0.79, -1.24},
    .kind = {-1.40, 1.28, 0.09, 0.41},
    .kind_of_figure = {-1.83, -0.16, 0.17, -0.28},
    .row = {-0.53}};

inline constexpr Doubt doubt_weights = {.always = {1.71}, .open = {1.04}, .designated = {-1.02}, .words = {-0.22, -0.50, -0.26, -1.48, -1.24}};

}  // namespace sheaf
