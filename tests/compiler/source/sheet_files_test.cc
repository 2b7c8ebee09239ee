// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/sheet_files.h"

#include <doctest/doctest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "compiler/source/source_file.h"

namespace fs = std::filesystem;
using sheafc::list_sheets;
using sheafc::read_source;

namespace {

// A folder of its own for one test.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "sheaf-files-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    root = name;
  }
  ~Folder() { fs::remove_all(root); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::string path(const std::string& name) const { return (root / name).string(); }
  void write(const std::string& name, const std::string& text = "a: 1\n") const {
    fs::create_directories((root / name).parent_path());
    std::ofstream(root / name, std::ios::binary) << text;
  }
  // The sheets' names below the folder in the order found, or why there is none.
  std::string listed() const {
    const auto sheets = list_sheets(root.string());
    if (!sheets) return without_root(sheets.failure().message);
    std::string names;
    for (const std::string& sheet : *sheets) names += without_root(sheet) + " ";
    return names;
  }
  std::string without_root(std::string text) const {
    const std::string prefix = root.string() + "/";
    for (auto at = text.find(prefix); at != std::string::npos; at = text.find(prefix))
      text.erase(at, prefix.size());
    return text;
  }

  fs::path root;
};

}  // namespace

TEST_CASE("sheets are found below a folder, sorted by the bytes of their paths") {
  const Folder folder;
  folder.write("b.yaml");
  folder.write("a/z.yaml");
  folder.write("a/Y.yaml");
  folder.write("a.yaml");
  folder.write("README.md");
  folder.write(".hidden.yaml");
  folder.write(".git/x.yaml");
  CHECK(folder.listed() == "a.yaml a/Y.yaml a/z.yaml b.yaml ");
}

TEST_CASE("a file stands for itself") {
  const Folder folder;
  folder.write("one.yaml");
  const auto sheets = list_sheets(folder.path("one.yaml"));
  REQUIRE(sheets);
  CHECK(*sheets == std::vector<std::string>{folder.path("one.yaml")});
}

TEST_CASE("an empty folder holds no sheets") {
  const Folder folder;
  CHECK(folder.listed().empty());
}

TEST_CASE("what cannot be a sheet is named, never left out in silence") {
  const Folder folder;
  SUBCASE("a named pipe") {
    REQUIRE(::mkfifo(folder.path("a.yaml").c_str(), 0600) == 0);
    CHECK(folder.listed() == "a.yaml is a named pipe, not a file");
    const auto file = read_source(folder.path("a.yaml"), "a.yaml");
    REQUIRE_FALSE(file);
    CHECK(file.failure().message == "a.yaml is a named pipe, not a file");
  }
  SUBCASE("the other ending") {
    folder.write("a.yml");
    CHECK(folder.listed() == "a.yml is not read: the name of a sheet ends in .yaml; rename it");
  }
  SUBCASE("a link that leads nowhere") {
    fs::create_symlink("nowhere", folder.root / "a.yaml");
    CHECK(folder.listed() == "a.yaml cannot be opened: no such file or folder");
  }
  SUBCASE("a link that leads to itself") {
    fs::create_symlink("a.yaml", folder.root / "a.yaml");
    CHECK(folder.listed() == "a.yaml cannot be opened: its symbolic links lead in a circle");
    CHECK(read_source(folder.path("a.yaml"), "a.yaml").failure().message ==
          "a.yaml cannot be opened: its symbolic links lead in a circle");
  }
  SUBCASE("a link to the folder above") {
    folder.write("a/b.yaml");
    fs::create_directory_symlink("..", folder.root / "a" / "up");
    CHECK(folder.listed() == "a/up is a symbolic link to a folder that is read already; take it out");
  }
  SUBCASE("a folder named like a sheet is a folder") {
    folder.write("a.yaml/b.yaml");
    CHECK(folder.listed() == "a.yaml/b.yaml ");
    CHECK(read_source(folder.path("a.yaml"), "a.yaml").failure().message == "a.yaml is a folder, not a file");
  }
  SUBCASE("no such folder") {
    CHECK_FALSE(list_sheets(folder.path("nowhere")));
    CHECK(read_source(folder.path("nowhere"), "x").failure().message ==
          "x cannot be opened: no such file or folder");
  }
}

TEST_CASE("links to sheets and to other folders are followed") {
  const Folder folder;
  const Folder other;
  other.write("there/b.yaml");
  folder.write("one.yaml");
  fs::create_symlink(folder.root / "one.yaml", folder.root / "two.yaml");
  fs::create_directory_symlink(other.root / "there", folder.root / "linked");
  CHECK(folder.listed() == "linked/b.yaml one.yaml two.yaml ");
}

TEST_CASE("an unreadable folder is a failure, for whoever is not root") {
  if (::geteuid() == 0) {
    // Root is never refused, so an unprivileged child asks.
    const Folder folder;
    folder.write("closed/a.yaml");
    fs::permissions(folder.root, fs::perms::all);
    fs::permissions(folder.root / "closed", fs::perms::none);
    const pid_t child = ::fork();
    if (child == 0) {
      if (::setuid(65534) != 0) ::_exit(2);
      ::_exit(folder.listed() == "closed cannot be opened: no permission" ? 0 : 1);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(status == 0);
    fs::permissions(folder.root / "closed", fs::perms::owner_all);
    return;
  }
  const Folder folder;
  folder.write("closed/a.yaml");
  fs::permissions(folder.root / "closed", fs::perms::none);
  CHECK(folder.listed() == "closed cannot be opened: no permission");
  fs::permissions(folder.root / "closed", fs::perms::owner_all);
}

TEST_CASE("a sheet is read whole, and only up to the limit if it is larger") {
  const Folder folder;
  const std::string text = "a: " + std::string(100000, 'x') + "\n";
  folder.write("a.yaml", text);
  const auto file = read_source(folder.path("a.yaml"), "shown.yaml");
  REQUIRE(file);
  CHECK(file->bytes() == text);
  CHECK(file->name() == "shown.yaml");

  folder.write("large.yaml");
  fs::resize_file(folder.root / "large.yaml", 100 << 20);  // sparse: costs no disk
  auto large = read_source(folder.path("large.yaml"), "large.yaml");
  REQUIRE(large);
  CHECK(large->bytes().size() < 2 * sheafc::max_file_bytes);
}
