// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/weigh.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>

#include "query/search/measures.h"
#include "query/search/weights.h"

namespace sheaf {
namespace {

constexpr double likely_enough = 0.6;  // that the answers hold what was meant
constexpr double as_likely = 0.4;      // of the likeliest: what is less likely is no answer beside it
constexpr std::size_t most_answers = 3;
constexpr double worth_a_look = 0.05;  // chance from which on an entry is offered below the answer

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

// "how many kilos": of what nobody weighs there is none, where something else is weighed. In what unit a torque or a length is
// wanted tells nothing.
void rule_out_unstated(std::vector<Weighed>& entries, const QuestionReading& reading) {
  const auto tells = [](const Unit* unit) { return unit->dimension != Dimension::torque && unit->dimension != Dimension::length; };
  const auto is_stated = [&](const Weighed& each) {
    return std::ranges::any_of(reading.units, [&](const Unit* unit) { return tells(unit) && states(each.hit.entry, unit->dimension); });
  };
  if (std::ranges::none_of(entries, is_stated)) return;
  for (auto& each : entries) each.may_answer = each.may_answer && is_stated(each);
}

bool asks(const QuestionReading& reading, std::string_view figure) { return std::ranges::find(reading.figures, figure) != reading.figures.end(); }

// Of a step no figure is asked, but the order of the work.
void rule_out_steps(std::vector<Weighed>& entries, const QuestionReading& reading) {
  if (reading.figures.empty() || asks(reading, "step") || asks(reading, "order") || asks(reading, "pattern")) return;
  for (auto& each : entries) each.may_answer = each.may_answer && each.hit.entry.kind != "step";
}

// "muleback 450": a bare number of three digits that is no measure of the entry may be the model of another machine.
void rule_out_of_model(std::vector<Weighed>& entries, const QuestionReading& reading) {
  const auto may_be_model = [](const LengthAsked& length) {
    return length.bare && length.typed.size() >= 3 && length.typed.find_first_not_of("0123456789") == std::string::npos;
  };
  if (std::ranges::none_of(reading.lengths, may_be_model)) return;
  for (auto& each : entries) each.may_answer = each.may_answer && meet_measures(each.hit.entry, reading).meets;
}

}  // namespace

Weighing weigh(const QuestionReading& reading, Searcher& searcher, Lexicon& lexicon) {
  Weighing weighing;
  auto hits = searcher.holding_some(reading);
  std::set<std::pair<std::size_t, EntryId>> having;
  if (has_designation_but_length(reading))
    for (const auto& hit : searcher.search(designations_of(reading), {}).hits) having.emplace(hit.library, hit.id);
  Witness& witness = weighing.witness.emplace(reading, lexicon, hits, std::move(having));
  weighing.doubt = witness.doubt();
  weighing.none = sum(weighing.doubt, doubt_weights);
  double most = weighing.none;
  for (auto& hit : hits) {
    if (witness.is_opposite(hit) || !hit.entry.withdrawn.empty()) continue;
    const Evidence evidence = witness.of(hit);
    weighing.entries.push_back({std::move(hit), evidence, sum(evidence, evidence_weights)});
    most = std::max(most, weighing.entries.back().chance);
  }
  double all = weighing.none = std::exp(weighing.none - most);
  for (auto& each : weighing.entries) all += each.chance = std::exp(each.chance - most);
  weighing.none /= all;
  for (auto& each : weighing.entries) each.chance /= all;
  rule_out_unstated(weighing.entries, reading);
  rule_out_steps(weighing.entries, reading);
  rule_out_of_model(weighing.entries, reading);
  std::ranges::stable_sort(weighing.entries, std::ranges::greater(), &Weighed::chance);
  return weighing;
}

bool answer_by_weight(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  findings.weighed = true;
  Weighing weighing = weigh(findings.reading, searcher, lexicon);
  auto& entries = weighing.entries;
  if (entries.empty() || entries.front().chance < weighing.none) return false;
  const auto is_less_likely = [&](const Weighed& each) { return each.chance < entries.front().chance * as_likely; };
  const auto end = std::ranges::find_if(entries, is_less_likely);
  const double chance = std::accumulate(entries.begin(), end, 0.0, [](double part, const Weighed& each) { return part + each.chance; });
  if (!std::all_of(entries.begin(), end, [](const Weighed& each) { return each.may_answer; })) return false;
  if (chance < likely_enough || end - entries.begin() > static_cast<std::ptrdiff_t>(most_answers)) return false;
  QuestionReading told = findings.reading;
  weighing.witness->tell_reading(entries.front().hit, told);
  std::vector<Hit> answers;
  for (auto each = entries.begin(); each != end; ++each) answers.push_back(std::move(each->hit));
  for (auto each = end; each != entries.end() && each->chance >= worth_a_look; ++each) findings.also.push_back(std::move(each->hit));
  findings.reading = std::move(told);
  answer_with(findings, std::move(answers));
  return true;
}

}  // namespace sheaf
