// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/statement_scan.h"

#include <algorithm>

namespace sheaf {
namespace {

constexpr std::size_t most_stages = 16;
constexpr std::size_t most_conditions = 16;

bool is_torque(const Figure& figure) {
  return figure.unit != nullptr && figure.unit->dimension == Dimension::torque;
}

// The bytes of the well-formed UTF-8 character at the front, or 0.
std::size_t character_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned lead = byte(0);
  if (lead < 0x80U) return 1;
  if (lead >= 0xC2U && lead < 0xE0U) return continues(1) ? 2 : 0;
  if (lead >= 0xE0U && lead < 0xF0U) {
    const bool overlong = lead == 0xE0U && byte(1) < 0xA0U, surrogate = lead == 0xEDU && byte(1) >= 0xA0U;
    return continues(1) && continues(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (lead >= 0xF0U && lead < 0xF5U) {
    const bool overlong = lead == 0xF0U && byte(1) < 0x90U, beyond = lead == 0xF4U && byte(1) >= 0x90U;
    return continues(1) && continues(2) && continues(3) && !overlong && !beyond ? 4 : 0;
  }
  return 0;
}

// Letters with accents may begin a word; signs such as ± and – may not.
bool begins_word(std::string_view rest) {
  if (rest.empty()) return false;
  const auto lead = static_cast<unsigned char>(rest.front());
  return is_letter(rest.front()) || is_digit(rest.front()) || lead >= 0xC3U;
}

std::string with_single_spaces(std::string_view text) {
  std::string words;
  bool space = false;
  while (!text.empty()) {
    if (const std::size_t length = space_length(text)) {
      space = !words.empty();
      text.remove_prefix(length);
      continue;
    }
    if (space) words += ' ';
    space = false;
    words += text.front();
    text.remove_prefix(1);
  }
  return words;
}

}  // namespace

Result<Statement> StatementScan::read() {
  if (auto fault = check_text()) return *fault;
  if (auto fault = read_stages()) return *fault;
  if (auto fault = read_rest()) return *fault;
  return std::move(statement_);
}

Result<Statement> StatementScan::read_head() {
  if (auto fault = check_text()) return *fault;
  if (auto fault = read_stages()) return *fault;
  scanner_.skip_spaces();
  if (at_quantity()) {
    if (auto fault = read_at()) return *fault;
  }
  return std::move(statement_);
}

StatementScan::Fault StatementScan::check_text() const {
  if (scanner_.text.size() > longest_text) return Failure{"the text is too long for one figure", 0, 0};
  for (std::size_t i = 0; i < scanner_.text.size();) {
    const std::size_t length = character_length(scanner_.text.substr(i));
    const auto c = static_cast<unsigned char>(scanner_.text[i]);
    if (length == 0) return scanner_.failure_at(i, 1, "this byte is not UTF-8");
    if ((c < 0x20 && c != '\t') || c == 0x7F) return scanner_.failure_at(i, 1, "a control character has no place here");
    i += length;
  }
  return std::nullopt;
}

Result<Figure> StatementScan::read_figure(std::optional<Dimension> dimension, std::optional<Dimension> also) {
  FigureScan scan(scanner_, dimension, input_, chosen_);
  if (also) scan.allow(*also);
  auto figure = scan.read();
  if (!figure) ambiguous_ = scan.ambiguous();
  return figure;
}

StatementScan::Fault StatementScan::read_stages() {
  scanner_.skip_spaces();
  if (scanner_.done()) return Failure{"nothing is written here", 0, 0};
  if (auto fault = read_first_stage()) return fault;
  const Stage& first = statement_.stages.front();
  bool found = first.hand_tight || is_torque(first.figure);
  while (found) {
    if (auto fault = read_next_stage(found)) return fault;
  }
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_first_stage() {
  const std::size_t from = scanner_.at;
  for (const std::string_view words : {"hand tight", "hand-tight", "finger tight", "finger-tight"}) {
    if (!scanner_.take_word(words)) continue;
    if (dimension_ && *dimension_ != Dimension::torque) {
      return scanner_.failure_since(from, "hand tight is said of a torque only");
    }
    statement_.stages.push_back({Act::tighten, {}, true});
    return std::nullopt;
  }
  auto figure = read_figure(dimension_);
  if (!figure) return figure.failure();
  statement_.stages.push_back({Act::tighten, *figure});
  return std::nullopt;
}

bool StatementScan::take_stage_mark() {
  bool marked = false;
  while (true) {
    scanner_.skip_spaces();
    if (!scanner_.take(",") && !scanner_.take(";") && !scanner_.take_word("then")) return marked;
    marked = true;
  }
}

bool StatementScan::take_loosening() {
  return scanner_.take_word("loosen") || scanner_.take_word("back off") || scanner_.take_word("slacken");
}

bool StatementScan::take_turning() {
  return scanner_.take_word("turn") || scanner_.take_word("further") || scanner_.take_word("another") ||
         scanner_.take_word("angle");
}

StatementScan::Fault StatementScan::read_next_stage(bool& found) {
  found = false;
  const Scanner before = scanner_;
  const bool marked = take_stage_mark();
  const bool loosen = take_loosening();
  const bool plus = !loosen && scanner_.take("+");
  const bool turn = !loosen && take_turning();
  if (!loosen && !plus && !turn && !(marked && is_digit(scanner_.peek()))) {
    scanner_ = before;
    return std::nullopt;
  }
  if (statement_.stages.size() >= most_stages) {
    return scanner_.failure_since(before.at, "more stages than any fastener has");
  }
  found = true;
  if (loosen) return read_loosening();
  if (plus || turn) return read_turn();
  auto figure = read_figure(Dimension::torque, Dimension::angle);
  if (!figure) return figure.failure();
  statement_.stages.push_back({is_torque(*figure) ? Act::tighten : Act::turn_further, *figure});
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_loosening() {
  scanner_.skip_spaces();
  if (scanner_.take_word("fully") || scanner_.take_word("completely")) {
    statement_.stages.push_back({Act::loosen_fully, {}});
    return std::nullopt;
  }
  if (scanner_.take_word("by")) scanner_.skip_spaces();
  auto figure = read_figure(Dimension::angle);
  if (!figure) return figure.failure();
  statement_.stages.push_back({Act::loosen, *figure});
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_turn() {
  scanner_.skip_spaces();
  if (scanner_.take_word("turn") || scanner_.take_word("further") || scanner_.take_word("by")) scanner_.skip_spaces();
  auto figure = read_figure(Dimension::angle);
  if (!figure) return figure.failure();
  statement_.stages.push_back({Act::turn_further, *figure});
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  if (!scanner_.take_word("further") && !scanner_.take_word("more")) scanner_ = before;
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_rest() {
  while (true) {
    scanner_.skip_spaces();
    if (scanner_.done()) return std::nullopt;
    const bool separated = scanner_.take(",") || scanner_.take(";");
    if (separated) scanner_.skip_spaces();
    Fault fault;
    const Scanner here = scanner_;
    if (scanner_.done()) {
      return scanner_.failure_at(scanner_.at - 1, 1, "nothing follows the comma");
    } else if (scanner_.take("(")) {
      fault = read_brackets(')');
    } else if (scanner_.take("[")) {
      fault = read_brackets(']');
    } else if (take_equals()) {
      fault = read_printed(scanner_.at);
    } else if (statement_.per.empty() && (scanner_.take_word("per") || scanner_.take_word("each"))) {
      fault = read_per(here.at);
    } else if (!statement_.at && at_quantity()) {
      fault = read_at();
    } else {
      scanner_ = here;
      fault = read_condition(!separated);
    }
    if (fault) return fault;
  }
}

StatementScan::Fault StatementScan::read_per(std::size_t start) {
  const std::size_t from = scanner_.at;
  while (!scanner_.done() && !phrase_ends()) ++scanner_.at;
  statement_.per = with_single_spaces(scanner_.text.substr(from, scanner_.at - from));
  if (!begins_word(statement_.per)) return scanner_.failure_since(start, "per what? a word is missing");
  return std::nullopt;
}

// "at 40 °C", "@40C": a quantity, where "at the rim" is a condition.
bool StatementScan::at_quantity() const {
  Scanner ahead = scanner_;
  if (!ahead.take("@") && !ahead.take_word("at")) return false;
  ahead.skip_spaces();
  return is_digit(ahead.peek()) || ahead.peek() == '-' || ahead.rest().starts_with("\u2212");
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
    if (!scanner_.take({&closing, 1})) return scanner_.failure_at(scanner_.at, 1, "a bracket ends after its figure");
    return std::nullopt;
  }
  if (!begins_word(scanner_.rest())) return scanner_.failure_at(from, end - from, "words are missing in the brackets");
  while (!scanner_.done() && !phrase_ends()) ++scanner_.at;
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

// A phrase runs to a comma, a bracket, "per" or "at" with a quantity.
bool StatementScan::phrase_ends() const {
  if (std::string_view(",;()[]@").find(scanner_.peek()) != std::string_view::npos) return true;
  Scanner ahead = scanner_;
  if (space_length(ahead.rest()) == 0) return false;
  ahead.skip_spaces();
  if (!statement_.at) {
    StatementScan behind = *this;
    behind.scanner_ = ahead;
    if (behind.at_quantity()) return true;
  }
  return statement_.per.empty() && ahead.take_word("per");
}

StatementScan::Fault StatementScan::read_condition(bool attached) {
  const std::size_t from = scanner_.at;
  if (!begins_word(scanner_.rest())) return scanner_.failure_at(from, 1, "this is not understood after a figure");
  while (!scanner_.done() && !phrase_ends()) ++scanner_.at;
  if (attached) {
    if (auto fault = check_attached(from)) return fault;
  }
  const std::string_view phrase = scanner_.text.substr(from, scanner_.at - from);
  if (is_digit(phrase.front())) {
    Scanner ahead{scanner_.text, from};
    if (FigureScan(ahead, std::nullopt, input_, chosen_).read_quantity()) {
      return scanner_.failure_since(from, "a second figure stands here; only a torque has stages");
    }
  }
  return add_condition(phrase, from);
}

StatementScan::Fault StatementScan::add_condition(std::string_view phrase, std::size_t from) {
  if (statement_.conditions.size() >= most_conditions) {
    return scanner_.failure_at(from, phrase.size(), "more conditions than one figure has");
  }
  StatementScan inside(phrase, dimension_, input_, chosen_);
  Scanner& words = inside.scanner_;
  const bool torque = is_torque(statement_.figure()) || statement_.stages.front().hand_tight;
  if (torque && (inside.take_loosening() || inside.take_turning())) {
    return scanner_.failure_at(from, phrase.size(), "stages come first, then what is said of them all");
  }
  if ((statement_.per.empty() && (words.take_word("per") || words.take_word("each"))) ||
      (!statement_.at && inside.at_quantity())) {
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
  const bool turns = unit != nullptr && (unit->dimension == Dimension::angle || unit->dimension == Dimension::clicks);
  const UnitHit hit = longest_unit(phrase, std::nullopt);
  if (hit.choices.empty()) return std::nullopt;
  const bool whole = hit.length == phrase.rest().size();
  const bool in = phrase.rest().substr(0, hit.length) == "in";  // "in oil", "2 turns in"
  if (in && (turns || !whole)) return std::nullopt;
  const bool same_dimension = unit != nullptr && hit.choices[0]->dimension == unit->dimension;
  if (!whole && !same_dimension) return std::nullopt;
  return scanner_.failure_at(from, hit.length, "a second unit stands here; a converted value goes in brackets with its number");
}

namespace {

constexpr std::size_t most_ambiguities = 3;

// Settles one ambiguous unit after the other, each way it can be read.
Failure add_readings(std::string_view text, std::optional<Dimension> dimension, std::vector<const Unit*>& chosen,
                     std::vector<Statement>& found) {
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
  if (text.size() > longest_text) return Failure{"the text is too long for one figure", 0, 0};
  Scanner scanner{text};
  scanner.skip_spaces();
  auto figure = FigureScan(scanner, dimension, input).read();
  if (!figure) return figure;
  scanner.skip_spaces();
  if (!scanner.done()) return scanner.failure_at(scanner.at, text.size() - scanner.at, "the figure ends before this");
  return figure;
}

}  // namespace sheaf
