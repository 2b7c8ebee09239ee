// SPDX-License-Identifier: GPL-2.0-or-later
// What fits a measured size, and apart from it what only comes near.
#include <algorithm>

#include "query/answer/match.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

constexpr std::size_t most_near_shown = 8;

// Designations, and measured dimensions of which some may be missing, in the words of the command line.
std::string asked_words(const Asking& asking) {
  std::string words = asking.given("q");
  for (const auto& [name, before] :
       {std::pair{"inside", " id "}, std::pair{"outside", " od "}, std::pair{"height", " height "}})
    if (const auto value = asking.given(name); !value.empty()) words += before + value;
  return words;
}

std::string part_html(const MatchedPart& part, const Asking& asking) {
  std::string item = "<li>" + element("span", "figure large", part.size);
  item += "<span class=\"name\">" +
          link(address_of("/entry/" + part.entry.address, carried(asking.request)), part.entry.name) +
          "</span>\n";
  item += element("p", "act", part.count) + element("p", "marks", part.details);
  if (const auto number = number_words(part.number); !number.empty())
    item += element("p", "marks", "number " + number);
  item += element("p", "caution", part.number.caveat) + element("p", "quiet", part.within);
  if (!part.usual_order) item += element("p", "caution", "in another order than written");
  return item + element("p", "quiet", part.entry.address) + "</li>\n";
}

std::string list_html(std::string_view heading, const std::vector<MatchedPart>& parts, const Asking& asking) {
  std::string items;
  for (const auto& part : parts) items += part_html(part, asking);
  return items.empty() ? items : element("h2", "", heading) + "<ul class=\"answers\">\n" + items + "</ul>\n";
}

std::string near_html(const Matches& matches, const Asking& asking) {
  std::string items;
  for (std::size_t i = 0; i < std::min(matches.near.size(), most_near_shown); ++i) {
    const auto& part = matches.near[i];
    items += "<li>" + element("span", "figure words", part.size) + element("span", "act", part.differs) +
             " · " +
             link(address_of("/entry/" + part.entry.address, carried(asking.request)), part.entry.name) +
             "</li>\n";
  }
  if (matches.near.size() > most_near_shown)
    items += element("li", "quiet", "and " + std::to_string(matches.near.size() - most_near_shown) + " more");
  return items.empty() ? items
                       : "<section class=\"not\">\n<h2>NOT the same</h2>\n<ul class=\"near\">\n" + items +
                             "</ul>\n</section>\n";
}

bool can_be_drawn(const Matches& matches) {
  return std::ranges::any_of(matches.same,
                             [](const MatchedPart& part) { return part.dimensions.has_value(); }) ||
         std::ranges::any_of(matches.within,
                             [](const MatchedPart& part) { return part.dimensions.has_value(); });
}

std::string matches_html(const Matches& matches, const std::string& asked, const Asking& asking) {
  std::string body = element("h1", "plain", matches.found() ? "It fits" : "Nothing matches this.");
  Facts facts;
  facts.add("read as", matches.read_as);
  for (const auto& meaning : matches.meanings) facts.add("says", meaning.part + "  " + meaning.says);
  body += list_html("fits", matches.same, asking) +
          list_html("within the caliper's uncertainty", matches.within, asking) +
          list_html("other use", matches.other_use, asking) + near_html(matches, asking);
  if (matches.more)
    facts.add("note", "the libraries hold more near this size than were compared; give more dimensions");
  for (const auto& caution : matches.cautions) facts.add("caution", caution, "caution");
  if (can_be_drawn(matches))
    body += "<figure><img src=\"" + escaped(address_of("/drawing/match.svg", {{"q", asked}})) +
            "\" alt=\"the first that fits, cut through its middle\"></figure>\n";
  return body + facts.finish();
}

std::string form_html(const Asking& asking) {
  return "<form class=\"ask-form\" action=\"/match\">\n" +
         field_html({"q", "part, size or designation", asking.request.parameter("q"),
                     "fork seal 41 × 54 × 11, 6203-2RS, -214, M8"}) +
         "<div class=\"fields\">\n" +
         field_html({"inside", "inside, mm", asking.request.parameter("inside")}) +
         field_html({"outside", "outside, mm", asking.request.parameter("outside")}) +
         field_html({"height", "height, mm", asking.request.parameter("height")}) +
         "</div>\n<p><button type=\"submit\">Match</button></p>\n</form>\n";
}

}  // namespace

Response match_page(const Asking& asking) {
  const std::string asked = asked_words(asking);
  std::string body;
  int status = 200;
  if (asked.empty()) {
    body = "<h1 class=\"plain\">Match a measured part</h1>\n" + form_html(asking);
  } else {
    const auto matches = match({asked, {}}, asking.opened.shelf());
    if (!matches) status = 400;
    body = (matches ? matches_html(*matches, asked, asking)
                    : element("h1", "plain", matches.failure().message)) +
           form_html(asking);
  }
  return framed({.status = status,
                 .title = asked.empty() ? "match" : asked,
                 .body = "<main id=\"answer\">\n" + body + "</main>\n",
                 .section = "match",
                 .with_search = false},
                asking);
}

}  // namespace sheaf
