// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <array>

#include "query/web/pages.h"
#include "query/web/styles.h"

namespace sheaf {
namespace {

struct Place {
  std::string_view path, name;
};
constexpr std::array<Place, 7> places = {{{"/", "find"},
                                          {"/match", "match"},
                                          {"/convert", "convert"},
                                          {"/kit", "kit"},
                                          {"/wrench", "wrench"},
                                          {"/reckon", "reckon"},
                                          {"/about", "about"}}};

std::string navigation_html(std::string_view section, const Asking& asking) {
  std::string items;
  for (const auto& place : places) {
    std::string item = "<a href=\"" + escaped(address_of(place.path, carried(asking.request))) + "\"";
    if (place.name == section) item += " aria-current=\"page\"";
    items += "<li>" + item + ">" + std::string(place.name) + "</a></li>\n";
  }
  return "<nav aria-label=\"pages\"><ul>\n" + items + "</ul></nav>\n";
}

std::string units_html(const Asking& asking) {
  const std::string chosen = asking.given("unit");
  std::string options;
  bool known = false;
  for (const auto& choice : unit_choices()) {
    const bool is_chosen = choice.value == chosen;
    known = known || is_chosen;
    options += "<option value=\"" + escaped(choice.value) + "\"" + (is_chosen ? " selected" : "") + ">" +
               escaped(choice.words) + "</option>\n";
  }
  if (!known)
    options += "<option value=\"" + escaped(chosen) + "\" selected>" + escaped(chosen) + "</option>\n";
  return "<p class=\"field\"><label for=\"unit\">units</label><select id=\"unit\" name=\"unit\">\n" +
         options + "</select></p>\n";
}

std::string search_html(const Asking& asking) {
  const std::string asked = asking.given("q");
  return "<form id=\"search\" action=\"/find\" role=\"search\">\n<p class=\"ask\"><label for=\"q\" class=\"unseen\">part, "
         "size or figure</label><input id=\"q\" name=\"q\" type=\"search\" value=\"" +
         escaped(asked) +
         "\" placeholder=\"part, size or figure\" autocomplete=\"off\" autocapitalize=\"none\" "
         "spellcheck=\"false\" maxlength=\"600\"" +
         (asking.request.path == "/" ? " autofocus" : "") +
         "><button type=\"submit\">Find</button></p>\n<p id=\"words\" class=\"words\" hidden></p>\n<div "
         "class=\"fields\">\n" +
         field_html({"machine", "machine", asking.request.parameter("machine")}) +
         field_html({"year", "year", asking.request.parameter("year")}) + units_html(asking) +
         "</div>\n</form>\n";
}

// A card has a footer of its own.
std::string foot_html(const Asking& asking, bool is_card) {
  const Opened& opened = asking.opened;
  const std::string name = is_card ? "aside" : "footer";
  return "<" + name + " class=\"foot\" aria-label=\"the library\">\n<p>" +
         escaped("From " + opened.name() + ", data of " + opened.data_date() + ", digest " +
                 opened.digest().substr(0, 12) + "…") +
         "</p>\n</" + name + ">\n";
}

// Of what was made here: the words of links stay, where they led does not.
std::string without_links(std::string_view markup) {
  std::string result;
  while (!markup.empty()) {
    const bool is_link =
        markup.starts_with("<a ") || markup.starts_with("</a>") || markup.starts_with("<img ");
    const std::size_t end = is_link ? markup.find('>') + 1 : std::min(markup.find('<', 1), markup.size());
    if (!is_link) result += markup.substr(0, end);
    markup.remove_prefix(end);
  }
  return result;
}

}  // namespace

std::string field_html(const Field& field) {
  const std::string name(field.name);
  std::string markup = "<p class=\"field\"><label for=\"" + name + "\">" + escaped(field.label) +
                       "</label><input id=\"" + name + "\" name=\"" + name + "\" type=\"text\" value=\"" +
                       escaped(field.value) +
                       "\" autocomplete=\"off\" spellcheck=\"false\" maxlength=\"600\"";
  if (field.name == "year") markup += " inputmode=\"numeric\"";
  if (!field.hint.empty()) markup += " aria-describedby=\"" + name + "-hint\"";
  markup += ">";
  if (!field.hint.empty()) markup += "<small id=\"" + name + "-hint\">" + escaped(field.hint) + "</small>";
  return markup + "</p>\n";
}

Response framed(const PageParts& parts, const Asking& asking) {
  std::string page = "<!DOCTYPE html>\n<html lang=\"en\" data-digest=\"" + escaped(asking.opened.digest()) +
                     "\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
                     "content=\"width=device-width, initial-scale=1\">\n<title>" +
                     escaped(parts.title.empty() ? "Sheaf" : parts.title + " · Sheaf") + "</title>\n";
  if (parts.style == "card") page += card_style_html();
  page += page_style_html() +
          "<link rel=\"icon\" href=\"/icon.svg\" type=\"image/svg+xml\">\n"
          "<script src=\"/page.js\" defer></script>\n";
  if (parts.style == "card") page += "<script src=\"/card.js\" defer></script>\n";
  page += "</head>\n<body" + (parts.style.empty() ? "" : " class=\"" + std::string(parts.style) + "\"") +
          ">\n<header class=\"top\">\n" + navigation_html(parts.section, asking) +
          (parts.with_search ? search_html(asking) : "") + "</header>\n" + parts.body +
          foot_html(asking, parts.style == "card") + "</body>\n</html>\n";
  return {parts.status, "text/html; charset=utf-8", std::move(page)};
}

Response saved(const PageParts& parts, const Asking& asking, std::string file) {
  std::string page =
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<title>" +
      escaped(parts.title) + "</title>\n" + page_style_html() + "</head>\n<body class=\"saved\">\n" +
      without_links(parts.body) + foot_html(asking, false) + "</body>\n</html>\n";
  return {200, "text/html; charset=utf-8", std::move(page), std::move(file)};
}

Response trouble_page(int status, const std::string& why, const Asking& asking) {
  return framed({.status = status,
                 .title = why,
                 .body = "<main id=\"answer\">\n" + element("h1", "plain", why) + "</main>\n"},
                asking);
}

}  // namespace sheaf
