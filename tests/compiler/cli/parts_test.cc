// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets compiled in small parts give what they give in one.
#include <doctest/doctest.h>

#include <fstream>

#include "compiler/cli/compilation.h"
#include "query/library/row_body.h"
#include "tests/content/temporary_folder.h"

using namespace sheafc;

namespace {

struct Made {
  std::string reports, allowed;
  std::vector<std::string> sheets;  // name and hash
  Findings findings;
  std::size_t parts = 0;
  bool rules_ran = true;
};

std::string text_of(const Diagnostics& reports) {
  std::string text;
  for (const Diagnostic& report : reports.all()) {
    const auto place = [](const Diagnostic& of) {
      return std::string(of.where.file) + ":" + std::to_string(of.where.line) + ":" +
             std::to_string(of.where.column) + " " + of.message + "\n";
    };
    text += std::string(report.rule) + " " + place(report);
    for (const Diagnostic& note : report.notes) text += "  " + place(note);
  }
  return text;
}

Made made_of(const std::vector<std::string>& folders, std::size_t part_bytes) {
  Made made;
  const auto take = [&](const Part& part, const std::vector<std::string>& names,
                        bool) -> std::optional<sheaf::Failure> {
    ++made.parts;
    for (const NumberedSheet& sheet : part.own) {
      CHECK(names[sheet.number] == sheet.sheet->name);
      const sheaf::SheetRecord record = record_of(part.linked, *sheet.sheet);
      made.sheets.push_back(record.name + " " + std::to_string(hash_of(record, sheaf::bodies_of(record))));
    }
    return std::nullopt;
  };
  const auto compiled = compile({.folders = folders, .libraries = {}},
                                {.findings = &made.findings, .each_part = take, .part_bytes = part_bytes});
  REQUIRE(compiled);
  made.reports = text_of(compiled->diagnostics);
  made.rules_ran = compiled->rules_ran;
  for (const Allowed& allowed : compiled->allowed)
    made.allowed += allowed.address + " " + std::string(allowed.rule) + "\n";
  return made;
}

void check_same(const std::vector<std::string>& folders, std::size_t part_bytes) {
  const Made whole = made_of(folders, default_part_bytes);
  const Made in_parts = made_of(folders, part_bytes);
  CHECK(whole.parts == 1);
  CHECK(in_parts.parts > 5);
  CHECK(in_parts.reports == whole.reports);
  CHECK(in_parts.allowed == whole.allowed);
  CHECK(in_parts.sheets == whole.sheets);
  CHECK(in_parts.rules_ran == whole.rules_ran);
  CHECK(in_parts.findings.told.all().facts == whole.findings.told.all().facts);
  CHECK(in_parts.findings.groups.size() == whole.findings.groups.size());
}

void write(const std::string& path, const std::string& text) { std::ofstream(path) << text; }

std::string sheet(const std::string& name, const std::string& rest) {
  return "sheet: " + name +
         "\ntitle: A fork\nassembly: fork\nsource: { title: Sorvane fork service leaflet 41 }\n"
         "checked: { on: 2026-10-02, by: workshop }\n" +
         rest;
}

std::string screw(const std::string& id, const std::string& rest) {
  return "  " + id + ": { name: " + id + " screw, thread: M6x1, torque: 9 N·m, state: dry" + rest + " }\n";
}

}  // namespace

TEST_CASE("the demo sheets") { check_same({"specs-yaml"}, 20'000); }

TEST_CASE("sheets with mistakes of every kind") {
  check_same({"specs-yaml/standards", "specs-yaml/words", "tests/sheets/bad"}, 4'000);
}

TEST_CASE("a glossary that comes last, bases and names far away") {
  const sheaf::test::TemporaryFolder folder;
  const auto fork = [](int number) { return "fork-" + std::to_string(10 + number); };
  for (int i = 0; i < 12; ++i) {
    std::string rest = i % 4 == 3 ? "based-on: " + fork((i + 5) % 12) + "\n" : std::string();
    rest += "cautions: [hot-oil]\nfasteners:\n" + screw("cap", ", like: shared/cap") +
            screw("guard", i % 3 ? "" : ", allow: { pattern-missing: one only }");
    if (i % 4 != 3) rest += "  far: { like: " + fork((i + 7) % 12 / 4 * 4) + "/guard, name: far screw }\n";
    write(folder / (fork(i) + ".yaml"), sheet(fork(i), rest));
  }
  write(folder / "shared.yaml", sheet("shared", "fasteners:\n" + screw("cap", "")));
  write(folder / "words.yaml",
        "sheet: words\ntitle: Words\ncautions:\n  hot-oil: { text: Hot oil., about: [oil] }\n");
  CHECK(made_of({folder / ""}, default_part_bytes).reports.find("unknown") == std::string::npos);
  check_same({folder / ""}, 200);
}

TEST_CASE("faults between sheets of different parts are found, each once") {
  const sheaf::test::TemporaryFolder folder;
  for (char name = 'a'; name <= 'h'; ++name)
    write(folder / (std::string(1, name) + ".yaml"),
          sheet(std::string(1, name), "fasteners:\n" + screw("cap", "")));
  write(folder / "a.yaml", sheet("a", "based-on: h\nfasteners:\n" + screw("cap", ", formerly: [d/cap]")));
  write(folder / "h.yaml", sheet("h", "based-on: a\nfasteners:\n" + screw("nut", ", formerly: [b/old]") +
                                          screw("bolt", ", same-as: dd/cap")));
  write(folder / "b.yaml", sheet("b", "based-on: gg\nfasteners:\n" + screw("cap", ", formerly: [old]")));
  write(folder / "e.yaml", "table: [\n");
  const Made whole = made_of({folder / ""}, default_part_bytes);
  const Made in_parts = made_of({folder / ""}, 1);
  for (const std::string_view fault :
       {"circular-base", "unknown-base", "former-name-taken", "unknown-entry"}) {
    CHECK(whole.reports.find(fault) != std::string::npos);
    CHECK(in_parts.reports.find(fault) != std::string::npos);
  }
  CHECK(in_parts.reports.find("did you mean") != std::string::npos);
  CHECK(in_parts.sheets == whole.sheets);
}
