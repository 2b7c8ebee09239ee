// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/link/addresses.h"

#include <algorithm>
#include <unordered_map>

#include "compiler/link/link_rules.h"
#include "query/library/hash.h"

namespace sheafc {

void Addresses::add(const LinkedSheet& sheet) {
  for (const LinkedEntry& entry : sheet.entries) {
    if (files_.empty() || files_.back() != entry.where.file) files_.push_back(entry.where.file);
    present_.push_back({sheaf::hash_of(entry.address), static_cast<std::uint32_t>(files_.size() - 1),
                        entry.where.line, entry.where.column, entry.where.length});
    const Value* own = entry.declaration ? entry.value("formerly") : nullptr;
    for (const std::string& address : entry.formerly) {
      former_.push_back(
          {address, entry.address, own ? own->where : sheet.place("formerly"), entry.where, sheet.borrowed});
    }
  }
}

const Addresses::Present* Addresses::present(const std::string& address) const {
  const auto at = std::ranges::lower_bound(present_, sheaf::hash_of(address), {}, &Present::hash);
  return at != present_.end() && at->hash == sheaf::hash_of(address) ? &*at : nullptr;
}

// An address that is in use belongs to the entry that has it; one that is not, to the first that had it.
void Addresses::report_taken(Diagnostics& sink) {
  if (former_.empty()) return;
  std::ranges::stable_sort(present_, {}, &Present::hash);
  std::stable_partition(former_.begin(), former_.end(),
                        [](const Former& former) { return !former.borrowed; });
  std::unordered_map<std::string_view, Holder> first;
  for (const Former& former : former_) {
    Holder holder{former.of, former.entry};
    if (const Present* taken = present(former.address)) {
      holder = {former.address, {files_[taken->file], taken->line, taken->column, taken->length}};
    }
    const Holder& other = first.emplace(former.address, std::move(holder)).first->second;
    if (other.address == former.of || former.borrowed) continue;
    sink.report({Severity::error,
                 rule::former_name_taken,
                 former.stated,
                 "the former address '" + former.address + "' of '" + former.of + "' is taken by '" +
                     other.address + "'",
                 {{Severity::note, rule::former_name_taken, other.where, "which stands here"}}});
  }
}

void report_taken_addresses(const LinkedSheets& sheets, Diagnostics& sink) {
  Addresses addresses;
  for (const auto* all : {&sheets.own(), &sheets.borrowed()}) {
    for (const LinkedSheet& sheet : *all) addresses.add(sheet);
  }
  addresses.report_taken(sink);
}

}  // namespace sheafc
