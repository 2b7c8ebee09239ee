// SPDX-License-Identifier: GPL-2.0-or-later
// What to set, large; how it was reckoned, in the words of the command line.
#include "query/answer/fields.h"
#include "query/answer/wrench_drawing.h"
#include "query/answer/wrench_text.h"
#include "query/web/answer_html.h"
#include "query/web/find_wrench.h"
#include "query/web/own_crib.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

// Lines as they are on a narrow terminal: nothing is said otherwise here.
std::string in_full_html(const FoundWrench& found, const Crib& crib) {
  constexpr int columns_on_a_phone = 34;
  Page page(TextStyle{.width = columns_on_a_phone});
  write_text(page, found.answer, crib, found.entry ? &*found.entry : nullptr);
  const std::string text = page.take();
  std::string lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines += escaped(std::string_view(text).substr(at, end - at)) + "\n";
    at = end + 1;
  }
  return "<pre class=\"in-full\">" + lines + "</pre>\n";
}

std::string stage_html(const StageSetting& stage) {
  if (!stage.can_be_set()) return element("p", "act", set_line(stage));
  const std::string on_scale = shown(stage.choices.front().on_scale);
  return "<p>" + lead_html(on_scale) + "</p>\n" + element("p", "act", set_line(stage));
}

bool has_drawing(const FoundWrench& found) { return geometry_of(found.answer) || band_svg(found.answer); }

std::string found_html(const FoundWrench& found, const Crib& crib, const Asking& asking) {
  std::string body = element("h2", "", found.entry ? found.entry->name : "for " + shown(found.answer.torque));
  for (const auto& stage : found.answer.stages) body += stage_html(stage);
  if (has_drawing(found)) {
    auto given = std::vector<Given>{};
    for (const auto& [name, value] : asking.request.parameters) given.push_back({name, value});
    body += "<figure><img src=\"" + escaped(address_of("/drawing/wrench.svg", given)) +
            "\" alt=\"the setting, drawn; said in words below\"></figure>\n";
  }
  return body + in_full_html(found, crib);
}

std::string form_html(const Asking& asking, const Crib* shop) {
  std::string adapters;
  if (shop && !shop->adapters.empty()) {
    adapters =
        "<p class=\"field\"><label for=\"adapter\">adapter</label><select id=\"adapter\" name=\"adapter\">\n"
        "<option value=\"\">none</option>\n";
    for (const auto& adapter : shop->adapters) {
      const std::string name = entry_part(adapter.address);
      adapters += "<option value=\"" + escaped(name) + "\"" +
                  (asking.given("adapter") == name ? " selected" : "") + ">" + escaped(adapter.name) +
                  "</option>\n";
    }
    adapters += "</select></p>\n";
  }
  adapters +=
      field_html(
          {"offset",
           adapters.empty() ? "adapter, from square to fastener" : "or from its square to the fastener",
           asking.request.parameter("offset"), "45 mm"}) +
      field_html({"angle", "its angle, °", asking.request.parameter("angle"), "0 straight on, 90 across"});
  return "<form class=\"ask-form\" action=\"/wrench\">\n" +
         field_html({"q", "torque, or an entry's address", asking.request.parameter("q"), "35 ± 3 N·m"}) +
         "<div class=\"fields\">\n" + adapters +
         "</div>\n<fieldset>\n<legend>the wrench in hand, instead of the shop's</legend>\n<div "
         "class=\"fields\">\n" +
         field_html({"wrench", "what it is called", asking.request.parameter("wrench"), "three-eighths"}) +
         field_html({"range", "range", asking.request.parameter("range"), "10..60 N·m"}) +
         field_html({"step", "step of its scale", asking.request.parameter("step"), "0.5"}) +
         field_html({"length", "length, from hand to square", asking.request.parameter("length"),
                     "with an adapter: 300 mm"}) +
         field_html(
             {"accuracy", "accuracy, ± %", asking.request.parameter("accuracy"), "4 if nothing is said"}) +
         "</div>\n<p><button type=\"button\" id=\"keep-wrench\" hidden>Keep it on this device</button></p>\n<ul "
         "id=\"kept-wrenches\" class=\"shelf\" hidden></ul>\n</fieldset>\n<p><button type=\"submit\">What to set</button></p>\n</form>\n";
}

Response page_with(int status, const std::string& answer, const Asking& asking) {
  return framed({.status = status,
                 .title = asking.given("q").empty() ? "wrench" : asking.given("q"),
                 .body = "<main id=\"answer\">\n<h1 class=\"plain\">What to set</h1>\n" + answer +
                         form_html(asking, asking.opened.crib()) + "</main>\n",
                 .section = "wrench",
                 .with_search = false},
                asking);
}

}  // namespace

Response wrench_page(const Asking& asking) {
  if (asking.given("q").empty()) return page_with(200, {}, asking);
  const auto own = own_crib(asking.request, asking.opened.crib());
  if (!own) return page_with(400, element("p", "act", own.failure().message + "."), asking);
  const Crib* crib = asking.crib();
  if (!crib)
    return page_with(
        200, element("p", "act", "There is no crib in the library: describe the wrench in hand below."),
        asking);
  const auto found = find_wrench(asking, *crib);
  if (!found) return page_with(400, element("p", "act", found.failure().message + "."), asking);
  std::string body;
  for (const auto& each : *found) body += found_html(each, *crib, asking);
  return page_with(200, body, asking);
}

}  // namespace sheaf
