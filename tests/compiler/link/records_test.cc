// SPDX-License-Identifier: GPL-2.0-or-later
// What the library keeps of linked sheets, and that a sheet borrowed from a library says what it said at
// home.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "compiler/emit/library_writer.h"
#include "compiler/link/borrow.h"
#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

constexpr std::string_view brake_fork = R"(sheet: fork
title: A fork
assembly: front-brake
maker: Sorvane
invented: yes
formerly: [old-fork]
fits: { make: Haldrek, model: Muleback 380, years: 2011.. }
tube: 41 mm
source: { title: A leaflet, year: 2012, page: 5 }
checked: { on: 2026-10-02, by: workshop, second: N. }
status: maker-paper
cautions: [spring-load]
fasteners:
  plug:
    name: top plug
    torque: 28 Nm
    page: 7
    formerly: [cap]
    cautions: [hot]
    superseded-by: { number: B, interchangeable: yes }
    other-numbers: [{ supplier: Ormskell, number: C }]
    withdrawn: { on: 2026-10-03, reason: Misprint., instead: nut }
    allow: { state-missing: The paper is silent. }
  nut:
    name: nut
    variants:
      - { years: ..2015, torque: 64 N·m }
      - { years: 2016.., torque: 70 N·m }
steps:
  close: { name: close, do: Fit it., uses: [plug] }
# file: cautions.yaml
sheet: cautions
cautions:
  spring-load: { text: Spring under load., about: [spring] }
  hot: { text: Hot. }
# file: threads.yaml
sheet: threads
table: thread-size
key: thread
columns: { thread: thread, pitch: mm, starts: number, how: text }
rows:
  - [M8x1.25, 1.25, 1, page]
)";

const sheaf::SheetRecord& sheet(const sheaf::LibraryContent& content, std::string_view name) {
  const auto found = std::ranges::find(content.sheets, name, &sheaf::SheetRecord::name);
  REQUIRE(found != content.sheets.end());
  return *found;
}

std::string told(const std::vector<sheaf::FieldRecord>& fields) {
  std::string text;
  for (const sheaf::FieldRecord& field : fields) text += field.key + "=" + field.text + "|";
  return text;
}

}  // namespace

TEST_CASE("a record has each fact once, in the canonical spelling") {
  const Linking linking(brake_fork);
  REQUIRE(linking.faults() == "none");
  const sheaf::LibraryContent content = content_of(linking.linked, "demo");
  const sheaf::SheetRecord& record = sheet(content, "fork");
  CHECK(record.assembly == "front-brake");
  CHECK(record.maker == "Sorvane");
  CHECK(record.invented);
  CHECK(record.source.year == 2012);
  CHECK(told(record.fields) == "tube=41 mm|status=maker-paper|formerly=old-fork|");
  REQUIRE(record.entries.size() == 4);

  const sheaf::EntryRecord& plug = record.entries[0];
  CHECK(plug.address == "fork/plug");
  CHECK(plug.name == "top plug");
  CHECK(told(plug.fields) ==
        "torque=28 "
        "N·m|superseded-by.number=B|superseded-by.interchangeable=yes|other-numbers.1.supplier=Ormskell|"
        "other-numbers.1.number=C|");
  CHECK(plug.source.page == "7");
  CHECK(plug.checked.second == "N.");
  CHECK(plug.status == "maker-paper");
  CHECK(plug.critical);
  CHECK(plug.cautions.size() == 2);
  CHECK(plug.cautions[0].text == "Hot.");
  CHECK(plug.withdrawn.at(0).instead == "fork/nut");
  CHECK(plug.place.line == 14);
  auto formerly = plug.formerly;
  std::ranges::sort(formerly);
  CHECK(formerly == std::vector<std::string>{"fork/cap", "old-fork/cap", "old-fork/plug"});
}

