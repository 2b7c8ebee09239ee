// SPDX-License-Identifier: GPL-2.0-or-later
// What one entry is found by, seen from the question's side.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "query/library/fold.h"
#include "query/library/index_terms.h"

using namespace sheaf;

namespace {

SheetRecord fork_sheet() {
  SheetRecord sheet;
  sheet.name = "sorvane-41-rod";
  sheet.title = "41 mm conventional fork, damper rods";
  sheet.assembly = "fork";
  sheet.maker = "Sorvane";
  return sheet;
}

EntryRecord top_plug() {
  EntryRecord entry;
  entry.address = "sorvane-41-rod/top-plug";
  entry.kind = "fastener";
  entry.name = "fork top plug";
  entry.fits = {{"Haldrek", "Muleback 380", 2011, 2015, "", "", "", ""}};
  entry.formerly = {"sorvane-41-rod/fork-cap"};
  entry.status = "maker-paper";
  entry.critical = true;
  entry.source.title = "Sorvane fork service leaflet 41";
  const auto add = [&](const char* key, const char* text) { entry.fields.push_back({key, text, {}}); };
  add("also", "O-cap");
  add("side", "front");
  add("part-number", "HK-40732-20");
  add("supersedes", "HK-40732-10");
  add("superseded-by.number", "HK-40732-30");
  add("other-numbers.1.supplier", "Quillmere");
  add("other-numbers.1.number", "QM 77/3");
  add("thread", "M36x1.5");
  add("class", "10.9");
  add("drive", "hexagon 27 mm");
  add("torque", "28 ± 3 N·m");
  add("hand", "left");
  add("notes", "Hold the leaflet's drawing beside it.");
  return entry;
}

const std::vector<WordRecord> glossary = {{"fork-cap", "top plug", "en", true, false},
                                          {"oil", "oil", "en", true, false}};

IndexedEntry indexed(const EntryRecord& entry) {
  static const SheetRecord sheet = fork_sheet();
  static const WordGroups groups(glossary);
  return EntryIndexer(sheet, groups).index(entry);
}

struct Asked {
  IndexedEntry entry;
  bool by(Prefix prefix, const std::string& body) const { return weight(prefix, body).has_value(); }
  std::optional<unsigned> weight(Prefix prefix, const std::string& body) const {
    std::optional<unsigned> sum;
    for (const Term& found : entry.terms) {
      if (found.text == term(prefix, body)) sum = sum.value_or(0) + found.weight;
    }
    return sum;
  }
  bool by_year(const std::string& machine, int year) const {
    const auto terms = year_terms(machine, year);
    return std::ranges::any_of(
        entry.terms, [&](const Term& t) { return std::ranges::find(terms, t.text) != terms.end(); });
  }
  bool has(std::string_view text) const {
    return std::ranges::find(entry.terms, text, &Term::text) != entry.terms.end();
  }
  std::optional<double> number(unsigned slot) const {
    const auto found = std::ranges::find(entry.values, slot, &SlotValue::slot);
    return found == entry.values.end() ? std::nullopt : std::optional(found->number);
  }
};

}  // namespace

TEST_CASE("an entry is found by what it is called, and that counts more than what is said of it") {
  const Asked plug{indexed(top_plug())};
  CHECK(plug.weight(Prefix::stem, "plug") == 3);
  CHECK(plug.by(Prefix::word, "fork"));
  CHECK(plug.weight(Prefix::other_stem, stem_of("drawing")) == 1);
  CHECK(plug.weight(Prefix::other_stem, stem_of("leaflet")) == 2);  // its source, and "leaflet's"
  CHECK_FALSE(plug.by(Prefix::stem, stem_of("drawing")));
  CHECK(plug.by(Prefix::exact_name, "fork top plug"));
  CHECK(plug.by(Prefix::exact_name, "o cap"));
  CHECK(plug.by(Prefix::exact_name, "ocap"));
  CHECK(plug.by(Prefix::group, "fork-cap"));
  CHECK_FALSE(plug.by(Prefix::group, "oil"));
}

