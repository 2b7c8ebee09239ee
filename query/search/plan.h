// SPDX-License-Identifier: GPL-2.0-or-later
// A reading as a query of the index. The query is built of terms, never of text, so that nothing a
// person types can be a syntax error. Internal to search.
#pragma once

#include "query/library/index.h"
#include "query/search/reading.h"

namespace sheaf {

// How strictly the entry must answer the reading. Each relaxation is a step of its own, and what it
// finds is never the answer, only what comes near it.
struct Demand {
  bool machine = true;
  bool year = true;
  bool figures = true;
  bool sides_stated = true;  // false: an entry may leave the side open, but may not be of the other side
  bool sizes_exact = true;   // false: sizes and figures within the reach of a worn part or a near value
  int without_part = -1;     // this part is left out
};

// Matches nothing if the reading names nothing.
Xapian::Query plan_query(const QuestionReading& reading, const Demand& demand);

// How far a measure may be off and still be offered as near, in mm: what two readers of a caliper and a
// worn or swollen part make together. Common practice, no source.
inline constexpr double near_length = 1.0;
// A caliper's own uncertainty, in mm: what is within it is the same size.
inline constexpr double caliper = 0.1;
// How far a figure may be off and still be offered as near, as a share of it.
inline constexpr double near_share = 0.10;

}  // namespace sheaf
