// SPDX-License-Identifier: GPL-2.0-or-later
// What is answered where nothing holds all that was asked: what is likeliest, if it is likely enough.
#include <doctest/doctest.h>

#include "query/search/find.h"
#include "query/search/read.h"
#include "query/search/short_form.h"
#include "tests/query/search/small_library.h"

using namespace sheaf;

namespace {

Findings ask(const std::string& words) {
  static test::SmallLibrary made;
  Lexicon lexicon({&made.library()});
  auto found = find(Request{.words = words}, lexicon);
  REQUIRE_MESSAGE(found, words);
  return std::move(found).value();
}

using Words = std::vector<std::string>;

Words answers(const Findings& found) {
  Words all;
  for (const auto& hit : found.answers) all.push_back(hit.entry->address);
  return all;
}

}  // namespace

TEST_CASE("a word that another thing is called by is not left aside") {
  CHECK(answers(ask("fork oil muleback 2013")) == Words{"old-fork/oil"});
  CHECK(ask("fork oil clutch muleback 2013").answers.empty());
}

TEST_CASE("short forms that no table lists are read as words of the name, and said") {
  CHECK(short_for("hd", {"cylinder", "head", "bolts"}) == std::vector<std::size_t>{1});
  CHECK(short_for("camspkt", {"cam", "sprocket", "bolts"}) == std::vector<std::size_t>{0, 1});
  CHECK(short_for("forkplugs", {"fork", "top", "plug"}) == std::vector<std::size_t>{0, 2});
  CHECK(short_for("head", {"head"}).empty());
  CHECK(short_for("ab", {"cab"}).empty());
  CHECK(short_for("h", {"head"}).empty());
  const auto found = ask("frk top plg muleback 2013");
  CHECK(answers(found) == Words{"old-fork/top-plug"});
}

TEST_CASE("what is of the other side, or withdrawn, is never the likeliest") {
  CHECK(ask("front caliper pad pin zbrgl HK4-000200 muleback").answers.empty());
  CHECK(answers(ask("fork oil length muleback 2013")) == Words{"old-fork/oil"});
  auto content = test::small_content();
  content.sheets.back().entries.front().withdrawn = {{"2026-01-02", "misread", ""}};
  test::SmallLibrary made(content, "withdrawn");
  Lexicon lexicon({&made.library()});
  const auto found = find(Request{.words = "fork oil length muleback 2013"}, lexicon);
  REQUIRE(found);
  for (const auto& hit : found->answers) CHECK(hit.entry->withdrawn.empty());
}

TEST_CASE("what took the place of a withdrawn figure answers for it, and the withdrawal is said") {
  auto content = test::small_content();
  auto& fork = content.sheets.back();
  auto first = fork.entries.back();
  first.address = "old-fork/first-plug";
  first.name = "fork top plug, first edition";
  first.withdrawn = {{"2026-01-02", "of another plug", "old-fork/top-plug"}};
  fork.entries.push_back(first);
  test::SmallLibrary made(content, "successor");
  Lexicon lexicon({&made.library()});
  const auto found = find(Request{.words = "fork top plug first edition muleback 2013"}, lexicon);
  REQUIRE(found);
  CHECK(answers(*found) == Words{"old-fork/top-plug"});
  REQUIRE(found->also.size() == 1);
  CHECK(found->also.front().entry->address == "old-fork/first-plug");
  CHECK(found->reading.doubts ==
        Words{"“fork top plug, first edition” was withdrawn 2026-01-02: of another plug"});
  content.sheets.back().entries.back().name =
      "fork top plug";  // called just as its successor is, which is given once
  test::SmallLibrary alike(content, "alike");
  Lexicon words({&alike.library()});
  const auto both = find(Request{.words = "fork top plug muleback 2013"}, words);
  REQUIRE(both);
  CHECK(answers(*both) == Words{"old-fork/top-plug"});
  CHECK(both->total == 1);
}

