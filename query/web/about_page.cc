// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/pages.h"

namespace sheaf {
namespace {

std::string library_html(const LibraryFacts& facts) {
  Facts rows;
  rows.add("library", facts.name);
  rows.add("holds", std::to_string(facts.entries) + " entries on " + std::to_string(facts.sheets) +
                        " sheets, " + std::to_string(facts.words) + " words");
  rows.add("checked", facts.data_date.empty() ? "no date of checking" : "last on " + facts.data_date);
  rows.add("digest", facts.digest, "digest");
  return rows.finish();
}

constexpr std::string_view device_html =
    "<h2>This device</h2>\n<p>The machine, the units, the wrenches, the last answer and what was filled in on "
    "cards are kept in this browser alone, and sent nowhere.</p>\n<p id=\"kept\" role=\"status\"></p>\n<p><button "
    "type=\"button\" id=\"clear-device\" hidden>Clear what this device keeps</button></p>\n";

}  // namespace

Response about_page(const Asking& asking) {
  std::string body = "<main id=\"answer\">\n<h1 class=\"plain\">What answers here</h1>\n";
  for (const Library* library : asking.opened.libraries()) body += library_html(library->facts());
  if (const Crib* crib = asking.opened.crib())
    body += element(
        "p", "", "Wrenches: " + crib->shop + ", " + std::to_string(crib->wrenches.size()) + " in its crib.");
  return framed({.title = "about",
                 .body = body + std::string(device_html) + "</main>\n",
                 .section = "about",
                 .with_search = false},
                asking);
}

}  // namespace sheaf