TEST_CASE("an entry is found by where it belongs") {
  const Asked plug{indexed(top_plug())};
  CHECK(plug.weight(Prefix::kind, "fastener") == 0);
  CHECK(plug.by(Prefix::assembly, "fork"));
  CHECK(plug.by(Prefix::side, "front"));
  CHECK(plug.by(Prefix::machine, "haldrek/muleback 380"));
  CHECK(plug.by(Prefix::make, "haldrek"));
  CHECK(plug.by_year(machine_body("HALDREK", "muleback 380"), 2013));
  CHECK_FALSE(plug.by_year("haldrek/muleback 380", 2016));
  CHECK(plug.by_year("", 2011));
  CHECK_FALSE(plug.by_year("", 2010));
}

TEST_CASE("an entry without machines says so") {
  EntryRecord entry = top_plug();
  CHECK_FALSE(Asked{indexed(entry)}.by(Prefix::machine, "any"));
  entry.fits.clear();
  CHECK(Asked{indexed(entry)}.by(Prefix::machine, "any"));
}

TEST_CASE("an entry is found by its sizes, numbers and codes") {
  const Asked plug{indexed(top_plug())};
  CHECK(plug.by(Prefix::thread, "m36x1.5"));
  CHECK(plug.by(Prefix::diameter, "m36"));
  CHECK(plug.number(diameter_slot) == 36.0);
  CHECK(plug.by(Prefix::drive, "hexagon-27"));
  CHECK(plug.number(across_flats_slot) == 27.0);
  CHECK(plug.by(Prefix::code, "10.9"));
  CHECK(plug.by(Prefix::part_number, squeeze("hk 40732 20")));
  CHECK(plug.by(Prefix::other_number, squeeze("HK-40732-10")));
  CHECK(plug.by(Prefix::other_number, squeeze("HK-40732-30")));
  CHECK(plug.by(Prefix::other_number, squeeze("qm77/3")));
  CHECK_FALSE(plug.by(Prefix::part_number, squeeze("HK-40732-10")));
  CHECK(plug.by(Prefix::field, "torque"));
  CHECK_FALSE(plug.by(Prefix::field, "volume"));
  CHECK(plug.by(Prefix::choice, "hand=left"));
  CHECK(plug.by(Prefix::choice, "critical=yes"));
  CHECK_FALSE(plug.by(Prefix::choice, "withdrawn=yes"));
}

TEST_CASE("figures are searched by their band, in SI base units") {
  const Asked plug{indexed(top_plug())};
  CHECK(plug.number(least_slot(Dimension::torque)) == doctest::Approx(25.0));
  CHECK(plug.number(most_slot(Dimension::torque)) == doctest::Approx(31.0));
  CHECK(plug.by(Prefix::figure, "torque/22"));
  EntryRecord entry = top_plug();
  entry.fields = {{"torque", "20 N·m, 41 N·m + 90°", {}}, {"gap", "min 2 mm", {}}};
  const Asked staged{indexed(entry)};
  CHECK(staged.by(Prefix::figure, "torque/wide"));
  CHECK(staged.number(least_slot(Dimension::torque)) == doctest::Approx(20.0));
  CHECK(staged.number(most_slot(Dimension::torque)) == doctest::Approx(41.0));
  CHECK(staged.number(least_slot(Dimension::length)) ==
        doctest::Approx(0.002));  // a minimum states one value
  CHECK(staged.number(most_slot(Dimension::length)) == doctest::Approx(0.002));
}

TEST_CASE("what is said beside a figure is found") {
  EntryRecord entry = top_plug();
  entry.kind = "clearance";
  entry.fields = {{"value", "35..45 mm on the side stand, midway between the sprockets", {}}};
  const Asked slack{indexed(entry)};
  CHECK(slack.by(Prefix::other_stem, stem_of("stand")));
  CHECK(slack.by(Prefix::other_stem, stem_of("midway")));
}

