// SPDX-License-Identifier: GPL-2.0-or-later
// Facts in a file are told as those in memory are, or not at all.
#include "compiler/cli/kept_facts.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>

#include "tests/content/temporary_folder.h"

using namespace sheafc;

namespace {

constexpr std::uint32_t sheets = 40;
constexpr Likeness likenesses = 30;

std::mt19937 random_numbers(20261129);

SheetFacts random_sheet(std::uint32_t sheet) {
  SheetFacts told;
  for (std::uint32_t entry = 0; entry < random_numbers() % 40; ++entry) {
    Fact& fact = told.facts.emplace_back();
    fact.alike = random_numbers() % likenesses;
    fact.says = random_numbers();
    fact.sheet = sheet;
    fact.entry = entry;
  }
  std::ranges::stable_sort(told.facts, {}, &Fact::alike);
  for (std::size_t i = 0; i < random_numbers() % 50; ++i)
    told.statements.push_back(static_cast<std::uint32_t>(random_numbers()));
  return told;
}

GatheredFacts gathered(const std::vector<SheetFacts>& all) {
  GatheredFacts gathered;
  for (const SheetFacts& sheet : all) {
    gathered.facts.insert(gathered.facts.end(), sheet.facts.begin(), sheet.facts.end());
    gathered.statements.push_back(sheet.statements);
  }
  std::ranges::stable_sort(gathered.facts, {}, &Fact::alike);
  return gathered;
}

std::vector<SheetFacts> random_sheets() {
  std::vector<SheetFacts> all;
  for (std::uint32_t sheet = 0; sheet < sheets; ++sheet) all.push_back(random_sheet(sheet));
  return all;
}

void check_tells(const ToldFacts& told, const std::vector<SheetFacts>& all) {
  const GatheredFacts together = gathered(all);
  CHECK(told.all().facts == together.facts);
  CHECK(told.all().statements == together.statements);
  for (std::uint32_t sheet = 0; sheet < sheets; ++sheet) {
    CHECK(told.of_sheet(sheet) == all[sheet].facts);
    CHECK(told.statements_of(sheet) == all[sheet].statements);
  }
  for (Likeness alike = 0; alike <= likenesses; ++alike) {
    std::vector<Fact> group;
    std::ranges::copy_if(together.facts, std::back_inserter(group),
                         [&](const Fact& fact) { return fact.alike == alike; });
    CHECK(told.alike(alike) == group);
  }
  CHECK(told.is_sound());
}

}  // namespace

TEST_CASE("as gathered, and with what some sheets told again") {
  const sheaf::test::TemporaryFolder folder;
  std::vector<SheetFacts> all = random_sheets();
  const auto identity = keep_facts(folder / "facts", gathered(all));
  REQUIRE(identity);
  ToldFacts from_memory(gathered(all)), from_file(kept_facts(folder / "facts", *identity), {});
  for (int change = 0; change < 8; ++change) {
    check_tells(from_memory, all);
    check_tells(from_file, all);
    const auto sheet = static_cast<std::uint32_t>(random_numbers() % sheets);
    all[sheet] = random_sheet(sheet);
    from_memory.replace(sheet, all[sheet]);
    from_file.replace(sheet, all[sheet]);
  }
}

TEST_CASE("of sheets that have nothing to tell") {
  const sheaf::test::TemporaryFolder folder;
  const std::vector<SheetFacts> all(sheets);
  const auto identity = keep_facts(folder / "facts", gathered(all));
  REQUIRE(identity);
  check_tells(ToldFacts(kept_facts(folder / "facts", *identity), {}), all);
}

TEST_CASE("a file of other facts, a cut one and none are none; a damaged one tells nothing wrong") {
  const sheaf::test::TemporaryFolder folder;
  const GatheredFacts all = gathered(random_sheets());
  const std::string file = folder / "facts";
  const auto identity = keep_facts(file, all);
  REQUIRE(identity);
  CHECK_FALSE(kept_facts(file, *identity + 1));
  CHECK_FALSE(kept_facts(folder / "no-file", *identity));
  CHECK_FALSE(keep_facts(folder / "no-folder/facts", all));
  std::size_t noticed_late = 0;
  const auto bytes = std::filesystem::file_size(file);
  for (std::uintmax_t at = 0; at < bytes; at += 97) {
    const auto flip = [&] {
      std::fstream open(file, std::ios::binary | std::ios::in | std::ios::out);
      open.seekg(static_cast<std::streamoff>(at));
      const char byte = static_cast<char>(open.get() ^ 4);
      open.seekp(static_cast<std::streamoff>(at));
      open.put(byte);
    };
    flip();
    if (const auto kept = kept_facts(file, *identity)) {
      const ToldFacts told(kept, {});
      const auto is_among_them = [&](const Fact& fact) {
        return std::ranges::find(all.facts, fact) != all.facts.end();
      };
      CHECK(std::ranges::all_of(told.all().facts, is_among_them));
      for (std::uint32_t sheet = 0; sheet < sheets; ++sheet) {
        CHECK(std::ranges::all_of(told.of_sheet(sheet), is_among_them));
        told.statements_of(sheet);
      }
      CHECK_FALSE(told.is_sound());
      ++noticed_late;
    }
    flip();
  }
  CHECK(noticed_late > 0);
  REQUIRE(kept_facts(file, *identity));
  std::filesystem::resize_file(file, bytes - 1);
  CHECK_FALSE(kept_facts(file, *identity));
}
