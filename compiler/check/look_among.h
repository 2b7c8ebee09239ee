// SPDX-License-Identifier: GPL-2.0-or-later
// A look at those sheets that are at hand. Internal to check.
#pragma once

#include <cstdint>
#include <functional>
#include <set>
#include <span>
#include <unordered_map>

#include "compiler/check/check.h"
#include "compiler/check/rule_set.h"

namespace sheafc {

// Ends the judgement of one group; caught in this folder.
struct NotAmongThem {
  std::uint32_t sheet;
};

class LookAmong : public Look {
 public:
  using Statements = std::function<std::span<const std::uint32_t>(std::uint32_t sheet)>;
  LookAmong(std::span<const NumberedSheet> sheets, Statements statements)
      : statements_(std::move(statements)) {
    for (const NumberedSheet& sheet : sheets) sheets_.emplace(sheet.number, sheet.sheet);
  }

  const LinkedSheet& sheet(const Fact& fact) override {
    const auto found = sheets_.find(fact.sheet);
    if (found == sheets_.end()) throw NotAmongThem{fact.sheet};
    return *found->second;
  }
  std::span<const std::uint32_t> statements(const Fact& fact) override { return statements_(fact.sheet); }

  bool contains(std::uint32_t number) const { return sheets_.contains(number); }

  // Whom a judgement that ended for want of a sheet is likely to look at, so that it need not be begun for
  // each of them.
  static void add_likely(FactGroup group, const NotAmongThem& missing, std::set<std::uint32_t>& wanted) {
    constexpr std::size_t few_facts = 16;
    wanted.insert(missing.sheet);
    if (group.size() > few_facts) return;
    for (const Fact& fact : group) wanted.insert(fact.sheet);
  }

 private:
  Statements statements_;
  std::unordered_map<std::uint32_t, const LinkedSheet*> sheets_;
};

}  // namespace sheafc
