// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/kit_sheets.h"

#include <algorithm>

#include "query/answer/text.h"
#include "query/library/index_terms.h"

namespace sheaf {
namespace {

std::string trimmed(std::string text) {
  text.erase(0, text.find_first_not_of(' '));
  text.erase(text.find_last_not_of(' ') + 1);
  return text;
}

std::vector<std::string> parted_by_commas(const std::string& typed) {
  std::vector<std::string> jobs;
  for (std::size_t at = 0; at <= typed.size();) {
    const std::size_t end = std::min(typed.find(',', at), typed.size());
    const std::string job = trimmed(typed.substr(at, end - at));
    if (!job.empty()) jobs.push_back(job);
    at = end + 1;
  }
  return jobs;
}

bool are_all_sheets(const std::vector<std::string>& words, const std::vector<Library*>& libraries) {
  return !words.empty() && std::ranges::all_of(words, [&](const std::string& word) {
    return std::ranges::any_of(libraries, [&](Library* library) {
      const auto sheet = library->sheet_without_entries(word);
      return sheet && !sheet->empty();
    });
  });
}

bool overlap(const FitRecord& left, const FitRecord& right) {
  const auto last = [](const FitRecord& fit) { return fit.year_to == 0 ? last_year : fit.year_to; };
  return left.make == right.make && left.model == right.model && left.year_from <= last(right) &&
         right.year_from <= last(left);
}

// Two forks, of which no machine has both: a list for both would buy parts for another year or machine.
bool are_rivals(const SheetRecord& left, const SheetRecord& right) {
  if (left.form != "assembly" || right.form != "assembly" || left.assembly != right.assembly) return false;
  return std::ranges::none_of(left.fits, [&](const FitRecord& fit) {
    return std::ranges::any_of(right.fits, [&](const FitRecord& other) { return overlap(fit, other); });
  });
}

bool has_rivals(const SheetFindings& found) {
  for (const auto& left : found.sheets)
    for (const auto& right : found.sheets)
      if (&left != &right && are_rivals(left.sheet, right.sheet)) return true;
  return false;
}

void add_new(std::vector<SheetHit>&& hits, std::vector<SheetRecord>& sheets) {
  for (auto& hit : hits) {
    const bool known = std::ranges::find(sheets, hit.sheet.name, &SheetRecord::name) != sheets.end();
    if (!known && hit.sheet.form == "assembly") sheets.push_back(std::move(hit.sheet));
  }
}

}  // namespace

// A job in words is every sheet that answers to them: a service takes both brakes.
Result<KitSheets> find_kit_sheets(const std::vector<std::string>& words, const Filters& filters,
                                  Lexicon& lexicon) {
  const auto& libraries = lexicon.libraries();
  std::vector<std::string> jobs =
      are_all_sheets(words, libraries) ? words : parted_by_commas(joined(words, " "));
  if (jobs.empty()) jobs = {""};
  KitSheets kit;
  for (const auto& job : jobs) {
    auto found = find_sheets({job, filters}, lexicon);
    if (!found) return found.failure();
    SheetFindings hits = std::move(found).value();
    if (hits.sheets.empty() || has_rivals(hits)) {
      kit.choice = sheet_choice(std::move(hits), job.empty() ? filters.machine : job, libraries);
      return kit;
    }
    add_new(std::move(hits.sheets), kit.sheets);
  }
  return kit;
}

}  // namespace sheaf