TEST_CASE("a part's size is searched where it is one") {
  EntryRecord entry = top_plug();
  entry.kind = "part";
  entry.fields = {{"size", "12x18x1.5 mm", {}}};
  CHECK(Asked{indexed(entry)}.number(size_slot) == doctest::Approx(12));
  entry.fields = {{"size", "112 links", {}}};
  CHECK_FALSE(Asked{indexed(entry)}.has(term(Prefix::dimension, "112")));
}

TEST_CASE("a size is kept as written, in any order and by each dimension") {
  EntryRecord entry = top_plug();
  entry.kind = "seal";
  entry.fields = {{"size", "41x54x11", {}}};
  const Asked seal{indexed(entry)};
  CHECK(seal.by(Prefix::size, "41x54x11"));
  CHECK(seal.by(Prefix::any_order, "11x41x54"));
  CHECK(seal.by(Prefix::dimension, "54"));
  CHECK(seal.by(Prefix::dimension_at, "2/54"));
  CHECK_FALSE(seal.by(Prefix::dimension_at, "1/54"));
  CHECK(seal.number(size_slot) == 41.0);
  CHECK(seal.number(size_slot + 2) == 11.0);
}

TEST_CASE("the rows of a table are found by what their cells hold") {
  EntryRecord row;
  row.address = "iso-metric-threads/m8x1.25";
  row.kind = "thread-size";
  row.name = "thread M8x1.25";
  row.fields = {{"thread", "M8x1.25", {}},
                {"pitch", "1.25 mm", {}},
                {"grade", "SAE 10W-40", {}},
                {"bearing", "6203-2RS", {}}};
  const Asked found{indexed(row)};
  CHECK(found.by(Prefix::kind, "thread-size"));
  CHECK(found.by(Prefix::thread, "m8x1.25"));
  CHECK(found.by(Prefix::diameter, "m8"));
  CHECK(found.number(least_slot(Dimension::length)).has_value());
  CHECK(found.by(Prefix::code, "sae10w40"));
  CHECK(found.by(Prefix::code, "10w40"));
  CHECK(found.by(Prefix::bearing, "6203"));
}

TEST_CASE("no word with a digit is ever a spelling") {
  EntryRecord entry = top_plug();
  entry.name = "M8x1.25 axle nut 6203 a12b";
  for (const std::string& word : indexed(entry).spelling) {
    CHECK(word.find_first_of("0123456789") == std::string::npos);
    CHECK(word.size() <= 40);
  }
  const auto spelling = indexed(entry).spelling;
  CHECK(std::ranges::find(spelling, "axle") != spelling.end());
  CHECK(spelling_of({"g", "Gabelöl M8", "de", true, false}) ==
        std::vector<std::string>{"gabeloel", "gabelol"});
}

TEST_CASE("what the entries of a sheet share, and what one adds to it, are all of its index") {
  SheetRecord sheet = fork_sheet();
  EntryRecord entry = top_plug();
  sheet.fits = entry.fits;
  sheet.source = entry.source;
  const WordGroups groups(glossary);
  const EntryIndexer indexer(sheet, groups);
  REQUIRE(indexer.shares(entry));
  const auto weights = [](std::initializer_list<const IndexedEntry*> parts) {
    std::map<std::string, unsigned> sums;
    for (const IndexedEntry* part : parts) {
      for (const Term& term : part->terms) sums[term.text] += term.weight;
    }
    return sums;
  };
  const IndexedEntry all = indexer.index(entry), own = indexer.index_own(entry);
  CHECK(own.terms.size() < all.terms.size());
  CHECK(weights({&indexer.shared(), &own}) == weights({&all}));
  CHECK(own.values.size() == all.values.size());
  std::vector<std::string> words = indexer.shared().spelling;
  words.insert(words.end(), own.spelling.begin(), own.spelling.end());
  std::ranges::sort(words);
  CHECK(words == all.spelling);
  entry.fits.clear();
  CHECK_FALSE(indexer.shares(entry));
}
