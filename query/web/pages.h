// SPDX-License-Identifier: GPL-2.0-or-later
// The pages, one a file. Each is a function of what was asked, works without scripting, and says at its foot
// from which data it was made.
#pragma once

#include <string>
#include <string_view>

#include "query/web/asked.h"
#include "query/web/response.h"

namespace sheaf {

Response home_page(const Asking& asking);
Response find_page(const Asking& asking);
Response entry_page(const Asking& asking, const std::string& address);  // an entry, or a sheet whole
Response card_page(const Asking& asking, const std::string& sheet);     // "": by the words of q
Response match_page(const Asking& asking);
Response convert_page(const Asking& asking);
Response kit_page(const Asking& asking);
Response reckon_page(const Asking& asking);
Response wrench_page(const Asking& asking);
Response about_page(const Asking& asking);
Response drawing(const Asking& asking, std::string_view name);
// The command line's own documents: "find", "show", "card", "kit", "match", "convert", "wrench",
// "reckon", "words".
Response api(const Asking& asking, std::string_view name);

// The frame that all pages share. `body` is markup.
struct PageParts {
  int status = 200;
  std::string title;
  std::string body;
  std::string_view style = {};    // a class of the body: "card" for what prints as a card does
  std::string_view section = {};  // of the navigation: "match"
  bool with_search = true;
};
Response framed(const PageParts& parts, const Asking& asking);

// The same as one file to be saved: its style inside, nothing fetched, nothing to be typed.
Response saved(const PageParts& parts, const Asking& asking, std::string file);

// A page that says why there is none.
Response trouble_page(int status, const std::string& why, const Asking& asking);

// One labelled field of a form.
struct Field {
  std::string_view name, label, value;
  std::string_view hint = {};  // an example, below it
};
std::string field_html(const Field& field);

}  // namespace sheaf
