// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/index_terms.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <limits>
#include <set>

using namespace sheaf;

namespace {

Size size_of(const char* text) { return parse_size(text, Input::prompt).value(); }
Thread thread_of(const char* text) { return parse_thread(text, Input::prompt).value(); }

bool meet(const std::vector<std::string>& left, const std::vector<std::string>& right) {
  return std::ranges::any_of(
      left, [&](const std::string& term) { return std::ranges::find(right, term) != right.end(); });
}

}  // namespace

TEST_CASE("the table of prefixes is in the order of its names, and no two are alike") {
  std::set<std::string_view> letters;
  for (std::size_t i = 0; i < all_prefixes().size(); ++i) {
    const PrefixDeclaration& declared = all_prefixes()[i];
    CHECK(static_cast<std::size_t>(declared.prefix) == i);
    CHECK(letters_of(declared.prefix) == declared.letters);
    CHECK(declared.example.starts_with(declared.letters));
    CHECK(letters.insert(declared.letters).second);
  }
  CHECK(static_cast<std::size_t>(Prefix::choice) + 1 == all_prefixes().size());
}

TEST_CASE("a body too long for the index is cut, and still itself") {
  const std::string longest(200, 'a');
  CHECK(term(Prefix::exact_name, longest) == "XN" + longest);
  const std::string one = term(Prefix::exact_name, longest + "b");
  const std::string other = term(Prefix::exact_name, longest + "c");
  CHECK(one.size() <= 245);
  CHECK(one != other);
  CHECK(one == term(Prefix::exact_name, longest + "b"));
}

TEST_CASE("any range of years is asked for by any year in it, and by no other") {
  const std::string machine = machine_body("Haldrek", "Muleback 380");
  const auto fits = [&](int from, int to, int year) {
    return meet(year_range_terms(machine, from, to), year_terms(machine, year));
  };
  for (int from = 1995; from <= 2020; ++from) {
    for (int to = from; to <= 2021; ++to) {
      for (int year = 1990; year <= 2025; ++year)
        REQUIRE(fits(from, to, year) == (year >= from && year <= to));
    }
  }
  for (int year : {first_year, 1900, 2015, 2016, 2024, last_year}) {
    CHECK(fits(2016, 0, year) == (year >= 2016));
    CHECK(fits(0, 2016, year) == (year <= 2016));
    CHECK(fits(0, 0, year));
  }
  CHECK_FALSE(fits(0, 0, first_year - 1));
  CHECK_FALSE(fits(0, 0, last_year + 1));
  CHECK(year_range_terms(machine, 2016, 2011).empty());
}

TEST_CASE("years are few terms") {
  CHECK(year_terms("", 2013).size() == 10);
  CHECK(year_range_terms("", 2011, 2015) == std::vector<std::string>{"XY/2011", "XY/2012-2015"});
  CHECK(year_range_terms("", 0, 0) == std::vector<std::string>{"XY/1800-2311"});
  for (int from = first_year; from <= last_year; from += 7) {
    for (int to = from; to <= last_year; to += 11) CHECK(year_range_terms("", from, to).size() <= 16);
  }
}

TEST_CASE("another machine's years are other terms") {
  CHECK_FALSE(meet(year_range_terms(machine_body("Haldrek", "Muleback 380"), 2011, 2015),
                   year_terms(machine_body("Haldrek", "Muleback 450"), 2013)));
}

TEST_CASE("whatever states something within a range is in one of its steps") {
  const Dimension torque = Dimension::torque;
  const double values[] = {0.004, 0.5, 1, 1.1892071150027210667, 9, 9.8, 10, 14.2, 20, 24, 25, 31, 50, 400};
  for (const double least : values) {
    for (const double most : values) {
      if (most < least) continue;
      for (const double from : values) {
        for (const double to : values) {
          const auto asked = figure_bodies(torque, from, to);
          if (asked.empty() || least > to || most < from) continue;
          REQUIRE(std::ranges::find(asked, figure_body(torque, least, most)) != asked.end());
        }
      }
    }
  }
}

TEST_CASE("steps are few, and tell figures apart") {
  const Dimension torque = Dimension::torque;
  CHECK(figure_body(torque, 25, 31) == "torque/22");
  CHECK(figure_body(torque, 20, 41) == "torque/wide");
  CHECK(figure_body(torque, 0, 1) == "torque/wide");
  CHECK(figure_body(torque, -5, -3) == "torque/wide");
  CHECK(figure_bodies(torque, 9, 9).size() == 6);
  const auto near_nine = figure_bodies(torque, 9, 9);
  CHECK(std::ranges::find(near_nine, figure_body(torque, 25, 31)) == near_nine.end());
  CHECK(figure_bodies(torque, 1, 1000).empty());
  CHECK(figure_bodies(torque, 40, std::numeric_limits<double>::infinity()).empty());
  CHECK(figure_bodies(torque, 0, 5).empty());
  CHECK(figure_bodies(torque, 5, 4).empty());
  CHECK(figure_body(Dimension::pressure, 25, 31) != figure_body(torque, 25, 31));
}

TEST_CASE("sizes meet in any order, and dimension by dimension") {
  CHECK(any_order_body(size_of("41x54x11")) == "11x41x54");
  CHECK(any_order_body(size_of("54 x 11 x 41")) == "11x41x54");
  CHECK(any_order_body(size_of("55x43")) == any_order_body(size_of("43 × 55.0")));
  CHECK(dimension_bodies(size_of("41x54.0x11")) == std::vector<std::string>{"41", "54", "11"});
  CHECK(dimension_bodies(size_of("1.5 x 2.25 in")) == std::vector<std::string>{"1.5in", "2.25in"});
}

TEST_CASE("a thread's diameter is asked for by the bare designation") {
  CHECK(diameter_body(thread_of("M8x1.25")) == thread_key(thread_of("m8")));
  CHECK(diameter_body(thread_of("M8")) == "m8");
  CHECK(diameter_body(thread_of("5/16-18 UNC")) == diameter_body(thread_of("5/16-24")));
}
