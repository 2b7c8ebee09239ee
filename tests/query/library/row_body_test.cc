// SPDX-License-Identifier: GPL-2.0-or-later
// What is written into the bodies of rows is read back, and nothing else is read from them.
#include "query/library/row_body.h"

#include <doctest/doctest.h>

#include "query/library/hash.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"

using namespace sheaf;

namespace {

SheetRecord small_sheet() {
  SheetRecord sheet;
  sheet.name = "fork";
  sheet.form = "assembly";
  sheet.title = "The \"41\" fork";
  sheet.assembly = "fork";
  sheet.fits = {{"Haldrek", "Muleback 380", 2011, 0, "", "", "", ""}};
  sheet.place = {"demo/fork.yaml", 1};
  EntryRecord entry;
  entry.address = "fork/top-plug";
  entry.kind = "fastener";
  entry.name = "top plug";
  entry.fields = {{"torque", "28 ± 3 N·m", {"demo/fork.yaml", 8}},
                  {"drive", "hexagon 27 mm", {"demo/base.yaml", 3}}};
  entry.fits = sheet.fits;
  entry.place = {"demo/fork.yaml", 7};
  sheet.entries = {entry};
  return sheet;
}

const SharedLists& shared_of_small_sheet() {
  static const SharedLists shared = sheet_from_body("fork", bodies_of(small_sheet()).sheet)->shared;
  return shared;
}

bool is_entry(std::string_view body) {
  return entry_from_body("fork/x", body, shared_of_small_sheet()).has_value();
}

}  // namespace

TEST_CASE("bodies are as FORMAT.md shows them") {
  const SheetBodies bodies = bodies_of(small_sheet());
  const std::string document = test::read_file("query/library/FORMAT.md");
  for (const std::string& body : {bodies.sheet, bodies.entries.at(0)}) {
    CAPTURE(body);
    CHECK(document.find("```json\n" + body + "\n```") != std::string::npos);
  }
}

TEST_CASE("sheets of every make are read back") {
  for (const SheetRecord& sheet : test::random_content(5, 200).sheets) {
    const SheetBodies bodies = bodies_of(sheet);
    auto read = sheet_from_body(sheet.name, bodies.sheet);
    REQUIRE(read);
    for (std::size_t i = 0; i < sheet.entries.size(); ++i) {
      const auto entry = entry_from_body(sheet.entries[i].address, bodies.entries.at(i), read->shared);
      REQUIRE(entry);
      read->sheet.entries.push_back(*entry);
    }
    CHECK(read->sheet == sheet);
  }
}

TEST_CASE("control characters and numbers of every size are read back") {
  SheetRecord sheet = small_sheet();
  sheet.title.clear();
  for (int byte = 0; byte < 128; ++byte) sheet.title += static_cast<char>(byte);
  sheet.place.line = -2147483647 - 1;
  sheet.fits[0].year_from = 2147483647;
  const auto read = sheet_from_body("fork", bodies_of(sheet).sheet);
  REQUIRE(read);
  CHECK(read->sheet.title == sheet.title);
  CHECK(read->sheet.place == sheet.place);
  CHECK(read->sheet.fits == sheet.fits);
}

TEST_CASE("what is not such a body is none") {
  CHECK(is_entry(R"(["fastener","plug",7,[["torque","28 N·m",8]]])"));
  CHECK(is_entry("[]"));
  for (const char* body : {"",
                           "[",
                           "]",
                           "[]]",
                           "[] ",
                           "{}",
                           "null",
                           "[null]",
                           "[1]",
                           R"(["fastener",)",
                           R"(["fastener"])]",
                           R"(["fastener""plug"])",
                           R"(["fastener",,7])",
                           R"(["fastener","plug",7,])",
                           R"(["fastener","plug","7"])",
                           R"(["fastener","plug",7.5])",
                           R"(["fastener","plug",1e3])",
                           R"(["fastener","plug",99999999999])",
                           R"(["fastener","plug",99999999999999999999])",
                           R"(["fastener","plug",7,[["torque","28 N·m",8]]], 1)",
                           R"(["fastener","plug",7,[],"","",0,0,0,0,0,0,[],[],0])",
                           R"(["fast\ener"])",
                           R"(["\u0041"])",
                           R"(["\u00)",
                           R"(["\)",
                           "[\"fast\nener\"]"}) {
    CAPTURE(body);
    CHECK_FALSE(is_entry(body));
  }
}

TEST_CASE("no body cut off anywhere is a body, and none leads beyond what its sheet shares") {
  const std::string body = bodies_of(small_sheet()).entries.at(0);
  for (std::size_t length = 0; length < body.size(); ++length) CHECK_FALSE(is_entry(body.substr(0, length)));
  const std::string sheet = bodies_of(small_sheet()).sheet;
  for (std::size_t length = 0; length < sheet.size(); ++length) {
    CHECK_FALSE(sheet_from_body("fork", sheet.substr(0, length)));
  }
  for (const char* out_of_bounds :
       {"1,0,0,0,0", "0,1,0,0,0", "0,0,1,0,0", "0,0,0,1,0", "0,0,0,0,2", "-1,0,0,0,0"}) {
    CHECK_FALSE(is_entry(std::string(R"(["fastener","plug",7,[],"","",0,)") + out_of_bounds + ']'));
  }
  CHECK(is_entry(R"(["fastener","plug",7,[],"","",0,0,0,0,0,1])"));
  CHECK_FALSE(is_entry(R"(["fastener","plug",7,[["torque","28 N·m",8,2]]])"));
  CHECK_FALSE(sheet_from_body("fork", R"(["assembly","","","","",1])"));
}

TEST_CASE("brackets without end are no body, and cost nothing") {
  CHECK_FALSE(is_entry(std::string(10'000'000, '[')));
  CHECK_FALSE(sheet_from_body("fork", std::string(10'000'000, '[')));
}

TEST_CASE("a sheet's hash tells every difference") {
  const auto hash = [](const SheetRecord& sheet) { return hash_of(sheet, bodies_of(sheet)); };
  const SheetRecord sheet = small_sheet();
  SheetRecord other = sheet;
  CHECK(hash(other) == hash(sheet));
  other.entries[0].address += 's';
  CHECK(hash(other) != hash(sheet));
  other = sheet;
  other.entries[0].fields[1].text = "hexagon 28 mm";
  CHECK(hash(other) != hash(sheet));
  other = sheet;
  other.name += 's';
  CHECK(hash(other) != hash(sheet));
}
