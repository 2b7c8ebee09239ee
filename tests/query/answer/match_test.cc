// SPDX-License-Identifier: GPL-2.0-or-later
// The words before a size. What is compared, tests/golden/match.txt shows with the demonstration library.
#include "query/answer/match.h"

#include <doctest/doctest.h>

#include "query/answer/match_two.h"

using namespace sheaf;

TEST_CASE("a part named before the size narrows it") {
  const auto named = take_part("Fork Seal 41 x 54 x 11");
  CHECK(named.part == Part::seal);
  CHECK(named.use == SealUse::fork);
  CHECK(named.rest == "41 x 54 x 11");
}

TEST_CASE("the longest name wins, and a name ends at a space") {
  CHECK(take_part("shaft seal 30x40x7").use == SealUse::shaft);
  CHECK(take_part("seal 30x40x7").use == std::nullopt);
  CHECK(take_part("bushings 41 43.5 20").part == Part::bushing);
  CHECK(take_part("sealant").part == std::nullopt);
  CHECK(take_part("o-ring").rest == "");
}

TEST_CASE("what names no part stays in the text") {
  const auto named = take_part("id 43 od 55");
  CHECK(named.part == std::nullopt);
  CHECK(named.rest == "id 43 od 55");
}

TEST_CASE("a size or designation that is none is refused in words") {
  const auto matches = match({"sprocket", {}}, {});
  REQUIRE(!matches);
  CHECK(matches.failure().message.find("neither a size nor a designation") != std::string::npos);
}

TEST_CASE("two sides of a comparison, and what the second differs in") {
  CHECK(two_sides("6203 VS 6302") == std::pair<std::string, std::string>("6203", "6302"));
  CHECK(two_sides("41x54x11 versus 43x54x11").has_value());
  CHECK_FALSE(two_sides("6203 vs").has_value());
  CHECK_FALSE(two_sides("vsx 6203").has_value());
  const auto of_size = [](double inside, double outside, double height) {
    Matches matches;
    matches.read_as = "read";
    matches.same.emplace_back();
    matches.same[0].dimensions = SizeRow{inside, outside, height};
    return matches;
  };
  const auto both = beside(of_size(17, 40, 12), of_size(15, 42, 12));
  REQUIRE(both.near.size() == 1);
  CHECK(both.near[0].differs == "inside −2\u00A0mm, outside +2\u00A0mm");
  CHECK(beside(of_size(17, 40, 12), of_size(17, 40, 12)).near.at(0).differs == "equal in size");
}
