// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/conversion_html.h"

#include "query/web/answer_html.h"
#include "query/web/html.h"

namespace sheaf {
namespace {

std::string derived_html(const DerivedFigure& derived) {
  const bool staged = derived.statement.stages.size() > 1;
  const std::string lead = std::string(derived.exact ? "= " : "≈ ") +
                           (staged ? shown(derived.statement) : lead_of(derived.statement.figure()));
  std::string item = "<li>" + lead_html(lead) + " ";
  if (!staged)
    item += element("span", "band", band_of(derived.statement.figure())) +
            element("span", "quiet", spelled_out(*derived.statement.figure().unit));
  return item + element("p", "quiet", derived.basis) + "</li>\n";
}

}  // namespace

std::string conversion_html(const Conversion& conversion) {
  if (conversion.failure) return element("p", "act", conversion.failure->message + ".");
  std::string markup;
  if (conversion.readings.size() > 1)
    markup +=
        element("p", "act", "This can be read in " + std::to_string(conversion.readings.size()) + " ways:");
  for (const auto& reading : conversion.readings) {
    std::string items;
    for (const auto& derived : reading.derived) items += derived_html(derived);
    markup += element("p", "typed", shown(reading.source) + " as typed") + "<ul class=\"answers\">\n" +
              items + "</ul>\n";
  }
  return markup;
}

}  // namespace sheaf
