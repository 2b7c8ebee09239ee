// SPDX-License-Identifier: GPL-2.0-or-later
// The published tables among the sheets, held against open tables, formulae and themselves: a mistyped
// row must not pass. (The compiler recomputes rows too; this also looks at what lies between them.)
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "query/trade/bearing.h"
#include "query/trade/o_ring.h"
#include "query/trade/oil_grade.h"
#include "query/trade/size.h"
#include "query/trade/strength.h"
#include "query/trade/thread_geometry.h"
#include "tests/outside/table.h"

using namespace sheaf;
using outside::has;
using outside::number;
using outside::text;

namespace {

std::string unquoted(std::string cell) {
  if (cell.size() > 1 && cell.front() == '"') cell = cell.substr(1, cell.size() - 2);
  return cell;
}

double inches(const std::string& cell) { return approximate(*parse_number(cell, Input::sheet)); }

}  // namespace

TEST_CASE("every bearing of the open tables is on the shelf with its size") {
  std::map<std::string, outside::Row> shelf;
  for (const char* sheet : {"ball-bearings", "tapered-bearings"}) {
    for (const auto& row : outside::sheet(sheet)) shelf[text(row, "designation")] = row;
  }
  int compared = 0;
  for (const auto& open : outside::csv("bearings.csv")) {
    CAPTURE(text(open, "designation"));
    REQUIRE(shelf.count(text(open, "designation")) == 1);
    if (has(open, "misprint")) continue;
    const outside::Row& row = shelf[text(open, "designation")];
    for (const char* column : {"bore", "outside", "width"})
      CHECK(number(row, column) == number(open, column));
    if (has(open, "assembled")) CHECK(number(row, "assembled") == number(open, "assembled"));
    ++compared;
  }
  CHECK(compared == 79);
}

TEST_CASE("every bearing's bore is what its designation says, and its rings have room") {
  for (const char* sheet : {"ball-bearings", "tapered-bearings"}) {
    for (const auto& row : outside::sheet(sheet)) {
      CAPTURE(text(row, "designation"));
      const auto bearing = parse_bearing(text(row, "designation"), Input::sheet);
      REQUIRE(bearing);
      REQUIRE(bearing->bore_mm);
      CHECK(number(row, "bore") == *bearing->bore_mm);
      CHECK(number(row, "outside") > number(row, "bore"));
      CHECK(number(row, "width") < number(row, "outside") / 2 + 1);
    }
  }
}

TEST_CASE("a bearing series grows with its bore") {
  std::map<std::string, outside::Row> last;
  for (const auto& row : outside::sheet("ball-bearings")) {
    const std::string name = text(row, "designation");
    if (name.size() == 3) continue;  // miniatures have the size of their shielded kin
    const std::string series = name.substr(0, name.find('/') != std::string::npos ? 2 : name.size() - 2);
    if (last.count(series)) {
      CAPTURE(name);
      CHECK(number(row, "outside") > number(last[series], "outside"));
      CHECK(number(row, "width") >= number(last[series], "width"));
    }
    last[series] = row;
  }
}

TEST_CASE("metric threads follow their formulae to the last digit printed") {
  for (const auto& row : outside::sheet("iso-metric-threads")) {
    CAPTURE(text(row, "thread"));
    const auto thread = parse_thread(text(row, "thread"), Input::sheet);
    REQUIRE(thread);
    const auto geometry = geometry_of(*thread);
    REQUIRE(geometry);
    CHECK(number(row, "pitch") == geometry->pitch);
    CHECK(std::abs(number(row, "pitch-diameter") - geometry->pitch_diameter) <= 0.00051);
    CHECK(std::abs(number(row, "minor-nut") - geometry->minor_nut) <= 0.00051);
    CHECK(std::abs(number(row, "minor-screw") - geometry->minor_screw) <= 0.00051);
    CHECK(number(row, "stress-area") == doctest::Approx(geometry->stress_area).epsilon(0.006));
    CHECK(number(row, "tap-drill") >= geometry->minor_nut - 0.06);
    CHECK(number(row, "tap-drill") <= geometry->pitch_diameter);
    for (const char* hexagon : {"hexagon", "hexagon-former", "hexagon-small", "hexagon-flange"}) {
      if (has(row, hexagon)) CHECK(number(row, hexagon) > geometry->diameter * 1.15);
    }
    if (has(row, "socket-key")) CHECK(number(row, "socket-key") < geometry->diameter * 0.95);
  }
}

