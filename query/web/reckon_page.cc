// SPDX-License-Identifier: GPL-2.0-or-later
// The trade's arithmetic: the topics; a topic with a field for each thing that it is given; and what follows.
#include <algorithm>

#include "query/answer/text.h"
#include "query/web/answer_html.h"
#include "query/web/find_reckoning.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

std::string topics_html() {
  std::string items;
  for (const auto& topic : all_topics())
    items += "<li>" +
             link(address_of("/reckon", {{"topic", std::string(topic.name)}}), topic.purpose, "name") +
             "</li>\n";
  return "<ul class=\"shelf\">\n" + items + "</ul>\n";
}

std::string result_html(const ReckonedLine& line) {
  std::vector<std::string> derived;
  for (const auto& other : line.derived) derived.push_back("≈ " + shown(other));
  std::string label = line.label;
  if (!line.note.empty()) label += (label.empty() ? "" : ", ") + line.note;
  return "<li>" + lead_html(line.figure ? shown(*line.figure) : line.words) +
         element("span", "beside", joined(derived, "  ")) + element("p", "act", label) + "</li>\n";
}

std::string drawing_html(const Reckoning& reckoning, const std::vector<std::string>& words) {
  if (reckoning.picture.empty()) return {};
  return "<figure><img src=\"" + escaped(address_of("/drawing/reckon.svg", {{"q", joined(words, " ")}})) +
         "\" alt=\"what was reckoned, drawn; said in words here\"></figure>\n";
}

std::string reckoning_html(const Reckoning& reckoning, const std::vector<std::string>& words) {
  std::string items;
  for (const auto& line : reckoning.results) items += result_html(line);
  Facts facts;
  for (const auto& each : reckoning.given) facts.add("given", each.label + " " + each.text);
  for (const auto& each : reckoning.taken) facts.add("taken", each);
  for (const auto& each : reckoning.cautions) facts.add("caution", each, "caution");
  for (const auto& each : reckoning.formulae) facts.add("formula", each.text + " (" + each.source + ")");
  for (const auto& each : reckoning.tables) facts.add("table", each);
  return "<ul class=\"answers\">\n" + items + "</ul>\n" + facts.finish() + drawing_html(reckoning, words);
}

std::string form_html(const Topic& topic, const Asking& asking) {
  std::string fields;
  for (const auto& name : topic.names)
    fields += field_html({name.name, std::string(name.name) + (name.required ? ", needed" : ""),
                          asking.request.parameter(name.name), name.help});
  return "<form class=\"ask-form\" action=\"/reckon\">\n<input type=\"hidden\" name=\"topic\" value=\"" +
         escaped(topic.name) + "\">\n<div class=\"fields\">\n" + fields + "</div>\n" +
         element("p", "quiet", "as in: sheaf reckon " + std::string(topic.example)) +
         "<p><button type=\"submit\">Reckon</button></p>\n</form>\n<p>" +
         link("/reckon", "All that is reckoned", "button") + "</p>\n";
}

Response page_with(int status, std::string_view title, const std::string& body, const Asking& asking) {
  return framed({.status = status,
                 .title = std::string(title),
                 .body = "<main id=\"answer\">\n" + body + "</main>\n",
                 .section = "reckon",
                 .with_search = false},
                asking);
}

}  // namespace

Response reckon_page(const Asking& asking) {
  const auto words = reckoning_asked(asking.request);
  if (words.empty())
    return page_with(200, "reckon", "<h1 class=\"plain\">The trade’s arithmetic</h1>\n" + topics_html(),
                     asking);
  const auto topics = all_topics();
  const auto topic = std::ranges::find(topics, words.front(), &Topic::name);
  if (topic == topics.end())
    return page_with(
        404, "reckon",
        element("h1", "plain", "Nothing called “" + words.front() + "” is reckoned.") + topics_html(),
        asking);
  const std::string heading = element("h1", "plain", topic->purpose), form = form_html(*topic, asking);
  if (words.size() == 1) return page_with(200, topic->purpose, heading + form, asking);
  const auto reckoning = find_reckoning(asking);
  if (!reckoning)
    return page_with(400, topic->purpose,
                     heading + element("p", "act", reckoning.failure().message + ".") + form, asking);
  return page_with(200, topic->purpose, heading + reckoning_html(*reckoning, words) + form, asking);
}

}  // namespace sheaf
