// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/drive_fit.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

using Fit = DriveVerdict::Fit;
const std::vector<DriveRow> rows = {
    {8, Drive::Shape::hexagon, 13, "current"},   {8, Drive::Shape::hexagon, 12, "small"},
    {10, Drive::Shape::hexagon, 16, "current"},  {10, Drive::Shape::hexagon, 17, "former"},
    {8, Drive::Shape::hex_socket, 6, "current"}, {6.35, Drive::Shape::hexagon, 11.1125, "current"}};

DriveVerdict judged(std::string_view drive, double diameter) {
  return judge_drive(*parse_drive(drive, Input::sheet), diameter, rows);
}

}  // namespace

TEST_CASE("old and current hexagons are both known") {
  CHECK(judged("hexagon 16 mm", 10).fit == Fit::listed);
  CHECK(judged("hexagon 17 mm", 10).fit == Fit::listed);
  CHECK(judged("hexagon 17 mm", 10).kinds == std::vector<std::string>{"former"});
  CHECK(judged("twelve-point 12 mm", 8).fit == Fit::listed);
  CHECK(judged("hexagon 7/16 in", 6.35).fit == Fit::listed);
}

TEST_CASE("a width that is not in use is told apart from one that cannot be") {
  const DriveVerdict wide = judged("hexagon 17 mm", 8);
  CHECK(wide.fit == Fit::unlisted);
  CHECK(wide.usual_mm == std::vector<double>{12, 13});
  CHECK(judged("hexagon 8 mm", 8).fit == Fit::impossible);
  CHECK(judged("hex socket 8 mm", 8).fit == Fit::impossible);
  CHECK(judged("hex socket 6 mm", 8).fit == Fit::listed);
}

TEST_CASE("what no table judges is left alone") {
  CHECK(judged("T30", 8).fit == Fit::unjudged);
  CHECK(judged("slot", 8).fit == Fit::unjudged);
  CHECK(judged("hexagon 22 mm", 14).fit == Fit::unjudged);
}
