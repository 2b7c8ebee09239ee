// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/format.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "compiler/sheet/comments.h"
#include "compiler/sheet/workspace.h"

using namespace sheafc;

namespace {

constexpr std::string_view head =
    "sheet: try\ntitle: A try\nassembly: fork\nsource:\n  title: A leaflet\nchecked:\n  on: 2026-10-02\n  "
    "by: workshop\n";

struct Read {
  explicit Read(std::string text) {
    const std::vector<SheetText> texts = {{"try.yaml", std::move(text)}};
    workspace = read_texts(texts, sink);
  }
  const Sheet& sheet() const { return *workspace.sheets.front(); }
  Diagnostics sink;
  Workspace workspace;
};

// The sheet as `sheafc format` writes it; the format of the format must be itself.
std::string formatted(const std::string& text) {
  const Read read(text);
  REQUIRE_MESSAGE(read.sink.errors() == 0, text);
  const auto once = format_sheet(read.sheet());
  if (!once) return "! " + once.failure().message;
  const auto twice = format_sheet(Read(*once).sheet());
  CHECK(*twice == *once);
  return *once;
}

// The sections of a sheet whose head is the usual one.
std::string body(const std::string& text) {
  const std::string whole = formatted(std::string(head) + text);
  const std::string start = std::string(head) + "\n";
  REQUIRE_MESSAGE(whole.starts_with(start), whole);
  return whole.substr(start.size());
}

}  // namespace

TEST_CASE("keys stand in declared order, values in their canonical spelling") {
  CHECK(body("fasteners:\n  plug: {torque: 28 Nm, name: plug,   drive: 27 mm hexagon}\n") ==
        "fasteners:\n  plug: { name: plug, drive: hexagon 27 mm, torque: 28 N·m }\n");
  CHECK(body("seals:\n   oil:\n      use: fork-oil\n      size: 41 × 54 × 11\n      name: oil seal\n") ==
        "seals:\n  oil:\n    name: oil seal\n    size: 41x54x11\n    use: fork-oil\n");
}

TEST_CASE("sections stand in declared order, entries as written") {
  CHECK(body("steps:\n  b: { name: b, do: Do. }\n  a: { name: a, do: Do. }\nfasteners:\n  plug: { name: plug "
             "}\n") ==
        "fasteners:\n  plug: { name: plug }\nsteps:\n  b: { name: b, do: Do. }\n  a: { name: a, do: Do. }\n");
}

TEST_CASE("quotes stay where the writer put them, and come where they are needed") {
  CHECK(body("fasteners:\n  plug: { name: 'plug', class: \"8.8\", thread: \"#10-32 UNF\" }\n") ==
        "fasteners:\n  plug: { name: 'plug', thread: \"#10-32 UNF\", class: \"8.8\" }\n");
  CHECK(
      body("fluids:\n  oil:\n    name: oil\n    purpose: fork-oil\n    level: 118mm below the rim, spring "
           "out\n") ==
      "fluids:\n  oil:\n    name: oil\n    purpose: fork-oil\n    level: 118 mm below the rim, spring out\n");
}

TEST_CASE("a remark stays with what it stands beside, above or inside of") {
  CHECK(body("fasteners:  # all of them\n  # the first\n  plug:   # its name\n    torque: 28 N·m # checked "
             "twice\n    # an old figure\n    name: plug\n"
             "    # a last word on the plug\n  screw: { name: screw }\n") ==
        "fasteners:  # all of them\n  # the first\n  plug:  # its name\n    # an old figure\n    name: "
        "plug\n    # a last word on the plug\n"
        "    torque: 28 N·m  # checked twice\n  screw: { name: screw }\n");
}

TEST_CASE("remarks before and after everything stay there") {
  const std::string text = formatted("# Who may use it.\n\n# What it is.\n" + std::string(head) +
                                     "fasteners:\n  plug: { name: plug }\n# The end.\n");
  CHECK(text == "# Who may use it.\n\n# What it is.\n" + std::string(head) +
                    "\nfasteners:\n  plug: { name: plug }\n# The end.\n");
}

TEST_CASE("brackets that hold remarks are opened") {
  CHECK(body("fasteners:\n  plug: { name: plug,  # the plug\n          also: [a,  # one\n                 b] "
             "}\n") ==
        "fasteners:\n  plug:\n    name: plug  # the plug\n    also:\n      - a  # one\n      - b\n");
}

TEST_CASE("what does not fit on a line is opened") {
  const std::string also =
      "also: [the first of many names, the second of many names, the third of many names, the fourth of "
      "them]";
  CHECK(body("fasteners:\n  plug: { name: plug, " + also + " }\n") ==
        "fasteners:\n  plug:\n    name: plug\n    " + also + "\n");
}

TEST_CASE("blank lines between things stay, one at a time") {
  CHECK(body("fasteners:\n\n\n  plug: { name: plug }\n\n\n  # a screw\n  screw: { name: screw }\n") ==
        "fasteners:\n  plug: { name: plug }\n\n  # a screw\n  screw: { name: screw }\n");
}