TEST_CASE("what a filter asks for is never weighed away") {
  static test::SmallLibrary made;
  Lexicon lexicon({&made.library()});
  const auto found =
      find(Request{.words = "fork top plug clutch muleback 2013", .filters = {.thread = "M6"}}, lexicon);
  REQUIRE(found);
  CHECK(found->answers.empty());
}

TEST_CASE("nothing is left aside without a machine, or where the rest is said of many things") {
  CHECK(ask("fork oil clutch").answers.empty());
  CHECK(ask("clutch oil muleback 2013").answers.empty());
}

TEST_CASE("what another machine has is not left aside on one that has it not") {
  CHECK(ask("gearbox drain plug muleback").answers.empty());
}

TEST_CASE("a part number says all, whatever stands beside it") {
  const auto found = ask("41-2237-A clutch");
  CHECK(answers(found) == Words{"old-fork/seal"});
  CHECK(found.reading.left_aside == Words{"clutch"});
}

TEST_CASE("a figure of a condition must stand in the entry's own words") {
  CHECK(ask("fork oil at 5000 rpm muleback 2013").answers.empty());
}

TEST_CASE("what people say around a question counts for nothing, in five languages") {
  for (const auto* words :
       {"whats the recommended top plug torque on my muleback 2013 please",
        "gib mir bitte den top plug vom muleback 2013", "quel est le top plug de ma muleback 2013",
        "dime cual es el top plug para mi muleback 2013", "dimmi quale top plug per la mia muleback 2013",
        "when replacing the top plug on a muleback 2013"})
    CHECK_MESSAGE(answers(ask(words)) == Words{"old-fork/top-plug"}, words);
}

TEST_CASE("a word such as 'max' or 'two' that no name holds is not missed") {
  CHECK(answers(ask("max top plug torque muleback 2013")) == Words{"old-fork/top-plug"});
  CHECK(answers(ask("the two top plugs muleback 2013")) == Words{"old-fork/top-plug"});
  CHECK(ask("two units muleback zephyr").answers.empty());
}

TEST_CASE("what stands behind a comma or 'with' may only describe, where the name before is enough") {
  const auto found = ask("fork top plug muleback 2013, the one with the oil below");
  CHECK(answers(found) == Words{"old-fork/top-plug"});
}

TEST_CASE("a number may be the condition, and is said to be taken for it") {
  const auto found = ask("caliper pin muleback HK4-000200 17");
  for (const auto& hit : found.answers) CHECK(hit.entry->address == "brakes/pin");
}

TEST_CASE("an everyday thing before a part's name makes it the name of another") {
  CHECK(ask("helmet top plug muleback 2013").answers.empty());
  CHECK(answers(ask("top plug helmet muleback 2013")) == Words{"old-fork/top-plug"});
}

TEST_CASE("what belongs to another thing is not answered by what is called so here") {
  CHECK(ask("fork seal for the caliper pin muleback 2013").answers.empty());
  CHECK(ask("fork seal of the sump plug muleback 2013").answers.empty());
}

TEST_CASE(
    "a thing is answered though nobody records of it what was asked loosely, but not without its torque") {
  const auto found = ask("fork seal length muleback 2013");
  CHECK(answers(found) == Words{"old-fork/seal"});
  CHECK(found.reading.unstated == Words{"length"});
  CHECK(ask("fork seal torque muleback 2013").answers.empty());
}

TEST_CASE("what is at hand is no figure of what is asked, but a bare number may be another machine's name") {
  CHECK(answers(ask("1 litre of fork oil muleback 2013")) == Words{"old-fork/oil"});
  CHECK(ask("muleback 450 fork oil").answers.empty());
  const auto found = ask("fork top plug 17 nm muleback 2013");
  CHECK(answers(found) == Words{"old-fork/top-plug"});
  CHECK(found.reading.left_aside == Words{"17 nm"});
}
