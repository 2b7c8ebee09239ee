// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/preview.h"

#include "query/answer/findings.h"
#include "query/answer/text.h"
#include "query/search/complete.h"

namespace sheaf {
namespace {

constexpr std::size_t shortest_answered = 3;  // letters: below, only words are offered
constexpr std::size_t words_offered = 8;

std::string fitted(std::string text, const TextStyle& style) {
  text = wrap(clean(text), style.width - 1).front();
  return style.ascii ? plain_ascii(text) : text;
}

std::string offers_line(std::string_view typed, Lexicon& lexicon) {
  std::string line;
  for (const auto& offer : complete(typed, lexicon, words_offered)) line += "  " + offer.word;
  return line;
}

std::string answer_line(const Answer& answer) {
  std::string line = "  " + short_figure(answer) + "  " + answer.name;
  if (!answer.acts.empty()) line += " · " + joined(answer.acts, " · ");
  if (!answer.machines.empty()) line += " · " + answer.machines.front();
  return line;
}

}  // namespace

std::vector<std::string> preview_of(std::string_view typed, Lexicon& lexicon, const TextStyle& style) {
  if (typed.empty()) return {};
  std::vector<std::string> lines;
  const std::string offers = offers_line(typed, lexicon);
  if (!offers.empty()) lines.push_back(fitted(offers, style));
  if (typed.size() < shortest_answered) return lines;
  Request request;
  request.words = completed(typed, lexicon);
  request.limit = preview_lines;
  request.offers_near = false;
  auto findings = find(request, lexicon);
  if (!findings) return lines;
  const auto found = say_findings(std::move(findings).value(), request.words, {});
  if (found.conversion) lines.push_back(fitted("  " + one_line(*found.conversion), style));
  for (const auto& answer : found.answers)
    if (lines.size() < preview_lines) lines.push_back(fitted(answer_line(answer), style));
  return lines;
}

}  // namespace sheaf
