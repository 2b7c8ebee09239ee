// SPDX-License-Identifier: GPL-2.0-or-later
// What was written is what is read back, by every way in.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "query/library/index.h"
#include "query/library/index_terms.h"
#include "tests/compiler/emit/written_library.h"
#include "tests/content/random_content.h"
#include "tests/content/synthetic_fleet.h"

using namespace sheaf;

namespace {

struct Made {
  test::TemporaryFolder folder;
  LibraryContent content;
  sheafc::Receipt receipt;
  Library library;

  explicit Made(LibraryContent what)
      : content(std::move(what)),
        receipt(test::write(content, folder / "made.sheaf")),
        library(test::open(folder / "made.sheaf")) {}
};

LibraryContent small_fleet() {
  LibraryContent content{"fleet", {}, test::synthetic_words()};
  for (int i = 0; i < 12; ++i) content.sheets.push_back(test::synthetic_sheet(i));
  return content;
}

}  // namespace

TEST_CASE("random content comes back whole, sheet by sheet and entry by entry") {
  for (unsigned seed = 1; seed <= 8; ++seed) {
    Made made(test::random_content(seed, 40));
    const test::Answers answers = test::ask_for_everything(made.folder / "made.sheaf", made.content);
    CHECK(answers.opened);
    CHECK(answers.refused + answers.missed + answers.wrong == 0);
    CHECK(made.library.verify() == std::vector<std::string>{});
  }
}

TEST_CASE("entries come in their order, each with its number and its sheet") {
  Made made(test::random_content(11, 30));
  std::vector<std::string> written, read;
  for (const SheetRecord& sheet : made.content.sheets) {
    for (const EntryRecord& entry : sheet.entries) {
      written.push_back(sheet.title + entry.address + entry.variant);
    }
  }
  const auto fault =
      made.library.for_each_entry([&](EntryId id, const EntryRecord& entry, const SheetRecord& sheet) {
        CHECK(id == read.size() + 1);
        CHECK(*made.library.entry_by_id(id)->entry == entry);
        CHECK(sheet.entries.empty());
        read.push_back(sheet.title + entry.address + entry.variant);
        return true;
      });
  CHECK_FALSE(fault);
  CHECK(read == written);
  CHECK_FALSE(made.library.entry_by_id(0));
  CHECK_FALSE(made.library.entry_by_id(static_cast<EntryId>(read.size()) + 1));
}

TEST_CASE("an old address leads to the entry, an unknown one nowhere") {
  Made made(test::random_content(12, 30));
  int old_addresses = 0;
  for (const SheetRecord& sheet : made.content.sheets) {
    for (const EntryRecord& entry : sheet.entries) {
      for (const std::string& address : entry.formerly) {
        ++old_addresses;
        CHECK(std::ranges::count(*made.library.entries_at(address), entry) > 0);
      }
    }
  }
  CHECK(old_addresses > 20);
  CHECK(made.library.entries_at("no-such-sheet/no-such-entry")->empty());
  CHECK(made.library.sheet("no-such-sheet")->empty());
  CHECK(made.library.sheet_without_entries("")->empty());
}

TEST_CASE("sheets are listed by name, without their entries") {
  LibraryContent content = test::random_content(13, 25);
  std::ranges::reverse(content.sheets);  // order of writing does not matter
  Made made(std::move(content));
  const auto sheets = made.library.sheets();
  REQUIRE(sheets);
  CHECK(sheets->size() == 25);
  CHECK(std::ranges::is_sorted(*sheets, {}, &SheetRecord::name));
  for (const SheetRecord& sheet : *sheets) {
    CHECK(sheet.entries.empty());
    CHECK(made.library.sheet_without_entries(sheet.name)->front() == sheet);
  }
}

TEST_CASE("machines are listed with the years of all that fits them") {
  LibraryContent content = small_fleet();
  content.sheets[0].entries[0].fits = {{"Haldrek", "Muleback 380", 2011, 2013, "", "", "", ""},
                                       {"Haldrek", "Muleback 380", 2015, 0, "", "", "", ""}};
  content.sheets[1].entries[0].fits = {{"Haldrek", "Möwe", 0, 2013, "", "", "", ""}};
  Made made(std::move(content));
  const auto found = made.library.machines_beginning("mule");
  REQUIRE(found);
  REQUIRE(found->size() == 1);
  CHECK(found->front().model == "Muleback 380");
  CHECK(found->front().year_from == 2011);
  CHECK(found->front().year_to == 0);
  CHECK(made.library.machines_beginning("mowe")->front().year_from == 0);
  CHECK(made.library.machines_with_word("haldrek")->size() == 2);
  CHECK(made.library.machines_with_word("mule")->empty());
  CHECK(made.library.machines_with_word("zzzz")->empty());
  CHECK(made.library.machines()->size() > 2);
}

