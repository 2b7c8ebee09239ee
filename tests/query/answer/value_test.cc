// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/value.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

Value say_field(const char* kind, const char* key, const char* text, const PreferredUnits& units = {}) {
  return say(FieldRecord{key, text, {}}, field_of(*kind_named(kind), key), units);
}

const Unit* unit(const char* spelling) { return readings(spelling).front(); }

}  // namespace

TEST_CASE("the source's figure leads, its band beside it, the conversion marked and inside the band") {
  const Value torque = say_field("fastener", "torque", "28 ± 3 N·m");
  CHECK(torque.lead == "28\u00A0N·m");
  CHECK(torque.band == "25–31");
  REQUIRE(torque.derived.size() == 1);
  CHECK(torque.derived[0].lead == "20.7\u00A0lbf·ft");
  CHECK(torque.derived[0].band == "18.5–22.8");  // 25 and 31 N·m, rounded inward
  CHECK_FALSE(torque.derived[0].exact);
}

TEST_CASE("a range has no nominal: it leads whole") {
  const Value torque = say_field("fastener", "torque", "25..31 N·m");
  CHECK(torque.lead == "25–31\u00A0N·m");
  CHECK(torque.band.empty());
}

TEST_CASE("small torques are converted to inch-pounds, which a small wrench shows") {
  CHECK(say_field("fastener", "torque", "5 ± 0.5 N·m").derived.at(0).unit->symbol == "lbf·in");
  CHECK(say_field("fastener", "torque", "28 N·m").derived.at(0).unit->symbol == "lbf·ft");
}

TEST_CASE("the unit that the reader asks for replaces the usual partner") {
  const Value torque = say_field("fastener", "torque", "28 N·m", {unit("kgf·m"), unit("psi")});
  REQUIRE(torque.derived.size() == 1);
  CHECK(torque.derived[0].unit->symbol == "kgf·m");
}

TEST_CASE("every stage of a staged torque is converted, angles stay") {
  const Value torque = say_field("fastener", "torque", "20 N·m, 40 N·m + 90°");
  REQUIRE(torque.statement);
  CHECK(torque.statement->stages.size() == 3);
  REQUIRE(torque.derived.size() == 1);
  CHECK(torque.derived[0].lead == "14.8\u00A0lbf·ft, 29.5\u00A0lbf·ft + 90°");
}

TEST_CASE("conditions stand apart from the figure") {
  const Value level = say_field("fluid", "level", "118 mm below the rim, spring out, fork compressed");
  CHECK(level.lead == "118\u00A0mm");
  CHECK(level.conditions == "below the rim, spring out, fork compressed");
  CHECK(say_field("fluid", "volume", "512 mL per leg").conditions == "per leg");
  CHECK(say_field("fluid", "viscosity", "32 mm²/s at 40 °C").conditions == "at 40\u00A0°C");
}

TEST_CASE("choices and counts are said in words") {
  CHECK(say_field("fastener", "hand", "left").lead == "left-hand thread");
  CHECK(say_field("fastener", "reuse", "no").lead == "fit new");
  CHECK(say_field("fastener", "state", "source-silent").lead == "source does not state dry or oiled");
  CHECK(say_field("fastener", "count", "2").lead == "2 of them");
  CHECK(say_field("fastener", "count", "1 per leg").lead == "1 per leg");
}

TEST_CASE("sizes are shown with their unit") {
  CHECK(say_field("seal", "size", "41x54x11").lead == "41 × 54 × 11\u00A0mm");
}

TEST_CASE("text that is no figure is said as it is written") {
  const Value description = say_field("part", "description", "28 N·m is printed on it");
  CHECK(description.lead == "28 N·m is printed on it");
  CHECK_FALSE(description.statement);
}

TEST_CASE("a part number that looks like a range of temperatures stays a part number") {
  const Value successor = say(FieldRecord{"superseded-by.number", "43-2239-K", {}}, nullptr, {});
  CHECK(successor.lead == "43-2239-K");
  CHECK_FALSE(successor.statement);
  CHECK(successor.label == "superseded by number");
}