TEST_CASE("most pitches of the shelf are in an open table of threads too") {
  std::set<std::string> open;
  for (const auto& row : outside::csv("thread_limits.csv")) {
    std::string name = text(row, "name");
    name.erase(std::remove(name.begin(), name.end(), ' '), name.end());
    open.insert(name);
  }
  int known = 0, unknown = 0;
  for (const auto& row : outside::sheet("iso-metric-threads")) {
    (open.count(text(row, "thread")) ? known : unknown) += 1;
  }
  CHECK(known >= 125);
  CHECK(unknown <= 28);  // below M1.6, over M55, and rare constant pitches
}

TEST_CASE("inch threads follow their formulae") {
  for (const auto& row : outside::sheet("unified-threads")) {
    const std::string name = unquoted(text(row, "thread"));
    CAPTURE(name);
    const auto thread = parse_thread(name, Input::sheet);
    REQUIRE(thread);
    const auto geometry = geometry_of(*thread);
    REQUIRE(geometry);
    CHECK(number(row, "diameter") * 25.4 == doctest::Approx(geometry->diameter).epsilon(1e-4));
    CHECK(number(row, "per-inch") * geometry->pitch == doctest::Approx(25.4));
    CHECK(std::abs(number(row, "pitch-diameter") - geometry->pitch_diameter / 25.4) <= 0.000051);
    CHECK(std::abs(number(row, "minor-nut") - geometry->minor_nut / 25.4) <= 0.000051);
    CHECK(number(row, "stress-area") == doctest::Approx(geometry->stress_area / 645.16).epsilon(0.005));
    if (has(row, "hexagon")) CHECK(inches(text(row, "hexagon")) * 25.4 > geometry->diameter * 1.3);
    if (has(row, "socket-key")) CHECK(inches(text(row, "socket-key")) * 25.4 < geometry->diameter);
  }
}

TEST_CASE("classes are stronger in order, and prove below their yield") {
  for (const char* sheet : {"iso-property-classes", "sae-grades", "stainless-property-classes"}) {
    for (const auto& row : outside::sheet(sheet)) {
      CAPTURE(text(row, "name"));
      CHECK(class_name(text(row, "class")) == text(row, "class"));
      CHECK(number(row, "yield") < number(row, "tensile"));
      if (!row.count("proof-stress")) continue;
      CHECK(number(row, "proof-stress") < number(row, "yield"));
      CHECK(number(row, "proof-stress") >= 0.64 * number(row, "yield"));
    }
  }
  for (const auto& row : outside::sheet("iso-property-classes")) {
    const auto nominal = nominal_strength(text(row, "class"));
    REQUIRE(nominal);
    CHECK(number(row, "tensile-nominal") == nominal->tensile);
    CHECK(number(row, "tensile") >= nominal->tensile);
    CHECK(number(row, "yield") >= nominal->yield * 0.99);
  }
}

TEST_CASE("nut factors and frictions are in order and in range") {
  for (const char* sheet : {"nut-factors", "friction-classes"}) {
    for (const auto& row : outside::sheet(sheet)) {
      double last = 0.03;
      for (const char* column : {"low", "nominal", "high"}) {
        if (!row.count(column) || !has(row, column)) continue;
        CHECK(number(row, column) >= last);
        CHECK(number(row, column) <= 0.6);
        last = number(row, column);
      }
      CHECK(last > 0.03);
    }
  }
}

TEST_CASE("the O-ring series have their published numbers of sizes, and grow within each") {
  std::map<char, int> sizes;
  char series = 0;
  double last = 0;
  for (const auto& row : outside::sheet("o-rings-inch")) {
    const std::string code = text(row, "code");
    CAPTURE(code);
    REQUIRE(code.size() == 4);
    ++sizes[code[1]];
    if (code[1] == series) CHECK(number(row, "inside") > last);
    series = code[1];
    last = number(row, "inside");
    if (has(row, "inside-tolerance")) CHECK(number(row, "inside-tolerance") < number(row, "inside") / 5);
    if (has(row, "section-tolerance")) CHECK(number(row, "section-tolerance") < number(row, "section") / 8);
  }
  CHECK(sizes == std::map<char, int>{{'0', 50}, {'1', 77}, {'2', 84}, {'3', 87}, {'4', 51}, {'9', 20}});
}

