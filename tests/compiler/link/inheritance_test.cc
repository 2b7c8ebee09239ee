// SPDX-License-Identifier: GPL-2.0-or-later
#include <doctest/doctest.h>

#include "tests/compiler/linking.h"

using namespace sheafc;

namespace {

constexpr std::string_view two_forks = R"(sheet: new-fork
based-on: old-fork
without: [gaiter]
fits: { make: Haldrek, model: Muleback 380, years: 2016.. }
fasteners:
  plug: { torque: 30 N·m }
  drain: { without: [threadlocker] }
  extra: { name: extra screw }
# file: old-fork.yaml
sheet: old-fork
maker: Sorvane
status: maker-paper
fits: { make: Haldrek, model: Muleback 380, years: ..2015 }
source: { title: The old leaflet }
fasteners:
  plug: { name: top plug, thread: M38x1.5, torque: 28 N·m, formerly: [cap] }
  drain: { name: drain screw, threadlocker: low, torque: 6 N·m }
  gaiter: { name: gaiter screw }
)";

const LinkedEntry& entry(const Linking& linking, std::string_view address) {
  const LinkedEntry* found = entry_at(linking.linked, address);
  REQUIRE_MESSAGE(found, address);
  return *found;
}

}  // namespace

TEST_CASE("a sheet takes everything of its base, field by field, and says only what differs") {
  const Linking forks(two_forks);
  REQUIRE(forks.faults() == "none");
  const LinkedEntry& plug = entry(forks, "new-fork/plug");
  CHECK(plug.name == "top plug");
  CHECK(plug.text("thread") == "M38x1.5");
  CHECK(plug.text("torque") == "30 N·m");
  CHECK_FALSE(plug.inherited);
  CHECK(entry(forks, "old-fork/plug").text("torque") == "28 N·m");
  CHECK(forks.linked.sheet_named("new-fork")->text("maker") == "Sorvane");
  CHECK(forks.linked.sheet_named("new-fork")->base == forks.linked.sheet_named("old-fork"));
}

TEST_CASE("every value keeps the place where it is written") {
  const Linking forks(two_forks);
  const LinkedEntry& plug = entry(forks, "new-fork/plug");
  CHECK(plug.place("torque").file == "new-fork.yaml");
  CHECK(plug.place("torque").line == 6);
  CHECK(plug.place("thread").file == "old-fork.yaml");
  CHECK(plug.place("thread").line == 7);
}

TEST_CASE("entries and fields that the sheet lacks are left out, and new ones follow") {
  const Linking forks(two_forks);
  CHECK(entry_at(forks.linked, "new-fork/gaiter") == nullptr);
  CHECK_FALSE(entry(forks, "new-fork/drain").has("threadlocker"));
  CHECK(entry(forks, "new-fork/drain").text("torque") == "6 N·m");
  CHECK(forks.linked.sheet_named("new-fork")->entries.back().id == "extra");
}

TEST_CASE("machines and former names are a sheet's own") {
  const Linking forks(two_forks);
  CHECK(entry(forks, "new-fork/plug").fits.at(0).years == Years{2016, 0});
  CHECK(entry(forks, "new-fork/plug").formerly.empty());
  CHECK(entry_at(forks.linked, "old-fork/cap") == &entry(forks, "old-fork/plug"));
}

TEST_CASE("an entry's source is that of the sheet that last said something of it") {
  std::string text(two_forks);
  text.replace(text.find("fasteners:"), 0, "source: { title: The new leaflet }\n");
  text += "parts:\n  ring: { name: snap ring }\n";
  const Linking forks(text);
  REQUIRE(forks.faults() == "none");
  CHECK(entry(forks, "new-fork/plug").source->text("title") == "The new leaflet");
  CHECK(entry(forks, "new-fork/ring").source->text("title") == "The old leaflet");
  CHECK(entry(forks, "new-fork/ring").inherited);
}

TEST_CASE("an entry that is like another takes what it does not say itself") {
  const Linking like(R"(sheet: bracket
fasteners:
  bolt: { name: bracket bolt, like: common/m6, torque: 9 N·m, without: [threadlocker] }
# file: common.yaml
sheet: common
fasteners:
  m6: { name: M6 flange bolt, thread: M6x1, torque: 10 N·m, threadlocker: low, order: 3, like: m6-plain }
  m6-plain: { name: plain bolt, class: "8.8" }
)");
  REQUIRE(like.faults() == "none");
  const LinkedEntry& bolt = entry(like, "bracket/bolt");
  CHECK(bolt.name == "bracket bolt");
  CHECK(bolt.text("thread") == "M6x1");
  CHECK(bolt.text("torque") == "9 N·m");
  CHECK(bolt.text("class") == "8.8");
  CHECK_FALSE(bolt.has("threadlocker"));
  CHECK_FALSE(bolt.has("order"));
}

TEST_CASE("a chain of bases ends at sixteen") {
  std::string text = "sheet: s0\nparts:\n  ring: { name: ring }\n";
  for (int i = 1; i <= 17; ++i) {
    text += "# file: s" + std::to_string(i) + ".yaml\nsheet: s" + std::to_string(i) + "\nbased-on: s" +
            std::to_string(i - 1) + "\n";
  }
  CHECK(Linking(text).faults() == "s17.yaml:2:11 long-chain");
}

TEST_CASE("a shop's own sheet goes before a borrowed one of the same name") {
  const Linking shop("sheet: fork\nparts:\n  ring: { name: the shop's ring }\n");
  const Linking shared(
      "sheet: fork\nparts:\n  ring: { name: the shared ring }\n# file: other.yaml\nsheet: other\nparts:\n  "
      "seal: { name: seal }\n");
  Diagnostics sink;
  const LinkedSheets both = link_sheets(shop.workspace.sheets, shared.workspace.sheets, sink);
  CHECK(sink.all().empty());
  CHECK(entry_at(both, "fork/ring")->name == "the shop's ring");
  CHECK(entry_at(both, "other/seal")->sheet->borrowed);
  CHECK(both.own().size() == 1);
}
