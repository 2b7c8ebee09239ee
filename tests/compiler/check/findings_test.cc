// SPDX-License-Identifier: GPL-2.0-or-later
// What is found again after a change of one sheet is what a run over all sheets finds.
#include "compiler/check/findings.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <deque>
#include <random>
#include <set>

#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

const CheckOptions options{.today = Date{2026, 11, 25}};

std::mt19937 random_numbers(20261129);

std::string one_of(std::initializer_list<const char*> all) {
  return all.begin()[random_numbers() % all.size()];
}

std::string name_of(std::size_t number) { return std::string("fork-") + static_cast<char>('a' + number); }

// Sheets that have much to say to each other: few machines, names, part numbers and figures. Every fifth is
// based on its neighbour.
std::string random_sheet(std::size_t number) {
  std::string text = "# file: " + name_of(number) + ".yaml\nsheet: " + name_of(number) +
                     "\ntitle: A fork\nassembly: fork\nmaker: Sorvane\n";
  if (number % 5 == 4) text += "based-on: " + name_of(number - 1) + "\n";
  text += "fits: { make: Haldrek, model: Muleback " + one_of({"380", "500"}) +
          ", years: " + one_of({"2011..2013", "2012..", "2016.."}) + " }\n";
  text += "checked: { on: " + one_of({"2020-01-02", "2026-10-02", "2026-10-02", "2026-10-03"}) +
          ", by: workshop }\n";
  text += "source: { title: Sorvane fork service leaflet 41 }\n";
  if (random_numbers() % 30 == 0)
    text += "allow: { " + one_of({"twin-sheets", "two-answers", "checked-long-ago"}) + ": \"so it is\" }\n";
  text += "fasteners:\n";
  for (int i = 0; i < 7; ++i) {
    if (i > 3 && random_numbers() % 8 == 0) continue;
    text += "  screw-" + std::to_string(i) + ": { name: " + one_of({"cap", "cover", "guard"}) + " screw " +
            std::to_string(i) + ", thread: " + one_of({"M6x1", "M6x1", "M8x1.25"}) +
            ", torque: " + one_of({"9", "9", "9", "9", "9", "9", "9", "9", "10", "90"}) + " N·m, state: dry";
    if (random_numbers() % 3 == 0) text += ", part-number: P-" + one_of({"1", "2", "3"});
    if (random_numbers() % 9 == 0)
      text += ", superseded-by: { number: P-" + one_of({"1", "2", "3"}) + ", interchangeable: yes }";
    if (random_numbers() % 90 == 0)
      text += ", allow: { " + one_of({"torque-unlike-peers", "two-answers", "successor-differs"}) +
              ": \"so it is\" }";
    text += " }\n";
  }
  return text;
}

std::string joined(const std::vector<std::string>& sheets) {
  std::string all;
  for (const std::string& sheet : sheets) all += sheet;
  return all;
}

std::string text_of(const Diagnostics& reports) {
  std::string text;
  for (const Diagnostic& report : reports.all()) {
    text += std::string(report.where.file) + ":" + std::to_string(report.where.line) + " " +
            std::string(report.rule) + " " + report.message + "\n";
    for (const Diagnostic& note : report.notes)
      text += "  " + std::string(note.where.file) + ":" + std::to_string(note.where.line) + "\n";
  }
  return text;
}

void check_same(const Findings& one, const Findings& other) {
  CHECK(one.told.all().facts == other.told.all().facts);
  CHECK(one.told.all().statements == other.told.all().statements);
  REQUIRE(one.sheets.size() == other.sheets.size());
  for (std::size_t i = 0; i < one.sheets.size(); ++i) {
    CHECK(text_of(one.sheets[i].reports) == text_of(other.sheets[i].reports));
    CHECK(one.sheets[i].allows == other.sheets[i].allows);
  }
  REQUIRE(one.groups.size() == other.groups.size());
  for (std::size_t i = 0; i < one.groups.size(); ++i) {
    CHECK(one.groups[i].alike == other.groups[i].alike);
    CHECK(one.groups[i].looked_at == other.groups[i].looked_at);
    CHECK(text_of(one.groups[i].reports) == text_of(other.groups[i].reports));
  }
}

// What findings point into.
using Kept = std::deque<Linking>;

// Runs the rules again with no more sheets than they ask for; how many that were.
std::size_t find_again(const std::vector<std::string>& sheets, std::size_t changed, Findings& findings,
                       Diagnostics& sink, Kept& kept) {
  std::vector<std::string> names;
  std::vector<std::uint32_t> examined;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    names.push_back(name_of(i));
    const bool based_on_it = i % 5 == 4 && i == changed + 1;
    if (i == changed || based_on_it || findings.sheets[i].allows)
      examined.push_back(static_cast<std::uint32_t>(i));
  }
  std::set<std::size_t> few(examined.begin(), examined.end());
  while (true) {
    for (const std::size_t number : std::set(few)) {
      if (number % 5 == 4) few.insert(number - 1);
    }
    std::string text;
    for (const std::size_t number : few) text += sheets[number];
    const Linking& linking = kept.emplace_back(text);
    REQUIRE(linking.faults() == "none");
    const auto missing = run_rules_again({linking.linked, names, examined}, options, findings, sink);
    if (missing.empty()) return few.size();
    REQUIRE_FALSE(few.contains(missing.front()));
    few.insert(missing.begin(), missing.end());
  }
}

}  // namespace

TEST_CASE("one random change after another: the findings and the reports of a run over all sheets") {
  constexpr std::size_t count = 20, changes = 60;
  Kept kept;
  std::vector<std::string> sheets;
  for (std::size_t i = 0; i < count; ++i) sheets.push_back(random_sheet(i));
  Findings findings;
  Diagnostics first;
  run_rules(kept.emplace_back(joined(sheets)).linked, options, first, &findings);
  REQUIRE(kept.back().faults() == "none");
  std::size_t few = 0;
  std::set<std::string> rules;
  for (std::size_t change = 0; change < changes; ++change) {
    CAPTURE(change);
    const std::size_t number = random_numbers() % count;
    sheets[number] = random_sheet(number);
    Diagnostics again, all;
    few += find_again(sheets, number, findings, again, kept);
    Findings clean;
    run_rules(kept.emplace_back(joined(sheets)).linked, options, all, &clean);
    check_same(findings, clean);
    CHECK(text_of(again) == text_of(all));
    for (const Diagnostic& report : all.all()) rules.insert(std::string(report.rule));
  }
  for (const std::string rule :
       {"torque-unlike-peers", "two-answers", "twin-sheets", "checked-long-ago", "supersession-circle",
        "successor-differs", "years-overlap", "allowance-unused"}) {
    CAPTURE(rule);
    CHECK(rules.contains(rule));
  }
  CHECK(few < changes * count);
}

TEST_CASE("a change that nobody minds asks for no other sheet") {
  Kept kept;
  std::vector<std::string> sheets;
  for (std::size_t i = 0; i < 10; ++i) {
    sheets.push_back("# file: " + name_of(i) + ".yaml\nfasteners:\n  screw: { name: cover screw " +
                     std::to_string(i) + ", thread: M6x1, torque: 9 N·m, state: dry }\n");
  }
  Findings findings;
  Diagnostics sink;
  run_rules(kept.emplace_back(joined(sheets)).linked, options, sink, &findings);
  sheets[5].replace(sheets[5].find("9 N"), 1, "8");
  CHECK(find_again(sheets, 5, findings, sink, kept) == 1);
}
