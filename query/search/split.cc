// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/split.h"

#include <algorithm>
#include <map>
#include <set>

#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/search/draft.h"
#include "query/search/keep_asked.h"
#include "query/search/searcher.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

constexpr std::size_t most_also = 8;
constexpr double worth_a_look = 1;  // beyond the best: what is called less alike is not offered beside it
constexpr double called_almost_so = 1.6;  // "front axle nut" for "front axle", on another machine
constexpr double called_more = 2;         // "gearbox oil drain plug" beside the engine's, for "drain plug"
using BestByMachine = std::map<std::string, double>;

// The least cost at which each machine has an entry among the hits.
BestByMachine best_by_machine(const std::vector<Hit>& hits) {
  BestByMachine best;
  for (const auto& hit : hits)
    for (const auto& fit : hit.entry->fits) best.try_emplace(machine_body(fit.make, fit.model), hit.cost);
  return best;
}

bool is_best_of_a_machine(const Hit& hit, const BestByMachine& best) {
  return std::ranges::any_of(hit.entry->fits, [&](const FitRecord& fit) {
    return hit.cost <= best.at(machine_body(fit.make, fit.model)) + as_good;
  });
}

// One measure picks many rows of a table; beside the parts of machines none of them is of use.
bool is_row_beside_parts(const Hit& hit, const Findings& findings) {
  return hit.entry->fits.empty() && !findings.reading.lengths.empty() &&
         !findings.answers.front().entry->fits.empty();
}

// "rear tyre pressure": of the rider alone and of two, where nobody said which.
bool differs_in_load(const EntryRecord& left, const EntryRecord& right, const QuestionReading& reading) {
  const auto load_of = [](const EntryRecord& entry) {
    const auto found = std::ranges::find(entry.fields, "load", &FieldRecord::key);
    return found == entry.fields.end() ? std::string() : found->text;
  };
  const auto of_left = load_of(left), of_right = load_of(right);
  if (of_left.empty() || of_right.empty() || of_left == of_right) return false;
  const auto is_said = [&](const std::string& load) {
    return std::ranges::any_of(words_of(fold(load)), [&](const std::string& word) {
      return std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
        return std::ranges::find(part.words, word) != part.words.end();
      });
    });
  };
  return !is_said(of_left) && !is_said(of_right);
}

// "rebound": of the fork and of the shock. The one says its place in its name, the other does not need to.
bool differs_in_place(const Hit& hit, const Hit& best) {
  const double named_after_place = hit.entry->kind == "setting" ? 2 : 1;  // a damper has all of them
  return hit.cost <= best.cost + named_after_place && hit.sheet->assembly != best.sheet->assembly;
}

// "upper yoke pinch bolts", "lower yoke pinch bolts": nobody said which.
bool differ_in_side(const EntryRecord& left, const EntryRecord& right, const QuestionReading& reading) {
  const auto one = words_of(fold(left.name)), other = words_of(fold(right.name));
  if (one.size() != other.size() || one == other) return false;
  const auto is_said = [&](const std::string& word) {
    return std::ranges::find(reading.sides, word) != reading.sides.end() ||
           std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
             return std::ranges::find(part.words, word) != part.words.end();
           });
  };
  for (std::size_t i = 0; i < one.size(); ++i)
    if (one[i] != other[i] && (opposite_of(one[i]) != other[i] || is_said(one[i]) || is_said(other[i])))
      return false;
  return true;
}

// "both drain plugs"
bool wants_several(const QuestionReading& reading) {
  return std::ranges::any_of(reading.parts,
                             [](const PartAsked& part) { return part.is_aspect && part.typed == "both"; });
}

