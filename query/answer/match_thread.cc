// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_thread.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "query/answer/fields.h"
#include "query/answer/match_row.h"
#include "query/answer/match_shelf.h"
#include "query/search/measures.h"
#include "query/trade/measured.h"
#include "query/trade/thread.h"

namespace sheaf {
namespace {

constexpr double mm_per_inch = 25.4;

MatchedPart thread_part(const EntryRecord& row) {
  MatchedPart part;
  part.size = text_or_none(row.fields, "thread");
  std::string more = text_or_none(row.fields, "series");
  const std::array<std::pair<const char*, const char*>, 4> shown_columns = {{{"stress-area", "stress area "},
                                                                             {"hexagon", "hexagon "},
                                                                             {"tap-drill", "tapping drill "},
                                                                             {"socket-key", "socket key "}}};
  for (const auto& [column, label] : shown_columns)
    if (const std::string* text = text_of(row.fields, column))
      more += (more.empty() ? "" : ", ") + (label + *text);
  part.details = std::move(more);
  part.entry = row;
  return part;
}

Matches designated(const Thread& thread, const Shelf::Table& table) {
  Matches matches;
  matches.read_as = "thread " + to_text(thread);
  const bool bare = !pitch_mm(thread);
  for (const auto& row : table.rows) {
    const auto known = parse_thread(text_or_none(row.fields, "thread"), Input::sheet);
    if (!known || known->system != thread.system || known->diameter != thread.diameter) continue;
    const std::string series = text_or_none(row.fields, "series");
    const bool usual =
        thread.series.empty() ? series == "coarse" || series == "UNC" : series == thread.series;
    MatchedPart part = thread_part(row);
    if (bare ? usual : thread_key(*known) == thread_key(thread)) {
      matches.same.push_back(std::move(part));
    } else {
      part.differs = "another pitch";
      matches.near.push_back(std::move(part));
    }
  }
  matches.cautions.emplace_back("Same thread is not same screw: class, length and head differ.");
  return matches;
}

// A screw over its crests, and by the gauge; in mm, and as it was typed where that was in inches.
struct MeasuredThread {
  double diameter = 0;
  std::optional<double> pitch;
  std::string diameter_words, pitch_words;
};

MeasuredThread measured_metric(double diameter, std::optional<double> pitch) {
  return {diameter, pitch, mm_text(diameter) + " mm", pitch ? "pitch " + mm_text(*pitch) + " mm" : ""};
}

MeasuredThread measured_inch(double inches, std::optional<double> per_inch) {
  MeasuredThread measured{
      inches * mm_per_inch, {}, mm_text(inches) + " in (" + mm_text(inches * mm_per_inch) + " mm)", ""};
  if (!per_inch) return measured;
  measured.pitch = mm_per_inch / *per_inch;
  measured.pitch_words = mm_text(*per_inch) + " to the inch (pitch " + mm_text(*measured.pitch) + " mm)";
  return measured;
}

std::string words_of(const MeasuredThread& measured) {
  const std::string words = measured.diameter_words + " over its crests";
  return measured.pitch ? words + ", " + measured.pitch_words : words;
}

// A designation that no table has, read as what was measured; none where it says no pitch of its own.
std::optional<MeasuredThread> measured_from(const Thread& thread) {
  const auto diameter = diameter_mm(thread), pitch = pitch_mm(thread);
  if (!diameter || !pitch) return std::nullopt;
  if (thread.system == Thread::System::metric) return measured_metric(*diameter, *pitch);
  return measured_inch(*diameter / mm_per_inch, mm_per_inch / *pitch);
}

// "7.9 x 1.25", "7.9", "0.311 in".
Result<MeasuredThread> read_measured(const std::string& text) {
  const auto measured = parse_measured(text, Input::prompt);
  if (!measured || measured->mm.size() > 2 || measured->second_height)
    return Failure{
        "a thread is a designation, or its diameter and pitch: thread 7.9 x 1.25, thread 0.311 x 18"};
  const auto pitch = measured->mm.size() == 2 ? std::optional(measured->mm[1]) : std::nullopt;
  return measured_metric(measured->mm[0], pitch);
}

// A screw's outside is below its nominal, by up to about a fifth of the pitch (6g; common practice). A gauge
// tells pitches apart that differ by more than a thirtieth of a millimetre, so not 1.25 mm from 20 to the
// inch.
constexpr double over_nominal = 0.1, under_share = 0.2, pitch_reach = 0.03;
constexpr double near_diameter = 0.5, near_pitch = 0.3;

void add_measured(Matches& matches, const EntryRecord& row, const MeasuredThread& measured,
                  const MatchLimits& limits) {
  const auto known = parse_thread(text_or_none(row.fields, "thread"), Input::sheet);
  if (!known) return;
  const auto nominal = diameter_mm(*known), pitch = pitch_mm(*known);
  if (!nominal || !pitch) return;
  const double reach = std::max(over_nominal, limits.uncertainty_mm);
  const double over = measured.diameter - *nominal, by = measured.pitch ? *pitch - *measured.pitch : 0;
  const bool diameter_fits = over <= reach && -over <= reach + under_share * *pitch;
  MatchedPart part = thread_part(row);
  if (diameter_fits && std::abs(by) <= pitch_reach) {
    part.within = "measured " + words_of(measured);
    matches.within.push_back(std::move(part));
  } else if (std::abs(over) <= near_diameter && std::abs(by) <= near_pitch) {
    part.differs = "diameter " + (std::abs(over) < 0.005 ? "the same" : signed_amount(-over, "mm"));
    if (measured.pitch)
      part.differs += ", pitch " + (std::abs(by) < 0.005 ? "the same" : signed_amount(by, "mm"));
    matches.near.push_back(std::move(part));
  }
}

Matches compared(const MeasuredThread& measured, const Shelf::Table& table, const MatchLimits& limits) {
  Matches matches;
  matches.read_as = "thread, " + words_of(measured);
  for (const auto& row : table.rows) add_measured(matches, row, measured, limits);
  if (!measured.pitch)
    matches.cautions.emplace_back("Its pitch was not measured: only a gauge tells these apart.");
  matches.cautions.emplace_back(
      "Try a nut of that thread by hand before any force: inch and metric threads come near each other.");
  return matches;
}

}  // namespace

Result<std::optional<Matches>> match_thread(const PartNamed& named, const MatchLimits& limits, Shelf& shelf) {
  const auto thread = parse_thread(named.rest, Input::prompt);
  if (!thread && !named.part) return std::optional<Matches>();
  const auto table = shelf.table("thread-size");
  if (!table) return table.failure();
  if (thread) {
    Matches matches = designated(*thread, **table);
    const auto measured = measured_from(*thread);
    const bool is_none = matches.same.empty() && matches.near.empty();
    return std::optional(is_none && measured ? compared(*measured, **table, limits) : std::move(matches));
  }
  const auto measured = read_measured(named.rest);
  if (!measured) return measured.failure();
  return std::optional(compared(*measured, **table, limits));
}

}  // namespace sheaf
