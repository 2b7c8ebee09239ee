// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <cmath>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

std::string widths(const std::vector<double>& usual) {
  std::string text;
  for (const double width : usual) text += (text.empty() ? "" : ", ") + sheaf::brief(width);
  return text + " mm";
}

// Flange and collar heads go a size up or down from the tables (common practice, no source).
bool near_usual(double across, const std::vector<double>& usual) {
  return across >= usual.front() * 0.76 && across <= usual.back() * 1.26;
}

bool has_own_width(std::string_view joint) {
  constexpr std::string_view joints[] = {"hollow", "cap", "plug", "axle", "stem", "pivot"};
  return std::ranges::find(joints, joint) != std::end(joints);
}

void examine(const LinkedEntry& fastener, const Shelf& shelf, Report& report) {
  const sheaf::Drive* drive = fastener.drive("drive");
  const sheaf::Thread* thread = fastener.thread("thread");
  const auto diameter = thread ? sheaf::diameter_mm(*thread) : std::nullopt;
  const auto across = drive ? sheaf::across_flats_mm(*drive) : std::nullopt;
  if (!across || !diameter || has_own_width(fastener.choice("joint"))) return;
  const sheaf::DriveVerdict verdict = sheaf::judge_drive(*drive, *diameter, shelf.drives_for(*diameter));
  using Fit = sheaf::DriveVerdict::Fit;
  if (verdict.usual_mm.empty()) return;
  if (verdict.fit != Fit::impossible &&
      (verdict.fit != Fit::unlisted || near_usual(*across, verdict.usual_mm)))
    return;
  report(fastener, fastener.place("drive"),
         sheaf::to_text(*drive) + " does not go with " + sheaf::to_text(*thread) + "; usual are " +
             widths(verdict.usual_mm));
}

}  // namespace

const Rule drive_unlike_thread = {
    {.name = "drive-unlike-thread",
     .severity = Severity::warning,
     .summary = "a tool size that does not go with the thread",
     .why =
         "ISO 272 and its predecessors give each thread a few widths across flats, ISO 4762 a socket key; flange heads "
         "lie a size beside them. A width far from all of them is mostly the neighbour row's, or the thread is. "
         "Hollow bolts, caps, plugs, axles, stems and pivots have widths of their own and are left alone.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, drive: hexagon 19 mm, torque: 22 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, drive: hexagon 12 mm, torque: 22 N·m, state: dry }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
