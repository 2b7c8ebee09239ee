// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/findings_text.h"

#include <algorithm>

#include "query/answer/answer_text.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr std::size_t most_also = 4;

// Whatever is listed, its cautions stand below the list, each once.
void write_cautions(Page& page, const std::vector<Answer>& answers) {
  std::vector<std::string> said;
  for (const auto& answer : answers) {
    for (const auto& caution : answer.entry.cautions) {
      if (std::ranges::find(said, caution.text) != said.end()) continue;
      page.labelled("caution", Line(caution.text, Tone::caution));
      said.push_back(caution.text);
    }
  }
}

void write_notice_of_demo(Page& page, const std::vector<Answer>& answers) {
  const bool invented = std::ranges::any_of(answers, &Answer::invented);
  page.labelled("", Line((invented ? std::string("Invented demonstration figures. ") : std::string()) +
                             std::string(authority_notice),
                         Tone::quiet));
}

// Several answers are one question more: which year, which frame, which machine?
void write_list(Page& page, const FoundAnswers& found) {
  std::vector<std::vector<Line>> rows;
  for (const auto& answer : found.answers) add_to_list(rows, answer);
  page.rows(rows, 2);
  if (found.total > found.answers.size() && found.also.empty())
    page.line(Line((found.total_is_exact ? "" : "about ") + std::to_string(found.total) +
                       " in all; --limit shows more",
                   Tone::quiet),
              2);
  page.blank();
  const std::string question = which_one(found);
  if (!question.empty()) page.labelled("which", Line(question, Tone::act));
  write_cautions(page, found.answers);
  write_notice_of_demo(page, found.answers);
}

void write_also(Page& page, const FoundAnswers& found) {
  if (found.also.empty()) return;
  page.line(Line("also", Tone::quiet), 2);
  std::vector<std::vector<Line>> rows;
  for (std::size_t i = 0; i < std::min(found.also.size(), most_also); ++i) add_to_list(rows, found.also[i]);
  page.rows(rows, 4);
}

bool must_say_reading(const FoundAnswers& found) {
  return found.answers.size() != 1 || !found.notices.empty() || found.reading.parts.empty();
}

void write_reading(Page& page, const FoundAnswers& found) {
  const std::string words = in_words(found.reading);
  if (!words.empty() && must_say_reading(found)) page.labelled("read as", Line(words));
  for (const auto& notice : found.notices) page.labelled("note", Line(notice));
}

// A figure that does not fit is not shown: only what it is, what it is for, and where it stands.
std::vector<Line> near_row(const FoundAnswer& near, Near why) {
  const std::string& library = near.answer.library;
  const Line address(near.answer.address + (library.empty() ? "" : "  in " + library), Tone::quiet);
  if (why == Near::other_sizes)
    return {Line(short_figure(near.answer)), Line(near.answer.name),
            Line(near.differs + "  ").append(address)};
  return {Line(near.answer.name), Line(near.differs), address};
}

void write_near(Page& page, const FoundAnswers& found) {
  if (found.near.empty()) return;
  page.line(Line(near_heading(found.why_near)), 2);
  std::vector<std::vector<Line>> rows;
  for (const auto& near : found.near) rows.push_back(near_row(near, found.why_near));
  page.rows(rows, 4);
}

// What is on the shelf, by assembly.
void write_shelf(Page& page, const FoundAnswers& found) {
  std::vector<std::vector<Line>> rows;
  std::string said;
  for (const auto& [library, sheet] : found.shelf) {
    const std::string of = sheet.form == "table" ? "table" : in_words(sheet.assembly);
    std::string machine = sheet.fits.empty() ? "" : machine_line(sheet.fits.front());
    if (sheet.fits.size() > 1) machine += " and " + std::to_string(sheet.fits.size() - 1) + " more";
    const std::string in_library = sheet.library.empty() ? "" : "  in " + sheet.library;
    rows.push_back({Line(of == said ? "" : of, Tone::quiet), Line(sheet.title, Tone::figure)});
    rows.push_back(
        {Line(), Line(machine + (machine.empty() ? "" : "  ")).add(sheet.name + in_library, Tone::quiet)});
    said = of;
  }
  page.rows(rows, 2);
  page.blank();
  const std::string words = in_words(found.reading);
  if (!words.empty()) page.labelled("read as", Line(words));
  page.labelled(
      "", Line("sheaf show SHEET lists one; add a part, a size or a figure to ask for it.", Tone::quiet));
}

void write_counts(Page& page, const FoundAnswers& found) {
  std::vector<std::vector<Line>> rows;
  for (const auto& count : found.counts)
    rows.push_back({Line(std::to_string(count.entries), Tone::figure), Line(count.value)});
  page.rows(rows, 2);
  page.line(Line(std::to_string(found.total) + " in all, by " + found.counted_by, Tone::quiet), 2);
}

}  // namespace

void write_text(Page& page, const FoundAnswers& found) {
  if (found.conversion) return write_text(page, *found.conversion);
  if (!found.counted_by.empty()) return write_counts(page, found);
  if (!found.shelf.empty()) return write_shelf(page, found);
  if (found.answers.empty() && found.why_near == Near::figure_not_stated && found.near.size() == 1 &&
      !found.near.front().answer.missing.empty()) {
    write_text(page, found.near.front().answer, Extent::bench);  // it begins with what is not recorded
    write_reading(page, found);
    return;
  }
  if (found.answers.empty()) {
    page.line(Line(nothing_found(found), Tone::act), 2);
    write_reading(page, found);
    write_near(page, found);
    return;
  }
  if (found.answers.size() == 1)
    write_text(page, found.answers.front(), Extent::bench);
  else
    write_list(page, found);
  write_also(page, found);
  write_near(page, found);
  write_reading(page, found);
}

}  // namespace sheaf
