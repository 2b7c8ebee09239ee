// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/conversion_html.h"
#include "query/web/pages.h"

namespace sheaf {

Response convert_page(const Asking& asking) {
  const std::string asked = asking.given("q");
  std::string answer = "<h1 class=\"plain\">Convert a quantity</h1>\n";
  int status = 200;
  if (!asked.empty()) {
    const auto conversion = convert_line(asked, std::nullopt);
    if (conversion.failure) status = 400;
    answer += conversion_html(conversion);
  }
  const std::string form = "<form class=\"ask-form\" action=\"/convert\">\n" +
                           field_html({"q", "quantity, and the unit wanted", asked, "35 ± 3 N·m to lbf·ft"}) +
                           "<p><button type=\"submit\">Convert</button></p>\n</form>\n";
  return framed({.status = status,
                 .title = asked.empty() ? "convert" : asked,
                 .body = "<main id=\"answer\">\n" + answer + form + "</main>\n",
                 .section = "convert",
                 .with_search = false},
                asking);
}

}  // namespace sheaf
