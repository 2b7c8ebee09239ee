// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/designated.h"

#include <algorithm>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/keep_asked.h"
#include "query/search/part_names.h"

namespace sheaf {
namespace {

bool is_designated(const QuestionReading& asked) {
  const bool is_thread_alone = !asked.threads.empty() && !asked.threads.front().length;
  const bool names_thread =
      is_thread_alone && std::ranges::none_of(asked.parts, names_a_part);  // "drill before an M5 tap"
  const bool asks_column = !asked.threads.empty() && asked.asks("tap-drill");
  return asks_column || !asked.codes.empty() || !asked.bearings.empty() || !asked.sizes.empty() ||
         names_thread;
}

// "61.5x2.65 epdm": what has that size, and the words wherever they stand, before the row of a table.
bool answer_with_what_holds_all(Findings& findings, Searcher& searcher) {
  if (findings.reading.sizes.empty() || findings.reading.parts.empty()) return false;
  auto hits = searcher.search(findings.reading, {.figures_named = false, .sides_stated = false}).hits;
  if (hits.empty()) return false;
  const double limit = hits.front().cost + as_good;
  std::erase_if(hits, [&](const Hit& hit) { return hit.cost > limit; });
  answer_with(findings, std::move(hits));
  return true;
}

// "38x45x5 ring", "6904 hub": the only part of that size, unless it is called a seal or a bearing and is
// none.
bool may_be_parts(const std::vector<Hit>& hits, const QuestionReading& asked) {
  const auto names_kind = [](const PartAsked& part) { return std::ranges::any_of(part.groups, kind_named); };
  const auto is_part = [](const Hit& hit) { return !hit.entry->fits.empty(); };
  const bool is_sized = !asked.sizes.empty() || !asked.bearings.empty();
  return is_sized && !asked.parts.empty() && std::ranges::none_of(asked.parts, names_kind) &&
         std::ranges::count_if(hits, is_part) == 1;
}

// "6904-2rs front hub": what has it there, before the row of a table.
bool answer_of_side(Findings& findings, Searcher& searcher) {
  constexpr std::size_t most = 3;
  const auto& asked = findings.reading;
  if (asked.sides.empty() || (asked.bearings.empty() && asked.sizes.empty())) return false;
  QuestionReading rest = asked;
  for (const auto& part : rest.parts) rest.left_aside.push_back(part.typed);
  rest.parts.clear();
  rest.figures.clear();
  auto hits = searcher.search(rest, {}).hits;
  std::erase_if(hits, [](const Hit& hit) { return hit.entry->fits.empty(); });
  if (hits.empty() || hits.size() > most) return false;
  findings.reading = std::move(rest);
  answer_with(findings, std::move(hits));
  return true;
}

// "20 35 7 behind front sprocket packlet": the only part of that size on the machine, whatever is said of its
// place.
bool answer_of_machine(Findings& findings, Searcher& searcher) {
  QuestionReading rest = findings.reading;
  for (const auto& part : rest.parts) rest.left_aside.push_back(part.typed);
  rest.parts.clear();
  rest.figures.clear();
  rest.sides.clear();
  auto hits = searcher.search(rest, {}).hits;
  if (!may_be_parts(hits, findings.reading)) return false;
  std::erase_if(hits, [](const Hit& hit) { return hit.entry->fits.empty(); });
  findings.reading = std::move(rest);
  answer_with(findings, std::move(hits));
  return true;
}

// "M60x1.5 ring nut": the only part with that thread, if what was named is what it is called; that it is a nut
// says too little.
bool answer_of_thread(Findings& findings, Searcher& searcher) {
  const auto& asked = findings.reading;
  if (asked.threads.size() != 1 || asked.parts.empty()) return false;
  QuestionReading rest = asked;
  rest.parts.clear();
  rest.figures.clear();
  auto [hits, total, is_exact] = searcher.search(rest, {});
  std::erase_if(hits, [](const Hit& hit) { return hit.entry->fits.empty(); });
  if (hits.size() != 1 || !is_exact) return false;
  const auto stems = stems_of_name(*hits.front().entry);
  const auto is_held = [&](const std::string& word) { return stems.contains(stem_of(word)); };
  const auto says_fastener = [](const std::string& word) { return !fastener_named({word}).empty(); };
  const auto is_aside = [&](const PartAsked& part) {
    return !std::ranges::all_of(
        part.words, [&](const std::string& word) { return is_held(word) || says_fastener(word); });
  };
  const auto names_it = [&](const PartAsked& part) {
    return !is_aside(part) && !std::ranges::all_of(part.words, says_fastener);
  };
  const auto names_other = [&](const PartAsked& part) { return is_aside(part) && names_a_part(part); };
  if (std::ranges::none_of(asked.parts, names_it) || std::ranges::any_of(asked.parts, names_other))
    return false;
  for (const auto& part : asked.parts)
    if (is_aside(part)) findings.reading.left_aside.push_back(part.typed);
  std::erase_if(findings.reading.parts, is_aside);
  answer_with(findings, std::move(hits));
  return true;
}

}  // namespace

bool answer_by_designation(Findings& findings, Searcher& searcher) {
  const bool is_number = !findings.reading.numbers.empty();
  if (!is_number && answer_of_thread(findings, searcher)) return true;
  if (!is_number && !findings.reading.machines.empty()) return answer_of_machine(findings, searcher);
  if (!is_number && !is_designated(findings.reading)) return false;
  if (!is_number && answer_with_what_holds_all(findings, searcher)) return true;
  if (answer_of_side(findings, searcher)) return true;
  QuestionReading rest = findings.reading;
  std::vector<std::string> aside;
  for (const auto& part : rest.parts) aside.push_back(part.typed);
  rest.parts.clear();
  rest.figures.clear();
  rest.sides.clear();
  if (!rest.codes.empty()) {  // "sae 90 at 100 °C"
    for (const auto& quantity : rest.quantities) aside.push_back(quantity.typed);
    rest.quantities.clear();
  }
  auto hits = searcher.search(rest, {.figures_named = false, .sides_stated = false}).hits;
  const bool of_parts = may_be_parts(hits, findings.reading);
  if (!is_number) std::erase_if(hits, [&](const Hit& hit) { return hit.entry->fits.empty() == of_parts; });
  if (hits.empty()) return false;
  auto& reading = findings.reading;
  std::erase_if(reading.corrections,
                [&](const Correction& each) { return std::ranges::find(aside, each.read) != aside.end(); });
  reading.left_aside.insert(reading.left_aside.end(), aside.begin(), aside.end());
  reading.parts.clear();
  answer_with(findings, std::move(hits));
  return true;
}

}  // namespace sheaf