TEST_CASE("words of the glossary are found by their first stem and by their group") {
  Made made(small_fleet());
  const auto words = made.library.group_words("top");
  REQUIRE(words);
  const auto in_a_text = (*words)->possible(letters_of({"top", "plug"}));
  REQUIRE(in_a_text.size() == 1);
  CHECK(in_a_text.front()->group == "top-plug");
  CHECK(in_a_text.front()->stems == std::vector<std::string>{"top", "plug"});
  CHECK((*words)->possible(letters_of({"top", "cap"})).empty());
  CHECK(made.library.words_of_group("top-plug")->size() == 5);
  CHECK((*made.library.group_words("nosuchword"))->empty());
}

TEST_CASE("what the index was asked last is kept, and is what it brings") {
  Made made(small_fleet());
  Index& index = index_of(made.library);
  std::set<std::string> kinds;
  for (const SheetRecord& sheet : made.content.sheets)
    for (const EntryRecord& entry : sheet.entries) kinds.insert(entry.kind);
  REQUIRE(kinds.size() > 1);
  for (int round = 0; round < 2; ++round)  // the second time, of what is kept
    for (const auto& kind : kinds)
      for (const std::size_t count : {3, 1000}) {
        const Xapian::Query query(term(Prefix::kind, kind));
        const Matches brought = first_of(query, index.database(), count);
        const Matches& kept = index.first_matches(query, count);
        CHECK(kept.ids == brought.ids);
        CHECK(kept.least == brought.least);
        CHECK(kept.most == brought.most);
        CHECK(kept.ids.size() <= count);
        for (const EntryId id : kept.ids) CHECK(made.library.entry_by_id(id)->entry->kind == kind);
      }
}

TEST_CASE("an entry and its sheet say from which library they are, read before it was named or after") {
  Made first(small_fleet()), second(small_fleet());
  CHECK(first.library.entry_by_id(1)->entry->library.empty());
  label_libraries({&first.library, &second.library});
  const auto found = first.library.entry_by_id(1);
  REQUIRE(found);
  CHECK(found->entry->library == first.library.label());
  CHECK(found->sheet->library == first.library.label());
  CHECK_FALSE(first.library.label().empty());
}

TEST_CASE("the library says what it is") {
  LibraryContent content = small_fleet();
  content.sheets[3].entries[2].checked.on = "2031-02-03";
  Made made(std::move(content));
  const LibraryFacts& facts = made.library.facts();
  CHECK(facts.name == "fleet");
  CHECK(facts.data_date == "2031-02-03");
  CHECK(facts.sheets == 12);
  CHECK(facts.entries == 240);
  CHECK(facts.words == 150);
  CHECK(facts.format == 5);
  CHECK(facts.digest == made.receipt.digest);
  CHECK(facts.digest.size() == 64);
  CHECK(facts.bytes == made.receipt.bytes);
  CHECK(facts.bytes == static_cast<std::int64_t>(std::filesystem::file_size(made.folder / "made.sheaf")));
}

TEST_CASE("every term, value and spelling of an entry is in the index under its number") {
  Made made(small_fleet());
  const Xapian::Database& index = index_of(made.library).database();
  const WordGroups groups(made.content.words);
  EntryId id = 0;
  std::map<std::string, std::set<EntryId>> postings;
  for (const SheetRecord& sheet : made.content.sheets) {
    const EntryIndexer indexer(sheet, groups);
    for (const EntryRecord& entry : sheet.entries) {
      const IndexedEntry indexed = indexer.index(entry);
      ++id;
      for (const Term& term : indexed.terms) postings[term.text].insert(id);
      for (const SlotValue& value : indexed.values) {
        CHECK(index.get_document(id).get_value(value.slot) == Xapian::sortable_serialise(value.number));
      }
      for (const std::string& word : indexed.spelling) CHECK(index.get_spelling_suggestion(word + "q") != "");
    }
  }
  std::map<std::string, std::set<EntryId>> in_index;
  for (auto term = index.allterms_begin(); term != index.allterms_end(); ++term) {
    in_index[*term] = std::set<EntryId>(index.postlist_begin(*term), index.postlist_end(*term));
  }
  CHECK(in_index == postings);
}

TEST_CASE("a library of nothing is a library") {
  Made made(LibraryContent{"empty", {}, {}});
  CHECK(made.library.facts().entries == 0);
  CHECK(made.library.facts().data_date == "");
  CHECK(made.library.sheets()->empty());
  CHECK(made.library.verify() == std::vector<std::string>{});
}
