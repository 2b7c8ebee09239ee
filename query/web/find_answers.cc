// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/find_answers.h"

#include "query/answer/fields.h"
#include "query/answer/wrench.h"
#include "query/search/complete.h"

namespace sheaf {
namespace {

// Beside every torque, on the asker's own wrenches or the shop's.
void say_what_to_set(std::vector<Answer>& answers, const Asking& asking) {
  if (const Crib* crib = asking.crib())
    for (auto& answer : answers) answer.set = set_lines(answer.entry, *crib, asking.today);
}

}  // namespace

Result<FoundAnswers> find_answers(const Asking& asking) {
  const auto& libraries = asking.opened.libraries();
  Lexicon lexicon(libraries);
  const std::string question = asking.given("q");
  Request request;
  request.words = asking.request.has("typing") ? completed(question, lexicon) : question;
  request.filters = filters_of(asking.request);
  auto findings = find(request, lexicon);
  if (!findings) return findings.failure();
  auto found = say_findings(std::move(findings).value(), question, units_of(asking.request));
  say_what_to_set(found.answers, asking);
  return found;
}

Result<std::vector<Answer>> answers_at(const Asking& asking, const std::string& address) {
  const auto& libraries = asking.opened.libraries();
  Asked asked;
  asked.units = units_of(asking.request);
  std::vector<Answer> answers;
  for (Library* library : libraries) {
    auto entries = library->entries_at(address);
    if (!entries) return entries.failure();
    for (auto& entry : std::move(entries).value()) {
      auto sheet = library->sheet_without_entries(sheet_part(entry.address));
      if (!sheet) return sheet.failure();
      if (!sheet->empty()) answers.push_back(build_answer(sheet->front(), std::move(entry), asked));
    }
  }
  say_what_to_set(answers, asking);
  return answers;
}

Result<std::vector<SheetRecord>> sheets_named(const Asking& asking, const std::string& name) {
  std::vector<SheetRecord> all;
  for (Library* library : asking.opened.libraries()) {
    auto sheets = library->sheet(name);
    if (!sheets) return sheets;
    all.insert(all.end(), sheets->begin(), sheets->end());
  }
  return all;
}

}  // namespace sheaf
