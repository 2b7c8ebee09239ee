// SPDX-License-Identifier: GPL-2.0-or-later
// What the rules' pages show must be true.
#include <doctest/doctest.h>

#include <set>

#include "compiler/link/link_rules.h"
#include "compiler/sheet/sheet_rules.h"
#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

std::vector<RuleInfo> rules() {
  std::vector<RuleInfo> all(sheet_rules().begin(), sheet_rules().end());
  all.insert(all.end(), link_rules().begin(), link_rules().end());
  return all;
}

}  // namespace

TEST_CASE("each rule's wrong example breaks that rule and no other, and the right one none") {
  for (const RuleInfo& rule : rules()) {
    CAPTURE(rule.name);
    if (rule.wrong.empty()) continue;
    const Linking wrong(rule.wrong);
    REQUIRE_FALSE(wrong.sink.all().empty());
    for (const Diagnostic& fault : wrong.sink.all()) CHECK_MESSAGE(fault.rule == rule.name, fault.message);
    const Linking right(rule.right);
    CHECK(right.faults() == "none");
  }
}

TEST_CASE("the examples that cannot be shown are few") {
  std::string without;
  for (const RuleInfo& rule : rules()) {
    if (rule.wrong.empty()) without += std::string(rule.name) + " ";
  }
  CHECK(without == "long-chain too-many-entries ");
}

TEST_CASE("rules have names of their own, and say what and why") {
  std::set<std::string_view> names;
  for (const RuleInfo& rule : source_rules()) names.insert(rule.name);
  for (const RuleInfo& rule : rules()) {
    CAPTURE(rule.name);
    CHECK(is_name(rule.name));
    CHECK(names.insert(rule.name).second);
    CHECK_FALSE(rule.summary.empty());
    CHECK_FALSE(rule.summary.ends_with('.'));
    CHECK(rule.why.ends_with('.'));
  }
}
