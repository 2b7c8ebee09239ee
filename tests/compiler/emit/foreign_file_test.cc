// SPDX-License-Identifier: GPL-2.0-or-later
// What is no library of ours is refused in one clear sentence.
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <cstdlib>

#include "query/library/trailer.h"
#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"

using namespace sheaf;

TEST_CASE("a missing file, a folder, a pipe and a text are not libraries") {
  const test::TemporaryFolder folder;
  CHECK(test::refusal(folder / "none.sheaf") ==
        "cannot open " + (folder / "none.sheaf") + ": No such file or directory");
  CHECK(test::refusal(folder.path()) == folder.path() + " is a folder, and no sheaf library");
  const std::string pipe = folder / "pipe";
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  CHECK(test::refusal(pipe) == pipe + " is not a regular file, and no sheaf library");
  CHECK(test::refusal("/dev/null") == "/dev/null is not a regular file, and no sheaf library");
  test::write_file(folder / "text", "sheet: not-a-library\n");
  CHECK(test::refusal(folder / "text") == (folder / "text") + " is no sheaf library");
}

TEST_CASE("another program's SQLite file is not a library") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "other.sqlite";
  REQUIRE(std::system(("sqlite3 " + path + " 'CREATE TABLE t(a); INSERT INTO t VALUES (1)'").c_str()) == 0);
  CHECK(test::refusal(path) == path + " is no sheaf library");
}

TEST_CASE("a library of a newer or an older format is refused, and both formats are named") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(41, 3), path);
  std::string bytes = test::read_file(path);
  const std::size_t format_at = bytes.size() - 20;
  bytes[format_at] = 9;
  test::write_file(path, bytes);
  CHECK(test::refusal(path) == path +
                                   " has format 9, and this sheaf reads format 5; use the sheaf that came "
                                   "with the sheafc that wrote it");
  bytes[format_at] = 0;
  test::write_file(path, bytes);
  CHECK(test::refusal(path) == path +
                                   " has format 0, and this sheaf reads format 5; build it again with the "
                                   "sheafc that came with this sheaf");
}

TEST_CASE("a library whose tables are not those of its format is refused") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(42, 3), path);
  std::string bytes = test::read_file(path);
  bytes.replace(bytes.find("never FROM word"), 5, "main ");
  test::write_file(path, bytes);
  CHECK(test::refusal(path) ==
        path + " is damaged: its table words is not as its format has it; copy or build it again");
}

TEST_CASE("a folder that may not be read is refused, and so is the library in it") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(43, 3), path);
  REQUIRE(chmod(path.c_str(), 0) == 0);
  REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
  const unsigned nobody = getuid() == 0 ? 65534 : 0;
  CHECK(test::in_another_process(
      [&] { return test::refusal(path) == "cannot open " + path + ": Permission denied"; }, nobody));
}

TEST_CASE("a path with every odd sign is opened") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "odd ?&#%20 name\"'ö.sheaf";
  test::write(test::random_content(44, 3), path);
  CHECK(test::refusal(path) == "");
}
