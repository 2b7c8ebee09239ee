// SPDX-License-Identifier: GPL-2.0-or-later
// A library with some sheets replaced has the bytes of one that was written from the beginning.
#include "compiler/emit/revise_library.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <functional>

#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"
#include "tests/content/synthetic_fleet.h"

using namespace sheaf;

namespace {

using Change = std::function<void(SheetRecord&)>;

// A library, the means to revise it, and what a clean build of the same would be.
class Revision {
 public:
  explicit Revision(LibraryContent content) : content_(std::move(content)) {
    for (const std::string& below : {cache(), folder_ / "clean"}) std::filesystem::create_directory(below);
    took(test::write(content_, path(), options()));
  }

  // Changes the sheet and revises the library; whether that could be done.
  bool change(std::size_t number, const Change& change) {
    SheetRecord& sheet = content_.sheets.at(number);
    change(sheet);
    auto revised = sheafc::revise_library(path(), earlier_, {sheet}, options());
    REQUIRE(revised);
    if (*revised) took(**revised);
    return revised->has_value();
  }
  bool is_as_from_the_beginning() {
    test::write(content_, folder_ / "clean/fleet.sheaf", {});
    return bytes() == test::read_file(folder_ / "clean/fleet.sheaf");
  }
  std::string bytes() { return test::read_file(path()); }
  std::string path() { return folder_ / "fleet.sheaf"; }
  std::string cache() { return folder_ / "cache"; }

 private:
  sheafc::EmitOptions options() { return {.cache = cache(), .program = "test"}; }
  void took(const sheafc::Receipt& receipt) { earlier_ = {receipt.rows_hash, receipt.hashes}; }

  test::TemporaryFolder folder_;
  LibraryContent content_;
  sheafc::EarlierLibrary earlier_;
};

LibraryContent fleet(int sheets = 450) {
  LibraryContent made{"fleet", {}, test::synthetic_words()};
  for (int i = 0; i < sheets; ++i) made.sheets.push_back(test::synthetic_sheet(i));
  return made;
}

void name_the_first(SheetRecord& sheet) { sheet.entries.front().name += " of another name"; }

}  // namespace

TEST_CASE("one sheet after another replaced: the same bytes as from the beginning") {
  Revision library(fleet());
  CHECK(library.change(17, name_the_first));
  CHECK(library.is_as_from_the_beginning());
  CHECK(library.change(449, [](SheetRecord& sheet) { sheet.title += " and a longer title"; }));
  CHECK(library.change(0, [](SheetRecord& sheet) { sheet.entries.back().fields.clear(); }));
  CHECK(library.change(17, [](SheetRecord& sheet) {
    sheet.checked.on = "2031-01-02";
    for (EntryRecord& entry : sheet.entries) entry.checked.on = "2031-01-02";
  }));
  CHECK(library.change(18, [](SheetRecord& sheet) {
    sheet.source.title += "another source than its entries'";
    sheet.entries.front().place.file = "moved.yaml";
    sheet.entries.back().formerly = {"synthetic-000018/before", "synthetic-000018/before"};
  }));
  CHECK(library.is_as_from_the_beginning());
}

TEST_CASE("rows that grow and shrink, by a byte, by pages, and beyond what a page holds") {
  Revision library(fleet(100));
  for (const std::size_t length : {7u, 8u, 400u, 1800u, 3000u, 9000u, 2u}) {
    CAPTURE(length);
    CHECK(library.change(40, [&](SheetRecord& sheet) {
      for (std::size_t i = 3; i < 6; ++i) sheet.entries[i].name = std::string(length, 'n');
    }));
    CHECK(library.is_as_from_the_beginning());
  }
}

TEST_CASE("the newest date comes, goes and stays") {
  Revision library(fleet(30));
  for (const char* date : {"2031-01-02", "2031-02-02", "2001-01-02"}) {
    CAPTURE(date);
    CHECK(library.change(9, [&](SheetRecord& sheet) {
      sheet.checked.on = date;
      for (EntryRecord& entry : sheet.entries) entry.checked.on = date;
    }));
    CHECK(library.is_as_from_the_beginning());
  }
}

TEST_CASE("sheets of every make: each one replaced") {
  Revision library(test::random_content(11, 40));
  for (std::size_t number = 0; number < 40; ++number) {
    CAPTURE(number);
    CHECK(library.change(number, [](SheetRecord& sheet) {
      sheet.title += " again";
      for (EntryRecord& entry : sheet.entries) {
        for (FieldRecord& field : entry.fields) ++field.place.line;
      }
    }));
  }
  CHECK(library.is_as_from_the_beginning());
}

TEST_CASE("what reaches other rows is left to a build from the beginning, and the library stays") {
  const auto refuses = [](const Change& change) {
    Revision library(test::random_content(12, 30));
    const std::string before = library.bytes();
    return !library.change(7, change) && library.bytes() == before;
  };
  CHECK(refuses([](SheetRecord& sheet) { sheet.entries.push_back(sheet.entries.front()); }));
  CHECK(refuses([](SheetRecord& sheet) { sheet.entries.pop_back(); }));
  CHECK(refuses([](SheetRecord& sheet) {
    sheet.entries.front().fits.push_back({"Haldrek", "Muleback 999", 2011, 2012, "", "", "", ""});
  }));
  CHECK(refuses([](SheetRecord& sheet) { sheet.name = "nowhere"; }));
}

TEST_CASE("a library that is not the earlier one is left to a build from the beginning") {
  Revision library(test::random_content(13, 30));
  std::string bytes = library.bytes();
  bytes[bytes.size() / 3] ^= 1;
  test::write_file(library.path(), bytes);
  CHECK_FALSE(library.change(3, name_the_first));
  std::filesystem::remove(library.path());
  CHECK_FALSE(library.change(3, name_the_first));
}

TEST_CASE("without the parts of the index in the cache, the earlier library gives the sheets") {
  Revision library(fleet());
  std::filesystem::remove_all(library.cache());
  CHECK(library.change(17, name_the_first));
  CHECK(library.is_as_from_the_beginning());
}