TEST_CASE("a text over several lines is folded anew") {
  const std::string words =
      "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
      "seventeen";
  CHECK(body("parts:\n  ring:\n    name: ring\n    notes:\n      - " + words.substr(0, 39) + "\n        " +
             words.substr(40) + " eighteen nineteen twenty\n") ==
        "parts:\n  ring:\n    name: ring\n    notes:\n      - >-\n        " + words +
            "\n        eighteen nineteen twenty\n");
  CHECK(body("parts:\n  ring:\n    name: ring\n    notes: >\n      a short\n      text\n") ==
        "parts:\n  ring:\n    name: ring\n    notes: a short text\n");
}

TEST_CASE("rows of a table stand in columns") {
  const std::string table =
      "sheet: try\ntitle: A try\ntable: thread-size\nsource:\n  title: ISO 724\nchecked:\n  on: 2026-10-02\n "
      " by: workshop\nkey: thread\n";
  CHECK(formatted(table + "rows:\n- [ m8 x 1.25,1.25 , page]  # usual\n- [M10x1.5, 1.5,\"how, "
                          "then\"]\ncolumns: { thread: thread, pitch: millimetre, how: text }\n") ==
        table +
            "\ncolumns: { thread: thread, pitch: mm, how: text }\nrows:\n  - [M8x1.25, 1.25, page]  # "
            "usual\n  - [M10x1.5, 1.5,  \"how, then\"]\n");
}

TEST_CASE("remarks are found between scalars and nowhere else") {
  SourceFile file(
      "t.yaml",
      "sheet: try  # one\ntitle: \"a # b\"\n# two\nassembly: fork\nnotes:\n  - a#b\n  - >\n    # no remark\n"
      "    text\n  - 'c # d' # three\n");
  Diagnostics faults;
  REQUIRE(file.parse(faults));
  std::string found;
  for (const Comment& comment : comments_of(file))
    found += std::string(comment.text) + (comment.alone ? "!" : "") + " ";
  CHECK(found == "# one # two! # three ");
}

TEST_CASE("every sound sheet of the project is formatted without loss, and stays as it is then") {
  Diagnostics sink;
  const std::vector<std::string> folders = {"specs-yaml", "tests/sheets/good"};
  const auto workspace = read_workspace(folders, sink);
  REQUIRE(workspace);
  REQUIRE(workspace->sheets.size() > 20);
  for (const auto& sheet : workspace->sheets) {
    CAPTURE(sheet->path);
    const auto once = format_sheet(*sheet);
    REQUIRE(once);
    const std::vector<SheetText> texts = {{sheet->path, *once}};
    Diagnostics none;
    const Workspace again = read_texts(texts, none);
    REQUIRE(again.sheets.size() == 1);
    CHECK(meaning_of(*again.sheets.front()) == meaning_of(*sheet));
    CHECK(*format_sheet(*again.sheets.front()) == *once);
  }
}

// Remarks and blank lines strewn between the lines of a real sheet: none may be lost, wherever it stands.
TEST_CASE("strewn remarks survive") {
  Diagnostics sink;
  const std::vector<std::string> one = {"specs-yaml/demo/sorvane-41-rod.yaml"};
  const auto workspace = read_workspace(one, sink);
  REQUIRE(workspace);
  const std::string_view bytes = workspace->files.front()->bytes();
  std::mt19937 random(41);
  for (int round = 0; round < 40; ++round) {
    std::string text;
    int remarks = 0;
    for (std::size_t start = 0; start < bytes.size();) {
      const std::size_t end = bytes.find('\n', start);
      text += bytes.substr(start, end - start);
      if (random() % 9 == 0) text += "  # beside " + std::to_string(remarks++);
      text += '\n';
      if (random() % 11 == 0) text += '\n';
      if (random() % 7 == 0)
        text += std::string(random() % 7, ' ') + "# alone " + std::to_string(remarks++) + "\n";
      start = end + 1;
    }
    const std::vector<SheetText> texts = {{"sorvane-41-rod.yaml", text}};
    Diagnostics faults;
    const Workspace strewn = read_texts(texts, faults);
    if (faults.errors() > 0) continue;  // a remark fell into a text of several lines
    const auto formatted = format_sheet(*strewn.sheets.front());
    REQUIRE_MESSAGE(formatted, formatted.failure().message);
    const auto twice = format_sheet(
        *read_texts(std::vector<SheetText>{{"sorvane-41-rod.yaml", *formatted}}, faults).sheets.front());
    REQUIRE(twice);
    CHECK(*twice == *formatted);
    for (int i = 0; i < remarks; ++i) {
      const std::string beside = "# beside " + std::to_string(i) + "\n",
                        alone = "# alone " + std::to_string(i) + "\n";
      CHECK((formatted->find(beside) != std::string::npos) != (formatted->find(alone) != std::string::npos));
    }
  }
}
