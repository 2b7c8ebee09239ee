// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/page.h"

#include <doctest/doctest.h>

#include <sstream>

#include "query/answer/text.h"

using namespace sheaf;

TEST_CASE("labels stand once, their text hangs beside them") {
  Page page({.width = 30});
  page.labelled("caution", Line("Spring under load: hold the plug down."));
  CHECK(page.take() == "  caution  Spring under load:\n           hold the plug down.\n");
}

TEST_CASE("two columns stand beside each other where there is room, else below") {
  const std::vector<Line> left = {Line("28 N·m"), Line("20.7 lbf·ft")};
  const std::vector<Line> right = {Line("fork top plug"), Line("hexagon 27 mm"), Line("a machine")};
  Page wide({.width = 60});
  wide.beside(left, right);
  CHECK(wide.take() ==
        "  28 N·m       fork top plug\n  20.7 lbf·ft  hexagon 27 mm\n               a machine\n");
  Page narrow({.width = 30});
  narrow.beside(left, right);
  CHECK(narrow.take() == "  28 N·m\n  20.7 lbf·ft\n  fork top plug\n  hexagon 27 mm\n  a machine\n");
}

TEST_CASE("no line is wider than the page") {
  for (int width = 20; width < 90; width += 7) {
    Page page({.width = width});
    page.labelled("source", Line("Sorvane fork service leaflet 41, ed. 2 (2012), p. 5; checked 2026-10-02"));
    page.rows(
        {{Line("28 N·m"), Line("fork top plug, each leg, dry")}, {Line("9 N·m"), Line("axle pinch bolts")}},
        2);
    std::istringstream lines(page.take());
    for (std::string line; std::getline(lines, line);) CHECK(display_width(line) <= width);
  }
}

TEST_CASE("colour only wraps the words; without it there is no escape") {
  Page plain({.width = 40, .colour = false});
  Page coloured({.width = 40, .colour = true});
  const Line line = Line("28 N·m", Tone::figure).add(" fit new", Tone::act).add(" hot", Tone::caution);
  plain.line(line);
  coloured.line(line);
  CHECK(plain.take() == "28 N·m fit new hot\n");
  std::string text = coloured.take();
  CHECK(text.find('\033') != std::string::npos);
  for (auto at = text.find('\033'); at != std::string::npos; at = text.find('\033'))
    text.erase(at, text.find('m', at) - at + 1);
  CHECK(text == "28 N·m fit new hot\n");
}

TEST_CASE("control signs of a sheet are gone before they are laid out") {
  Page page({.width = 40});
  page.line(Line("a\033]0;title\a b"));
  CHECK(page.take() == "a]0;title b\n");
}
