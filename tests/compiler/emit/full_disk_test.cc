// SPDX-License-Identifier: GPL-2.0-or-later
// When the world does not let it, nothing is half-written and the old library is as it was.
#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"

using namespace sheaf;
using Names = std::vector<std::string>;

namespace {

std::string failure_of_writing(const LibraryContent& content, const std::string& path) {
  const auto receipt = sheafc::write_library(content, path, {2, nullptr});
  return receipt ? "" : receipt.failure().message;
}

bool limit_files_to(rlim_t bytes) {
  const rlimit limit{bytes, bytes};
  return setrlimit(RLIMIT_FSIZE, &limit) == 0;
}

}  // namespace

TEST_CASE("a disk that is full at any point leaves the old library") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  const LibraryContent old_content = test::random_content(51, 3);
  const LibraryContent new_content = test::random_content(52, 60);
  test::write(new_content, path);
  const auto whole_size = std::filesystem::file_size(path);
  test::write(old_content, path);
  const std::string old_bytes = test::read_file(path);
  for (rlim_t limit = 0; limit < whole_size; limit += whole_size / 23) {
    INFO(limit);
    CHECK(test::in_another_process([&] {
      if (!limit_files_to(limit)) return false;
      return failure_of_writing(new_content, path).starts_with("cannot write " + path + ": ");
    }));
    CHECK(test::read_file(path) == old_bytes);
    CHECK(folder.names() == Names{"made.sheaf"});
  }
  CHECK(test::in_another_process(
      [&] { return limit_files_to(whole_size) && failure_of_writing(new_content, path).empty(); }));
}

TEST_CASE("the limit of file sizes strikes as before once the library is written") {
  const test::TemporaryFolder folder;
  CHECK_FALSE(test::in_another_process([&] {
    if (!limit_files_to(4096)) return true;
    failure_of_writing(test::random_content(52, 9), folder / "made.sheaf");
    test::write_file(folder / "other", std::string(8192, 'x'));  // ends the process
    return true;
  }));
}

TEST_CASE("what is no regular file is not written to") {
  const test::TemporaryFolder folder;
  const LibraryContent content = test::random_content(53, 2);
  CHECK(failure_of_writing(content, "/dev/full") == "cannot write /dev/full: it is not a regular file");
  CHECK(failure_of_writing(content, folder.path()) == "cannot write " + folder.path() + ": it is a folder");
  CHECK(failure_of_writing(content, folder / "none/made.sheaf") ==
        "cannot write in " + (folder / "none") + ": No such file or directory");
  CHECK(failure_of_writing(content, "") == "cannot write : it names no file");
}

TEST_CASE("a folder that may not be written to keeps what it has") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(54, 2), path);
  const std::string old_bytes = test::read_file(path);
  REQUIRE(chmod(folder.path().c_str(), 0555) == 0);
  const unsigned nobody = getuid() == 0 ? 65534 : 0;
  CHECK(test::in_another_process(
      [&] {
        return failure_of_writing(test::random_content(55, 2), path) ==
               "cannot write in " + folder.path() + ": Permission denied";
      },
      nobody));
  chmod(folder.path().c_str(), 0755);
  CHECK(test::read_file(path) == old_bytes);
}

TEST_CASE("a build that is told to stop leaves the old library") {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(test::random_content(56, 2), path);
  const std::string old_bytes = test::read_file(path);
  const std::atomic<bool> interrupted = true;
  const auto receipt = sheafc::write_library(test::random_content(57, 2), path, {1, &interrupted});
  REQUIRE_FALSE(receipt);
  CHECK(receipt.failure().message == "stopped; " + path + " is as it was");
  CHECK(test::read_file(path) == old_bytes);
  CHECK(folder.names() == Names{"made.sheaf"});
}

TEST_CASE("a link to a library is followed, and stays") {
  const test::TemporaryFolder folder;
  std::filesystem::create_directory(folder / "real");
  test::write(test::random_content(58, 2), folder / "real/made.sheaf");
  std::filesystem::create_symlink("real/made.sheaf", folder / "link.sheaf");
  test::write(test::random_content(59, 2), folder / "link.sheaf");
  CHECK(std::filesystem::is_symlink(folder / "link.sheaf"));
  CHECK(test::open(folder / "real/made.sheaf").facts().name == "random-59");
}