TEST_CASE("O-ring grooves squeeze by what is printed beside them") {
  for (const auto& row : outside::sheet("o-ring-glands")) {
    CAPTURE(text(row, "gland"));
    const std::string depth = text(row, "depth"), squeeze = text(row, "squeeze");
    const double shallow = inches(depth.substr(0, depth.find(".."))),
                 deep = inches(depth.substr(depth.find("..") + 2));
    const double least = inches(squeeze.substr(0, squeeze.find(".."))),
                 most = inches(squeeze.substr(squeeze.find("..") + 2));
    const double section = number(row, "section");
    const auto nominal = squeeze_band({section, section}, {shallow, deep});
    REQUIRE(nominal);
    CHECK(nominal->least * 100 >= least);  // the printed range includes the section's tolerance
    CHECK(nominal->most * 100 <= most);
    CHECK(nominal->least * 100 - least < 9);
  }
}

TEST_CASE("seals are smaller inside than outside, and not higher than their ring is wide by much") {
  for (const char* sheet : {"shaft-seals", "fork-seal-sizes"}) {
    for (const auto& row : outside::sheet(sheet)) {
      CAPTURE(text(row, "size"));
      const auto size = parse_size(text(row, "size"), Input::sheet);
      REQUIRE(size);
      REQUIRE(size->count == 3);
      const double ring = dimension_mm(*size, 1) - dimension_mm(*size, 0);
      CHECK(ring >= 8);
      CHECK(ring <= 36);
      CHECK(dimension_mm(*size, 2) >= 6);
      CHECK(dimension_mm(*size, 2) <= 13);
    }
  }
}

TEST_CASE("viscosity grades have their limits at 10 %, and grow") {
  double last = 0;
  for (const auto& row : outside::sheet("iso-viscosity-grades")) {
    const GradeRow grade = iso_grade("", number(row, "middle"));
    CHECK(number(row, "least") == doctest::Approx(grade.least).epsilon(0.002));
    CHECK(number(row, "most") == doctest::Approx(*grade.most).epsilon(0.002));
    CHECK(number(row, "least") > last);
    last = number(row, "most");
  }
}

TEST_CASE("engine and gear oil grades leave no gap above their first grade without W") {
  for (const char* sheet : {"engine-oil-grades", "gear-oil-grades"}) {
    std::vector<GradeRow> rows;
    for (const auto& row : outside::sheet(sheet)) {
      if (text(row, "grade").find('W') != std::string::npos &&
          text(row, "grade").find('(') == std::string::npos)
        continue;
      rows.push_back({text(row, "grade"), number(row, "hot-least"), std::nullopt, true});
      if (has(row, "hot-below")) rows.back().most = number(row, "hot-below");
    }
    REQUIRE(rows.size() >= 9);
    for (double v = 4.0; v < 26; v += 0.1) {
      CAPTURE(v);
      CHECK_FALSE(grade_of(v, rows)->grades.empty());
    }
  }
}

TEST_CASE("coolants freeze lower the more glycol they hold, and publications agree within 2.6 K") {
  std::map<std::pair<std::string, double>, double> by_mass;
  std::string last_publication;
  double last = 0;
  for (const auto& row : outside::sheet("coolant-mixtures")) {
    const std::string name = unquoted(text(row, "mixture"));
    CAPTURE(name);
    const std::string publication = text(row, "glycol") + name.substr(name.find('('));
    if (publication == last_publication) CHECK(number(row, "freezes-at") < last);
    last_publication = publication;
    last = number(row, "freezes-at");
    if (!has(row, "by-mass")) continue;
    const auto [first, is_new] =
        by_mass.emplace(std::pair(text(row, "glycol"), number(row, "by-mass")), last);
    if (!is_new && number(row, "by-mass") <= 50) CHECK(std::abs(first->second - last) <= 2.6);
  }
}
