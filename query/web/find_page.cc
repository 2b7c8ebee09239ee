// SPDX-License-Identifier: GPL-2.0-or-later
// What was found, or what came close; and the first page, which says what is on the shelf.
#include <algorithm>

#include "query/answer/findings.h"
#include "query/answer/text.h"
#include "query/answer/wrench.h"
#include "query/search/complete.h"
#include "query/web/answer_html.h"
#include "query/web/conversion_html.h"
#include "query/web/find_answers.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

constexpr std::size_t most_also = 4;
constexpr std::size_t most_on_shelf = 200;

std::string cautions_html(const std::vector<Answer>& answers) {
  Facts facts;
  std::vector<std::string> said;
  for (const auto& answer : answers)
    for (const auto& caution : answer.entry.cautions)
      if (std::ranges::find(said, caution.text) == said.end()) {
        facts.add("caution", caution.text, "caution");
        said.push_back(caution.text);
      }
  return facts.finish();
}

std::string list_html(const FoundAnswers& found, const Asking& asking) {
  std::string items;
  for (const auto& answer : found.answers) items += answer_item_html(answer, asking);
  const bool invented = std::ranges::any_of(found.answers, &Answer::invented);
  const std::string which = which_one(found);
  const std::string total = (found.total_is_exact ? "" : "about ") + std::to_string(found.total) + " fit";
  return element("h1", "plain", total) + (which.empty() ? "" : element("p", "act", which)) +
         "<ul class=\"answers\">\n" + items + "</ul>\n" + cautions_html(found.answers) +
         notice_html(invented);
}

std::string also_html(const FoundAnswers& found, const Asking& asking) {
  std::string items;
  for (std::size_t i = 0; i < std::min(found.also.size(), most_also); ++i)
    items += answer_item_html(found.also[i], asking);
  return items.empty() ? items : "<h2>also</h2>\n<ul class=\"answers\">\n" + items + "</ul>\n";
}

// A figure that does not fit is not shown: only what it is, what differs, and where it stands.
std::string near_html(const FoundAnswers& found, const Asking& asking) {
  std::string items;
  for (const auto& near : found.near) {
    const std::string size =
        found.why_near == Near::other_sizes ? escaped(short_figure(near.answer)) + " · " : std::string();
    items += "<li>" + size +
             link(address_of("/entry/" + near.answer.address, carried(asking.request)), near.answer.name) +
             " · " + escaped(near.differs) + "</li>\n";
  }
  return items.empty()
             ? items
             : element("h2", "", near_heading(found.why_near)) + "<ul class=\"near\">\n" + items + "</ul>\n";
}

std::string reading_html(const FoundAnswers& found) {
  Facts facts;
  facts.add("read as", in_words(found.reading));
  for (const auto& notice : found.notices) facts.add("note", notice);
  return facts.finish();
}

std::string shelf_html(const FoundAnswers& found, const Asking& asking) {
  std::string items;
  for (std::size_t i = 0; i < std::min(found.shelf.size(), most_on_shelf); ++i) {
    const auto& sheet = found.shelf[i].sheet;
    std::vector<std::string> machines;
    for (const auto& fit : sheet.fits) machines.push_back(machine_line(fit));
    items += "<li>" + link(address_of("/entry/" + sheet.name, carried(asking.request)), sheet.title, "name");
    if (sheet.form == "assembly")
      items += " " + link(address_of("/card/" + sheet.name, carried(asking.request)), "card", "button");
    items += element("p", "machine", joined(machines, "; ")) + "</li>\n";
  }
  if (found.shelf.size() > most_on_shelf)
    items += element("li", "quiet",
                     "and " + std::to_string(found.shelf.size() - most_on_shelf) + " more: name a machine");
  return "<ul class=\"shelf\">\n" + items + "</ul>\n";
}

// Of a large library no list is of use, and it would be read whole for each visit.
Result<std::string> shelf_if_small(const Asking& asking) {
  std::int64_t sheets = 0, entries = 0;
  for (const Library* library : asking.opened.libraries()) {
    sheets += library->facts().sheets;
    entries += library->facts().entries;
  }
  if (sheets > static_cast<std::int64_t>(most_on_shelf))
    return element("p", "",
                   std::to_string(entries) + " entries on " + std::to_string(sheets) +
                       " sheets. Type a part, a size or a machine.");
  auto found = find_answers(asking);
  if (!found) return found.failure();
  return shelf_html(*found, asking);
}

std::string answers_html(const FoundAnswers& found, const Asking& asking) {
  if (found.conversion) return "<h1 class=\"plain\">converted</h1>\n" + conversion_html(*found.conversion);
  if (!found.shelf.empty())
    return element("h1", "plain", std::to_string(found.shelf.size()) + " sheets") + shelf_html(found, asking);
  if (found.answers.empty())
    return element("h1", "plain", nothing_found(found)) + reading_html(found) + near_html(found, asking);
  const bool is_one = found.answers.size() == 1;
  const std::string answers =
      is_one ? answer_html(found.answers.front(), asking, false) : list_html(found, asking);
  return answers + also_html(found, asking) + near_html(found, asking) + reading_html(found) +
         (is_one ? report_html(found.answers, asking, in_words(found.reading)) : "");
}

}  // namespace

// While a question is typed, its last word may be half of one.
Response find_page(const Asking& asking) {
  auto found = find_answers(asking);
  if (!found) return trouble_page(500, found.failure().message, asking);
  const std::string question = asking.given("q");
  return framed(
      {.title = question,
       .body = "<main id=\"answer\" aria-live=\"polite\">\n" + answers_html(*found, asking) + "</main>\n",
       .section = "find"},
      asking);
}

Response home_page(const Asking& asking) {
  auto shelf = shelf_if_small(asking);
  if (!shelf) return trouble_page(500, shelf.failure().message, asking);
  return framed(
      {.title = "",
       .body = "<main id=\"answer\" aria-live=\"polite\">\n<h1 class=\"plain\">On the shelf</h1>\n" + *shelf +
               "</main>\n",
       .section = "find"},
      asking);
}

}  // namespace sheaf
