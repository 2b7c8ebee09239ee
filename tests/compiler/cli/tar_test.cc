// SPDX-License-Identifier: GPL-2.0-or-later
// Archives made here byte by byte, as POSIX (ustar interchange format, pax) lays them out.
#include <doctest/doctest.h>

#include "compiler/cli/git_archive.h"

using namespace sheafc;

namespace {

std::string member(const std::string& name, const std::string& body, char type = '0',
                   const std::string& prefix = "") {
  std::string header(512, '\0');
  header.replace(0, name.size(), name);
  std::string size;
  for (std::size_t rest = body.size(); size.size() < 11; rest /= 8)
    size.insert(size.begin(), static_cast<char>('0' + rest % 8));
  header.replace(124, 11, size);
  header[156] = type;
  header.replace(345, prefix.size(), prefix);
  return header + body + std::string((512 - body.size() % 512) % 512, '\0');
}

std::string told(const std::string& archive, const std::string& folder = "") {
  const auto sheets = sheets_in_tar(archive, folder);
  if (!sheets) return "! " + sheets.failure().message;
  std::string text;
  for (const SheetText& sheet : *sheets) text += sheet.path + "=" + sheet.text + "|";
  return text;
}

}  // namespace

TEST_CASE("sheets are taken out of an archive, and nothing else") {
  CHECK(told(member("b.yaml", "two") + member("a/", "", '5') + member("a/a.yaml", std::string(600, 'x')) +
             member("README.md", "no") + std::string(1024, '\0')) ==
        "a/a.yaml=" + std::string(600, 'x') + "|b.yaml=two|");
  CHECK(told(member("specs/b.yaml", "two") + member("other/c.yaml", "no"), "specs") == "b.yaml=two|");
}

TEST_CASE("long names stand in a prefix or in a record before") {
  CHECK(told(member("c.yaml", "x", '0', "a/b")) == "a/b/c.yaml=x|");
  CHECK(told(member("pax", "20 path=long/d.yaml\n", 'x') + member("short.yaml", "x") +
             member("e.yaml", "y")) == "e.yaml=y|long/d.yaml=x|");
}

TEST_CASE("an archive that is cut off or no archive is refused") {
  const std::string whole = member("a.yaml", std::string(600, 'x'));
  CHECK(told(whole.substr(0, 700)) == "! the archive is cut off");
  CHECK(told(std::string(512, 'x')) == "! the archive is cut off");
  CHECK(told("") == "");
}
