// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_shelf.h"

#include <iterator>

#include "query/answer/match_row.h"
#include "query/library/index_terms.h"
#include "query/search/of_kind.h"

namespace sheaf {
namespace {

constexpr std::size_t most_rows = 5000;  // of one kind: the longest published table has a tenth of that
constexpr std::size_t most_kept = 200;   // sizes whose entries are kept: those of one bin are much alike

}  // namespace

Result<const Shelf::Table*> Shelf::table(std::string_view kind) {
  if (const auto known = tables_.find(kind); known != tables_.end()) return &known->second;
  Table table;
  for (Library* library : libraries_) {
    auto rows = entries_of_kind(*library, kind, most_rows);
    if (!rows) return rows.failure();
    std::ranges::move(std::move(rows).value(), std::back_inserter(table.rows));
  }
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const auto size = size_row(table.rows[i]);
    if (!size) continue;
    table.sizes.push_back(*size);
    table.row_of_size.push_back(i);
  }
  return &tables_.emplace(kind, std::move(table)).first->second;
}

Result<const Shelf::Sizes*> Shelf::sizes(Library& library, RingShape shape) {
  const std::pair<const Library*, bool> which{&library, shape == RingShape::o_ring};
  if (const auto known = sizes_.find(which); known != sizes_.end()) return &known->second;
  auto keys = size_keys(library);
  if (!keys) return keys.failure();
  Sizes sizes;
  for (auto& key : *keys) {
    const auto size = parse_size(key, Input::sheet);
    const auto row = size ? row_from_size(*size, shape) : std::nullopt;
    if (!row) continue;
    sizes.rows.push_back(*row);
    sizes.keys.push_back(std::move(key));
  }
  return &sizes_.emplace(which, std::move(sizes)).first->second;
}

Result<const SizedEntries*> Shelf::entries(Library& library, std::string_view kind,
                                           const std::string& size_key, std::size_t most) {
  std::tuple which{static_cast<const Library*>(&library), std::string(kind), size_key, most};
  if (const auto known = entries_.find(which); known != entries_.end()) return &known->second;
  auto found = entries_with(library, {term(Prefix::kind, kind), term(Prefix::size, size_key)}, most);
  if (!found) return found.failure();
  if (entries_.size() == most_kept) entries_.clear();
  return &entries_.emplace(std::move(which), std::move(found).value()).first->second;
}

}  // namespace sheaf
