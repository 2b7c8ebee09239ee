// SPDX-License-Identifier: GPL-2.0-or-later
// What was written is what is read back, by every way in.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "compiler/emit/library_writer.h"
#include "query/library/library.h"
#include "tests/content/random_content.h"
#include "tests/content/temporary_folder.h"

using namespace sheaf;

namespace {

struct Written {
  test::TemporaryFolder folder;
  std::string path = folder / "made.sheaf";
};

Library write_and_open(const LibraryContent& content, const std::string& path) {
  const auto receipt = sheafc::write_library(content, path, {});
  if (!receipt) FAIL(receipt.failure().message);
  auto library = open_library(path);
  if (!library) FAIL(library.failure().message);
  return std::move(library).value();
}

}  // namespace

TEST_CASE("random content comes back whole, sheet by sheet") {
  for (unsigned seed = 1; seed <= 5; ++seed) {
    const Written made;
    const LibraryContent content = test::random_content(seed, 40);
    Library library = write_and_open(content, made.path);
    for (const SheetRecord& sheet : content.sheets) {
      const auto read = library.sheet(sheet.name);
      REQUIRE(read);
      REQUIRE(read->size() == 1);
      CHECK(read->front() == sheet);
    }
    const auto words = library.words();
    REQUIRE(words);
    CHECK(*words == content.words);
    CHECK(library.verify() == std::vector<std::string>{});
  }
}
