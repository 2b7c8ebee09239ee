// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/machine_of_chain.h"

#include <algorithm>

#include "query/search/measures.h"

namespace sheaf {

bool take_machine_of_chain(QuestionReading& reading, Searcher& searcher) {
  const auto is_chain = [](const PartAsked& part) {
    return std::ranges::find(part.words, "chain") != part.words.end();
  };
  const auto size = std::ranges::find_if(reading.lengths, names_chain);
  const auto chain = std::ranges::find_if(reading.parts, is_chain);
  if (!reading.machines.empty() || size == reading.lengths.end() || chain == reading.parts.end())
    return false;
  QuestionReading of_chain;
  of_chain.parts = {*chain};
  of_chain.parts.front().words = of_chain.parts.front().groups = {"chain"};
  of_chain.parts.front().groups_of_words = {{"chain"}};
  std::vector<Machine> machines;
  const Hits chains = searcher.search(of_chain, {});
  if (!chains.total_is_exact || chains.total != chains.hits.size()) return false;  // others may have one too
  for (const auto& hit : chains.hits)
    for (const auto& fit : is_described(*size, *hit.entry) ? hit.entry->fits : std::vector<FitRecord>{})
      if (std::ranges::none_of(machines, [&](const Machine& machine) {
            return machine.make == fit.make && machine.model == fit.model;
          }))
        machines.push_back({.make = fit.make, .model = fit.model});
  if (machines.size() != 1) return false;
  reading.doubts.push_back("Only the " + machines.front().make + " " + machines.front().model +
                           " has a chain of the size “" + size->typed + "” here.");
  reading.lengths.erase(size);
  reading.machine = machines.front().make + " " + machines.front().model;
  reading.machines = std::move(machines);
  return true;
}

}  // namespace sheaf
