// SPDX-License-Identifier: GPL-2.0-or-later
// A damaged library is refused with a sentence, or answers rightly: never a wrong figure, never a crash.
#include <doctest/doctest.h>

#include <iterator>
#include <random>

#include "query/library/index.h"
#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"
#include "tests/content/synthetic_fleet.h"

using namespace sheaf;

TEST_CASE("a library that was cut off anywhere is refused") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(21, 10), path);
  const std::string whole = test::read_file(path);
  for (std::size_t length = 0; length < whole.size(); length += 512) {
    test::write_file(path, std::string_view(whole).substr(0, length));
    const std::string message = test::refusal(path);
    INFO(length);
    REQUIRE(message.starts_with(path));
    // Before its header ends, nothing tells it from any other file.
    CHECK(message == path + (length == 0    ? " is empty, and no sheaf library"
                             : length < 100 ? " is no sheaf library"
                                            : " was cut off or damaged; copy or build it again"));
  }
  test::write_file(path, whole + "x");
  CHECK(test::refusal(path) == path + " was cut off or damaged; copy or build it again");
}

TEST_CASE("a flipped bit costs a record or a hit, and verify finds it") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  const LibraryContent content = test::random_content(22, 20);
  test::write(content, path);
  const std::string whole = test::read_file(path);
  std::mt19937 random(4711);
  for (int flip = 0; flip < 300; ++flip) {
    std::string bytes = whole;
    const std::size_t at = random() % bytes.size();
    bytes[at] = static_cast<char>(bytes[at] ^ (1 << random() % 8));
    test::write_file(path, bytes);
    INFO(at);
    const test::Answers answers = test::ask_for_everything(path, content);
    CHECK(answers.wrong == 0);
    if (answers.opened) CHECK_FALSE(test::open(path).verify().empty());
  }
}

TEST_CASE("a damaged block of the index is refused when it is read, and not before") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  LibraryContent content{"fleet", {}, {}};
  for (int i = 0; i < 30; ++i) content.sheets.push_back(test::synthetic_sheet(i));
  test::write(content, path);
  std::string bytes = test::read_file(path);
  // Where the postings of a word stand: in one block out of many.
  bytes[bytes.find("Zplug", bytes.find("Xapian Glass")) + 9] ^= 1;
  test::write_file(path, bytes);
  Library library = test::open(path);
  const Xapian::Database& index = index_of(library).database();
  const auto count_of = [&](const char* term) {
    return std::distance(index.postlist_begin(term), index.postlist_end(term));
  };
  CHECK_THROWS_AS(count_of("Zplug"), Xapian::DatabaseError);
  CHECK(count_of("XAfork") == 100);
}

TEST_CASE("a damaged record is named, and the others still answer") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  LibraryContent content = test::random_content(23, 10);
  for (SheetRecord& sheet : content.sheets) sheet.entries.clear();
  EntryRecord entry;
  entry.address = content.sheets[4].name + "/plug";
  entry.kind = "fastener";
  entry.name = "fork top plug";
  entry.fields = {{"torque", "28.71 N·m", {"demo/a.yaml", 3}}};
  content.sheets[4].entries = {entry};
  test::write(content, path);
  std::string bytes = test::read_file(path);
  bytes.replace(bytes.find("28.71 N"), 5, "82.71");
  test::write_file(path, bytes);
  Library library = test::open(path);
  const auto damaged = library.entries_at(entry.address);
  REQUIRE_FALSE(damaged);
  CHECK(damaged.failure().message == path + " is damaged: " + entry.address +
                                         ": entry 1 does not match its checksum; copy or build it again");
  CHECK_FALSE(library.sheet(content.sheets[4].name));
  CHECK(*library.sheet(content.sheets[3].name) == std::vector<SheetRecord>{content.sheets[3]});
  const auto faults = library.verify();
  REQUIRE(faults.size() >= 2);
  CHECK(faults[0] == path +
                         " is damaged: its content does not have the digest that it was sealed with; copy or "
                         "build it again");
  CHECK(faults[1] == content.sheets[4].name + ": entry 1 does not match its checksum");
}
