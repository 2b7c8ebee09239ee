// SPDX-License-Identifier: GPL-2.0-or-later
// Statements in words, as they are typed and as they are shown.
#include <algorithm>
#include <array>

#include "query/quantity/figure_text.h"
#include "query/quantity/scan.h"

namespace sheaf {
namespace {

std::string figure_text(const Figure& figure, const Typography& typography) {
  FigureBuffer buffer;
  Writer writer(buffer, typography);
  write_figure(writer, figure);
  return std::string(writer.text());
}

std::string quantity_text(const Quantity& quantity, const Typography& typography) {
  FigureBuffer buffer;
  Writer writer(buffer, typography);
  write_quantity(writer, quantity);
  return std::string(writer.text());
}

// A first condition that says where or how stands right behind the figure: "118 mm below the rim". "in" and
// "out" do so behind turns and clicks only: elsewhere "in" would read as inches.
bool joins_without_comma(std::string_view condition, const Unit* unit) {
  constexpr std::array<std::string_view, 17> joiners{"above", "after", "before", "below",  "beyond", "by",
                                                     "for",   "from",  "into",   "of",     "on",     "over",
                                                     "to",    "under", "with",   "within", "without"};
  const std::size_t space = condition.find(' ');
  const std::string_view word = condition.substr(0, space);
  const bool turns =
      unit != nullptr && (unit->dimension == Dimension::angle || unit->dimension == Dimension::clicks);
  if (turns && (word == "in" || word == "out")) return true;
  const bool words =
      space != std::string_view::npos && is_letter(condition[space + 1]);  // "to 5 mm" is a range
  return words && std::find(joiners.begin(), joiners.end(), word) != joiners.end();
}

std::string stage_text(const Stage& stage, bool first, const Typography& typography) {
  if (stage.hand_tight) return first ? "hand tight" : ", hand tight";
  const std::string separator = first ? "" : stage.act == Act::turn_further ? " + " : ", ";
  if (stage.act == Act::loosen_fully) return separator + "loosen fully";
  return separator + (stage.act == Act::loosen ? "loosen " : "") + figure_text(stage.figure, typography);
}

std::string statement_text(const Statement& statement, const Typography& typography) {
  std::string text;
  for (const Stage& stage : statement.stages)
    text += stage_text(stage, &stage == &statement.stages.front(), typography);
  if (statement.printed) text += " (" + figure_text(*statement.printed, typography) + ")";
  if (!statement.per.empty()) text += " per " + statement.per;
  if (statement.at) text += " at " + quantity_text(*statement.at, typography);
  for (const std::string& condition : statement.conditions) {
    const bool first = &condition == &statement.conditions.front();
    const bool joins = first && statement.per.empty() && !statement.at &&
                       joins_without_comma(condition, statement.stages.back().figure.unit);
    text += (joins ? " " : ", ") + condition;
  }
  return text;
}

}  // namespace

std::string to_text(const Statement& statement) { return statement_text(statement, as_typed); }

std::string shown(const Statement& statement) { return statement_text(statement, as_shown); }

}  // namespace sheaf
