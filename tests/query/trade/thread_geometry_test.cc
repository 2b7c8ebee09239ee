// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/thread_geometry.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "query/trade/thread_series.h"
#include "tests/outside/table.h"

using namespace sheaf;

namespace {

Thread thread(std::string_view text) {
  auto read = parse_thread(text, Input::prompt);
  REQUIRE_MESSAGE(read, text);
  return *read;
}

ThreadGeometry geometry(std::string_view text) {
  auto known = geometry_of(thread(text));
  REQUIRE_MESSAGE(known, text);
  return *known;
}

constexpr double mm2_per_in2 = 25.4 * 25.4;

// The fundamental deviation g of ISO 965-1: 15 + 11 P, in µm.
double allowance_g(double pitch) { return (15 + 11 * pitch) / 1000; }

}  // namespace

TEST_CASE("stress areas agree with the printed ones to their last digit") {
  for (const auto& row : outside::csv("stress_areas.csv")) {
    CAPTURE(outside::text(row, "thread"));
    const double unit = outside::text(row, "unit") == "in²" ? mm2_per_in2 : 1;
    const double printed = outside::number(row, "area");
    const double reckoned = geometry(outside::text(row, "thread")).stress_area / unit;
    CHECK(reckoned == doctest::Approx(printed).epsilon(0.005));
  }
}

TEST_CASE("pitch and minor diameters agree with an open table of limits") {
  int checked = 0;
  for (const auto& row : outside::csv("thread_limits.csv")) {
    if (outside::text(row, "misprint") == "misprint") continue;
    CAPTURE(outside::text(row, "name"));
    CAPTURE(outside::text(row, "class"));
    const bool inch = outside::text(row, "system") == "inch";
    const std::string name = outside::text(row, "name");
    const ThreadGeometry basic =
        geometry(inch ? name : name.substr(0, name.find(' ')) + "x" + outside::text(row, "pitch"));
    const double unit = inch ? 25.4 : 1;
    const double slack = inch ? 0.00012 : 0.0011;
    // A screw's largest diameters all lie below the basic ones by the same allowance.
    const double nominal = basic.diameter / unit;
    const double allowance =
        outside::text(row, "kind") == "external" ? nominal - outside::number(row, "major") : 0;
    CHECK(std::abs(basic.pitch_diameter / unit - allowance - outside::number(row, "pitch_diameter")) <=
          slack);
    if (outside::has(row, "minor")) {
      CHECK(std::abs(basic.minor_nut / unit - outside::number(row, "minor")) <= (inch ? 0.0006 : 0.0011));
    }
    ++checked;
  }
  CHECK(checked == 599);
}

TEST_CASE("an open table's allowance is the standard's, so its nominal diameters are real") {
  for (const auto& row : outside::csv("thread_limits.csv")) {
    if (outside::text(row, "class") != "6G" || outside::text(row, "misprint") == "misprint") continue;
    const std::string name = outside::text(row, "name");
    if (name == "M33 x 3.5") continue;  // printed 22 µm high there in every column
    const double pitch = outside::number(row, "pitch");
    CAPTURE(name);
    CHECK(std::abs(geometry(name.substr(0, name.find(' ')) + "x" + outside::text(row, "pitch")).diameter -
                   outside::number(row, "major") - allowance_g(pitch)) <= 0.0015);
  }
}

TEST_CASE("an M8 is as ISO 724 has it") {
  const ThreadGeometry m8 = geometry("M8x1.25");
  CHECK(m8.pitch_diameter == doctest::Approx(7.188).epsilon(0.0001));
  CHECK(m8.minor_nut == doctest::Approx(6.647).epsilon(0.0001));
  CHECK(m8.minor_screw == doctest::Approx(6.466).epsilon(0.0001));
  CHECK(tap_drill_mm(m8) == doctest::Approx(6.75));
}

TEST_CASE("geometry is refused where no formula holds") {
  CHECK_FALSE(geometry_of(thread("M8")));
  CHECK_FALSE(geometry_of(thread("G1/4")));
  CHECK_FALSE(metric_geometry(8, 5));
  CHECK_FALSE(metric_geometry(0, 1));
  CHECK_FALSE(metric_geometry(-8, 1));
  CHECK_FALSE(metric_geometry(std::numeric_limits<double>::quiet_NaN(), 1));
}

TEST_CASE("a table completes what a designation leaves open") {
  const std::vector<ThreadRow> rows = {{thread("M8x1.25"), "coarse"},
                                       {thread("M8x1"), "fine"},
                                       {thread("5/16-18 UNC"), "UNC"},
                                       {thread("5/16-24 UNF"), "UNF"},
                                       {thread("#10-32 UNF"), "UNF"}};
  CHECK(to_text(*completed(thread("M8"), rows)) == "M8x1.25");
  CHECK(to_text(*completed(thread("M8x1"), rows)) == "M8x1");
  CHECK(to_text(*completed(thread("5/16 unc"), rows)) == "5/16-18 UNC");
  CHECK(to_text(*completed(thread("5/16-24"), rows)) == "5/16-24 UNF");
  CHECK(to_text(*completed(thread("10-32"), rows)) == "#10-32 UNF");
  CHECK(to_text(*completed(thread("M8 LH"), rows)) == "M8x1.25 LH");
  CHECK_FALSE(completed(thread("M9"), rows));
  CHECK_FALSE(completed(thread("5/16 UNEF"), rows));

  const std::vector<Thread> known = threads_of_diameter(thread("M8x2.5"), rows);
  REQUIRE(known.size() == 2);
  CHECK(to_text(known[0]) == "M8x1.25");
  CHECK(to_text(known[1]) == "M8x1");
  CHECK(threads_of_diameter(thread("M9x1"), rows).empty());
}
