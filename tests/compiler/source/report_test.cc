// SPDX-License-Identifier: GPL-2.0-or-later
// The reports as they are read, word for word.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "tests/compiler/source/reading.h"

using namespace sheafc;

namespace {

const LineSource no_lines = [](std::string_view, int) { return std::string_view(); };

// Faults enough for the limits: `errors`, then `warnings`, then `notes`, one a line, each of the errors
// with one note of its own.
Diagnostics many(int errors, int warnings, int notes) {
  Diagnostics sink;
  int line = 0;
  for (int i = 0; i < notes; ++i) sink.note("n", {"t.yaml", ++line, 1, 1}, "small");
  for (int i = 0; i < warnings; ++i) sink.warning("w", {"t.yaml", ++line, 1, 1}, "doubtful");
  for (int i = 0; i < errors; ++i) {
    const Span where{"t.yaml", ++line, 1, 1};
    sink.report({Severity::error, "e", where, "wrong", {{Severity::note, "e", where, "because", {}}}});
  }
  sink.sort();
  return sink;
}

int count(std::string_view text, std::string_view part) {
  int found = 0;
  for (auto at = text.find(part); at != text.npos; at = text.find(part, at + 1)) ++found;
  return found;
}

std::string excerpt(const std::string& line, int column, int length, int width = 120) {
  Diagnostics sink;
  sink.error("r", {"t.yaml", 1, column, length}, "m");
  const std::string report =
      text_report(sink, [&](std::string_view, int) { return std::string_view(line); }, {false, width, 0});
  return report.substr(report.find('\n') + 1);
}

}  // namespace

TEST_CASE("text names place, severity, message and rule, and underlines the very characters") {
  const Reading sheet("fasteners:\n  plug:\n    torque: 280 N·m\n    torque: 28 N·m\n");
  CHECK(sheet.report() ==
        "t.yaml:4:5: error: the key `torque` stands here a second time; keep one of the two [duplicate-key]\n"
        "    4 |     torque: 28 N·m\n"
        "      |     ^~~~~~\n"
        "t.yaml:3:5: note: the first is here\n"
        "    3 |     torque: 280 N·m\n"
        "      |     ^~~~~~\n");
}

TEST_CASE("text in colour says the same words") {
  const Reading sheet("a: *x\n");
  const std::string coloured = text_report(sheet.sink, sheet.lines(), {true, 120, 0});
  std::string stripped;
  for (std::size_t i = 0; i < coloured.size(); ++i) {
    if (coloured[i] == '\x1b') {
      i = coloured.find('m', i);
    } else {
      stripped += coloured[i];
    }
  }
  CHECK(stripped == sheet.report());
  CHECK(coloured.find("\x1b[1;31merror:\x1b[0m") != std::string::npos);
}

TEST_CASE("the caret stands under the character, however wide those before it are") {
  CHECK(excerpt("ab: \xC2\xB1 x", 8, 1) == "    1 | ab: ± x\n      |       ^\n");  // two bytes, one column
  CHECK(excerpt("\xE5\x8D\x83\xE5\x8D\x83 x", 8, 1) ==
        "    1 | 千千 x\n      |      ^\n");                                    // wide: two columns
  CHECK(excerpt("e\xCC\x81 x", 5, 1) == "    1 | e\xCC\x81 x\n      |   ^\n");  // combining: none
  CHECK(excerpt("\tx y", 2, 1) == "    1 |  x y\n      |  ^\n");                // a tab shows as one space
  CHECK(excerpt("a\x1B[31mb", 7, 1) ==
        "    1 | a\xEF\xBF\xBD[31mb\n      |       ^\n");                     // escapes steer no terminal
  CHECK(excerpt("\xE9 x", 3, 1) == "    1 | \xEF\xBF\xBD x\n      |   ^\n");  // not UTF-8
  CHECK(excerpt("\xE5\x8D\x83", 1, 3) == "    1 | 千\n      | ^~\n");
}

TEST_CASE("a place outside its line still gets a caret") {
  CHECK(excerpt("ab", 3, 1) == "    1 | ab\n      |   ^\n");
  CHECK(excerpt("ab", 90, 5) == "    1 | ab\n      |   ^\n");
  CHECK(excerpt("ab", 1, 500) == "    1 | ab\n      | ^~\n");
}

TEST_CASE("a long line is cut around the caret") {
  const std::string line = std::string(300, 'a') + "HERE" + std::string(300, 'b');
  CHECK(excerpt(line, 301, 4, 48) ==
        "    1 | …aaaaaaaaaaaaaHEREbbbbbbbbbbbbbbbbbbbbb…\n"
        "      |               ^~~~\n");
  CHECK(excerpt(line, 1, 4, 48).starts_with("    1 | aaaa"));
  const std::string endless(1 << 20, 'x');
  CHECK(excerpt(endless, 500000, 3).size() < 400);
}

TEST_CASE("on a terminal notes give way first, then warnings, and errors last") {
  const auto shown = [](const Diagnostics& sink, int most) {
    return text_report(sink, no_lines, {false, 120, most});
  };
  const std::string all = shown(many(60, 20, 5), 0);
  CHECK(count(all, "wrong") == 60);
  CHECK(count(all, "because") == 60);

  const std::string few_errors = shown(many(10, 60, 5), 50);
  CHECK(count(few_errors, ": error:") == 10);
  CHECK(count(few_errors, ": warning:") == 40);
  CHECK(count(few_errors, ": note:") == 0);
  CHECK(few_errors.ends_with("not shown: 20 warnings, 15 notes\n"));

  const std::string many_errors = shown(many(60, 20, 5), 50);
  CHECK(count(many_errors, ": error:") == 50);
  CHECK(count(many_errors, ": warning:") == 0);
  CHECK(many_errors.ends_with("not shown: 10 errors, 20 warnings, 65 notes\n"));

  CHECK(count(shown(many(25, 0, 0), 50), "because") == 25);
  CHECK(shown(many(25, 0, 1), 50).ends_with("not shown: 25 notes\n"));
}

