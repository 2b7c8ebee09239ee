// SPDX-License-Identifier: GPL-2.0-or-later
// What the rules' pages show must be true.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "tests/compiler/source/reading.h"

using sheafc::Reading;
using sheafc::RuleInfo;

namespace {

bool is_kebab(std::string_view name) {
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
  return !name.empty() && std::all_of(name.begin(), name.end(), letter);
}

}  // namespace

TEST_CASE("each rule's wrong example breaks that rule and no other, and the right one none") {
  for (const RuleInfo& rule : sheafc::source_rules()) {
    CAPTURE(rule.name);
    if (rule.wrong.empty()) continue;
    const Reading wrong{std::string(rule.wrong)};
    REQUIRE(wrong.sink.all().size() == 1);
    CHECK(wrong.sink.all()[0].rule == rule.name);
    CHECK(wrong.sink.all()[0].severity == rule.severity);
    CHECK(Reading(std::string(rule.right)).faults() == "none");
  }
}

TEST_CASE("the examples that cannot be shown are few") {
  std::string without;
  for (const RuleInfo& rule : sheafc::source_rules()) {
    if (rule.wrong.empty()) without += std::string(rule.name) + " ";
  }
  CHECK(without == "too-large too-deep bad-yaml ");
}

TEST_CASE("rules have plain names, each its own, and say what and why") {
  std::set<std::string_view> names;
  for (const RuleInfo& rule : sheafc::source_rules()) {
    CAPTURE(rule.name);
    CHECK(is_kebab(rule.name));
    CHECK(names.insert(rule.name).second);
    CHECK_FALSE(rule.summary.empty());
    CHECK_FALSE(rule.summary.ends_with('.'));
    CHECK(rule.why.ends_with('.'));
  }
}
