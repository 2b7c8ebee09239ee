// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/find_near.h"

#include <algorithm>

#include "query/search/measures.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

constexpr std::size_t most_near = 8;
constexpr std::size_t most_near_sizes = 4;  // beside answers
constexpr double as_near = 1;               // of the best: what costs more is left out
constexpr double worth_a_size = 2;          // cost from which on a near size is of another part

class NearFinder {
 public:
  NearFinder(Findings& findings, Searcher& searcher) : findings_(findings), searcher_(searcher) {}

  void run() {
    const auto& reading = findings_.reading;
    const bool measured = !reading.sizes.empty() || !reading.lengths.empty() || !reading.quantities.empty() ||
                          !reading.threads.empty();
    const bool has_machine = !reading.machines.empty();
    if (measured && offer(Near::other_sizes, {.sizes_exact = false})) return;
    if (reading.year != 0 && has_machine && offer_so_called(Near::other_years, {.year = false})) return;
    if (!reading.figures.empty() && offer_so_called(Near::figure_not_stated, {.figures = false})) return;
    if (!reading.parts.empty() && offer(Near::fewer_words, {.sides_stated = false})) return;
    if (offer(Near::fewer_words, {.sides_stated = false, .names_whole = false})) return;
    if (has_machine && offer_other_loads()) return;
    if (has_machine && offer_opposite()) return;
    if (offer_other_sides()) return;
    if (has_machine && offer_so_called(Near::other_machines, {.machine = false, .year = false})) return;
    if (!offer_without_a_word() && measured) offer_without_measures();
  }

  bool offer(Near why, const Demand& demand) {
    return take(why, searcher_.search(findings_.reading, demand).hits);
  }

 private:
  bool offer_so_called(Near why, const Demand& demand) {
    auto hits = searcher_.search(findings_.reading, demand).hits;
    std::erase_if(hits, is_another_thing);
    return take(why, std::move(hits));
  }

  bool take(Near why, std::vector<Hit> hits) {
    if (hits.empty()) return false;
    findings_.why_near = why;
    const double limit = hits.front().cost + as_near;
    for (auto& hit : hits)
      if (findings_.near.size() < most_near && hit.cost <= limit) findings_.near.push_back(std::move(hit));
    return true;
  }

  // "front tyre two up", of a machine that states a pressure for its rider alone.
  bool offer_other_loads() {
    const auto says_load = [](const PartAsked& part) {
      return std::ranges::any_of(
          part.groups, [](const std::string& group) { return group == "two-up" || group == "rider-alone"; });
    };
    QuestionReading any_load = findings_.reading;
    std::vector<std::string> dropped;
    for (const auto& part : any_load.parts)
      if (says_load(part)) dropped.push_back(part.typed);
    if (std::erase_if(any_load.parts, says_load) == 0) return false;
    auto hits = searcher_.search(any_load, {}).hits;
    std::erase_if(hits, [](const Hit& hit) {
      return std::ranges::find(hit.entry->fields, "load", &FieldRecord::key) == hit.entry->fields.end();
    });
    if (!take(Near::fewer_words, std::move(hits))) return false;
    findings_.dropped = std::move(dropped);
    return true;
  }

  // "upper yoke pinch bolts", of a machine that states those of its lower yoke alone.
  bool offer_opposite() {
    std::string opposite;
    const auto says_side = [&](const PartAsked& part) {
      const auto side = std::ranges::find_if(
          part.words, [](const std::string& word) { return !opposite_of(side_said(word)).empty(); });
      if (side == part.words.end()) return false;
      opposite = opposite_of(side_said(*side));
      return true;
    };
    QuestionReading any_side = findings_.reading;
    std::erase_if(any_side.parts, says_side);
    if (opposite.empty() || any_side.parts.empty()) return false;
    auto hits = searcher_.search(any_side, {}).hits;
    std::erase_if(hits, [&](const Hit& hit) { return !is_called(*hit.entry, opposite); });
    return take(Near::other_sides, std::move(hits));
  }

  bool offer_other_sides() {
    if (findings_.reading.sides.empty()) return false;
    QuestionReading any_side = findings_.reading;
    any_side.sides.clear();
    return take(Near::other_sides, searcher_.search(any_side, {}).hits);
  }

  // "fork cap 46 nm?": what is called so, and states another figure.
  void offer_without_measures() {
    QuestionReading unmeasured = findings_.reading;
    for (const auto& length : unmeasured.lengths) findings_.dropped.push_back(length.typed);
    for (const auto& quantity : unmeasured.quantities) findings_.dropped.push_back(quantity.typed);
    unmeasured.lengths.clear();
    unmeasured.quantities.clear();
    if (!take(Near::fewer_words, searcher_.search(unmeasured, {}).hits)) findings_.dropped.clear();
  }

  // Leaves out the part without which the rest is called best.
  bool offer_without_a_word() {
    const auto& parts = findings_.reading.parts;
    std::vector<Hit> best;
    std::size_t left_out = 0;
    for (std::size_t i = 0; i < parts.size() && parts.size() > 1; ++i) {
      auto found =
          searcher_.search(findings_.reading, {.sides_stated = false, .without_part = static_cast<int>(i)});
      const bool is_better =
          !found.hits.empty() && (best.empty() || found.hits.front().cost < best.front().cost);
      if (!is_better) continue;
      best = std::move(found.hits);
      left_out = i;
    }
    if (!take(Near::fewer_words, std::move(best))) return offer_without_free_words();
    findings_.dropped.push_back(parts[left_out].typed);
    return true;
  }

  // Leaves out every word that the glossary does not know.
  bool offer_without_free_words() {
    QuestionReading named = findings_.reading;
    std::vector<std::string> dropped;
    std::erase_if(named.parts, [&](const PartAsked& part) {
      if (part.groups.empty()) dropped.push_back(part.typed);
      return part.groups.empty();
    });
    if (dropped.empty() || named.parts.empty()) return false;
    if (!take(Near::fewer_words, searcher_.search(named, {.sides_stated = false}).hits)) return false;
    findings_.dropped = std::move(dropped);
    return true;
  }

  Findings& findings_;
  Searcher& searcher_;
};

}  // namespace

void find_near(Findings& findings, Searcher& searcher) { NearFinder(findings, searcher).run(); }

void find_without_unknown_words(Findings& findings, Searcher& searcher) {
  NearFinder(findings, searcher).offer(Near::unknown_words, {.sides_stated = false});
}

void add_near_sizes(Findings& findings, Searcher& searcher) {
  const auto& reading = findings.reading;
  const bool part_measured =
      (!reading.lengths.empty() || !reading.quantities.empty()) && !reading.parts.empty();
  if (reading.sizes.empty() && !part_measured) return;
  for (auto& hit : searcher.search(reading, {.sides_stated = false, .sizes_exact = false}).hits) {
    const bool is_row =
        hit.entry->fits.empty() && reading.sizes.empty();  // one measure picks many of a table
    if (is_row || hit.differs.empty() || hit.cost >= worth_a_size || findings.near.size() == most_near_sizes)
      continue;
    findings.near.push_back(std::move(hit));
    findings.why_near = Near::other_sizes;
  }
}

}  // namespace sheaf
