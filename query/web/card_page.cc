// SPDX-License-Identifier: GPL-2.0-or-later
// The card of one job, as it prints, with boxes and blanks that the device remembers; or that card saved as one
// file. What belongs to a record of it, the page carries as data for its script.
#include "query/answer/card_document.h"
#include "query/answer/card_record.h"
#include "query/answer/json.h"
#include "query/answer/sheet_choice.h"
#include "query/answer/text.h"
#include "query/web/find_card.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

std::string choice_html(const SheetChoice& choice, const Asking& asking) {
  std::string body = element("h1", "plain", choice.sheets.empty() ? "No sheet for this." : "Which one?");
  body += element("p", "", in_one_line(choice));
  std::string items;
  for (const auto& sheet : choice.sheets) {
    std::vector<std::string> machines;
    for (const auto& fit : sheet.fits) machines.push_back(machine_line(fit));
    items += "<li>" + link(address_of("/card/" + sheet.name, carried(asking.request)), sheet.title, "name") +
             element("p", "machine", joined(machines, "; ")) + "</li>\n";
  }
  return "<main id=\"answer\">\n" + body + enclosed("ul", "shelf", items) + "</main>\n";
}

// What the script of the page begins a record with, and the figure of each entry as a record keeps it.
std::string record_html(const Card& card) {
  JsonWriter figures;
  figures.begin_object();
  for (const auto* entries : {&card.settings, &card.steps, &card.fasteners, &card.fluids, &card.measures})
    for (const auto& entry : *entries) figures.member_if(entry.name, figure_text(entry));
  figures.end_object();
  return "<div id=\"record\" hidden data-record=\"" + escaped(to_json(new_record(card))) + "\" data-figures=\"" +
         escaped(figures.text()) + "\"></div>\n";
}

std::string machine_form_html(const Asking& asking) {
  return "<form class=\"fields\" action=\"" + escaped(encoded(asking.request.path)) + "\">\n" +
         field_html({"machine", "machine", asking.request.parameter("machine")}) +
         field_html({"year", "year", asking.request.parameter("year")}) +
         field_html({"frame", "frame number", asking.request.parameter("frame")}) +
         field_html({"market", "market", asking.request.parameter("market")}) +
         (asking.request.has("q") ? field_html({"q", "job", asking.request.parameter("q")}) : "") +
         "<p><button type=\"submit\">Card for this machine</button></p>\n</form>\n";
}

std::string tools_html(const Asking& asking) {
  auto save = carried(asking.request);
  save.push_back({"q", asking.given("q")});
  save.push_back({"save", "yes"});
  return "<section class=\"tools\" aria-label=\"this card\">\n" + machine_form_html(asking) + "<p>" +
         link(address_of(asking.request.path, save), "Save this card as one file", "button") +
         "</p>\n<div id=\"record-tools\" hidden>\n<p id=\"record-state\" role=\"status\"></p>\n<p>"
         "<button type=\"button\" id=\"record-out\">Take the record out</button> "
         "<label class=\"button\">Bring a record in <input type=\"file\" id=\"record-in\" accept=\".json,application/json\">"
         "</label> <button type=\"button\" id=\"record-clear\">Clear what this device keeps of this card</button></p>\n"
         "</div>\n</section>\n";
}

}  // namespace

Response card_page(const Asking& asking, const std::string& sheet) {
  auto found = find_card(asking, sheet.empty() ? asking.given("q") : sheet);
  if (!found) return trouble_page(404, found.failure().message, asking);
  if (found->choice)
    return framed({.status = found->choice->sheets.empty() ? 404 : 200,
                   .title = "card",
                   .body = choice_html(*found->choice, asking),
                   .section = "find"},
                  asking);
  const Document document = document_of(*found->card, nullptr);
  if (asking.request.has("save"))
    return {200, "text/html; charset=utf-8", html_of(document), found->card->sheet.name + ".html"};
  return framed({.title = document.title,
                 .body = record_html(*found->card) + html_body_of(document) + tools_html(asking),
                 .style = "card",
                 .section = "find",
                 .with_search = false},
                asking);
}

}  // namespace sheaf
