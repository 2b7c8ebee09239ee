// SPDX-License-Identifier: GPL-2.0-or-later
// What one job or a whole service uses up and needs laid out, as it prints, with boxes that the device
// remembers; or as one file, or as the clerk's table.
#include "query/answer/kit_document.h"
#include "query/answer/text.h"
#include "query/web/find_kit.h"
#include "query/web/job_page.h"

namespace sheaf {
namespace {

constexpr std::string_view example = "fork, front brake";

Response empty_page(int status, const std::string& why, const Asking& asking) {
  return framed({.status = status,
                 .title = "kit",
                 .body = "<main id=\"answer\">\n<h1 class=\"plain\">Everything a job needs</h1>\n" +
                         element("p", "act", why) + "<p>Name one job or several, parted by commas, as in “" +
                         std::string(example) + "”; a machine alone takes all that is known of it.</p>\n" +
                         job_form_html("jobs", "What to buy and lay out", asking) + "</main>\n",
                 .section = "kit",
                 .with_search = false},
                asking);
}

// The boxes of a kit are kept under its sheets, and the machine that it was counted for.
std::string kept_under(const Kit& kit, const Asking& asking) {
  std::string name = "kit";
  for (const auto& sheet : kit.sheets) name += "/" + sheet.name;
  for (const std::string_view each : {"machine", "year", "frame", "market"}) name += "/" + asking.given(each);
  return name;
}

std::string tools_html(const Asking& asking) {
  auto given = carried(asking.request);
  given.insert(given.begin(), {"q", asking.given("q")});
  auto table = given;
  table.push_back({"table", "yes"});
  given.push_back({"save", "yes"});
  return "<section class=\"tools\" aria-label=\"this kit\">\n" +
         job_form_html("jobs", "Kit for this", asking) + "<p>" +
         link(address_of("/kit", given), "Save this kit as one file", "button") + " " +
         link(address_of("/kit", table), "Save it as a table (CSV)", "button") +
         "</p>\n<div id=\"record-tools\" hidden>\n<p id=\"record-state\" role=\"status\"></p>\n<p><button type=\"button\" "
         "id=\"record-clear\">Clear what this device keeps of this kit</button></p>\n</div>\n</section>\n";
}

std::string file_name(const Kit& kit) {
  std::vector<std::string> names;
  for (const auto& sheet : kit.sheets) names.push_back(sheet.name);
  constexpr std::size_t longest = 60;
  return joined(names, "-").substr(0, longest) + "-kit";
}

}  // namespace

Response kit_page(const Asking& asking) {
  if (asking.given("q").empty() && asking.given("machine").empty()) return empty_page(200, {}, asking);
  const auto found = find_kit(asking);
  if (!found) return empty_page(404, found.failure().message + ".", asking);
  if (found->choice) return choice_page(*found->choice, "kit", asking);
  const Kit& kit = *found->kit;
  if (asking.request.has("table"))
    return {200, "text/csv; charset=utf-8", csv_of(kit), file_name(kit) + ".csv"};
  const Document document = document_of(kit, asking.opened.libraries());
  if (asking.request.has("save"))
    return {200, "text/html; charset=utf-8", html_of(document), file_name(kit) + ".html"};
  return framed({.title = document.title,
                 .body = "<div id=\"record\" hidden data-kept=\"" + escaped(kept_under(kit, asking)) +
                         "\"></div>\n" + html_body_of(document) + tools_html(asking),
                 .style = "card",
                 .section = "kit",
                 .with_search = false},
                asking);
}

}  // namespace sheaf
