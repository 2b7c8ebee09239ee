// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/statement_scan.h"

#include "query/quantity/words.h"

namespace sheaf {
namespace {

constexpr std::size_t most_conditions = 16;

// "at 40 °C", "@40C": a quantity, where "at the rim" is a condition.
bool at_quantity(Scanner ahead) {
  if (!ahead.take("@") && !ahead.take_word("at")) return false;
  ahead.skip_spaces();
  return is_digit(ahead.peek()) || ahead.peek() == '-' || ahead.rest().starts_with("\u2212");
}

// "2 riders" is a condition, "2 mm" is not.
bool begins_with_quantity(std::string_view phrase) {
  Scanner ahead{phrase};
  if (!scan_number(ahead, Input::prompt)) return false;
  ahead.skip_spaces();
  return !longest_unit(ahead, std::nullopt).choices.empty();
}

}  // namespace

Result<Statement> StatementScan::read() {
  if (auto fault = check_text(scanner_.text)) return *fault;
  if (auto fault = read_stages()) return *fault;
  if (auto fault = read_rest()) return *fault;
  return std::move(statement_);
}

Result<Statement> StatementScan::read_head() {
  if (auto fault = check_text(scanner_.text)) return *fault;
  if (auto fault = read_stages()) return *fault;
  scanner_.skip_spaces();
  if (at_quantity(scanner_)) {
    if (auto fault = read_at()) return *fault;
  }
  return std::move(statement_);
}

Result<Figure> StatementScan::read_figure(std::optional<Dimension> dimension, std::optional<Dimension> also) {
  FigureScan scan(scanner_, dimension, input_, chosen_);
  if (also) scan.allow(*also);
  auto figure = scan.read();
  if (!figure) ambiguous_ = scan.ambiguous();
  return figure;
}

StatementScan::Fault StatementScan::read_rest() {
  while (true) {
    scanner_.skip_spaces();
    if (scanner_.done()) return std::nullopt;
    const bool separated = scanner_.take(",") || scanner_.take(";");
    if (separated) scanner_.skip_spaces();
    if (scanner_.done()) return scanner_.failure_at(scanner_.at - 1, 1, "nothing follows the comma");
    if (auto fault = read_item(separated)) return fault;
  }
}

StatementScan::Fault StatementScan::read_item(bool separated) {
  const Scanner here = scanner_;
  if (scanner_.take("(")) return read_brackets(')');
  if (scanner_.take("[")) return read_brackets(']');
  if (take_equals()) return read_printed(scanner_.at);
  if (statement_.per.empty() && (scanner_.take_word("per") || scanner_.take_word("each")))
    return read_per(here.at);
  if (!statement_.at && at_quantity(scanner_)) return read_at();
  scanner_ = here;
  return read_condition(!separated);
}

StatementScan::Fault StatementScan::read_per(std::size_t start) {
  const std::size_t from = scanner_.at;
  while (!scanner_.done() && !phrase_ends(true)) ++scanner_.at;  // "per" is written before "at"
  statement_.per = with_single_spaces(scanner_.text.substr(from, scanner_.at - from));
  if (!begins_word(statement_.per)) return scanner_.failure_since(start, "per what? a word is missing");
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_at() {
  if (!scanner_.take("@")) scanner_.take_word("at");
  scanner_.skip_spaces();
  const std::size_t from = scanner_.at;
  FigureScan scan(scanner_, std::nullopt, input_, chosen_);
  auto quantity = scan.read_quantity();
  ambiguous_ = scan.ambiguous();
  if (!quantity) return quantity.failure();
  // No dimension is asked for here, so a symbol that needs one ("lb") could not be read back.
  if (!unit_from(quantity->unit->symbol)) {
    return scanner_.failure_since(from, unit_fault(quantity->unit->symbol, std::nullopt));
  }
  statement_.at = *quantity;
  return std::nullopt;
}

// "(26 lbf·ft)" beside "35 N·m"; "(spring out)" is a condition in brackets.
StatementScan::Fault StatementScan::read_brackets(char closing) {
  scanner_.skip_spaces();
  const std::size_t from = scanner_.at;
  const std::size_t end = scanner_.text.find(closing, from);
  if (end == std::string_view::npos) return scanner_.failure_at(from - 1, 1, "a bracket is left open");
  if (is_digit(scanner_.peek())) {
    if (auto fault = read_printed(from)) return fault;
    scanner_.skip_spaces();
    if (!scanner_.take({&closing, 1}))
      return scanner_.failure_at(scanner_.at, 1, "a bracket ends after its figure");
    return std::nullopt;
  }
  if (!begins_word(scanner_.rest()))
    return scanner_.failure_at(from, end - from, "words are missing in the brackets");
  while (!scanner_.done() && !phrase_ends(!statement_.at)) ++scanner_.at;
  const std::string_view inside = scanner_.text.substr(from, scanner_.at - from);
  if (!scanner_.take({&closing, 1})) {
    return scanner_.failure_at(from, end - from, "write conditions without brackets, a comma between them");
  }
  return add_condition(inside, from);
}

StatementScan::Fault StatementScan::read_printed(std::size_t from) {
  const Figure& primary = statement_.figure();
  const Dimension dimension = primary.unit != nullptr ? primary.unit->dimension : Dimension::torque;
  auto printed = read_figure(dimension);
  if (!printed) return printed.failure();
  if (statement_.printed) return scanner_.failure_since(from, "a figure has one printed value beside it");
  if (statement_.stages.size() > 1 || primary.unit == nullptr) {
    return scanner_.failure_since(from, "a printed value stands beside a single figure, not beside stages");
  }
  if (printed->unit == primary.unit) {
    return scanner_.failure_since(from, "the printed value has the same unit as the figure");
  }
  statement_.printed = *printed;
  return std::nullopt;
}

// "35 N·m = 26 lbf·ft", "35 N·m / 26 lbf·ft"
bool StatementScan::take_equals() {
  Scanner ahead = scanner_;
  if (!ahead.take("=") && !ahead.take("/")) return false;
  ahead.skip_spaces();
  if (!is_digit(ahead.peek())) return false;
  scanner_ = ahead;
  return true;
}

// A phrase runs to a comma, a bracket, "per", or "at" with a quantity where one may still come.
bool StatementScan::phrase_ends(bool at_ends_it) const {
  if (std::string_view(",;()[]@").find(scanner_.peek()) != std::string_view::npos) return true;
  Scanner ahead = scanner_;
  if (space_length(ahead.rest()) == 0) return false;
  ahead.skip_spaces();
  if (at_ends_it && at_quantity(ahead)) return true;
  return statement_.per.empty() && ahead.take_word("per");
}

StatementScan::Fault StatementScan::read_condition(bool attached) {
  const std::size_t from = scanner_.at;
  if (!begins_word(scanner_.rest()))
    return scanner_.failure_at(from, 1, "this is not understood after a figure");
  while (!scanner_.done() && !phrase_ends(!statement_.at)) ++scanner_.at;
  if (attached) {
    if (auto fault = check_attached(from)) return fault;
  }
  const std::string_view phrase = scanner_.text.substr(from, scanner_.at - from);
  if (is_digit(phrase.front()) && begins_with_quantity(with_single_spaces(phrase))) {
    return scanner_.failure_since(from, "a second figure stands here; only a torque has stages");
  }
  return add_condition(phrase, from);
}

StatementScan::Fault StatementScan::add_condition(std::string_view phrase, std::size_t from) {
  if (statement_.conditions.size() >= most_conditions) {
    return scanner_.failure_at(from, phrase.size(), "more conditions than one figure has");
  }
  Scanner words{phrase};
  const Unit* unit = statement_.figure().unit;
  const bool torque = unit == nullptr || unit->dimension == Dimension::torque;
  if (torque && (take_hand_tight(words) || take_loosening(words) || take_turning(words))) {
    return scanner_.failure_at(from, phrase.size(), "stages come first, then what is said of them all");
  }
  if ((statement_.per.empty() && (words.take_word("per") || words.take_word("each"))) ||
      (!statement_.at && at_quantity(words))) {
    return scanner_.failure_at(from, phrase.size(), "write this without brackets");
  }
  statement_.conditions.push_back(with_single_spaces(phrase));
  return std::nullopt;
}

// Words right after a unit may be a slip: a second unit ("35 N·m lbf·ft") or a number.
StatementScan::Fault StatementScan::check_attached(std::size_t from) const {
  const Scanner phrase{scanner_.text.substr(0, scanner_.at), from};
  if (is_digit(phrase.peek())) return scanner_.failure_since(from, "a number without a unit stands here");
  const Unit* unit = statement_.stages.back().figure.unit;
  const bool turns =
      unit != nullptr && (unit->dimension == Dimension::angle || unit->dimension == Dimension::clicks);
  const UnitHit hit = longest_unit(phrase, std::nullopt);
  if (hit.choices.empty()) return std::nullopt;
  const bool whole = hit.length == phrase.rest().size();
  const bool in = phrase.rest().substr(0, hit.length) == "in";  // "in oil", "2 turns in"
  if (in && (turns || !whole)) return std::nullopt;
  const bool same_dimension = unit != nullptr && hit.choices[0]->dimension == unit->dimension;
  if (!whole && !same_dimension) return std::nullopt;
  return scanner_.failure_at(from, hit.length,
                             "a second unit stands here; a converted value goes in brackets with its number");
}

}  // namespace sheaf
