// SPDX-License-Identifier: GPL-2.0-or-later
// What several drawings share: scales with round marks, lines of dimension that stand upright, hatching.
// Internal to the drawings.
#pragma once

#include <vector>

#include "query/answer/svg.h"
#include "query/trade/band.h"

namespace sheaf {

// Marks at multiples of 1, 2 or 5 times a power of ten, about so many, from the first mark at or below the
// least to the first at or above the most.
struct Marks {
  double step = 1;
  std::vector<double> at;
};
Marks marks_for(Band band, int about);
// 1, 2, 5, 10, 20, 50 … over a band that is above 0.
std::vector<double> logarithmic_marks(Band band);

// A straight scale of a drawing, px.
struct Axis {
  Band values;
  double from = 0, to = 0;
  double at(double value) const {
    return from + (value - values.least) / (values.most - values.least) * (to - from);
  }
};

// The dimension between two heights, its words right of it.
void upright_dimension(SvgDrawing& drawing, double x, double top, double bottom, std::string_view words);

// The cut face of a solid part: slanting lines within an upright rectangle.
void hatch(SvgDrawing& drawing, SvgDrawing::Point corner, double width, double height);

// "37.4": to so many digits, as figures are shown.
std::string picture_number(double value, int digits = 3);

}  // namespace sheaf
