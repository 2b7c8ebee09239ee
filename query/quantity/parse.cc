// SPDX-License-Identifier: GPL-2.0-or-later
// The ways into the grammar: one statement, every reading of one, one figure.
#include "query/quantity/statement_scan.h"

namespace sheaf {
namespace {

constexpr std::size_t most_ambiguities = 3;

// Settles one ambiguous unit after the other, each way it can be read.
Failure add_readings(std::string_view text, std::optional<Dimension> dimension,
                     std::vector<const Unit*>& chosen, std::vector<Statement>& found) {
  StatementScan scan(text, dimension, Input::prompt, &chosen);
  auto statement = scan.read();
  if (statement) {
    found.push_back(*std::move(statement));
    return {};
  }
  if (scan.ambiguous().empty() || chosen.size() >= most_ambiguities) return statement.failure();
  Failure failure;
  for (const Unit* unit : scan.ambiguous()) {
    chosen.push_back(unit);
    failure = add_readings(text, dimension, chosen, found);
    chosen.pop_back();
  }
  return failure;
}

}  // namespace

Result<Statement> parse_statement(std::string_view text, std::optional<Dimension> dimension, Input input) {
  return StatementScan(text, dimension, input).read();
}

Result<std::vector<Statement>> parse_readings(std::string_view text, std::optional<Dimension> dimension) {
  std::vector<const Unit*> chosen;
  std::vector<Statement> found;
  Failure failure = add_readings(text, dimension, chosen, found);
  if (found.empty()) return failure;
  return found;
}

Result<Figure> parse_figure(std::string_view text, std::optional<Dimension> dimension, Input input) {
  if (text.size() > longest_text) return Failure{"the text is too long for one figure"};
  Scanner scanner{text};
  scanner.skip_spaces();
  auto figure = FigureScan(scanner, dimension, input).read();
  if (!figure) return figure;
  scanner.skip_spaces();
  if (!scanner.done())
    return scanner.failure_at(scanner.at, text.size() - scanner.at, "the figure ends before this");
  return figure;
}

}  // namespace sheaf
