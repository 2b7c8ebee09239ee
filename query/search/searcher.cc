// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/searcher.h"

#include <algorithm>
#include <limits>
#include <span>
#include <tuple>

#include "query/search/figures.h"
#include "query/search/measures.h"
#include "query/search/meets.h"
#include "query/search/rank.h"

namespace sheaf {
namespace {

constexpr std::size_t most_weighed = 100;         // entries that hold some of what was asked
constexpr Xapian::doccount most_to_walk = 20000;  // entries with one word, where no machine narrows them
constexpr double called_otherwise = 3.5;          // cost from which on it is another thing;
constexpr double noted_otherwise = 2.5;           // where only its notes hold some of what was asked

bool comes_before(const Hit& left, const Hit& right) {
  return std::tie(left.cost, left.library, left.id) < std::tie(right.cost, right.library, right.id);
}

// What the index brought must really be what was asked.
bool fits(const EntryRecord& entry, const QuestionReading& reading, const Demand& demand) {
  if (demand.machine && !fits_machine(entry, reading, demand.year)) return false;
  return !demand.sizes_exact || has_threads_asked(entry, reading);
}

// A word such as "diameter" that no name here holds says nothing of any of them.
void charge_aspects(std::vector<Hit>& hits) {
  int least = std::numeric_limits<int>::max();
  for (const auto& hit : hits) least = std::min(least, hit.aspects_absent);
  for (auto& hit : hits) hit.cost += aspect_elsewhere * (hit.aspects_absent - least);
}

// "seat height" is none of a step that seats something, and no bolt has a width.
void leave_out_shapeless(std::vector<Hit>& hits, const QuestionReading& reading) {
  constexpr std::string_view of_parts[] = {"height", "width", "depth", "high", "wide", "deep", "tall"},
                             of_all[] = {"diameter", "thickness", "length"};
  const auto asks = [&](std::span<const std::string_view> dimensions) {
    return std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
      return std::ranges::find(dimensions, part.typed) != dimensions.end();
    });
  };
  const bool of_part = asks(of_parts);
  if (of_part || asks(of_all)) std::erase_if(hits, [](const Hit& hit) { return hit.entry->kind == "step"; });
  if (of_part)
    std::erase_if(hits,
                  [](const Hit& hit) { return hit.entry->kind == "fastener" && hit.aspects_absent > 0; });
}

// "fork level": the length of its spring is none.
void leave_out_without_level(std::vector<Hit>& hits, const QuestionReading& reading) {
  if (!reading.asks("level")) return;
  const auto is_other = [](const Hit& hit) {
    return is_measure(hit.entry->kind) && !is_called(*hit.entry, "level") &&
           !is_called(*hit.entry, "height") && !is_called(*hit.entry, "gap");
  };
  std::erase_if(hits, is_other);
}

// "fork air pressure": whatever else is measured of the fork is none.
void leave_out_otherwise_measured(std::vector<Hit>& hits, const QuestionReading& reading) {
  for (const auto& figure : reading.figures) {
    const auto dimension = dimension_of_figure(figure);
    if (!dimension) continue;
    std::erase_if(
        hits, [&](const Hit& hit) { return is_measure(hit.entry->kind) && !states(*hit.entry, *dimension); });
  }
}

// "rack, how many kilos": of its bolts nobody weighs anything.
void keep_stated_in_units(std::vector<Hit>& hits, const QuestionReading& reading) {
  if (reading.units.empty() || hits.empty()) return;
  const auto is_stated = [&](const Hit& hit) {
    return std::ranges::any_of(reading.units,
                               [&](const Unit* unit) { return states(*hit.entry, unit->dimension); });
  };
  const auto may_be_meant = [&](const Hit& hit) {
    return (hit.by_name || !hits.front().by_name) && is_stated(hit);
  };
  const bool is_all_asked = reading.parts.empty() && !reading.assemblies.empty();  // "fork clicks"
  if ((is_all_asked || !is_stated(hits.front())) && std::ranges::any_of(hits, may_be_meant))
    std::erase_if(hits, [&](const Hit& hit) { return !is_stated(hit); });
}

}  // namespace

bool is_another_thing(const Hit& hit) {
  return hit.cost >= (hit.by_name ? called_otherwise : noted_otherwise);
}

void answer_with(Findings& findings, std::vector<Hit> hits) {
  findings.total = hits.size();
  findings.total_is_exact = true;
  findings.answers = std::move(hits);
  findings.near.clear();
  findings.why_near = Near::none;
}

Candidates Searcher::candidates(std::size_t library, const QuestionReading& reading,
                                const Demand& demand) try {
  Index& index = index_of(*lexicon_.libraries()[library]);
  const Plan plan = plan_query(reading, demand, terms_of(library),
                               sizes_.try_emplace(library, index.database()).first->second);
  return candidates_for(plan, index, most_);
} catch (const Xapian::Error& error) {
  fail(library, error);
  return {};
}

