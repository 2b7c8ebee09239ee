// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_designation.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "query/answer/fields.h"
#include "query/answer/match_row.h"
#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/search/measures.h"
#include "query/search/of_kind.h"
#include "query/search/of_size.h"
#include "query/trade/measured.h"
#include "query/trade/thread.h"

namespace sheaf {
namespace {

constexpr std::size_t most_rows = 5000;

Result<std::vector<EntryRecord>> rows_of(const Libraries& libraries, std::string_view kind) {
  std::vector<EntryRecord> all;
  for (Library* library : libraries) {
    auto rows = entries_of_kind(*library, kind, most_rows);
    if (!rows) return rows.failure();
    std::ranges::move(std::move(rows).value(), std::back_inserter(all));
  }
  return all;
}

// --- bearings -----------------------------------------------------------------------------------

void add_bearing(Matches& matches, const Bearing& asked, const EntryRecord& entry) {
  const auto bearing = parse_bearing(text_or_none(entry.fields, "designation"), Input::sheet);
  if (!bearing || bearing->basic != asked.basic) return;
  MatchedPart part = part_from(entry);
  const bool is_row = entry.kind == "bearing-size";  // a published size is of the basic designation
  if (is_row || bearing->suffix == asked.suffix) {
    matches.same.push_back(std::move(part));
  } else {
    part.differs = "marked " + to_text(*bearing) + ", not " + to_text(asked);
    matches.near.push_back(std::move(part));
  }
}

Result<Matches> match_bearing(const Bearing& bearing, const Libraries& libraries) {
  Matches matches;
  matches.read_as = "bearing " + to_text(bearing);
  matches.meanings = explain(bearing);
  for (Library* library : libraries) {
    const auto found = entries_with_term(*library, Prefix::bearing, fold(bearing.basic), most_rows);
    if (!found) return found.failure();
    for (const auto& entry : *found)
      if (entry.withdrawn.empty()) add_bearing(matches, bearing, entry);
  }
  matches.cautions.emplace_back("Same size is not same part: seals, clearance, cage and grease differ.");
  return matches;
}

// --- O-rings ------------------------------------------------------------------------------------

// "-214", "AS568-214" and "214" of an O-ring are one; "P22" and "G35" stand as they are.
std::string code_key(std::string_view text) {
  std::string key = squeeze(text);
  if (key.starts_with("as568")) key.erase(0, 5);
  return key;
}

bool may_be_code(const PartNamed& named) {
  const std::string key = code_key(named.rest);
  if (key.size() < 2 || key.size() > 4) return false;
  const bool series = key[0] == 'p' || key[0] == 'g';
  const bool digits =
      std::all_of(key.begin() + (series ? 1 : 0), key.end(), [](char c) { return c >= '0' && c <= '9'; });
  const bool marked = series || named.rest.starts_with('-') || fold(named.rest).starts_with("as568");
  return digits && marked && (!named.part || named.part == Part::o_ring);
}

Result<Matches> match_code(const PartNamed& named, const Libraries& libraries) {
  Matches matches;
  matches.read_as = "O-ring " + named.rest;
  const std::string key = code_key(named.rest);
  for (const std::string_view kind : {"o-ring", "o-ring-size"}) {
    const auto rows = rows_of(libraries, kind);
    if (!rows) return rows.failure();
    for (const auto& row : *rows)
      if (code_key(text_or_none(row.fields, "code")) == key && row.withdrawn.empty())
        matches.same.push_back(part_from(row));
  }
  matches.cautions.emplace_back("Same size is not same part: material and hardness differ.");
  return matches;
}

// --- threads ------------------------------------------------------------------------------------

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
  part.count = std::move(more);
  part.entry = row;
  return part;
}

Result<Matches> match_thread(const Thread& thread, const Libraries& libraries) {
  Matches matches;
  matches.read_as = "thread " + to_text(thread);
  const auto rows = rows_of(libraries, "thread-size");
  if (!rows) return rows.failure();
  const bool bare = !pitch_mm(thread);
  for (const auto& row : *rows) {
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

// A screw's outside is below its nominal, by up to about a fifth of the pitch (6g; common practice).
constexpr double pitch_reach = 0.06, over_nominal = 0.1, under_share = 0.2;

void add_measured(Matches& matches, const EntryRecord& row, double diameter, double pitch, double near_mm) {
  const auto known = parse_thread(text_or_none(row.fields, "thread"), Input::sheet);
  if (!known) return;
  const auto nominal = diameter_mm(*known), known_pitch = pitch_mm(*known);
  if (!nominal || !known_pitch) return;
  const double over = diameter - *nominal, by = *known_pitch - pitch;
  const bool diameter_fits = over <= over_nominal && -over <= over_nominal + under_share * *known_pitch;
  MatchedPart part = thread_part(row);
  if (diameter_fits && std::abs(by) <= pitch_reach) {
    part.within = "measured " + brief(diameter) + " over its crests, pitch " + brief(pitch);
    matches.within.push_back(std::move(part));
  } else if (std::abs(over) <= near_mm && std::abs(by) <= pitch_reach * 5) {
    part.differs = "diameter " + signed_amount(-over, "mm") + ", pitch " + signed_amount(by, "mm");
    matches.near.push_back(std::move(part));
  }
}

Result<Matches> match_measured_thread(const PartNamed& named, const Libraries& libraries) {
  const auto measured = parse_measured(named.rest, Input::prompt);
  if (!measured || measured->mm.size() != 2)
    return Failure{"a thread is a designation, or its diameter and pitch: thread 7.9 x 1.25"};
  Matches matches;
  matches.read_as =
      "thread, " + brief(measured->mm[0]) + " mm over its crests, pitch " + brief(measured->mm[1]) + " mm";
  const auto rows = rows_of(libraries, "thread-size");
  if (!rows) return rows.failure();
  for (const auto& row : *rows) add_measured(matches, row, measured->mm[0], measured->mm[1], 0.5);
  matches.cautions.emplace_back(
      "Try a nut of that thread by hand before any force: inch and metric threads come near each other.");
  return matches;
}

Result<std::optional<Matches>> some(Result<Matches> matches) {
  if (!matches) return matches.failure();
  return std::optional(std::move(matches).value());
}

}  // namespace

Result<std::optional<Matches>> match_designation(const PartNamed& named, const Libraries& libraries) {
  if (!named.part || named.part == Part::bearing)
    if (const auto bearing = parse_bearing(named.rest, Input::prompt))
      return some(match_bearing(*bearing, libraries));
  if (may_be_code(named)) return some(match_code(named, libraries));
  if (named.part && named.part != Part::thread) return std::optional<Matches>();
  if (const auto thread = parse_thread(named.rest, Input::prompt))
    return some(match_thread(*thread, libraries));
  if (named.part) return some(match_measured_thread(named, libraries));
  return std::optional<Matches>();
}

}  // namespace sheaf
