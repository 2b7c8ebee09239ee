// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

// Fields whose bands are tolerances. Ranges of adjustment, play and clearances are meant to be wide.
constexpr std::array<std::string_view, 8> toleranced = {
    "torque", "volume", "dry-fill", "after-drain", "with-filter", "rate", "free-length", "installed-length"};

void examine_figure(const LinkedEntry& entry, const Value& value, const sheaf::Figure& figure,
                    Report& report) {
  if (!figure.unit || figure.form == sheaf::Form::minimum || figure.form == sheaf::Form::maximum) return;
  const auto band = band_in(figure, figure.unit->symbol);
  if (!band || !std::isfinite(band->most) || !std::isfinite(band->least) || band->least <= 0) return;
  const double spread = band->most / band->least;
  if (spread <= 2) return;
  report.as(spread > 3 ? Severity::error : Severity::warning, entry, value.where,
            "the band of " + sheaf::to_text(figure) + " is " + sheaf::brief(std::round(spread * 10) / 10) +
                " times its own least value; a missing digit, or per cent meant?");
}

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  for (const std::string_view key : toleranced) {
    for (const Value& value : entry.values(key)) {
      const auto* statement = value.as<sheaf::Statement>();
      if (!statement) continue;
      for (const sheaf::Stage& stage : statement->stages) examine_figure(entry, value, stage.figure, report);
    }
  }
}

}  // namespace

const Rule band_too_wide = {
    {.name = "band-too-wide",
     .severity = Severity::warning,
     .summary = "a band so wide that it says nothing",
     .why =
         "No maker gives a torque, a volume or a spring rate whose most is over twice its least; three times is "
         "taken as an error. A digit was lost on one side, or ± was meant in per cent. Ranges of adjustment and "
         "clearances are left alone. The limits are common practice, no source.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 12..28 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22..28 N·m, state: dry }
)"},
    {.entry = examine}};

}  // namespace sheafc
