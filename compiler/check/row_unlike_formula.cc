// SPDX-License-Identifier: GPL-2.0-or-later
// Rows of published tables that follow from a formula are computed again.
#include <array>
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "query/trade/thread_geometry.h"

namespace sheafc {
namespace {

// Half the last digit of the cell, and what the printed tables themselves deviate by.
struct Computed {
  std::string_view column, unit;
  double value, allowed_share;
};

// A unit in the last place written.
double last_digit(const sheaf::Figure& figure) {
  return figure.nominal ? std::pow(10.0, -figure.nominal->places) : 0;
}

void compare(const LinkedEntry& row, const Computed& computed, Report& report) {
  const sheaf::Statement* cell = row.figure(computed.column);
  const auto written = middle_in(cell, computed.unit);
  if (!written) return;
  const double own_unit = middle_in(cell, cell->figure().unit->symbol).value_or(0);
  const double scale = own_unit == 0 ? 1 : *written / own_unit;
  const double allowed =
      std::max(last_digit(cell->figure()) * scale * 1.01, computed.value * computed.allowed_share);
  if (std::abs(*written - computed.value) <= allowed) return;
  report(row, row.place(computed.column),
         std::string(computed.column) + " " + sheaf::to_text(cell->figure()) +
             " disagrees with the formula, which gives " +
             sheaf::brief(std::round(computed.value * 10000) / 10000) + " " + std::string(computed.unit));
}

void examine_thread(const LinkedEntry& row, Report& report) {
  const sheaf::Thread* thread = row.thread("thread");
  if (!thread) return;
  const auto geometry = sheaf::geometry_of(*thread);
  if (!geometry) return;
  // Printed stress areas deviate by up to 0.5 % (ISO 898-1 rounds to three figures).
  const std::array<Computed, 5> cells = {{{"pitch", "mm", geometry->pitch, 0},
                                          {"pitch-diameter", "mm", geometry->pitch_diameter, 0},
                                          {"minor-nut", "mm", geometry->minor_nut, 0},
                                          {"minor-screw", "mm", geometry->minor_screw, 0},
                                          {"stress-area", "mm²", geometry->stress_area, 0.005}}};
  for (const Computed& cell : cells) compare(row, cell, report);
}

void examine_bearing(const LinkedEntry& row, Report& report) {
  const sheaf::Bearing* bearing = row.bearing("designation");
  if (!bearing || !bearing->bore_mm) return;
  compare(row, {"bore", "mm", *bearing->bore_mm, 0}, report);
}

// ISO 3448: each grade is its middle viscosity, from 0.9 to 1.1 times it.
void examine_grade(const LinkedEntry& row, Report& report) {
  const auto middle = middle_in(row.figure("middle"), "mm²/s");
  if (!middle) return;
  compare(row, {"least", "mm²/s", 0.9 * *middle, 0.006}, report);
  compare(row, {"most", "mm²/s", 1.1 * *middle, 0.006}, report);
}

void examine_seal(const LinkedEntry& row, Report& report) {
  const sheaf::Size* size = row.size("size");
  if (!size) return;
  constexpr std::array<std::string_view, 3> columns = {"inside", "outside", "height"};
  for (int i = 0; i < std::min(size->count, 3); ++i) {
    compare(row, {columns[static_cast<std::size_t>(i)], "mm", sheaf::dimension_mm(*size, i), 0}, report);
  }
}

void examine(const LinkedEntry& row, const Shelf&, Report& report) {
  if (row.declaration) return;
  if (row.kind == "thread-size") examine_thread(row, report);
  if (row.kind == "bearing-size") examine_bearing(row, report);
  if (row.kind == "viscosity-grade") examine_grade(row, report);
  if (row.kind == "fork-seal-size" || row.kind == "shaft-seal-size") examine_seal(row, report);
}

}  // namespace

const Rule row_unlike_formula = {
    {.name = "row-unlike-formula",
     .severity = Severity::error,
     .summary = "a row of a published table that its own formula contradicts",
     .why =
         "Thread diameters follow from diameter and pitch (ISO 724, ASME B1.1), stress areas from them (ISO 898-1, to 0.5 "
         "%), a bearing's bore from its code (ISO 15), a grade's limits from its middle (ISO 3448, 10 %), the columns of "
         "a seal from its size. A cell that disagrees was misprinted or mistyped.",
     .wrong = R"(sheet: example
title: Example
table: thread-size
source: { title: ISO 724 }
checked: { on: 2026-10-02, by: workshop }
key: thread
columns: { thread: thread, pitch: mm, stress-area: mm² }
rows:
  - [M8x1.25, 1.25, 39.6]
)",
     .right = R"(sheet: example
title: Example
table: thread-size
source: { title: ISO 724 }
checked: { on: 2026-10-02, by: workshop }
key: thread
columns: { thread: thread, pitch: mm, stress-area: mm² }
rows:
  - [M8x1.25, 1.25, 36.6]
)"},
    {.entry = examine}};

}  // namespace sheafc
