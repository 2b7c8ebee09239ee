// SPDX-License-Identifier: GPL-2.0-or-later
// How much each sign counts for an entry (or, of a doubt, for there being no answer): natural logarithms of
// odds, as tests/phrases/fit_weights.py found them from the questions of tests/phrases; but that of a
// sentence was chosen among five by how many of these were answered rightly and wrongly, beside weights that
// stayed as they were. Internal to search.
#pragma once

#include "query/search/evidence.h"

namespace sheaf {

inline constexpr Evidence evidence_weights = {
    .words = {{                                    // name, brief, place, told, nowhere
               {1.52, 0.00, 1.08, -0.75, -1.70},   // part
               {0.92, 0.00, 1.45, -1.17, -0.92},   // kind
               {1.89, 0.00, 0.16, 0.20, -1.66},    // free
               {1.84, 0.00, -0.45, 0.19, -0.56},   // around
               {0.00, 0.34, 0.41, 1.98, -1.30}}},  // unknown
    .unasked = {0.07, -2.27, -1.14, -1.84, -1.48, -1.72, -1.96, -1.16},
    .figures = {1.83, 1.46, 0.66, -1.38},
    .sides = {1.18, -0.59},
    .measures = {2.98, -1.92, 0.38, -3.68},
    .designations = {3.97, -5.76},
    .units = {1.10, -0.54},
    .whose = {-0.21, -1.35},
    .first = {-0.62, -0.63},
    .kind = {-1.81, 0.01, 0.60, 0.56},
    .kind_of_figure = {-2.94, 0.30, 0.75, 0.24},
    .row = {-0.50}};

inline constexpr Doubt doubt_weights = {.always = {2.29},
                                        .open = {0.41},
                                        .designated = {-1.24},
                                        .words = {-0.15, -0.29, -0.60, -1.03, -1.43},
                                        .spoken = {-0.70}};

}  // namespace sheaf
