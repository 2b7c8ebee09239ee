// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_designation.h"

#include <algorithm>
#include <iterator>

#include "query/answer/fields.h"
#include "query/answer/match_row.h"
#include "query/answer/match_shelf.h"
#include "query/answer/match_thread.h"
#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/search/of_size.h"

namespace sheaf {
namespace {

constexpr std::size_t most_of_one = 60;  // a fleet may hold thousands of one bearing

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

Result<Matches> match_bearing(const Bearing& bearing, Shelf& shelf) {
  Matches matches;
  matches.read_as = "bearing " + to_text(bearing);
  matches.meanings = explain(bearing);
  const std::string designation = term(Prefix::bearing, fold(bearing.basic));
  for (Library* library : shelf.libraries()) {
    for (const std::string_view kind : {"bearing-size", "bearing"}) {
      const auto found = entries_with(*library, {term(Prefix::kind, kind), designation}, most_of_one);
      if (!found) return found.failure();
      matches.more = matches.more || found->more;
      for (const auto& entry : found->entries)
        if (entry.withdrawn.empty()) add_bearing(matches, bearing, entry);
    }
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

Result<Matches> match_code(const PartNamed& named, Shelf& shelf) {
  Matches matches;
  matches.read_as = "O-ring " + named.rest;
  const std::string key = code_key(named.rest);
  const auto table = shelf.table("o-ring-size");
  if (!table) return table.failure();
  std::vector<EntryRecord> rows = (*table)->rows;
  for (Library* library : shelf.libraries()) {
    auto found =
        entries_with(*library, {term(Prefix::kind, "o-ring"), term(Prefix::field, "code")}, most_of_one);
    if (!found) return found.failure();
    matches.more = matches.more || found->more;
    std::ranges::move(found->entries, std::back_inserter(rows));
  }
  for (const auto& row : rows)
    if (code_key(text_or_none(row.fields, "code")) == key && row.withdrawn.empty())
      matches.same.push_back(part_from(row));
  matches.cautions.emplace_back("Same size is not same part: material and hardness differ.");
  return matches;
}

Result<std::optional<Matches>> some(Result<Matches> matches) {
  if (!matches) return matches.failure();
  return std::optional(std::move(matches).value());
}

}  // namespace

Result<std::optional<Matches>> match_designation(const PartNamed& named, const MatchLimits& limits,
                                                 Shelf& shelf) {
  if (!named.part || named.part == Part::bearing)
    if (const auto bearing = parse_bearing(named.rest, Input::prompt))
      return some(match_bearing(*bearing, shelf));
  if (may_be_code(named)) return some(match_code(named, shelf));
  if (named.part && named.part != Part::thread) return std::optional<Matches>();
  return match_thread(named, limits, shelf);
}

}  // namespace sheaf
