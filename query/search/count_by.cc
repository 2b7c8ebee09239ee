// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/count_by.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace sheaf {
namespace {

constexpr std::array<std::string_view, 7> facets = {"machine", "kind",  "assembly", "sheet",
                                                    "thread",  "drive", "size"};

std::set<std::string> values_of(std::string_view facet, const Hit& hit) {
  if (facet == "kind") return {hit.entry->kind};
  if (facet == "assembly") return {hit.sheet->assembly};
  if (facet == "sheet") return {hit.sheet->name};
  std::set<std::string> values;
  if (facet == "machine")
    for (const auto& fit : hit.entry->fits) values.insert(fit.make + " " + fit.model);
  else
    for (const auto& field : hit.entry->fields)
      if (field.key == facet) values.insert(field.text);
  return values;
}

}  // namespace

std::span<const std::string_view> all_facets() { return facets; }

std::vector<FacetCount> count_by(std::string_view facet, const std::vector<Hit>& hits) {
  std::map<std::string, std::size_t> entries;
  for (const auto& hit : hits)
    for (const auto& value : values_of(facet, hit))
      if (!value.empty()) ++entries[value];
  std::vector<FacetCount> counts;
  for (const auto& [value, number] : entries) counts.push_back({value, number});
  std::ranges::stable_sort(counts, std::ranges::greater(), &FacetCount::entries);
  return counts;
}

}  // namespace sheaf