TEST_CASE("the count of faults reads as a phrase") {
  CHECK(fault_counts(many(2, 1, 0)) == "2 errors, 1 warning");
  CHECK(fault_counts(many(0, 0, 3)) == "3 notes");
  CHECK(fault_counts({}) == "no faults");
}

TEST_CASE("sorting is by place, and drops exact doubles alone") {
  Diagnostics sink;
  sink.error("b", {"b.yaml", 1, 1, 1}, "m");
  sink.error("b", {"a.yaml", 2, 1, 1}, "m");
  sink.error("b", {"a.yaml", 1, 9, 1}, "m");
  sink.error("b", {"a.yaml", 1, 9, 1}, "m");
  sink.error("b", {"a.yaml", 1, 9, 1}, "another");
  Diagnostics other;
  other.error("a", {"a.yaml", 1, 9, 1}, "m");
  sink.take(std::move(other));
  sink.sort();
  std::string order;
  for (const Diagnostic& d : sink.all()) {
    order += std::string(d.where.file) + std::to_string(d.where.line) + std::string(d.rule) + d.message + " ";
  }
  CHECK(order == "a.yaml1am a.yaml1banother a.yaml1bm a.yaml2bm b.yaml1bm ");
}

TEST_CASE("JSON lines hold every fault whole") {
  const Reading sheet("a: 1\na: \"2\"\n");
  CHECK(json_lines_report(sheet.sink) ==
        R"({"file":"t.yaml","line":2,"column":1,"length":1,"severity":"error","rule":"duplicate-key",)"
        R"("message":"the key `a` stands here a second time; keep one of the two",)"
        R"("notes":[{"file":"t.yaml","line":1,"column":1,"length":1,"message":"the first is here"}]})"
        "\n");
  CHECK(count(json_lines_report(many(60, 20, 5)), "\n") == 85);
}

TEST_CASE("JSON stays JSON whatever the file is called") {
  Diagnostics sink;
  sink.error("r", {"a\"\n\xFF.yaml", 1, 1, 1}, "m\x01");
  const auto object = nlohmann::json::parse(json_lines_report(sink));
  CHECK(object["file"] == "a\"\n\xEF\xBF\xBD.yaml");
}

TEST_CASE("annotations escape what would end them") {
  Diagnostics sink;
  sink.error("r", {"a,b:c%.yaml", 3, 2, 1}, "50 % of\nit: all, of it");
  const LineSource line = [](std::string_view, int) { return std::string_view("\xC2\xB1xy"); };
  CHECK(annotation_report(sink, line) ==
        "::error file=a%2Cb%3Ac%25.yaml,line=3,col=2,title=r::50 %25 of%0Ait: all, of it\n");
}

TEST_CASE("annotations come worst first and keep within what is shown") {
  const std::string report = annotation_report(many(30, 10, 11), no_lines);
  CHECK(count(report, "::error") == 10);
  CHECK(count(report, "::warning") == 10);
  CHECK(count(report, "::notice") == 10);
  CHECK(
      report.find(
          "::error title=21 more::21 more errors are not annotated; the first of them is at t.yaml:31:1\n") !=
      std::string::npos);
  CHECK(report.rfind("::error") < report.find("::warning"));
  CHECK(report.rfind("::warning") < report.find("::notice"));
  CHECK(count(report, "because") == 9);
}

TEST_CASE("SARIF places a fault by characters and fingerprints it by what it is about") {
  const Reading sheet("one:\n  ±: 1\n  ±: 2\n");
  const auto log = nlohmann::json::parse(sarif_report(sheet.sink, sheet.lines(), source_rules(), "1.0"));
  const auto& run = log["runs"][0];
  const auto& result = run["results"][0];
  CHECK(run["tool"]["driver"]["rules"][result["ruleIndex"].get<std::size_t>()]["id"] == "duplicate-key");
  CHECK(result["locations"][0]["physicalLocation"]["region"] ==
        nlohmann::json::parse(R"({"startLine": 3, "startColumn": 3, "endColumn": 4})"));
  CHECK(result["partialFingerprints"]["sheafValue/v1"] == "duplicate-key t.yaml one/±");
  CHECK(result["relatedLocations"][0]["physicalLocation"]["region"]["startLine"] == 2);
}

TEST_CASE("two faults of one kind at one value keep two fingerprints, which do not move with the lines") {
  const auto fingerprints = [](const Reading& sheet) {
    std::vector<std::string> prints;
    const auto log = nlohmann::json::parse(sarif_report(sheet.sink, sheet.lines(), source_rules(), "1.0"));
    for (const auto& result : log["runs"][0]["results"])
      prints.push_back(result["partialFingerprints"]["sheafValue/v1"]);
    return prints;
  };
  const auto prints = fingerprints(Reading("one:\n  a: [~, ~]\n  b: ~\n"));
  CHECK(prints == std::vector<std::string>{"empty-value t.yaml one/a", "empty-value t.yaml one/a 2",
                                           "empty-value t.yaml one/b"});
  CHECK(fingerprints(Reading("# moved\nzero: 0\none:\n  a: [~, ~]\n  b: ~\n")) == prints);
}

TEST_CASE("SARIF names files by relative URIs") {
  Diagnostics sink;
  sink.error("r", {"specs yaml/é#1.yaml", 1, 1, 1}, "m");
  const auto log = nlohmann::json::parse(sarif_report(sink, no_lines, {}, "1.0"));
  CHECK(log["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] ==
        "specs%20yaml/%C3%A9%231.yaml");
}