KnownTerms& Searcher::terms_of(std::size_t library) {
  return terms_.try_emplace(library, index_of(*lexicon_.libraries()[library]).database()).first->second;
}

void Searcher::fail(std::size_t library, const Xapian::Error& error) {
  failure_ = Failure{lexicon_.libraries()[library]->facts().path + ": the index is damaged (" +
                     error.get_msg() + "); sheaf about --verify says more"};
}

EntryOnSheet Searcher::entry_of(std::size_t library, EntryId id) {
  auto entry = lexicon_.libraries()[library]->entry_by_id(id);
  if (entry) return std::move(entry).value();
  failure_ = entry.failure();
  return {};
}

// Of many that match, those not read cannot come before as many as are shown of which each is as good as the
// best can be.
std::size_t Searcher::read(std::size_t library, const Candidates& candidates, const QuestionReading& reading,
                           const Demand& demand, Hits& into) {
  Ranker ranker(reading, lexicon_);
  std::size_t number = 0, good = 0;
  for (const EntryId id : candidates.ids) {
    if (candidates.unread > 0 && good == enough_) break;
    ++number;
    const auto [entry, sheet] = entry_of(library, id);
    if (!entry) break;
    auto meeting = meet_measures(*entry, reading);
    const bool measured = demand.sizes_exact ? meeting.meets : meeting.is_near;
    if (!measured || !fits(*entry, reading, demand)) continue;
    const Rank rank = ranker.rank(*entry, *sheet);
    const double cost = rank.cost + meeting.cost + meeting.distance;
    if (cost <= as_good) ++good;
    into.hits.push_back({id, library, entry, sheet, cost, rank.by_name, rank.names_some, rank.aspects_absent,
                         std::move(meeting.differs)});
  }
  return number;
}

Hits Searcher::search(const QuestionReading& reading, const Demand& demand) {
  Hits found;
  for (std::size_t i = 0; i < lexicon_.libraries().size() && !failure_; ++i) {
    const Candidates each = candidates(i, reading, demand);
    const std::size_t number = read(i, each, reading, demand, found);
    found.total += each.unread + each.ids.size() - number;
    if (each.unread > 0) found.total_is_exact = false;  // those not read were not tested
  }
  charge_aspects(found.hits);
  std::ranges::stable_sort(found.hits, comes_before);
  leave_out_shapeless(found.hits, reading);
  if (demand.figures) leave_out_otherwise_measured(found.hits, reading);
  if (demand.figures) leave_out_without_level(found.hits, reading);
  std::erase_if(found.hits, [&](const Hit& hit) { return measures_beside_axle(*hit.entry, reading); });
  keep_stated_in_units(found.hits, reading);
  found.total += found.hits.size();
  return found;
}

std::vector<Hit> Searcher::holding_some(const QuestionReading& reading) {
  std::vector<Hit> hits;
  for (std::size_t library = 0; library < lexicon_.libraries().size() && !failure_; ++library) {
    for (const EntryId id : ids_holding_some(library, reading)) {
      const auto [entry, sheet] = entry_of(library, id);
      if (!entry) break;
      if (!reading.machines.empty() && !fits_machine(*entry, reading, true)) continue;
      hits.push_back({.id = id, .library = library, .entry = entry, .sheet = sheet});
    }
  }
  return hits;
}

std::vector<EntryId> Searcher::ids_holding_some(std::size_t library, const QuestionReading& reading) try {
  const auto& database = index_of(*lexicon_.libraries()[library]).database();
  auto terms = terms_of_words(reading);
  if (reading.machines.empty())
    std::erase_if(terms, [&](const std::string& term) { return database.get_termfreq(term) > most_to_walk; });
  return terms.empty() ? std::vector<EntryId>{}
                       : having_most(plan_terms(reading, terms, terms_of(library)), database, most_weighed);
} catch (const Xapian::Error& error) {
  fail(library, error);
  return {};
}

std::vector<Hit> Searcher::entries_at(const Hit& like, const std::string& address,
                                      const QuestionReading& reading) {
  std::vector<Hit> hits;
  auto& library = *lexicon_.libraries()[like.library];
  auto entries = library.entries_at(address);
  if (!entries) {
    failure_ = entries.failure();
    return hits;
  }
  for (auto& entry : *entries) {
    if (!reading.machines.empty() && !fits_machine(entry, reading, true)) continue;
    auto sheets = library.sheet_without_entries(entry.address.substr(0, entry.address.find('/')));
    if (!sheets || sheets->empty()) {
      failure_ = sheets ? Failure{entry.address + ": its sheet has gone"} : sheets.failure();
      break;
    }
    hits.push_back(like);
    hits.back().entry = std::make_shared<const EntryRecord>(std::move(entry));
    hits.back().sheet = std::make_shared<const SheetRecord>(std::move(sheets->front()));
    hits.back().differs.clear();
  }
  return hits;
}

}  // namespace sheaf
