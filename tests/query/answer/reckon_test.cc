// SPDX-License-Identifier: GPL-2.0-or-later
// How what is given is read. The formulae are tested in tests/query/trade; what is answered with the
// published tables, in tests/golden/reckon_*.txt.
#include "query/answer/reckon.h"

#include <doctest/doctest.h>

#include "query/quantity/number.h"

using namespace sheaf;

namespace {

Result<Reckoning> without_library(std::string_view topic, const std::vector<std::string>& words) {
  return reckon(topic, words, [] { return Result<Libraries>(Failure{"no library"}); });
}

std::string first_of(const Result<Reckoning>& reckoning) {
  if (!reckoning) return reckoning.failure().message;
  return shown(*reckoning->results.front().figure);
}

bool refuses(const Result<Reckoning>& reckoning, std::string_view words) {
  return !reckoning && reckoning.failure().message.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("names stand in any order, with = or without, in one piece or in many") {
  // G d⁴/(8 D³ n) = 79 300 · 4.5⁴/(8 · 27.5³ · 30), that is 32 517 956/4 991 250 = 6.51499 N/mm
  const std::string rate = "6.51\u00A0N/mm";
  CHECK(first_of(without_library("spring", {"wire", "4.5", "mm", "mean", "27.5", "mm", "active", "30",
                                            "modulus", "79300", "MPa"})) == rate);
  CHECK(first_of(without_library("spring", {"active=30", "modulus=79300 MPa", "mean=27.5", "wire=4.5"})) ==
        rate);
  CHECK(first_of(without_library("spring", {"wire 4.5 mm mean 27.5 mm active 30 modulus 79300 MPa"})) ==
        rate);
  CHECK(first_of(without_library("spring", {"wire", "4.5 mm", "outside", "32 mm", "coils", "32", "modulus",
                                            "79300 MPa"})) == rate);
}

TEST_CASE("units are read and never mixed") {
  // two springs of 1 kgf/mm side by side: 2 · 9.80665 N/mm
  const auto both = without_library("springs", {"1", "kgf/mm", "and", "1", "kgf/mm"});
  REQUIRE(both);
  CHECK(shown(*both->results[1].figure) == "19.6\u00A0N/mm");
  CHECK(refuses(without_library("springs", {"8", "N·m", "and", "12", "N/mm"}), "first"));
}

TEST_CASE("a unit's factor leaves no noise behind that would buy another bottle") {
  const auto bottles = without_library("bottles", {"100 L", "of", "1 mL"});
  REQUIRE(bottles);
  CHECK(bottles->results.front().words == "100000 of 1\u00A0mL");
}

TEST_CASE("what is missing, doubled, empty or unknown is named") {
  CHECK(refuses(without_library("springs", {"8", "N/mm"}), "'and' is missing"));
  CHECK(refuses(without_library("springs", {"8", "N/mm", "and", "1", "N/mm", "and", "2", "N/mm"}),
                "'and' is given twice"));
  CHECK(refuses(without_library("springs", {"8", "N/mm", "and"}), "'and' has no value"));
  CHECK(refuses(without_library("sprigns", {"8"}), "did you mean 'springs'?"));
}

TEST_CASE("a topic that needs a table says so when there is none") {
  CHECK(refuses(without_library("torque", {"M8", "class", "8.8", "factor", "0.2"}), "no library"));
}

TEST_CASE("a computed torque always comes with its source and the caution") {
  const auto torque = without_library("torque", {"M10x1.5", "preload", "20 kN", "factor", "0.2"});
  REQUIRE(torque);
  CHECK(shown(*torque->results.front().figure) == "40\u00A0N·m");  // K F d = 0.2 · 20 000 N · 0.010 m
  REQUIRE(!torque->formulae.empty());
  CHECK(torque->formulae.front().source.find("Shigley") != std::string::npos);
  REQUIRE(torque->cautions.size() == 1);
  CHECK(torque->cautions.front() == "A computed torque never replaces the maker's.");
}

TEST_CASE("every topic has an example that works or asks for a table") {
  for (const auto& topic : all_topics()) {
    CAPTURE(topic.name);
    std::string example(topic.example);
    example.erase(0, topic.name.size() + 1);
    const auto reckoning = without_library(topic.name, {example});
    if (!reckoning) CHECK(reckoning.failure().message.starts_with("no library"));
  }
}

TEST_CASE("hostile values neither crash nor answer") {
  for (const char* value :
       {"", "NaN", "1e400", "-1", "0", "999999999999999999", "..", "1..", "5..1", "\xff\xfe", "\x1b[2J"}) {
    CAPTURE(value);
    for (const auto& topic : all_topics()) {
      std::vector<std::string> words;
      for (const auto& name : topic.names) words.insert(words.end(), {std::string(name.name), value});
      CHECK(!without_library(topic.name, words));
    }
  }
}

TEST_CASE("the friction under the head may differ from that of the thread") {
  const auto torque = [](std::vector<std::string> more) {
    std::vector<std::string> words = {"3/4-16 UNF", "preload", "25000 lbf", "friction", "0.15"};
    words.insert(words.end(), more.begin(), more.end());
    const auto reckoning = without_library("torque", words);
    REQUIRE(reckoning);
    return approximate(*reckoning->results.front().figure->nominal);
  };
  // Shigley, Mechanical Engineering Design 9th ed., Example 8-3 (c): 3551 lbf·in, that is 401 N·m
  CHECK(torque({}) == doctest::Approx(400));
  CHECK(torque({"head", "0.15"}) == torque({}));
  // K = 0.1894 holds 0.625 · 0.15 of the head; with 0.625 · 0.10 there it is 0.1582: 335 N·m, to two digits
  CHECK(torque({"head", "0.10"}) == doctest::Approx(340));
  CHECK(refuses(without_library("torque", {"M8x1.25", "preload", "10 kN", "head", "0.1"}),
                "factor or friction"));
}

TEST_CASE("a slip in a name is told from a value, and a value may end in a name") {
  CHECK(refuses(without_library("torque", {"M8x1.25", "preload", "10 kN", "fricton", "0.1"}),
                "nothing is called 'fricton' here; did you mean 'friction'?"));
  // no library: that the material is looked for at all says that its name was read whole
  CHECK(refuses(without_library(
                    "spring", {"wire", "1 mm", "mean", "10 mm", "active", "8", "material", "music", "wire"}),
                "no library"));
}
