// SPDX-License-Identifier: GPL-2.0-or-later
// Finding the unit that a text goes on with.
#include <algorithm>

#include "query/quantity/figure_scan.h"

namespace sheaf {
namespace {

bool continues_word(std::string_view rest) {
  return !rest.empty() && (is_letter(rest.front()) || is_digit(rest.front()));
}

// A joint or bar that binds what follows to the unit before it, as the second dot of "N·m" does.
bool binds_onward(std::string_view rest) {
  if (rest.starts_with('/')) return rest.size() > 1 && is_letter(rest[1]);
  const std::size_t joint = joint_length(rest);
  if (joint == 0 || space_length(rest) != 0) return false;
  return rest.size() > joint && is_letter(rest[joint]);
}

// "ft." and "lbs.": the point of an abbreviation, not of a range.
bool abbreviation_point(std::string_view rest) {
  return rest.starts_with('.') && !rest.starts_with("..") && (rest.size() == 1 || !is_digit(rest[1]));
}

}  // namespace

UnitHit longest_unit(const Scanner& scanner, std::optional<Dimension> dimension) {
  UnitHit hit;
  Folded folded;
  std::string_view rest = scanner.rest();
  while (!rest.empty()) {
    // Digits belong to a unit only where they touch it ("mm2", "in^3"): "2 in - 3 in" is no volume.
    const std::size_t joint = joint_length(rest);
    if (joint > 0 && rest.size() > joint && is_digit(rest[joint])) break;
    if (rest.starts_with("..")) break;
    const std::size_t length = folded.add(rest);
    if (length == 0) break;
    rest.remove_prefix(length);
    if (joint > 0 || continues_word(rest) || binds_onward(rest)) continue;
    if (UnitChoices choices = find_units(folded, dimension); !choices.empty()) {
      hit = {choices, scanner.rest().size() - rest.size()};
      if (abbreviation_point(rest)) ++hit.length;
    }
  }
  return hit;
}

std::size_t word_length(const Scanner& scanner) {
  std::string_view rest = scanner.rest();
  std::size_t length = 0;
  while (length < rest.size() && space_length(rest.substr(length)) == 0 &&
         std::string_view(",;()[]@").find(rest[length]) == std::string_view::npos) {
    ++length;
  }
  return length;
}

// Before the tail any unit will do; after it only the same one again, if one was read before.
FigureScan::Fault FigureScan::read_unit_if_any(Figure& figure) {
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  const std::size_t from = scanner_.at;
  Fault fault = figure.unit == nullptr ? read_unit(figure.unit) : read_unit_again(*figure.unit);
  if (scanner_.at == from) scanner_ = before;
  return fault;
}

FigureScan::Fault FigureScan::read_unit(const Unit*& unit) {
  const Scanner before = scanner_;
  UnitHit hit = longest_unit(scanner_, dimension_);
  if (hit.choices.empty() && also_) hit = longest_unit(scanner_, also_);
  const bool other_dimension = hit.choices.empty();
  if (other_dimension) hit = longest_unit(scanner_, std::nullopt);
  if (hit.choices.empty()) return std::nullopt;
  const std::string_view typed = scanner_.rest().substr(0, hit.length);
  if (other_dimension || !false_friend(typed).empty()) {
    return scanner_.failure_at(before.at, hit.length, unit_fault(typed, dimension_));
  }
  scanner_.at += hit.length;
  return settle(hit.choices, before.at, unit);
}

FigureScan::Fault FigureScan::read_unit_again(const Unit& unit) {
  const UnitHit hit = longest_unit(scanner_, unit.dimension);
  if (hit.choices.empty()) return std::nullopt;
  if (std::find(hit.choices.begin(), hit.choices.end(), &unit) == hit.choices.end()) {
    return scanner_.failure_at(scanner_.at, hit.length,
                               "one figure has one unit, not " + std::string(unit.symbol) + " and " +
                                   std::string(hit.choices[0]->symbol));
  }
  scanner_.at += hit.length;
  return std::nullopt;
}

FigureScan::Fault FigureScan::settle(const UnitChoices& choices, std::size_t from, const Unit*& unit) {
  if (choices.size() == 1) {
    unit = choices[0];
    return std::nullopt;
  }
  if (chosen_ != nullptr) {
    for (const Unit* choice : choices) {
      if (std::find(chosen_->begin(), chosen_->end(), choice) == chosen_->end()) continue;
      unit = choice;
      return std::nullopt;
    }
  }
  ambiguous_ = choices;
  const std::string_view typed = scanner_.text.substr(from, scanner_.at - from);
  return scanner_.failure_since(from, unit_fault(typed, dimension_));
}

Failure FigureScan::missing_unit() const {
  Scanner ahead = scanner_;
  ahead.skip_spaces();
  const std::size_t length = word_length(ahead);
  const std::string_view word = ahead.text.substr(ahead.at, length);
  if (!word.empty() && (is_letter(word.front()) || static_cast<unsigned char>(word.front()) >= 0x80)) {
    return ahead.failure_at(ahead.at, length, unit_fault(word, dimension_));
  }
  std::string message = "a unit is missing";
  if (dimension_) message += "; " + with_article(*dimension_) + " is in " + workshop_units(*dimension_);
  return scanner_.failure_since(start_, std::move(message));
}

}  // namespace sheaf
