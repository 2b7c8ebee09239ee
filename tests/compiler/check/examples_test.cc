// SPDX-License-Identifier: GPL-2.0-or-later
// Each rule's own examples: the wrong one breaks that rule and no other, the right one none. They are
// compiled beside the published tables and the glossary, as a writer's sheet would be.
#include <doctest/doctest.h>

#include <string>

#include "compiler/check/check.h"
#include "compiler/sheet/workspace.h"
#include "tests/compiler/linking.h"

namespace {

using namespace sheafc;

Diagnostics reports_on(std::string_view example) {
  Diagnostics sink;
  auto shelf = read_workspace(std::vector<std::string>{"specs-yaml/standards", "specs-yaml/words"}, sink);
  REQUIRE(shelf);
  Workspace workspace = std::move(shelf).value();
  Workspace own = read_texts(sheets_in(example), sink);
  for (auto& sheet : own.sheets) workspace.sheets.push_back(std::move(sheet));
  const LinkedSheets linked = link_sheets(workspace.sheets, {}, sink);
  run_rules(linked, {.today = Date{2026, 11, 25}}, sink);
  sink.sort();
  for (const Diagnostic& report : sink.all()) MESSAGE(std::string(report.rule) << ": " << report.message);
  return sink;
}

}  // namespace

TEST_CASE("a rule's wrong example breaks that rule and no other") {
  for (const RuleInfo& rule : check_rules()) {
    if (rule.wrong.empty()) continue;
    CAPTURE(std::string(rule.name));
    const Diagnostics found = reports_on(rule.wrong);
    CHECK(!found.all().empty());
    for (const Diagnostic& report : found.all()) CHECK(std::string(report.rule) == std::string(rule.name));
  }
}

TEST_CASE("a rule's right example breaks none") {
  for (const RuleInfo& rule : check_rules()) {
    CAPTURE(std::string(rule.name));
    if (!rule.right.empty()) CHECK(reports_on(rule.right).all().empty());
  }
}
