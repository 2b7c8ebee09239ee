// SPDX-License-Identifier: GPL-2.0-or-later
// Boxes and blanks are real ones, so that a card can be filled in where it is shown, each with a name of its
// own for those who hear the page. Every row of a table is a body of its own: printing parts none of them.
#include "query/answer/document.h"
#include "query/answer/html_style.h"
#include "query/answer/svg.h"

namespace sheaf {
namespace {

std::string_view class_of(Tone tone) {
  switch (tone) {
    case Tone::figure:
      return "figure";
    case Tone::derived:
      return "derived";
    case Tone::act:
      return "act";
    case Tone::caution:
      return "caution";
    case Tone::quiet:
      return "quiet";
    case Tone::plain:
      return "";
  }
  return "";
}

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + escaped_markup(value) + "\"";
}

std::string spoken(const std::string& about, const std::string& label) {
  return label.empty() ? about : about.empty() ? label : about + ", " + label;
}

std::string markup(const Run& run) {
  const auto name = class_of(run.tone);
  if (name.empty()) return escaped_markup(run.text);
  return "<span" + attribute("class", name) + ">" + escaped_markup(run.text) + "</span>";
}

std::string markup(const Tick& tick) {
  return "<label class=\"tick\"><input type=\"checkbox\"" + attribute("id", tick.id) +
         attribute("aria-label", spoken(tick.about, tick.label)) + (tick.ticked ? " checked" : "") + ">" +
         (tick.label.empty() ? "" : " " + escaped_markup(tick.label)) + "</label> ";
}

std::string_view class_of_width(int width) {
  return width >= Blank::whole_line ? " class=\"whole\"" : width > 8 ? " class=\"wide\"" : "";
}

std::string markup(const Blank& blank) {
  return "<label class=\"blank\">" + (blank.label.empty() ? "" : escaped_markup(blank.label) + " ") +
         "<input type=\"text\"" + attribute("id", blank.id) + std::string(class_of_width(blank.width)) +
         attribute("aria-label", spoken(blank.about, spoken(blank.label, blank.unit))) +
         (blank.filled.empty() ? "" : attribute("value", blank.filled)) + ">" +
         (blank.unit.empty() ? "" : " " + escaped_markup(blank.unit)) + "</label> ";
}

std::string markup(const Break&) { return "<br>"; }

std::string markup(const Passage& passage) {
  std::string text;
  for (const auto& piece : passage.pieces())
    text += std::visit([](const auto& each) { return markup(each); }, piece);
  while (text.ends_with(' ')) text.pop_back();
  return text;
}

// Remarks of one label stand together behind it.
std::string markup(const std::vector<Remark>& remarks) {
  if (remarks.empty()) return {};
  std::string text = "<dl>\n";
  for (std::size_t i = 0; i < remarks.size();) {
    const std::string& label = remarks[i].label;
    text += "<div" + attribute("class", label == "caution" ? "remark warns" : "remark") + "><dt>" +
            escaped_markup(label) + "</dt>";
    for (; i < remarks.size() && remarks[i].label == label; ++i)
      text += "<dd>" + markup(remarks[i].text) + "</dd>";
    text += "</div>\n";
  }
  return text + "</dl>\n";
}

std::string block_of(const Passage& passage) { return "<p>" + markup(passage) + "</p>\n"; }

std::string block_of(const Listing& listing) {
  std::string text = listing.compact ? "<ul class=\"compact\">\n" : "<ul>\n";
  for (const auto& item : listing.items) text += "<li>" + markup(item) + "</li>\n";
  return text + "</ul>\n";
}

std::string block_of(const Remarks& remarks) { return markup(remarks.all); }

std::string head_of(const FormTable& table) {
  const std::string span = attribute("colspan", std::to_string(table.columns.size()));
  std::string text = "<thead>\n";
  if (!table.over.empty())
    text += "<tr class=\"over\"><td" + span + ">" + markup(table.over) + "</td></tr>\n";
  text += "<tr>";
  for (const auto& column : table.columns)
    text += column.heading.empty() ? "<td></td>"
                                   : "<th scope=\"col\">" + escaped_markup(column.heading) + "</th>";
  return text + "</tr>\n</thead>\n";
}

std::string columns_of(const FormTable& table) {
  std::string text = "<colgroup>";
  for (const auto& column : table.columns)
    text += "<col" + attribute("class", "of-12-" + std::to_string(column.twelfths)) + ">";
  return text + "</colgroup>\n";
}

std::string block_of(const FormTable& table) {
  const std::string span = attribute("colspan", std::to_string(table.columns.size()));
  std::string text = "<table>\n<caption class=\"unseen\">" + escaped_markup(table.name) + "</caption>\n" +
                     columns_of(table) + head_of(table);
  for (const auto& row : table.rows) {
    text += "<tbody>\n";
    if (!row.group.empty())
      text += "<tr class=\"group\"><th scope=\"rowgroup\"" + span + ">" + escaped_markup(row.group) +
              "</th></tr>\n";
    text += "<tr>";
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const bool heads = i == table.heads;
      text += (heads ? "<th scope=\"row\">" : "<td>") + markup(row.cells[i]) + (heads ? "</th>" : "</td>");
    }
    text += "</tr>\n";
    if (!row.under.empty())
      text += "<tr class=\"under\"><td" + span + ">" + markup(row.under) + "</td></tr>\n";
    text += "</tbody>\n";
  }
  return text + "</table>\n";
}

// For a string in a style sheet.
std::string style_string(std::string_view text) {
  std::string result = "\"";
  for (const char sign : text)
    if (sign != '"' && sign != '\\' && sign != '<' && static_cast<unsigned char>(sign) >= 0x20)
      result += sign;
  return result + "\"";
}

}  // namespace

std::string html_body_of(const Document& document) {
  std::string text = "<main>\n<header>\n<h1>" + escaped_markup(document.title) + "</h1>\n";
  for (const auto& passage : document.under_title) text += block_of(passage);
  text += "</header>\n";
  for (const auto& section : document.sections) {
    text += "<section>\n<h2>" + escaped_markup(section.heading) + "</h2>\n";
    for (const auto& block : section.blocks)
      text += std::visit([](const auto& each) { return block_of(each); }, block);
    text += "</section>\n";
  }
  return text + "</main>\n<footer>\n" + markup(document.foot) + "</footer>\n";
}

std::string html_of(const Document& document) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
         escaped_markup(document.title) + "</title>\n<style>" + std::string(document_style) +
         "@page { @bottom-left { content: " + style_string(document.mark) +
         "; } }\n</style>\n</head>\n<body>\n" + html_body_of(document) + "</body>\n</html>\n";
}

}  // namespace sheaf
