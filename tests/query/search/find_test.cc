// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/find.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "query/search/complete.h"
#include "tests/query/search/small_library.h"

using namespace sheaf;
using sheaf::test::SmallLibrary;

namespace {

SmallLibrary& small() {
  static SmallLibrary made;
  return made;
}

Findings ask(const std::string& words, const Filters& filters = {}) {
  Lexicon lexicon({&small().library()});
  auto found = find(Request{.words = words, .filters = filters}, lexicon);
  REQUIRE_MESSAGE(found, words);
  return std::move(found).value();
}

using Addresses = std::vector<std::string>;

Addresses addresses(const std::vector<Hit>& hits) {
  Addresses all;
  for (const auto& hit : hits) all.push_back(hit.entry->address);
  return all;
}

Addresses answers(const std::string& words, const Filters& filters = {}) {
  return addresses(ask(words, filters).answers);
}

}  // namespace

TEST_CASE("a year chooses between a fork and its successor, whatever the order of words") {
  CHECK(answers("top plug muleback 2013") == Addresses{"old-fork/top-plug"});
  CHECK(answers("2013 MULEBACK, Top Plug!") == Addresses{"old-fork/top-plug"});
  CHECK(answers("top plug muleback 2016") == Addresses{"new-fork/top-plug"});
  CHECK(answers("top plug muleback 2015") == Addresses{"old-fork/top-plug"});
}

TEST_CASE("a year that nothing fits is answered by nothing, and says what there is") {
  const auto found = ask("top plug muleback 2009");
  CHECK(found.answers.empty());
  CHECK(found.also.empty());
  CHECK(found.why_near == Near::other_years);
  CHECK(addresses(found.near) == Addresses{"new-fork/top-plug", "old-fork/top-plug"});
}

TEST_CASE("another machine's part is never the answer") {
  const auto found = ask("gearbox drain plug muleback");
  CHECK(found.answers.empty());
  CHECK(found.why_near == Near::other_machines);
  CHECK(addresses(found.near) == Addresses{"engine/gearbox-plug"});
}

TEST_CASE("a word or a number that nobody knows may be a machine: no figure of another answers") {
  for (const char* question :
       {"top plug zephyr", "top plug zephyr 600", "muleback 450 top plug", "top plug torque xj9000"}) {
    const auto found = ask(question);
    CHECK_MESSAGE(found.answers.empty(), question);
    const bool is_said = !found.reading.unread.empty() || !found.reading.lengths.empty();
    CHECK_MESSAGE(is_said, question);
  }
}

TEST_CASE("beside a machine that is known, a word that is not is left out and said") {
  const auto found = ask("top plug muleback 2013 qwertz");
  CHECK(addresses(found.answers) == Addresses{"old-fork/top-plug"});
  CHECK(found.reading.unread == std::vector<std::string>{"qwertz"});
}

TEST_CASE("words of other languages and synonyms meet the same part") {
  for (const char* question :
       {"Gabelverschluss Muleback 2013", "top cap muleback 2013", "fork cap muleback 2013"})
    CHECK_MESSAGE(answers(question) == Addresses{"old-fork/top-plug"}, question);
}

TEST_CASE("slips in words are corrected and said; digits never are") {
  const auto found = ask("muelback top plgu 2013");
  CHECK(addresses(found.answers) == Addresses{"old-fork/top-plug"});
  CHECK(found.reading.corrections.size() == 2);
  CHECK(ask("41x54x12").answers.empty());
  CHECK(ask("41-2238-B").answers.empty());
  CHECK(ask("m39x1.5").answers.empty());
}

TEST_CASE("a part that is called so goes before a long note that repeats it") {
  CHECK(answers("top plug screehorn").empty());
  CHECK(answers("clutch nut screehorn") == Addresses{"engine/long-note"});
  const auto all = answers("top plug");
  CHECK(std::ranges::find(all, "engine/long-note") == all.end());
}

TEST_CASE("sizes match by number in every notation and order") {
  for (const char* question :
       {"41x54x11", "41 54 11", "41 × 54 × 11", "54*41*11", "seal 41 mm tube 54 bore", "ø41 seal"})
    CHECK_MESSAGE(answers(question) == Addresses{"old-fork/seal"}, question);
}

