// SPDX-License-Identifier: GPL-2.0-or-later
// The same content gives the same bytes, whatever surrounds the build.
#include <doctest/doctest.h>

#include <algorithm>
#include <clocale>
#include <cstdlib>
#include <filesystem>

#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"
#include "tests/content/synthetic_fleet.h"

using namespace sheaf;

namespace {

// Several shards, so that threads have something to disagree about.
const LibraryContent& fleet() {
  static const LibraryContent content = [] {
    LibraryContent made{"fleet", {}, test::synthetic_words()};
    for (int i = 0; i < 450; ++i) made.sheets.push_back(test::synthetic_sheet(i));
    return made;
  }();
  return content;
}

std::string bytes_of(const LibraryContent& content, sheafc::EmitOptions options = {}) {
  const test::TemporaryFolder folder;
  test::write(content, folder / "made.sheaf", options);
  return test::read_file(folder / "made.sheaf");
}

}  // namespace

TEST_CASE("one thread or many, sheets in any order: the same bytes") {
  const std::string once = bytes_of(fleet(), {1, nullptr});
  CHECK(once == bytes_of(fleet(), {2, nullptr}));
  LibraryContent shuffled = fleet();
  std::ranges::reverse(shuffled.sheets);
  std::swap(shuffled.sheets[3], shuffled.sheets[300]);
  CHECK(once == bytes_of(shuffled, {7, nullptr}));
}

TEST_CASE("another folder, locale, time zone, or setting of Xapian: the same bytes") {
  const LibraryContent content = test::random_content(5, 60);
  const std::string once = bytes_of(content);
  const auto here = std::filesystem::current_path();
  const test::TemporaryFolder elsewhere;
  std::filesystem::current_path(elsewhere.path());
  setenv("XAPIAN_FLUSH_THRESHOLD", "7", 1);
  setenv("XAPIAN_MAX_CHANGESETS", "3", 1);
  setenv("TZ", "Asia/Kathmandu", 1);
  const char* locale = std::setlocale(LC_ALL, "C.UTF-8");
  CHECK(locale != nullptr);
  test::write(content, "relative.sheaf");
  CHECK(test::read_file("relative.sheaf") == once);
  std::setlocale(LC_ALL, "C");
  for (const char* name : {"XAPIAN_FLUSH_THRESHOLD", "XAPIAN_MAX_CHANGESETS", "TZ"}) unsetenv(name);
  std::filesystem::current_path(here);
}

TEST_CASE("other content has another digest and another index") {
  LibraryContent content = test::random_content(6, 20);
  const std::string before = bytes_of(content);
  content.sheets[7].title += '.';
  CHECK(bytes_of(content) != before);
}
