// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/html.h"

#include "query/answer/svg.h"
#include "query/web/request.h"

namespace sheaf {

std::string escaped(std::string_view text) { return escaped_markup(text); }

std::string enclosed(std::string_view name, std::string_view style_class, const std::string& markup) {
  if (markup.empty()) return {};
  std::string result = "<" + std::string(name);
  if (!style_class.empty()) result += " class=\"" + std::string(style_class) + "\"";
  return result + ">" + markup + "</" + std::string(name) + ">\n";
}

std::string element(std::string_view name, std::string_view style_class, std::string_view text) {
  return enclosed(name, style_class, escaped(text));
}

std::string link(std::string_view target, std::string_view text, std::string_view style_class) {
  std::string result = "<a href=\"" + escaped(target) + "\"";
  if (!style_class.empty()) result += " class=\"" + std::string(style_class) + "\"";
  return result + ">" + escaped(text) + "</a>";
}

std::string address_of(std::string_view path, const std::vector<Given>& given) {
  std::string address = encoded(path);
  char before = '?';
  for (const auto& [name, value] : given) {
    if (value.empty()) continue;
    address += before + encoded(name) + "=" + encoded(value);
    before = '&';
  }
  return address;
}

void Facts::add(std::string_view label, std::string_view text, std::string_view style_class) {
  if (!text.empty()) add_markup(label, escaped(text), style_class);
}

void Facts::add_markup(std::string_view label, const std::string& markup, std::string_view style_class) {
  if (label != last_label_ || rows_.empty()) {
    if (!rows_.empty()) rows_ += "</div>\n";
    rows_ += "<div><dt>" + escaped(label) + "</dt>";
  }
  rows_ += style_class.empty() ? "<dd>" : "<dd class=\"" + std::string(style_class) + "\">";
  rows_ += markup + "</dd>";
  last_label_ = label;
}

std::string Facts::finish() const {
  return rows_.empty() ? std::string() : "<dl class=\"facts\">\n" + rows_ + "</div>\n</dl>\n";
}

}  // namespace sheaf
