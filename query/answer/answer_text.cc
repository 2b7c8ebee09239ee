// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/answer_text.h"

#include <algorithm>

#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr std::size_t machines_at_the_bench = 3;
constexpr int widest_listed = 30;  // columns: a longer figure stands in the text of its row

Line figure_line(const std::string& lead, const std::string& band, Tone tone, int lead_width) {
  Line line(lead, tone);
  if (!band.empty()) line.pad_to(lead_width + 2).add(band, tone);
  return line;
}

std::string derived_lead(const Derived& derived) { return (derived.exact ? "= " : "≈ ") + derived.lead; }

// The source's own figure, and below it the same in other units, marked as derived.
std::vector<Line> figure_block(const Value& value) {
  int lead_width = display_width(value.lead);
  for (const auto& derived : value.derived)
    lead_width = std::max(lead_width, display_width(derived_lead(derived)));
  std::vector<Line> lines = {figure_line(value.lead, value.band, Tone::figure, lead_width)};
  if (!value.conditions.empty())
    lines.front().add(value.band.empty() ? "  " : ", ").add(value.conditions, Tone::act);
  for (const auto& derived : value.derived) {
    Line line = figure_line(derived_lead(derived), derived.band, Tone::derived, lead_width);
    const auto words = spelled_out(*derived.unit);
    if (!words.empty()) line.add("  ").add(words, Tone::quiet);
    lines.push_back(std::move(line));
  }
  return lines;
}

Line on_one_line(const Value& value) {
  Line line(value.lead);
  if (!value.band.empty()) line.add(" (" + value.band + ")");
  for (const auto& derived : value.derived) {
    line.add(", ").add(derived_lead(derived), Tone::derived);
    if (!derived.band.empty()) line.add(" (" + derived.band + ")", Tone::derived);
  }
  if (!value.conditions.empty()) line.add(", " + value.conditions);
  return line;
}

Line name_line(const Answer& answer) {
  Line line(answer.name);
  for (const auto& act : answer.acts) line.add(" · ").add(act, Tone::act);
  return line;
}

std::vector<Line> identity_block(const Answer& answer, Extent extent) {
  std::vector<Line> lines = {name_line(answer)};
  if (!answer.marks.empty()) lines.emplace_back(joined(answer.marks, " · "));
  const std::size_t shown = extent == Extent::whole ? answer.machines.size()
                                                    : std::min(answer.machines.size(), machines_at_the_bench);
  for (std::size_t i = 0; i < shown; ++i) lines.emplace_back(answer.machines[i]);
  if (const auto hidden = answer.machines.size() - shown)
    lines.emplace_back("and " + std::to_string(hidden) + " more; sheaf show " + answer.address, Tone::quiet);
  if (answer.machines.empty() && !answer.sheet_title.empty()) lines.emplace_back(answer.sheet_title);
  return lines;
}

Line missing_line(const Answer& answer) {
  return Line("no " + joined(answer.missing, ", ") + " recorded", Tone::act);
}

// A figure found wrong is never shown as one, only that it was, and what to take instead.
void write_withdrawal(Page& page, const Answer& answer) {
  const auto& withdrawal = answer.entry.withdrawn.front();
  page.line(Line("Withdrawn " + withdrawal.on + ": ", Tone::caution).add(withdrawal.reason), 2);
  page.beside({}, identity_block(answer, Extent::bench));
  if (withdrawal.instead.empty())
    page.labelled("instead", Line("nothing recorded; take the maker's manual"));
  else
    page.labelled("instead", Line(withdrawal.instead));
}

void write_figures(Page& page, const Answer& answer, Extent extent) {
  std::vector<Line> left;
  if (!answer.missing.empty()) left.push_back(missing_line(answer));
  const bool first_is_short = !answer.figures.empty() && answer.figures.front().lead.size() <= 40;
  if (first_is_short)
    for (auto& line : figure_block(answer.figures.front())) left.push_back(std::move(line));
  else if (!answer.figures.empty())
    page.line(Line(answer.figures.front().lead, Tone::figure), 2);
  page.beside(left, identity_block(answer, extent));
  for (std::size_t i = 1; i < answer.figures.size(); ++i)
    page.labelled(answer.figures[i].label, on_one_line(answer.figures[i]));
}

void write_status(Page& page, const Answer& answer) {
  for (const auto& dispute : answer.disputes)
    page.labelled("disputed", Line("also stated: ").add(dispute, Tone::act).add("; take no value between"));
  const auto& status = answer.entry.status;
  if (!status.empty() && status != "maker-paper") page.labelled("status", Line(in_words(status), Tone::act));
}

void write_origin(Page& page, const Answer& answer) {
  page.labelled("source", Line(source_line(answer.entry)));
  std::string notices(authority_notice);
  if (answer.invented) notices = std::string(invented_notice) + " " + notices;
  page.labelled("", Line(notices, Tone::quiet));
  Line address(answer.address);
  if (!answer.variant.empty()) address.add(" for " + answer.variant);
  if (!answer.library.empty()) address.add("  in " + answer.library, Tone::quiet);
  page.labelled("address", address);
}

// At the bench: what the reader must know, and the numbers of the part with what replaced them.
bool is_said_at_the_bench(const std::string& key) {
  return key == "notes" || key == "part-number" || key.starts_with("supersede");
}

void write_details(Page& page, const Answer& answer, Extent extent) {
  std::string said;  // a label is not said twice in a row
  for (const auto& detail : answer.details) {
    if (extent != Extent::whole && !is_said_at_the_bench(detail.key)) continue;
    page.labelled(detail.label == said ? "" : detail.label, on_one_line(detail));
    said = detail.label;
  }
}

}  // namespace

void write_text(Page& page, const Answer& answer, Extent extent) {
  const bool withdrawn = !answer.entry.withdrawn.empty();
  withdrawn ? write_withdrawal(page, answer) : write_figures(page, answer, extent);
  if (!withdrawn) {
    for (const auto& line : answer.set) page.labelled(&line == &answer.set.front() ? "set" : "", Line(line));
    write_details(page, answer, extent);
    write_status(page, answer);
  }
  for (const auto& caution : answer.entry.cautions)
    page.labelled("caution", Line(caution.text, Tone::caution));
  write_origin(page, answer);
  if (extent == Extent::whole && !answer.entry.place.file.empty())
    page.labelled("written", Line(answer.entry.place.file + ":" + std::to_string(answer.entry.place.line)));
}

void add_to_list(std::vector<std::vector<Line>>& rows, const Answer& answer) {
  std::string figure = answer.entry.withdrawn.empty() ? short_figure(answer) : "withdrawn";
  std::string machine = answer.machines.empty() ? answer.sheet_title : answer.machines.front();
  if (answer.machines.size() > 1) machine += " and " + std::to_string(answer.machines.size() - 1) + " more";
  Line name = name_line(answer);
  const std::string conditions = conditions_of(answer);
  if (!conditions.empty()) name.add(" · ").add(conditions, Tone::act);
  if (display_width(figure) > widest_listed)
    rows.push_back({Line(), Line(figure, Tone::figure)}), figure.clear();
  rows.push_back({Line(figure, Tone::figure), name});
  const std::string library = answer.library.empty() ? "" : "  in " + answer.library;
  rows.push_back({Line(), Line(machine + "  ").add(answer.address + library, Tone::quiet)});
  if (!answer.set.empty()) rows.push_back({Line(), Line("set " + joined(answer.set, "; "))});
}

}  // namespace sheaf
