// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/query/search/small_library.h"

#include <cstdio>
#include <cstdlib>

#include "compiler/emit/library_writer.h"

namespace sheaf::test {
namespace {

using Fields = std::vector<FieldRecord>;

FitRecord muleback(int from, int to, const std::string& frame_from = "", const std::string& frame_to = "") {
  return {"Haldrek", "Muleback 380", from, to, "", frame_from, frame_to, ""};
}
FitRecord screehorn() { return {"Haldrek", "Screehorn 450", 2014, 2021, "", "", "", ""}; }

EntryRecord entry(const std::string& address, const std::string& kind, const std::string& name, Fields fields,
                  std::vector<FitRecord> fits) {
  EntryRecord made;
  made.address = address;
  made.kind = kind;
  made.name = name;
  made.fields = std::move(fields);
  made.fits = std::move(fits);
  made.source.title = "Leaflet";
  return made;
}

SheetRecord sheet(const std::string& name, const std::string& assembly, std::vector<FitRecord> fits,
                  std::vector<EntryRecord> entries) {
  SheetRecord made;
  made.name = name;
  made.form = "assembly";
  made.title = "The " + assembly + " of " + name;
  made.assembly = assembly;
  made.fits = std::move(fits);
  made.entries = std::move(entries);
  return made;
}

SheetRecord old_fork() {
  const std::vector<FitRecord> fits = {muleback(2011, 2015)};
  return sheet(
      "old-fork", "fork", fits,
      {entry("old-fork/oil", "fluid", "fork oil", {{"volume", "512 mL per leg", {}}, {"level", "118 mm", {}}},
             fits),
       entry("old-fork/seal", "seal", "fork oil seal",
             {{"size", "41x54x11", {}}, {"part-number", "41-2237-B", {}}, {"supersedes", "41-2237-A", {}}},
             fits),
       entry("old-fork/top-plug", "fastener", "fork top plug",
             {{"torque", "28 ± 3 N·m", {}}, {"drive", "hexagon 27 mm", {}}, {"thread", "M38x1.5", {}}},
             fits)});
}

SheetRecord new_fork() {
  const std::vector<FitRecord> fits = {muleback(2016, 0)};
  return sheet(
      "new-fork", "fork", fits,
      {entry("new-fork/seal", "seal", "fork oil seal", {{"size", "43x55x10.5", {}}}, fits),
       entry("new-fork/top-plug", "fastener", "fork top plug", {{"torque", "30 ± 3 N·m", {}}}, fits)});
}

SheetRecord engine() {
  const std::vector<FitRecord> fits = {screehorn()};
  return sheet("engine", "engine", fits,
               {entry("engine/gearbox-plug", "fastener", "gearbox oil drain plug",
                      {{"torque", "20 N·m", {}}, {"side", "lower", {}}}, fits),
                entry("engine/long-note", "fastener", "clutch nut",
                      {{"torque", "90 N·m", {}},
                       {"hand", "left", {}},
                       {"notes", "After the top plug, top plug and top plug again.", {}}},
                      fits)});
}

SheetRecord brakes() {
  const std::vector<FitRecord> early = {muleback(2011, 0, "HK4-000100", "HK4-004999")};
  const std::vector<FitRecord> late = {muleback(2011, 0, "HK4-005000", "")};
  EntryRecord first = entry("brakes/pin", "fastener", "rear caliper pad pin",
                            {{"torque", "17 N·m", {}}, {"side", "rear", {}}}, early);
  EntryRecord second = entry("brakes/pin", "fastener", "rear caliper pad pin",
                             {{"torque", "19 N·m", {}}, {"side", "rear", {}}}, late);
  first.variant = "frames HK4-000100..HK4-004999";
  second.variant = "frames HK4-005000..";
  return sheet("brakes", "rear-brake", {muleback(2011, 0)}, {first, second});
}

void add_words(std::vector<WordRecord>& words, const std::string& group, const std::vector<std::string>& same,
               const std::string& language = "en") {
  for (const auto& word : same)
    words.push_back({group, word, language, language == "en" && word == same.front(), false});
}

}  // namespace

LibraryContent small_content() {
  LibraryContent content;
  content.name = "small";
  content.sheets = {brakes(), engine(), new_fork(), old_fork()};
  add_words(content.words, "fork-cap", {"fork top plug", "fork cap", "top plug", "top cap"});
  add_words(content.words, "fork-cap", {"Gabelverschluss"}, "de");
  add_words(content.words, "fork-oil", {"fork oil", "damper oil"});
  add_words(content.words, "fork-seal", {"fork oil seal", "fork seal"});
  add_words(content.words, "drain-plug", {"drain plug", "sump plug"});
  add_words(content.words, "pad-pin", {"pad pin", "caliper pin"});
  add_words(content.words, "side-rear", {"rear", "back"});
  add_words(content.words, "side-front", {"front"});
  add_words(content.words, "kind-torque", {"torque", "nm", "ft lb", "how tight"});
  add_words(content.words, "kind-level", {"oil level", "level", "air gap"});
  add_words(content.words, "oil", {"oil"});
  add_words(content.words, "hex-key", {"hex key"});
  add_words(content.words, "outer-tube", {"lower", "lower leg"});
  add_words(content.words, "side-lower", {"lower"});
  add_words(content.words, "nut", {"nut"});
  add_words(content.words, "hand-left", {"left-hand thread"});
  return content;
}

SmallLibrary::SmallLibrary(const LibraryContent& content, const std::string& name) {
  const std::string path = folder_ / (name + ".sheaf");
  auto written = sheafc::write_library(content, path, {});
  auto opened = written ? open_library(path) : Result<Library>(written.failure());
  if (!opened) {
    std::fprintf(stderr, "small library: %s\n", opened.failure().message.c_str());
    std::abort();
  }
  library_.push_back(std::move(opened).value());
}

}  // namespace sheaf::test
