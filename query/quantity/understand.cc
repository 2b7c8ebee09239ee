// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/understand.h"

#include <algorithm>
#include <array>

#include "query/quantity/statement_scan.h"

namespace sheaf {
namespace {

constexpr std::array<std::string_view, 6> connectors{"to", "into", "in", "as", "=", "->"};

std::string_view trimmed(std::string_view text) {
  while (const std::size_t length = space_length(text)) text.remove_prefix(length);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

// What was typed, taken apart.
struct Split {
  std::string_view statement, unit;
};

bool is_connector(std::string_view word) {
  return std::find(connectors.begin(), connectors.end(), word) != connectors.end();
}

// The last connector that stands as a word of its own, with something on both sides.
std::optional<Split> split_at_connector(std::string_view text) {
  for (std::size_t end = text.size(); end > 0; --end) {
    if (text[end - 1] != ' ') continue;
    const std::size_t before = end >= 2 ? text.rfind(' ', end - 2) : std::string_view::npos;
    if (before == std::string_view::npos) return std::nullopt;
    if (!is_connector(text.substr(before + 1, end - before - 2))) continue;
    return Split{trimmed(text.substr(0, before)), trimmed(text.substr(end))};
  }
  return std::nullopt;
}

// Every dimension's reading of the unit typed: "psi" is one for pressures and one for stresses.
Units targets(std::string_view spelling) {
  Units found;
  const auto folded = fold(spelling);
  if (!folded || spelling.empty() || !false_friend(spelling).empty()) return found;
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Dimension::density); ++i) {
    for (const Unit* unit : find_units(*folded, static_cast<Dimension>(i))) found.push_back(unit);
  }
  return found;
}

// The readings of the figure that the text begins with, and what is left behind it.
std::vector<Statement> head_readings(std::string_view text, std::string_view& rest, Failure& failure) {
  std::vector<Statement> found;
  StatementScan first(text, std::nullopt, Input::prompt);
  auto statement = first.read_head();
  rest = trimmed(first.rest());
  if (statement) return {*std::move(statement)};
  failure = statement.failure();
  for (const Unit* unit : first.ambiguous()) {
    const Units chosen{unit};
    StatementScan again(text, std::nullopt, Input::prompt, &chosen);
    if (auto reading = again.read_head()) {
      found.push_back(*std::move(reading));
      rest = trimmed(again.rest());
    }
  }
  return found;
}

std::string_view without_connector(std::string_view rest) {
  const std::size_t end = rest.find(' ');
  if (end != std::string_view::npos && is_connector(rest.substr(0, end))) return trimmed(rest.substr(end));
  return rest;
}

// "35 N·m =" asks what 35 N·m is.
std::string_view without_last_connector(std::string_view text) {
  const std::size_t space = text.rfind(' ');
  if (space == std::string_view::npos || text.substr(space + 1) == "in") return text;
  return is_connector(text.substr(space + 1)) ? trimmed(text.substr(0, space)) : text;
}

std::optional<Dimension> dimension_of(const Statement& statement) {
  const Unit* unit = statement.figure().unit;
  return unit != nullptr ? std::optional(unit->dimension) : std::nullopt;
}

Failure unknown_unit(std::string_view typed, const Statement& statement) {
  return {unit_fault(typed, dimension_of(statement))};
}

}  // namespace

Result<Understood> understand(std::string_view line, std::optional<Dimension> dimension) {
  if (line.size() > longest_text) return Failure{"the line is too long for one conversion"};
  const std::string_view text = without_last_connector(trimmed(line));
  const auto split = split_at_connector(text);
  if (split) {
    auto sources = parse_readings(split->statement, dimension);
    const Units units = targets(split->unit);
    if (sources && !units.empty()) return Understood{*std::move(sources), units};
    if (sources && parse_readings(text, dimension)) return unknown_unit(split->unit, sources->front());
  }
  auto whole = parse_readings(text, dimension);
  if (whole) return Understood{*std::move(whole), {}};
  std::string_view rest;
  Failure failure = whole.failure();
  auto sources = head_readings(text, rest, failure);
  if (sources.empty()) return failure;
  const std::string_view unit = without_connector(rest);
  const Units units = targets(unit);
  if (units.empty()) return unit.empty() ? failure : unknown_unit(unit, sources.front());
  return Understood{std::move(sources), units};
}

}  // namespace sheaf
