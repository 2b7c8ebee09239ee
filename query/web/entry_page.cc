// SPDX-License-Identifier: GPL-2.0-or-later
// One entry with every variant and detail, or a sheet with a line for each of its entries.
#include "query/answer/fields.h"
#include "query/answer/match_row.h"
#include "query/answer/text.h"
#include "query/web/answer_html.h"
#include "query/web/find_answers.h"
#include "query/web/pages.h"

namespace sheaf {
namespace {

// "sorvane-41-rod-top-plug.html": names of sheets and entries are of letters, digits and "-".
std::string file_name(std::string address) {
  for (char& sign : address)
    if (!(sign >= 'a' && sign <= 'z') && !(sign >= '0' && sign <= '9')) sign = '-';
  return address + ".html";
}

// The drawing of a ring says nothing that is not said in words beside it.
std::string drawing_html(const Answer& answer) {
  if (!answer.entry.withdrawn.empty() || !size_row(answer.entry)) return {};
  if (answer.kind != "seal" && answer.kind != "o-ring" && answer.kind != "bearing" &&
      answer.kind != "bushing")
    return {};
  return "<figure><img src=\"" + escaped(address_of("/drawing/entry.svg", {{"address", answer.address}})) +
         "\" alt=\"" + escaped(answer.name + ", cut through its middle") + "\"></figure>\n";
}

std::string save_html(const Asking& asking) {
  auto given = carried(asking.request);
  given.push_back({"address", asking.given("address")});
  given.push_back({"save", "yes"});
  return "<p class=\"ways\">" +
         link(address_of(asking.request.path, given), "Save this as one file", "button") + "</p>\n";
}

// What can be saved is shown with the way to do it.
Response shown_or_saved(const std::string& title, const std::string& body, const std::string& name,
                        const Asking& asking) {
  const std::string answer = "<main id=\"answer\">\n" + body;
  if (asking.request.has("save"))
    return saved({.title = title, .body = answer + "</main>\n"}, asking, file_name(name));
  return framed({.title = title, .body = answer + save_html(asking) + "</main>\n", .section = "find"},
                asking);
}

std::string ways_html(const Answer& answer, const Asking& asking) {
  const std::string sheet = sheet_part(answer.address);
  std::string ways =
      "<li>" + link(address_of("/entry/" + sheet, carried(asking.request)), answer.sheet_title) + "</li>\n";
  if (!answer.assembly.empty())
    ways += "<li>" + link(address_of("/card/" + sheet, carried(asking.request)), "card of the whole job") +
            "</li>\n";
  if (!answer.set.empty())
    ways += "<li>" + link(address_of("/wrench", {{"q", answer.address}}), "what to set on which wrench") +
            "</li>\n";
  return "<ul class=\"ways\">\n" + ways + "</ul>\n";
}

Response entry_only(const Asking& asking, const std::vector<Answer>& answers) {
  std::string body;
  for (const auto& answer : answers) body += answer_html(answer, asking, true) + drawing_html(answer);
  if (!asking.request.has("save")) body += ways_html(answers.front(), asking) + report_html(answers, asking);
  return shown_or_saved(answers.front().name + ", " + answers.front().address, body, answers.front().address,
                        asking);
}

// An entry on its sheet: its figure and its name.
std::string entry_row_html(const SheetRecord& sheet, const EntryRecord& entry, const Asking& asking) {
  Asked asked;
  asked.units = units_of(asking.request);
  return answer_item_html(build_answer(sheet, entry, asked), asking);
}

std::string sheet_html(const SheetRecord& sheet, const Asking& asking) {
  constexpr std::size_t most_entries = 300;  // a published table may hold thousands of rows
  std::vector<std::string> machines;
  for (const auto& fit : sheet.fits) machines.push_back(machine_line(fit));
  std::string body = element("h1", "plain", sheet.title) + element("p", "machine", joined(machines, "; "));
  Facts facts;
  for (const auto& field : sheet.fields)
    if (field.key == "identify" || field.key == "notes") facts.add(in_words(field.key), field.text);
  for (const auto& caution : sheet.cautions) facts.add("caution", caution.text, "caution");
  body += facts.finish();
  if (sheet.form == "assembly")
    body +=
        "<p>" +
        link(address_of("/card/" + sheet.name, carried(asking.request)), "card of the whole job", "button") +
        "</p>\n";
  std::string items;
  for (std::size_t i = 0; i < std::min(sheet.entries.size(), most_entries); ++i)
    items += entry_row_html(sheet, sheet.entries[i], asking);
  body += enclosed("ul", "answers", items);
  if (sheet.entries.size() > most_entries)
    body += element("p", "quiet", "and " + std::to_string(sheet.entries.size() - most_entries) + " more");
  return body + notice_html(sheet.invented);
}

}  // namespace

Response entry_page(const Asking& asking, const std::string& address) {
  if (address.find('/') != std::string::npos) {
    const auto answers = answers_at(asking, address);
    if (!answers) return trouble_page(500, answers.failure().message, asking);
    if (answers->empty()) return trouble_page(404, "No entry “" + address + "”.", asking);
    return entry_only(asking, *answers);
  }
  const auto sheets = sheets_named(asking, address);
  if (!sheets) return trouble_page(500, sheets.failure().message, asking);
  if (sheets->empty()) return trouble_page(404, "No sheet “" + address + "”.", asking);
  const SheetRecord& sheet = sheets->front();
  return shown_or_saved(sheet.title, sheet_html(sheet, asking), sheet.name, asking);
}

}  // namespace sheaf
