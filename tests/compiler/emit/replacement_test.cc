// SPDX-License-Identifier: GPL-2.0-or-later
// One library takes another's place in one step, or not at all.
#include <doctest/doctest.h>
#include <fcntl.h>
#include <signal.h>

#include <thread>

#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"

using namespace sheaf;
using Names = std::vector<std::string>;

namespace {

// Writes in a process of its own, which is killed after so many microseconds. True if it was still at work.
bool killed_while_writing(const LibraryContent& content, const std::string& path, int microseconds) {
  const pid_t child = fork();
  if (child == 0) _exit(sheafc::write_library(content, path, {2, nullptr}) ? 0 : 1);
  std::this_thread::sleep_for(std::chrono::microseconds(microseconds));
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  return WIFSIGNALED(status);
}

}  // namespace

TEST_CASE("a build that is killed at any moment leaves the old library or the new one, whole") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  const LibraryContent contents[] = {test::random_content(61, 20), test::random_content(62, 20)};
  std::string bytes[2];
  for (int i : {1, 0}) {
    test::write(contents[i], path);
    bytes[i] = test::read_file(path);
  }
  const auto begun = std::chrono::steady_clock::now();
  test::write(contents[0], path);
  const auto whole =
      std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begun).count();
  constexpr int points = 200;
  int killed = 0;
  for (int i = 0; i < points; ++i) {
    killed += killed_while_writing(contents[i % 2], path, static_cast<int>(whole * i / points));
    const std::string now = test::read_file(path);
    REQUIRE((now == bytes[0] || now == bytes[1]));
  }
  CHECK(killed > points / 4);
  test::write(contents[0], path);
  CHECK(folder.names() == Names{"made.sheaf"});  // what the killed ones left is gone
}

TEST_CASE("a build leaves alone what another build is at work on") {
  const test::TemporaryFolder folder;
  auto other = sheafc::LibraryWriter::begin(folder / "made.sheaf", "other", {}, {});
  REQUIRE(other);
  sheafc::LibraryWriter writer = std::move(other).value();
  test::write(test::random_content(63, 2), folder / "made.sheaf");
  CHECK(folder.names().size() == 2);
  const auto receipt = writer.finish();
  REQUIRE(receipt);
  CHECK(test::open(folder / "made.sheaf").facts().name == "other");
}

TEST_CASE("a build that is given up leaves nothing") {
  const test::TemporaryFolder folder;
  {
    auto writer = sheafc::LibraryWriter::begin(folder / "made.sheaf", "given-up", {}, {});
    REQUIRE(writer);
  }
  CHECK(folder.names() == Names{});
}

TEST_CASE("an open library answers on as it was while it is replaced") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  const LibraryContent old_content = test::random_content(64, 20);
  test::write(old_content, path);
  Library library = test::open(path);
  test::write(test::random_content(65, 25), path);
  for (const SheetRecord& sheet : old_content.sheets) {
    CHECK(*library.sheet(sheet.name) == std::vector<SheetRecord>{sheet});
  }
  CHECK(library.facts().name == "random-64");
  CHECK(test::open(path).facts().name == "random-65");
}

TEST_CASE(
    "whoever opens a library while it is replaced has the old one or the new one, never parts of both") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  const LibraryContent contents[] = {test::random_content(66, 4), test::random_content(67, 9)};
  for (int i : {0, 1}) test::write(contents[i], folder / std::to_string(i));
  std::filesystem::copy_file(folder / "0", path);
  const std::jthread replacing([&](const std::stop_token& done) {
    for (int i = 0; !done.stop_requested(); ++i) {
      std::filesystem::copy_file(folder / std::to_string(i % 2), folder / "next");
      std::filesystem::rename(folder / "next", path);
    }
  });
  for (int i = 0; i < 400; ++i) {
    auto library = open_library(path);
    REQUIRE(library);
    const bool is_first = library->facts().name == "random-66";
    const SheetRecord& sheet = contents[is_first ? 0 : 1].sheets.back();
    Library opened = std::move(library).value();
    CHECK(*opened.sheet(sheet.name) == std::vector<SheetRecord>{sheet});
  }
}
