// SPDX-License-Identifier: GPL-2.0-or-later
// The card of one job, as it prints, with boxes and blanks that the device remembers; or that card saved as
// one file. What belongs to a record of it, the page carries as data for its script.
#include "query/answer/card_document.h"
#include "query/answer/card_record.h"
#include "query/answer/json.h"
#include "query/web/find_card.h"
#include "query/web/job_page.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

// What the script of the page begins a record with, and the figure of each entry as a record keeps it.
std::string record_html(const Card& card) {
  JsonWriter figures;
  figures.begin_object();
  for (const auto* entries : {&card.settings, &card.steps, &card.fasteners, &card.fluids, &card.measures})
    for (const auto& entry : *entries) figures.member_if(entry.name, figure_text(entry));
  figures.end_object();
  return "<div id=\"record\" hidden data-record=\"" + escaped(to_json(new_record(card))) +
         "\" data-figures=\"" + escaped(figures.text()) + "\"></div>\n";
}

std::string tools_html(const Asking& asking) {
  auto save = carried(asking.request);
  save.push_back({"q", asking.given("q")});
  save.push_back({"save", "yes"});
  return "<section class=\"tools\" aria-label=\"this card\">\n" +
         job_form_html(asking.request.has("q") ? "job" : "", "Card for this machine", asking) + "<p>" +
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
  if (found->choice) return choice_page(*found->choice, "card", asking);
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
