// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/machine_of_chain.h"

#include <algorithm>

#include "query/search/measures.h"

namespace sheaf {

bool take_machine_of_chain(QuestionReading& reading, Searcher& searcher) {
  constexpr std::string_view sizes[] = {"415", "420", "425", "428", "520", "525", "530", "532", "630"};  // common practice, no source
  const auto is_size = [&](const LengthAsked& length) { return length.bare && std::ranges::find(sizes, length.typed) != std::end(sizes); };
  const auto is_chain = [](const PartAsked& part) { return std::ranges::find(part.words, "chain") != part.words.end(); };
  const auto size = std::ranges::find_if(reading.lengths, is_size);
  const auto chain = std::ranges::find_if(reading.parts, is_chain);
  if (!reading.machines.empty() || size == reading.lengths.end() || chain == reading.parts.end()) return false;
  QuestionReading of_chain;
  of_chain.parts = {*chain};
  of_chain.parts.front().words = of_chain.parts.front().groups = {"chain"};
  of_chain.parts.front().groups_of_words = {{"chain"}};
  std::vector<Machine> machines;
  for (const auto& hit : searcher.search(of_chain, {}).hits)
    for (const auto& fit : is_described(*size, hit.entry) ? hit.entry.fits : std::vector<FitRecord>{})
      if (std::ranges::none_of(machines, [&](const Machine& machine) { return machine.make == fit.make && machine.model == fit.model; }))
        machines.push_back({.make = fit.make, .model = fit.model});
  if (machines.size() != 1) return false;
  reading.lengths.erase(size);
  reading.machine = machines.front().make + " " + machines.front().model;
  reading.machines = std::move(machines);
  return true;
}

}  // namespace sheaf
