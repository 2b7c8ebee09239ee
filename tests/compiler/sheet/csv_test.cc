// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/csv.h"

#include <doctest/doctest.h>

#include "compiler/sheet/new_sheet.h"

using namespace sheafc;

namespace {

std::string shown(const CsvTable& table) {
  std::string text;
  const auto add = [&](const std::vector<CsvCell>& row) {
    for (const CsvCell& cell : row)
      text +=
          std::to_string(cell.where.line) + ":" + std::to_string(cell.where.column) + "=" + cell.text + "|";
    text += "\n";
  };
  add(table.header);
  for (const auto& row : table.rows) add(row);
  return text;
}

std::string faults_of(std::string_view csv, std::string_view kind) {
  const auto table = parse_csv("t.csv", csv);
  REQUIRE(table);
  Diagnostics sink;
  entries_from_csv(*table, kind, sink);
  std::string text;
  for (const Diagnostic& fault : sink.all()) {
    text += std::to_string(fault.where.line) + ":" + std::to_string(fault.where.column) + " " +
            std::string(fault.rule) + "\n";
  }
  return text;
}

}  // namespace

TEST_CASE("every cell knows its place") {
  CHECK(shown(*parse_csv("t.csv", "name,torque\nplug,28\n")) == "1:1=name|1:6=torque|\n2:1=plug|2:6=28|\n");
  CHECK(shown(*parse_csv("t.csv", "a;b\r\n1,5;2\r\n")) == "1:1=a|1:3=b|\n2:1=1,5|2:5=2|\n");
  CHECK(shown(*parse_csv("t.csv", "a\tb\n x \ty")) == "1:1=a|1:3=b|\n2:2=x|2:5=y|\n");
}

TEST_CASE("quotes hold separators, quotes and line ends") {
  CHECK(shown(*parse_csv("t.csv", "a,b\n\"x, y\",\"say \"\"no\"\"\"\n\"two\nlines\",z\n")) ==
        "1:1=a|1:3=b|\n2:1=x, y|2:8=say \"no\"|\n3:1=two lines|4:8=z|\n");
  CHECK(parse_csv("t.csv", "a,b\n1,\"open\n").failure().message == "t.csv:2: a quote is not closed");
}

TEST_CASE("blank lines are passed over, and a byte order mark is no part of the first cell") {
  CHECK(shown(*parse_csv("t.csv",
                         "\xEF\xBB\xBF"
                         "a,b\n\n1,2\n\n")) == "1:1=a|1:3=b|\n3:1=1|3:3=2|\n");
  CHECK(shown(*parse_csv("t.csv", "")) == "\n");
}

TEST_CASE("rows become entries in their canonical spelling") {
  const auto table =
      parse_csv("t.csv", "name,torque (Nm),count\nfork top plug,28,1 per leg\ndrain screw,6 ± 1 Nm,\n");
  Diagnostics sink;
  CHECK(entries_from_csv(*table, "fastener", sink) ==
        "fasteners:\n"
        "  fork-top-plug:\n    name: fork top plug\n    torque: 28 N·m\n    count: 1 per leg\n"
        "  drain-screw:\n    name: drain screw\n    torque: 6 ± 1 N·m\n");
  CHECK(sink.all().empty());
}

TEST_CASE("what is wrong is reported at its cell") {
  CHECK(faults_of("name,torqe\nplug,28 N·m\n", "fastener") == "1:6 unknown-key\n");
  CHECK(faults_of("name,torque\nplug,28\n", "fastener") == "2:6 unreadable-figure\n");
  CHECK(faults_of("name,torque (N·m)\nplug,\"9,5\"\n", "fastener") == "2:6 decimal-comma\n");
  CHECK(faults_of("name,thread\nplug,M8x1.25\nPlug,M8x1\n", "fastener") == "3:1 duplicate-row\n");
  CHECK(faults_of("name,thread\n,M8x1.25\n", "fastener") == "2:1 missing-key\n");
  CHECK(faults_of("name\nplug,28\n", "fastener") == "2:6 row-width\n");
  CHECK(faults_of("name,source\nplug,x\n", "fastener") == "2:6 wrong-shape\n");
}

TEST_CASE("rows of a table take the types of their headings") {
  const auto table = parse_csv("t.csv", "thread,pitch (mm),note\nM8x1.25,1.25,\n\"#10-32 UNF\",0.79,a; b\n");
  Diagnostics sink;
  CHECK(rows_from_csv(*table, sink) ==
        "key: thread\ncolumns:\n  thread: thread\n  pitch: mm\n  note: text\nrows:\n  - [M8x1.25, 1.25, "
        "--]\n  - [\"#10-32 UNF\", 0.79, a; b]\n");
  CHECK(sink.all().empty());
}
