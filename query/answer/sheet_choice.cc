// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/sheet_choice.h"

#include "query/answer/answer_json.h"
#include "query/answer/findings_json.h"
#include "query/answer/text.h"
#include "query/library/near_word.h"

namespace sheaf {
namespace {

std::vector<SheetRecord> sheets_of(std::vector<SheetHit>& hits) {
  std::vector<SheetRecord> sheets;
  for (auto& hit : hits) sheets.push_back(std::move(hit.sheet));
  return sheets;
}

std::string near_name_of(const std::string& asked, const std::vector<Library*>& libraries) {
  std::vector<std::string> names;
  for (Library* library : libraries)
    if (const auto sheets = library->sheets())
      for (const auto& sheet : *sheets) names.push_back(sheet.name);
  const std::vector<std::string_view> views(names.begin(), names.end());
  return std::string(near_word(asked, views));
}

std::string nothing_words(const SheetChoice& choice) {
  const auto& reading = choice.reading;
  if (reading.machine.empty() || !reading.unread.empty()) return "No sheet for “" + choice.asked + "”.";
  return "No sheet for the " + reading.machine +
         (reading.year == 0 ? "." : " of " + std::to_string(reading.year) + ".");
}

std::string first_words(const SheetChoice& choice) {
  return choice.sheets.empty() ? nothing_words(choice)
                               : "Several sheets are meant: name one, or the machine and its year.";
}

void write_sheets(Page& page, const std::vector<SheetRecord>& sheets) {
  std::vector<std::vector<Line>> rows;
  for (const auto& sheet : sheets) {
    std::vector<std::string> machines;
    for (const auto& fit : sheet.fits) machines.push_back(machine_line(fit));
    rows.push_back({Line(sheet.name, Tone::figure), Line(sheet.title)});
    const std::string library = sheet.library.empty() ? "" : "  in " + sheet.library;
    rows.push_back({Line(), Line(joined(machines, "; ") + library, Tone::quiet)});
  }
  page.rows(rows, 4);
}

void write_sheets(JsonWriter& json, std::string_view name, const std::vector<SheetRecord>& sheets) {
  json.key(name).begin_array();
  for (const auto& sheet : sheets) {
    json.begin_object();
    json.member("sheet", sheet.name);
    json.member("title", sheet.title);
    json.member_if("assembly", sheet.assembly);
    json.member_if("library", sheet.library);
    write_fits(json, sheet.fits);
    json.end_object();
  }
  json.end_array();
}

}  // namespace

SheetChoice sheet_choice(SheetFindings found, std::string asked, const std::vector<Library*>& libraries) {
  SheetChoice choice{std::move(asked), std::move(found.reading), sheets_of(found.sheets),
                     sheets_of(found.near), ""};
  if (choice.sheets.empty() && choice.near.empty()) choice.near_name = near_name_of(choice.asked, libraries);
  return choice;
}

void write_text(Page& page, const SheetChoice& choice) {
  const bool several = !choice.sheets.empty();
  page.line(Line(first_words(choice), Tone::act), 2);
  if (const std::string read = in_words(choice.reading); !read.empty()) page.labelled("read as", Line(read));
  if (!choice.near.empty()) page.line(Line("recorded for other years, not for this one:"), 2);
  write_sheets(page, several ? choice.sheets : choice.near);
  if (!choice.near_name.empty())
    page.line(Line("Did you mean " + choice.near_name + "?"), 2);
  else if (!several && choice.near.empty())
    page.line(Line("sheaf find looks for single entries.", Tone::quiet), 2);
}

std::string in_one_line(const SheetChoice& choice) {
  std::vector<std::string> names;
  for (const auto& sheet : choice.sheets.empty() ? choice.near : choice.sheets) names.push_back(sheet.name);
  std::string words = first_words(choice);
  if (!names.empty()) words += (choice.sheets.empty() ? " For other years: " : " ") + joined(names, ", ");
  if (!choice.near_name.empty()) words += " Did you mean " + choice.near_name + "?";
  return words;
}

void write_json(JsonWriter& json, const SheetChoice& choice) {
  json.begin_object();
  json.key("schema").number(json_schema);
  json.member("question", choice.asked);
  json.key("reading");
  write_json(json, choice.reading);
  write_sheets(json, "sheets", choice.sheets);
  write_sheets(json, "near", choice.near);
  json.member_if("near-name", choice.near_name);
  json.end_object();
}

}  // namespace sheaf
