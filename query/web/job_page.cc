// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/job_page.h"

#include "query/answer/text.h"

namespace sheaf {
namespace {

std::string address_for(const std::string& sheet, std::string_view section, const Asking& asking) {
  auto given = carried(asking.request);
  if (section != "kit") return address_of("/card/" + sheet, given);
  given.insert(given.begin(), {"q", sheet});
  return address_of("/kit", given);
}

}  // namespace

Response choice_page(const SheetChoice& choice, std::string_view section, const Asking& asking) {
  std::string body = element("h1", "plain", choice.sheets.empty() ? "No sheet for this." : "Which one?");
  body += element("p", "", in_one_line(choice));
  std::string items;
  for (const auto& sheet : choice.sheets) {
    std::vector<std::string> machines;
    for (const auto& fit : sheet.fits) machines.push_back(machine_line(fit));
    items += "<li>" + link(address_for(sheet.name, section, asking), sheet.title, "name") +
             element("p", "machine", joined(machines, "; ")) + "</li>\n";
  }
  return framed({.status = choice.sheets.empty() ? 404 : 200,
                 .title = std::string(section),
                 .body = "<main id=\"answer\">\n" + body + enclosed("ul", "shelf", items) + "</main>\n",
                 .section = section == "kit" ? "kit" : "find"},
                asking);
}

std::string job_form_html(std::string_view job_label, std::string_view button, const Asking& asking) {
  return "<form class=\"fields\" action=\"" + escaped(encoded(asking.request.path)) + "\">\n" +
         (job_label.empty() ? "" : field_html({"q", job_label, asking.request.parameter("q")})) +
         field_html({"machine", "machine", asking.request.parameter("machine")}) +
         field_html({"year", "year", asking.request.parameter("year")}) +
         field_html({"frame", "frame number", asking.request.parameter("frame")}) +
         field_html({"market", "market", asking.request.parameter("market")}) +
         "<p><button type=\"submit\">" + escaped(button) + "</button></p>\n</form>\n";
}

}  // namespace sheaf