TEST_CASE("variants are records of their own, and steps refer by whole addresses") {
  const Linking linking(brake_fork);
  const sheaf::LibraryContent content = content_of(linking.linked, "demo");
  const auto& entries = sheet(content, "fork").entries;
  CHECK(entries[1].variant == "..2015");
  CHECK(entries[1].fits.at(0).year_from == 2011);
  CHECK(entries[1].fits.at(0).year_to == 2015);
  CHECK(entries[2].variant == "2016..");
  CHECK(entries[2].fits.at(0).year_to == 0);
  CHECK(told(entries[3].fields) == "do=Fit it.|uses=fork/plug|");
  CHECK_FALSE(entries[3].critical);
}

TEST_CASE("rows are entries, and their table tells its columns") {
  const Linking linking(brake_fork);
  const sheaf::LibraryContent content = content_of(linking.linked, "demo");
  const sheaf::SheetRecord& table = sheet(content, "threads");
  CHECK(told(table.fields) ==
        "key=thread|columns.thread=thread|columns.pitch=mm|columns.starts=number|columns.how=text|");
  CHECK(table.entries.at(0).address == "threads/m8x1.25");
  CHECK(table.entries.at(0).name == "thread M8x1.25");
  CHECK(told(table.entries.at(0).fields) == "thread=M8x1.25|pitch=1.25 mm|starts=1|how=page|");
}

TEST_CASE("a shop's sheet may be based on one in a library, and says the same as it would at home") {
  const std::string library = (std::filesystem::temp_directory_path() / "borrowed.sheaf").string();
  const Linking shared(brake_fork);
  REQUIRE(write_library(content_of(shared.linked, "shared"), library, {}));

  constexpr std::string_view own =
      "sheet: shop-fork\nbased-on: fork\nfits: { make: Haldrek, model: Muleback 450, years: 2016.. }\n"
      "fasteners:\n  plug: { torque: 30 N·m, without: [withdrawn] }\n  bolt: { name: bolt, like: fork/plug, "
      "cautions: [hot] }\n";
  const Linking at_home(std::string(own) + "# file: fork.yaml\n" + std::string(brake_fork));
  REQUIRE(at_home.faults() == "none");

  Diagnostics sink;
  const Workspace shop = read_texts(sheets_in(own), sink);
  const std::vector<std::string> libraries = {library};
  const auto borrowed = borrow_sheets(libraries, shop.sheets);
  REQUIRE(borrowed);
  const LinkedSheets linked = link_sheets(shop.sheets, *borrowed, sink);
  CHECK(sink.all().empty());

  const sheaf::SheetRecord away = record_of(linked, *linked.sheet_named("shop-fork"));
  const sheaf::SheetRecord home = record_of(at_home.linked, *at_home.linked.sheet_named("shop-fork"));
  REQUIRE(away.entries.size() == home.entries.size());
  for (std::size_t i = 0; i < home.entries.size(); ++i) {
    CAPTURE(home.entries[i].address);
    CHECK(told(away.entries[i].fields) == told(home.entries[i].fields));
    CHECK(away.entries[i].name == home.entries[i].name);
    CHECK(away.entries[i].variant == home.entries[i].variant);
    CHECK(away.entries[i].cautions.size() == home.entries[i].cautions.size());
    CHECK(away.entries[i].source.title == home.entries[i].source.title);
    CHECK(away.entries[i].withdrawn.size() == home.entries[i].withdrawn.size());
  }
  REQUIRE(linked.rows("thread-size").size() == 1);
  CHECK(linked.rows("thread-size")[0]->figure("pitch") != nullptr);
  CHECK(linked.rows("thread-size")[0]->number("starts") != nullptr);
  CHECK(linked.rows("thread-size")[0]->thread("thread") != nullptr);
  CHECK(linked.caution_named("spring-load")->fields.text("about") == "spring");
  CHECK(entry_at(linked, "shop-fork/nut")->place("torque").file == "shared:fork.yaml");
  std::filesystem::remove(library);
}
