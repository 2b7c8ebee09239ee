// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/document.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

Document hostile() {
  Document document;
  document.title = "</title><script>alert(1)</script> & | *";
  document.mark = "\"; } body { display: none } </style><script>";
  FormTable table;
  table.name = "a \"table\"";
  table.columns = {{"x|y", false, 4}, {"done", true, 8}};
  Passage box;
  box.add(Tick{"a/\" onclick=\"x", "left", "<b>", true});
  box.add(Blank{"b", "right", "mm", "plug", "\"><script>", 8});
  table.rows.push_back(
      {"group", {Passage("a | b\nc \033[31m", Tone::figure), box}, {{"caution", Passage("<i>")}}});
  document.sections.push_back({"<h>", {table}});
  document.foot.push_back({"source", Passage("x")});
  return document;
}

std::string text_of(const Document& document, int width) {
  Page page(TextStyle{width, false, false});
  write_text(page, document);
  return page.take();
}

}  // namespace

TEST_CASE("nothing that a sheet or a record says becomes markup, style or a command to the terminal") {
  const std::string html = html_of(hostile());
  CHECK(html.find("<script") == std::string::npos);
  CHECK(html.find("onclick=\"") == std::string::npos);
  CHECK(html.find("<i>") == std::string::npos);
  CHECK(html.find("display: none }") == html.rfind("display: none }"));
  CHECK(html.find('\033') == std::string::npos);
  CHECK(text_of(hostile(), 80).find('\033') == std::string::npos);
  CHECK(markdown_of(hostile()).find("<script>") == std::string::npos);
}

TEST_CASE("a Markdown table keeps its columns whatever stands in its cells") {
  const std::string markdown = markdown_of(hostile());
  for (std::size_t at = markdown.find("\n| "); at != std::string::npos; at = markdown.find("\n| ", at + 1)) {
    const std::string row = markdown.substr(at + 1, markdown.find('\n', at + 1) - at - 1);
    int bars = 0;
    for (std::size_t i = 0; i < row.size(); ++i) bars += row[i] == '|' && (i == 0 || row[i - 1] != '\\');
    CHECK_MESSAGE(bars == 3, row);
  }
}

TEST_CASE("boxes and blanks are shown empty or filled in every form") {
  const std::string text = text_of(hostile(), 80), html = html_of(hostile()),
                    markdown = markdown_of(hostile());
  CHECK(text.find("[x]") != std::string::npos);
  CHECK(html.find(" checked") != std::string::npos);
  CHECK(markdown.find("☑") != std::string::npos);
}

TEST_CASE("a caution is never lost on a narrow page") {
  for (const int width : {20, 30, 40, 60, 200}) {
    Document document = hostile();
    std::get<FormTable>(document.sections.front().blocks.front()).rows.front().under = {
        {"caution", Passage("Spring under load.", Tone::caution)}};
    std::string text = text_of(document, width);
    std::erase(text, '\n');
    std::erase(text, ' ');
    CHECK_MESSAGE(text.find("Springunderload.") != std::string::npos, width);
  }
}
