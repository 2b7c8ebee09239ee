// SPDX-License-Identifier: GPL-2.0-or-later
// Figures for which no formula speaks, held against the widest that workshops meet.
#include <algorithm>
#include <array>
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

// One line a figure: which entries it speaks of, and between what the figure lies. `word` must be among
// the words of the name; empty: any. The first line that matches decides; those of a kind stand together, and
// the kinds that there are most of come first. All are common practice, no source, and wide: outside is
// impossible on two wheels or a small utility machine, not merely rare.
struct Line {
  std::string_view kind, field, word, unit;
  sheaf::Band band;
};
constexpr std::array<Line, 26> lines = {{
    {"fastener", "length", "", "mm", {2, 500}},
    {"fluid", "viscosity", "", "mm²/s", {1.5, 2000}},
    {"fluid", "mixture", "", "%", {20, 75}},
    {"pressure", "value", "tyre", "bar", {0.3, 4.2}},
    {"pressure", "value", "gas", "bar", {3, 25}},
    {"pressure", "value", "nitrogen", "bar", {3, 25}},
    {"pressure", "value", "cap", "bar", {0.3, 2}},
    {"pressure", "value", "compression", "bar", {5, 20}},
    {"pressure", "value", "fork", "bar", {0.1, 20}},
    {"pressure", "value", "oil", "bar", {0.3, 8}},
    {"pressure", "value", "", "bar", {0.02, 60}},
    {"clearance", "value", "valve", "mm", {0.02, 0.6}},
    {"clearance", "value", "tappet", "mm", {0.02, 0.6}},
    {"clearance", "value", "plug", "mm", {0.4, 1.6}},
    {"clearance", "value", "chain", "mm", {5, 80}},
    {"clearance", "value", "lever", "mm", {0.5, 40}},
    {"clearance", "value", "", "mm", {0.002, 200}},
    {"limit", "limit", "runout", "mm", {0.01, 3}},
    {"limit", "limit", "pad", "mm", {0.5, 6}},
    {"limit", "limit", "disc", "mm", {0.05, 14}},
    {"limit", "limit", "", "mm", {0.005, 2000}},
    {"spring", "rate", "fork", "N/mm", {1.5, 25}},
    {"spring", "rate", "shock", "N/mm", {15, 300}},
    {"spring", "rate", "", "N/mm", {0.05, 500}},
    {"spring", "free-length", "", "mm", {5, 900}},
    {"spring", "wire", "", "mm", {0.3, 25}},
}};

std::string bounds(const Line& line) {
  return sheaf::brief(line.band.least) + " to " + sheaf::brief(line.band.most) + " " + std::string(line.unit);
}

std::string hint(double value, const Line& line) {
  for (const double factor : {10.0, 0.1, 100.0, 0.01}) {
    if (line.band.holds(value / factor)) return "; a slipped decimal, or another unit?";
  }
  return "; another unit, or another figure?";
}

void examine_field(const LinkedEntry& entry, const Line& line, Report& report) {
  for (const Value& value : entry.values(line.field)) {
    const auto* statement = value.as<sheaf::Statement>();
    const auto number = middle_in(statement, line.unit);
    if (!number || line.band.holds(std::abs(*number))) continue;
    report(entry, value.where,
           sheaf::to_text(statement->figure()) + " is outside what there is (" + bounds(line) + ")" +
               hint(std::abs(*number), line));
  }
}

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  if (!entry.declaration) return;
  std::vector<std::string> words;  // made when they are asked for: folding is dear
  const auto is_named = [&](std::string_view word) {
    if (words.empty()) words = sheaf::words_of(sheaf::fold(entry.name));
    return std::ranges::find(words, word) != words.end();
  };
  std::string_view done;  // lines of one field stand together
  for (auto line = std::ranges::find(lines, entry.kind, &Line::kind);
       line != lines.end() && line->kind == entry.kind; ++line) {
    if (line->field == done || !entry.has(line->field)) continue;
    if (!line->word.empty() && !is_named(line->word)) continue;
    done = line->field;
    examine_field(entry, *line, report);
  }
}

}  // namespace

const Rule figure_out_of_range = {
    {.name = "figure-out-of-range",
     .severity = Severity::error,
     .summary = "a figure outside everything a workshop meets",
     .why =
         "Tyres of two-wheelers and small utility machines hold 0.3 to 4.2 bar, valves have 0.02 to 0.6 mm of clearance, "
         "plugs a gap of 0.4 to 1.6 mm, and so on: the rule keeps a table of the widest ranges. Outside one is mostly "
         "kPa typed as bar, or a slipped decimal. The ranges are common practice, no source.",
     .wrong = R"(assembly: exhaust
pressures:
  front-tyre: { name: front tyre pressure, value: 250 bar, cautions: [tyre-pressure] }
)",
     .right = R"(assembly: exhaust
pressures:
  front-tyre: { name: front tyre pressure, value: 2.5 bar, cautions: [tyre-pressure] }
)"},
    {.entry = examine}};

}  // namespace sheafc
