// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/size_match.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

const std::vector<SizeRow> rows = {{41, 54, 11},       {43, 54, 11}, {41, 53, 10.5}, {43, 55, 9.5, 10.5},
                                   {38.1, 50.8, 6.35}, {30, 40, 7},  {17, 40, 12}};

SizeMatches matched(std::string_view text, MatchLimits limits = {}) {
  auto measured = parse_measured(text, Input::prompt);
  REQUIRE_MESSAGE(measured, text);
  auto matches = match_size(*measured, rows, limits);
  REQUIRE_MESSAGE(matches, text);
  return *matches;
}

}  // namespace

TEST_CASE("exact, within the caliper and near are three lists") {
  const SizeMatches whole = matched("41 x 54 x 11");
  REQUIRE(whole.exact.size() == 1);
  CHECK(whole.exact[0].row == 0);
  CHECK(whole.within.empty());
  REQUIRE(whole.near.size() == 3);
  CHECK(whole.near[0].row == 2);

  const SizeMatches measured = matched("41.1 x 54 x 11");
  CHECK(measured.exact.empty());
  REQUIRE(measured.within.size() == 1);
  CHECK(measured.within[0].row == 0);
  CHECK(measured.within[0].differences[0].by() == doctest::Approx(0.1));
  REQUIRE(measured.near.size() == 3);
  CHECK(measured.near[0].row == 2);  // 0.1 + 1 + 0.5 against 1.9
  CHECK(measured.near[0].differences[1].role == Role::outside);
  CHECK(measured.near[0].differences[1].by() == doctest::Approx(1));
  CHECK(measured.near[1].row == 1);
}

TEST_CASE("a hair beyond the uncertainty is near, and NOT the same") {
  CHECK(matched("41.101 x 54 x 11").within.empty());
  CHECK(matched("41.2 x 54 x 11", {0.2, 2}).within.size() == 1);
}

TEST_CASE("a swapped order is noticed, and the usual order is preferred") {
  const SizeMatches swapped = matched("54 x 41 x 11");
  REQUIRE(swapped.exact.size() == 1);
  CHECK(swapped.exact[0].row == 0);
  CHECK_FALSE(swapped.exact[0].usual_order);
  CHECK(swapped.exact[0].differences[0].role == Role::outside);
  const SizeMatches two = matched("55x43");
  REQUIRE(two.exact.size() == 1);
  CHECK(two.exact[0].row == 3);
  CHECK_FALSE(two.exact[0].usual_order);
  CHECK(matched("43x55").exact[0].usual_order);
  CHECK(matched("54 x 43.5 x 11").near.empty());  // near only counts in the usual order
}

TEST_CASE("one named dimension is enough, and a lone number may be any") {
  const SizeMatches outside = matched("55.05 od");
  REQUIRE(outside.within.size() == 1);
  CHECK(outside.within[0].row == 3);
  CHECK(outside.near.size() == 2);
  CHECK(matched("od 54").exact.size() == 2);
  CHECK(matched("id 43, 55 od").exact.size() == 1);
  CHECK(matched("40").exact.size() == 2);
  CHECK(matched("40").exact[0].usual_order);
  CHECK(matched("ø43").exact.size() == 2);
}

TEST_CASE("either height of a stepped seal may be the measured one, both must be if both are") {
  CHECK(matched("43 55 9,5").exact.size() == 1);
  CHECK(matched("43 55 10.5").exact.size() == 1);
  CHECK(matched("43x55x9.5/10.5").exact.size() == 1);
  CHECK(matched("43x55x9.5/11").exact.empty());
  CHECK(matched("43x55x9.5/11").near.at(0).row == 3);
  CHECK(matched("43x55x10.5/9.5").exact.size() == 1);
}

TEST_CASE("inches match mm") {
  CHECK(matched("1-1/2 x 2 x 1/4").exact.size() == 1);
  CHECK(matched("1.5 x 2 x 0.25 in").exact.size() == 1);
  CHECK(matched("1.69 inch").within.size() == 2);
}

TEST_CASE("nonsense is refused") {
  for (std::string_view text :
       {"", "seal", "41x54x11x3", "id", "41 banana", "id 41 id 42", "0", "99999", "-41"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_measured(text, Input::prompt));
  }
  CHECK_FALSE(match_size({{41}, {}, {}}, rows, {0, 2}));
  CHECK_FALSE(match_size({{41}, {}, {}}, rows, {3, 2}));
  CHECK_FALSE(match_size({}, rows));
  CHECK_FALSE(match_size({{41, 54}, {Role::inside}, {}}, rows));
}

TEST_CASE("a failure behind a zero that nobody typed is marked where it was typed") {
  const std::string_view text = "43 x .5 qq";
  const auto measured = parse_measured(text, Input::prompt);
  REQUIRE_FALSE(measured);
  const Failure& failure = measured.failure();
  CAPTURE(failure.message);
  CHECK(text.substr(static_cast<std::size_t>(failure.at), static_cast<std::size_t>(failure.length)) == "qq");
}
