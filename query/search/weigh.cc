// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/weigh.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "query/library/fold.h"
#include "query/search/rule_out.h"
#include "query/search/sides.h"
#include "query/search/weights.h"

namespace sheaf {
namespace {

constexpr double likely_enough = 0.5;  // that the answers hold what was meant
constexpr double as_likely = 0.4;      // of the likeliest: what is less likely is no answer beside it
constexpr std::size_t most_answers = 3;
constexpr std::size_t most_designated = 120;  // entries up to which those with what is designated are weighed
constexpr double worth_a_look = 0.05;         // chance from which on an entry is offered below the answer

// "spoke nipples", of the front wheel and of the rear: nobody said which.
bool are_twins(const Hit& left, const Hit& right, const QuestionReading& reading) {
  const auto without_sides = [](const std::string& text) {
    auto words = words_of(fold(text));
    std::erase_if(words, [](const std::string& word) { return !opposite_of(word).empty(); });
    return words;
  };
  const auto end_of = [](const Hit& hit) { return end_of_assembly(hit.sheet->assembly); };
  const bool of_both_ends = !end_of(left).empty() && opposite_of(end_of(left)) == end_of(right);
  const bool are_as_numbered = left.entry->kind == right.entry->kind && left.library == right.library &&
                               without_end(left.sheet->assembly) == without_end(right.sheet->assembly);
  const auto fits_too = [&](const FitRecord& fit) {
    return std::ranges::any_of(right.entry->fits, [&](const FitRecord& other) {
      return other.make == fit.make && other.model == fit.model;
    });
  };
  if (std::ranges::none_of(left.entry->fits, fits_too)) return false;
  return reading.sides.empty() && of_both_ends && are_as_numbered &&
         without_sides(left.entry->name) == without_sides(right.entry->name);
}

template <typename Counts>
double sum(const Counts& counts, const Counts& weights) {
  using Row = std::array<double, sizeof(Counts) / sizeof(double)>;
  const auto all = std::bit_cast<Row>(counts), of_each = std::bit_cast<Row>(weights);
  return std::inner_product(all.begin(), all.end(), of_each.begin(), 0.0);
}

// All threads, sizes and so on that were asked for, whatever the words.
QuestionReading designations_of(QuestionReading reading) {
  reading.parts.clear();
  reading.figures.clear();
  reading.sides.clear();
  reading.lengths.clear();
  reading.quantities.clear();
  return reading;
}

}  // namespace

Weighing weigh(const QuestionReading& reading, Searcher& searcher, Lexicon& lexicon) {
  Weighing weighing;
  auto hits = searcher.holding_some(reading);
  std::set<std::pair<std::size_t, EntryId>> having;
  if (has_designation_but_length(reading)) {
    const auto is_among = [&](const Hit& hit) {
      return std::ranges::any_of(
          hits, [&](const Hit& other) { return other.library == hit.library && other.id == hit.id; });
    };
    for (auto& hit : searcher.search(designations_of(reading), {}).hits) {
      having.emplace(hit.library, hit.id);
      if (!hit.entry->fits.empty() && !is_among(hit) && hits.size() < most_designated)
        hits.push_back(std::move(hit));
    }
  }
  Witness& witness = weighing.witness.emplace(reading, lexicon, hits, std::move(having));
  weighing.doubt = witness.doubt();
  weighing.none = sum(weighing.doubt, doubt_weights);
  double most = weighing.none;
  for (auto& hit : hits) {
    if (witness.is_opposite(hit) || !hit.entry->withdrawn.empty()) continue;
    const Evidence evidence = witness.of(hit);
    weighing.entries.push_back({std::move(hit), evidence, sum(evidence, evidence_weights)});
    most = std::max(most, weighing.entries.back().chance);
  }
  double all = weighing.none = std::exp(weighing.none - most);
  for (auto& each : weighing.entries) all += each.chance = std::exp(each.chance - most);
  weighing.none /= all;
  for (auto& each : weighing.entries) each.chance /= all;
  rule_out(weighing.entries, reading, witness, lexicon);
  std::ranges::stable_sort(weighing.entries, std::ranges::greater(), &Weighed::chance);
  return weighing;
}

bool answer_by_weight(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  findings.weighed = true;
  Weighing weighing = weigh(findings.reading, searcher, lexicon);
  auto& entries = weighing.entries;
  if (entries.empty() || entries.front().chance < weighing.none) return false;
  const auto is_less_likely = [&](const Weighed& each) {
    return each.chance < entries.front().chance * as_likely;
  };
  const auto end = std::ranges::find_if(entries, is_less_likely);
  const double chance = std::accumulate(entries.begin(), end, 0.0,
                                        [](double part, const Weighed& each) { return part + each.chance; });
  if (!std::all_of(entries.begin(), end, [](const Weighed& each) { return each.may_answer; })) return false;
  if (chance < likely_enough || end - entries.begin() > static_cast<std::ptrdiff_t>(most_answers))
    return false;
  QuestionReading told = findings.reading;
  weighing.witness->tell_reading(entries.front().hit, told);
  std::vector<Hit> answers;
  for (auto each = entries.begin(); each != end; ++each) answers.push_back(std::move(each->hit));
  const auto is_twin = [&](const Weighed& each) {
    return each.may_answer && are_twins(answers.front(), each.hit, told);
  };
  for (auto each = end; each != entries.end() && answers.size() < most_answers; ++each)
    if (is_twin(*each)) answers.push_back(each->hit);
  for (auto each = end; each != entries.end() && each->chance >= worth_a_look; ++each)
    if (!is_twin(*each)) findings.also.push_back(std::move(each->hit));
  findings.reading = std::move(told);
  answer_with(findings, std::move(answers));
  return true;
}

}  // namespace sheaf
