// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/findings_csv.h"

#include "query/answer/csv.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

std::string number_cell(const std::optional<Number>& number) {
  return number ? to_text(*number) : std::string();
}

// Value, least, most and unit of a figure with one stage; a staged one has only its text.
void add_figure(std::vector<std::string>& cells, const Value* value) {
  const bool is_single =
      value && value->statement && value->statement->stages.size() == 1 && value->statement->figure().unit;
  const Figure figure = is_single ? value->statement->figure() : Figure{};
  cells.push_back(value ? value->key : std::string());
  cells.push_back(value ? value->text : std::string());
  cells.push_back(number_cell(figure.nominal));
  cells.push_back(number_cell(figure.least));
  cells.push_back(number_cell(figure.most));
  cells.emplace_back(figure.unit ? figure.unit->symbol : std::string_view());
}

std::string cautions_of(const Answer& answer) {
  std::vector<std::string> texts;
  for (const auto& caution : answer.entry.cautions) texts.push_back(caution.text);
  return joined(texts, " ");
}

// A withdrawn figure leaves its cells empty.
std::string row_of(const Answer& answer) {
  const bool shown = answer.entry.withdrawn.empty() && !answer.figures.empty();
  std::vector<std::string> cells = {answer.address, answer.variant, answer.kind, answer.name};
  add_figure(cells, shown ? &answer.figures.front() : nullptr);
  cells.push_back(joined(answer.acts, "; "));
  cells.push_back(joined(answer.marks, "; "));
  cells.push_back(joined(answer.machines, "; "));
  cells.push_back(cautions_of(answer));
  cells.push_back(source_line(answer.entry));
  cells.emplace_back(!answer.entry.withdrawn.empty() ? "withdrawn" : answer.entry.status);
  cells.emplace_back(answer.invented ? "invented" : "");
  cells.push_back(answer.library);
  return csv_row(cells);
}

}  // namespace

std::string csv_of(const FoundAnswers& found) {
  std::string rows;
  if (!found.counted_by.empty()) {
    rows = csv_row({found.counted_by, "entries"});
    for (const auto& count : found.counts) rows += csv_row({count.value, std::to_string(count.entries)});
    return rows;
  }
  rows = csv_row({"address", "variant", "kind", "name", "field", "text", "value", "least", "most", "unit",
                  "acts", "identified-by", "machines", "cautions", "source", "status", "data", "library"});
  for (const auto& answer : found.answers) rows += row_of(answer);
  return rows;
}

}  // namespace sheaf