// "drain plug" of a machine that has the engine's and the gearbox's: where nothing is called just that,
// another of its kind on the same sheet, which is called that and more, may as well be meant. So may all that
// have the size.
bool is_as_likely(const Hit& hit, const Hit& best, const QuestionReading& reading) {
  if (!hit.by_name || hit.entry->kind != best.entry->kind || reading.parts.empty()) return false;
  if (!reading.sizes.empty()) return !hit.entry->fits.empty() && hit.differs.empty();
  if (differs_in_load(*hit.entry, *best.entry, reading)) return true;
  const bool are_settings = hit.entry->kind == "setting" && hit.sheet->name != best.sheet->name;
  if (are_settings && differs_in_place(hit, best)) return true;  // "rebound clicks"
  if (hit.sheet->name == best.sheet->name && reading.sides.empty() &&
      differ_in_side(*hit.entry, *best.entry, reading))
    return true;
  if (hit.sheet->name != best.sheet->name && !differs_in_place(hit, best)) return false;
  if (hit.cost > best.cost + called_more) return false;
  std::set<std::string> asked(reading.sides.begin(), reading.sides.end());
  for (const auto& part : reading.parts)
    if (!part.groups.empty() ||
        !(part.is_aspect || is_ordinary(part.words.front())))  // "what do I do the oil drain plug up to"
      for (const auto& word : part.words) asked.insert(stem_of(word));
  const auto called = stems_of_name(*hit.entry), best_called = stems_of_name(*best.entry);
  const auto holds_all = [](const std::set<std::string>& all, const std::set<std::string>& some) {
    return std::includes(all.begin(), all.end(), some.begin(), some.end());
  };
  if (called.contains("dust") && !asked.contains("dust")) return false;  // "fork seal": what keeps the oil in
  const bool is_called_just_so = best_called == asked && !wants_several(reading);
  return holds_all(called, asked) && holds_all(best_called, asked) && !is_called_just_so;
}

// "slack through the case hole": the only one that has all of many words, some of them in its name, is meant,
// though most stand in its notes.
bool holds_all_alone(const std::vector<Hit>& hits, const QuestionReading& reading) {
  constexpr std::size_t many = 3;
  return hits.size() == 1 && hits.front().names_some && !hits.front().by_name &&
         hits.front().entry->kind != "tool" && reading.parts.size() >= many;
}

}  // namespace

bool is_tyre_alone(const QuestionReading& reading) {
  return reading.parts.size() == 1 && is_tyre_size(reading.parts.front().typed);
}

void split(Findings& findings, std::vector<Hit> hits, std::size_t most_answers) {
  if (!is_tyre_alone(findings.reading) && !holds_all_alone(hits, findings.reading))
    findings.total -= std::erase_if(hits, is_another_thing);
  findings.total -= keep_asked(hits, findings.reading);
  if (hits.empty()) return;
  const double best = hits.front().cost;
  const double limit = best < much_too_many ? best + as_good : best + much_too_many;
  const bool open_machine = findings.reading.machines.size() != 1;
  const auto of_machines = best_by_machine(hits);
  const Hit first = hits.front();
  for (auto& hit : hits) {
    const bool almost =
        open_machine && hit.cost <= best + called_almost_so && is_best_of_a_machine(hit, of_machines);
    const bool is_row_of_any =
        hit.entry->fits.empty() && !first.entry->fits.empty() && !findings.reading.machines.empty();
    const bool is_other = open_machine && is_other_fastener(*hit.entry, *first.entry, findings.reading);
    const bool is_answer = !is_row_of_any && !is_other &&
                           (hit.cost <= limit || almost || is_as_likely(hit, first, findings.reading));
    if (is_answer) {
      if (findings.answers.size() < most_answers) findings.answers.push_back(std::move(hit));
      continue;
    }
    --findings.total;  // a look at others is no more of the answer
    const bool is_alike = hit.by_name && hit.cost <= best + worth_a_look;
    if (is_alike && !is_row_beside_parts(hit, findings) && findings.also.size() < most_also)
      findings.also.push_back(std::move(hit));
  }
}

}  // namespace sheaf
