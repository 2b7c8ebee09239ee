// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/review/changes.h"

#include <doctest/doctest.h>

#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

std::vector<sheaf::SheetRecord> records(std::string_view text) {
  const Linking linking(text);
  REQUIRE(linking.faults() == "none");
  return content_of(linking.linked, "x").sheets;
}

constexpr std::string_view wheel = R"(sheet: wheel
assembly: front-wheel
fits: { make: Haldrek, model: Muleback 380, years: 2012.. }
source: { title: Manual, page: 5 }
checked: { on: 2026-10-02, by: workshop, second: N. }
fasteners:
  nut: { name: front axle nut, thread: M16x1.5, torque: 88 N·m, state: greased }
  bolt: { name: pinch bolt, torque: 20 ± 2 N·m, state: dry }
steps:
  fit: { name: fit it, do: Fit the wheel. }
)";

std::string edited(std::string_view from, std::string_view old, std::string_view with) {
  std::string text(from);
  const std::size_t at = text.find(old);
  REQUIRE_MESSAGE(at != std::string::npos, old);
  return text.replace(at, old.size(), with);
}

std::string difference(std::string_view before, std::string_view after) {
  return changes_text(compare(records(before), records(after)));
}

}  // namespace

TEST_CASE("laying a sheet out anew changes nothing") {
  std::string other = edited(wheel, "torque: 88 N·m, state: greased", "state: greased, torque: 88 Nm  ");
  other = "# a remark\n" + other;
  CHECK(compare(records(wheel), records(wheel)).empty());
  CHECK(compare(records(wheel), records(other)).empty());
  CHECK(changes_text({}) == "");
}

TEST_CASE("a changed figure says by how much, for whom, and that its source is the same") {
  CHECK(difference(wheel, edited(wheel, "88 N·m", "98 N·m")) ==
        "changed  wheel/nut: front axle nut\n"
        "    torque: 88 → 98 N·m (+11 %)\n"
        "    Haldrek Muleback 380 2012–; safety-critical; source unchanged\n"
        "1 changed\n");
  CHECK(difference(wheel, edited(wheel, "20 ± 2 N·m", "18 ± 2 N·m"))
            .find("torque: 20 ± 2 → 18 ± 2 N·m (−10 %)") != std::string::npos);
  CHECK(difference(wheel, edited(wheel, "20 ± 2 N·m", "15..18 lbf·ft"))
            .find("torque: 20 ± 2 N·m → 15..18 lbf·ft (+12 %)") != std::string::npos);
}

TEST_CASE("a changed source is said once, on the sheet, and marks what changed with it") {
  const auto changes =
      compare(records(wheel), records(edited(edited(wheel, "88 N·m", "98 N·m"), "page: 5", "page: 6")));
  REQUIRE(changes.size() == 2);
  CHECK(changes[0].address == "wheel/nut");
  CHECK(changes[0].source_changed);
  CHECK(changes[1].sheet);
  CHECK(changes[1].fields.at(0).key == "source");
}

TEST_CASE("entries that came and went are named") {
  CHECK(difference(wheel, edited(wheel, "  bolt: { name: pinch bolt, torque: 20 ± 2 N·m, state: dry }\n",
                                 "  pin: { name: split pin }\n")) ==
        "removed  wheel/bolt: pinch bolt\n    Haldrek Muleback 380 2012–; safety-critical\n"
        "added  wheel/pin: split pin\n    Haldrek Muleback 380 2012–\n"
        "1 removed, 1 added\n");
}

TEST_CASE("a renamed entry is the same entry, and a renamed sheet the same sheet") {
  const auto entry =
      compare(records(wheel), records(edited(wheel, "  bolt: { name: pinch bolt,",
                                             "  clamp-bolt: { name: pinch bolt, formerly: [bolt],")));
  REQUIRE(entry.size() == 1);
  CHECK(entry[0].kind == Change::Kind::renamed);
  CHECK(entry[0].before_address == "wheel/bolt");
  CHECK(entry[0].fields.empty());

  const auto sheet = compare(
      records(wheel), records(edited(wheel, "sheet: wheel\n", "sheet: front-wheel\nformerly: [wheel]\n")));
  REQUIRE(sheet.size() == 1);
  CHECK(sheet[0].sheet);
  CHECK(sheet[0].kind == Change::Kind::renamed);
}

TEST_CASE("a withdrawn figure leads the list, then what is safety-critical, then what moved furthest") {
  std::string after = edited(wheel, "do: Fit the wheel.", "do: Fit the front wheel.");
  after = edited(after, "20 ± 2 N·m, state: dry",
                 "20 ± 2 N·m, state: dry, withdrawn: { on: 2026-10-03, reason: Misprint. }");
  after = edited(after, "88 N·m", "98 N·m");
  const auto changes = compare(records(wheel), records(after));
  REQUIRE(changes.size() == 3);
  CHECK(changes[0].kind == Change::Kind::withdrawn);
  CHECK(changes[0].reason == "Misprint.");
  CHECK(changes[1].address == "wheel/nut");
  CHECK(changes[2].address == "wheel/fit");
}

TEST_CASE("variants made of one entry are that entry changed, and another") {
  const auto changes =
      compare(records(wheel), records(edited(wheel, "torque: 88 N·m, state: greased }",
                                             "state: greased, variants: [{ years: 2012..2015, torque: 88 N·m "
                                             "}, { years: 2016.., torque: 95 N·m }] }")));
  REQUIRE(changes.size() == 2);
  CHECK(changes[0].kind == Change::Kind::added);
  CHECK(changes[0].variant == "2016..");
  CHECK(changes[1].kind == Change::Kind::changed);
  CHECK(changes[1].variant == "2012..2015");
}

TEST_CASE("a column of a table may have any name") {
  const auto table = records(
      "sheet: classes\ntable: property-class\nkey: name\ncolumns: { name: text, source: text, fits: text "
      "}\nrows: [[A4-70, x, y]]\n");
  CHECK(compare(table, table).empty());
}

TEST_CASE("a whole sheet that came or went is one line, not one an entry") {
  const auto both = records(std::string(wheel) +
                            "# file: fork.yaml\nsheet: fork\nparts:\n  a: { name: a }\n  b: { name: b }\n");
  const auto one = records(wheel);
  const auto came = compare(one, both), went = compare(both, one);
  REQUIRE(came.size() == 1);
  CHECK(came[0].kind == Change::Kind::added);
  CHECK(came[0].reason == "2 entries");
  REQUIRE(went.size() == 1);
  CHECK(went[0].kind == Change::Kind::removed);
}

TEST_CASE("the same for a pull request and for a program") {
  const auto changes = compare(records(wheel), records(edited(wheel, "88 N·m", "98 N·m")));
  CHECK(changes_markdown(changes) ==
        "**1 changed**\n\n- **changed** front axle nut (`wheel/nut`) — **safety-critical; source unchanged** "
        "— Haldrek Muleback 380 2012–\n"
        "  - torque: 88 → 98 N·m (+11 %)\n");
  const std::string json = changes_json(changes);
  for (const char* part : {"\"schema\": 1", "\"address\": \"wheel/nut\"", "\"critical\": true",
                           "\"changes-figure\": true", "\"source-changed\": false"}) {
    CHECK_MESSAGE(json.find(part) != std::string::npos, part);
  }
}
