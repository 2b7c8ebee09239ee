// SPDX-License-Identifier: GPL-2.0-or-later
// What is done with a word that no entry holds together with the others.
#include <doctest/doctest.h>

#include "query/search/find.h"
#include "query/search/read.h"
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
  for (const auto& hit : found.answers) all.push_back(hit.entry.address);
  return all;
}

}  // namespace

TEST_CASE("a word that names nothing here is left aside and said, where the rest is called just so") {
  const auto found =
      ask("fork oil clutch muleback 2013");  // "clutch" stands in a name, of no part that it names
  CHECK(answers(found) == Words{"old-fork/oil"});
  CHECK(found.reading.left_aside == Words{"clutch"});
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
  CHECK(answers(ask("oil muleback 2013, the fork top plug")).size() != 1);
}

TEST_CASE("a number may be the condition, and is said to be taken for it") {
  const auto found = ask("caliper pin muleback HK4-000200 17");
  for (const auto& hit : found.answers) CHECK(hit.entry.address == "brakes/pin");
}

TEST_CASE("an everyday thing before a part's name makes it the name of another") {
  CHECK(ask("helmet top plug muleback 2013").answers.empty());
  CHECK(answers(ask("top plug helmet muleback 2013")) == Words{"old-fork/top-plug"});
}

TEST_CASE("what is named first answers, and where it is may be left aside") {
  const auto found = ask("fork seal at the caliper pin muleback 2013");
  CHECK(answers(found) == Words{"old-fork/seal"});
  CHECK(found.reading.left_aside == Words{"caliper pin"});
}

TEST_CASE("what belongs to another thing is not answered by what is called so here") {
  CHECK(ask("fork seal for the caliper pin muleback 2013").answers.empty());
  CHECK(ask("fork seal of the sump plug muleback 2013").answers.empty());
}

TEST_CASE("a thing is answered though nobody records of it what was asked loosely, but not without its torque") {
  const auto found = ask("fork seal length muleback 2013");
  CHECK(answers(found) == Words{"old-fork/seal"});
  CHECK(found.reading.doubts == Words{"No “length” is recorded of it."});
  CHECK(ask("fork seal torque muleback 2013").answers.empty());
}

TEST_CASE("what is at hand is no figure of what is asked, but a bare number may be another machine's name") {
  CHECK(answers(ask("1 litre of fork oil muleback 2013")) == Words{"old-fork/oil"});
  CHECK(ask("muleback 450 fork oil").answers.empty());
  CHECK(ask("fork top plug 17 nm muleback 2013").answers.empty());
}