TEST_CASE("near is never equal") {
  const auto found = ask("41.3x54x11");
  CHECK(found.answers.empty());
  REQUIRE(found.why_near == Near::other_sizes);
  CHECK(found.near.front().entry->address == "old-fork/seal");
  CHECK(found.near.front().differs == "inside −0.3\u00A0mm");
}

TEST_CASE("what has the very size comes with what nearly has it, apart") {
  const auto found = ask("fork seal 43");
  CHECK(addresses(found.answers) == Addresses{"new-fork/seal"});
  for (const auto& hit : found.near) CHECK(!hit.differs.empty());
}

TEST_CASE("threads, drives, numbers and quantities") {
  CHECK(answers("M38 x 1,5") == Addresses{"old-fork/top-plug"});
  CHECK(answers("27mm socket") == Addresses{"old-fork/top-plug"});
  CHECK(answers("412237b") == Addresses{"old-fork/seal"});
  CHECK(answers("41-2237-A") == Addresses{"old-fork/seal"});
  CHECK(answers("41-22x7-B") == Addresses{"old-fork/seal"});
  CHECK(answers("over 80 nm screehorn") == Addresses{"engine/long-note"});
  CHECK(answers("512 cc fork oil") == Addresses{"old-fork/oil"});
  CHECK(answers("fork oil level muleback 2013") == Addresses{"old-fork/oil"});
}

TEST_CASE("the length of a screw is not another's, and a thread that nobody cuts is none") {
  CHECK(answers("M38x1.5").size() == 1);
  CHECK(answers("M38x3").empty());
}

TEST_CASE("beside a word that nobody knows, a nut is any nut: nothing answers") {
  CHECK(ask("blorf nut screehorn").answers.empty());
  CHECK(ask("blorf 450 clutch nut").answers.empty());
  CHECK(answers("clutch nut blorf screehorn") == Addresses{"engine/long-note"});
}

TEST_CASE("a year beside a unit is a year, and what is offered beside an answer is called like it") {
  CHECK(answers("top plug muleback 2013 nm") == Addresses{"old-fork/top-plug"});
  for (const auto& hit : ask("top plug muleback 2013").also) CHECK(hit.by_name);
}

TEST_CASE("what is asked of a part must be stated") {
  const auto found = ask("fork oil torque muleback 2013");
  CHECK(found.answers.empty());
  CHECK(found.why_near == Near::figure_not_stated);
}

TEST_CASE("the wrong side is not an answer") {
  const auto found = ask("front caliper pin muleback");
  CHECK(found.answers.empty());
  CHECK(answers("rear caliper pin muleback").size() == 2);
}

TEST_CASE("a frame number decides where a year is split") {
  const auto both = ask("rear pad pin muleback 2012");
  CHECK(both.answers.size() == 2);
  const auto early = ask("rear pad pin muleback 2012", Filters{.frame = "HK4-000200"});
  REQUIRE(early.answers.size() == 1);
  CHECK(early.answers.front().entry->variant == "frames HK4-000100..HK4-004999");
  CHECK(ask("rear pad pin muleback 2012", Filters{.frame = "HK4-005000"}).answers.at(0).entry->variant ==
        "frames HK4-005000..");
  CHECK(ask("rear pad pin muleback 2012", Filters{.frame = "HK5-000200"}).answers.empty());
}

TEST_CASE("filters narrow as words do, and what they do not understand is a fault") {
  CHECK(answers("top plug", Filters{.machine = "muleback", .year = 2013}) == Addresses{"old-fork/top-plug"});
  CHECK(answers("", Filters{.machine = "screehorn", .kind = "fastener"}).size() == 2);
  CHECK(answers("", Filters{.between = "80..100 N·m"}) == Addresses{"engine/long-note"});
  Lexicon lexicon({&small().library()});
  CHECK_FALSE(find(Request{.filters = {.kind = "nonsense"}}, lexicon));
  CHECK_FALSE(find(Request{.filters = {.machine = "zephyr"}}, lexicon));
  CHECK_FALSE(find(Request{.filters = {.thread = "not a thread"}}, lexicon));
  CHECK_FALSE(find(Request{.filters = {.between = "lots"}}, lexicon));
}

TEST_CASE("a question for no part is answered by whole sheets") {
  CHECK(ask("").shelf.size() == 4);
  CHECK(ask("?").shelf.size() == 4);
  CHECK(ask("muleback 2013").shelf.size() == 2);
  CHECK(ask("rear brake muleback").shelf.size() == 1);
}

TEST_CASE("what differs in a load or a place that nobody said is offered together") {
  auto content = test::small_content();
  auto& fork = content.sheets.back();
  const auto add = [&](SheetRecord& sheet, const std::string& id, const std::string& kind,
                       const std::string& name, std::vector<FieldRecord> fields) {
    auto entry = sheet.entries.front();
    entry.address = sheet.name + "/" + id;
    entry.kind = kind;
    entry.name = name;
    entry.fields = std::move(fields);
    entry.fits = fork.fits;
    sheet.entries.push_back(std::move(entry));
  };
  add(fork, "alone", "pressure", "tyre pressure", {{"value", "2.0 bar", {}}, {"load", "rider alone", {}}});
  add(fork, "two-up", "pressure", "tyre pressure, two-up",
      {{"value", "2.8 bar", {}}, {"load", "rider and passenger", {}}});
  add(fork, "rebound", "setting", "rebound damping", {{"standard", "11 clicks out", {}}});
  auto& engine = content.sheets[1];
  add(engine, "rebound", "setting", "engine rebound damping", {{"standard", "12 clicks out", {}}});
  SmallLibrary made(content, "loads");
  Lexicon lexicon({&made.library()});
  const auto answered = [&](const std::string& words) {
    auto found = find(Request{.words = words}, lexicon);
    REQUIRE_MESSAGE(found, words);
    return addresses(found->answers);
  };
  CHECK(answered("tyre pressure muleback 2013") == Addresses{"old-fork/alone", "old-fork/two-up"});
  CHECK(answered("tyre pressure muleback 2013 passenger") == Addresses{"old-fork/two-up"});
  CHECK(answered("rebound muleback 2013").size() == 2);
  CHECK(answered("engine rebound muleback 2013") == Addresses{"engine/rebound"});
}

TEST_CASE("what was named first goes first among equals") {
  LibraryContent shop;
  shop.name = "shop";
  shop.sheets = {test::small_content().sheets.back()};
  shop.words = test::small_content().words;
  SmallLibrary own(shop, "shop");
  Lexicon lexicon({&own.library(), &small().library()});
  auto found = find(Request{.words = "top plug muleback 2013"}, lexicon);
  REQUIRE(found);
  REQUIRE(found->answers.size() == 2);
  CHECK(found->answers[0].library == 0);
  CHECK(found->answers[1].library == 1);
}

TEST_CASE("the word being typed is offered from its first letter, and completed from its third") {
  Lexicon lexicon({&small().library()});
  const auto offers = complete("fork s", lexicon, 5);
  CHECK(std::ranges::find(offers, "seal", &Offer::word) != offers.end());
  const auto machines = complete("mul", lexicon, 5);
  CHECK(std::ranges::find(machines, "muleback", &Offer::word) != machines.end());
  CHECK(complete("", lexicon, 5).empty());
  CHECK(complete("fork ", lexicon, 5).empty());
  CHECK(completed("top plu", lexicon) == "top plug");
  CHECK(completed("to", lexicon) == "to");
  CHECK(completed("m38x1", lexicon) == "m38x1");
}

TEST_CASE("nothing typed is a fault, a crash or a hang") {
  const std::string signs = "ab \"'*()[]{}<>:;-+~^?!#@|&/\\.,0123456789xXmMøØ×–µ½\xC3\xFF\x01\t\n";
  std::mt19937 random(7);
  for (int i = 0; i < 3000; ++i) {
    std::string question;
    const std::size_t length = random() % 80;
    for (std::size_t at = 0; at < length; ++at) question += signs[random() % signs.size()];
    ask(question);
  }
  ask(std::string(100000, 'x'));
  ask(std::string(100000, '9'));
  std::string many;
  for (int i = 0; i < 5000; ++i) many += "top plug 41 ";
  ask(many);
  for (const char* question : {"AND OR NOT XOR NEAR", "top -plug", "\"top plug", "top plug*", "size:8",
                               "don't", "Q", "XG fork-cap", "5/16\"-18"})
    ask(question);
}
