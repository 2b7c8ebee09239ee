// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/figure_scan.h"

#include <algorithm>
#include <array>

#include "query/quantity/arithmetic.h"

namespace sheaf {
namespace {

struct Qualifier {
  std::string_view word;
  Form form;
};
constexpr std::array<Qualifier, 14> qualifiers{{{"minimum", Form::minimum},
                                                {"min", Form::minimum},
                                                {"at least", Form::minimum},
                                                {"not less than", Form::minimum},
                                                {"maximum", Form::maximum},
                                                {"max", Form::maximum},
                                                {"at most", Form::maximum},
                                                {"not more than", Form::maximum},
                                                {"approximately", Form::about},
                                                {"approx", Form::about},
                                                {"about", Form::about},
                                                {"circa", Form::about},
                                                {"ca", Form::about},
                                                {"up to", Form::maximum}}};
constexpr std::array<Qualifier, 6> signs{{{"\u2265", Form::minimum},
                                          {">=", Form::minimum},
                                          {"\u2264", Form::maximum},
                                          {"<=", Form::maximum},
                                          {"\u2248", Form::about},
                                          {"~", Form::about}}};

bool begins_number(const Scanner& scanner) {
  const std::string_view rest = scanner.rest();
  return !rest.empty() && (is_digit(rest.front()) || rest.starts_with("-") || rest.starts_with("\u2212") ||
                           (rest.front() == '.' && rest.size() > 1 && is_digit(rest[1])));
}

bool take_plus_minus(Scanner& scanner) {
  return scanner.take("\u00B1") || scanner.take("+/-") || scanner.take("+-") || scanner.take("+/\u2212");
}

bool take_minus(Scanner& scanner) { return scanner.take("-") || scanner.take("\u2212"); }

}  // namespace

Result<Figure> FigureScan::read() {
  start_ = scanner_.at;
  Figure figure;
  const auto form = take_qualifier();
  scanner_.skip_spaces();
  auto number = scan_number(scanner_, input_);
  if (!number) return number.failure();
  figure.nominal = *number;
  if (auto fault = read_unit_if_any(figure)) return *fault;
  if (!form || *form == Form::about) {
    if (auto fault = read_tail(figure)) return *fault;
  }
  if (figure.unit == nullptr || figure.form != Form::nominal) {
    if (auto fault = read_unit_if_any(figure)) return *fault;
  }
  if (figure.unit == nullptr) return missing_unit();
  if (form) {
    if (figure.form != Form::nominal) {
      return scanner_.failure_since(start_, "a figure with a tolerance is not also \"about\"");
    }
    figure.form = *form;
  } else if (auto fault = take_suffix(figure)) {
    return *fault;
  }
  if (figure.form == Form::minimum) figure.least = std::exchange(figure.nominal, std::nullopt);
  if (figure.form == Form::maximum) figure.most = std::exchange(figure.nominal, std::nullopt);
  if (auto fault = check(figure)) return *fault;
  return figure;
}

Result<Quantity> FigureScan::read_quantity() {
  start_ = scanner_.at;
  auto number = scan_number(scanner_, input_);
  if (!number) return number.failure();
  Figure figure;
  figure.nominal = *number;
  if (auto fault = read_unit_if_any(figure)) return *fault;
  if (figure.unit == nullptr) return missing_unit();
  if (auto fault = check(figure)) return *fault;
  return Quantity{*number, figure.unit};
}

std::optional<Form> FigureScan::take_qualifier() {
  if (is_digit(scanner_.peek())) return std::nullopt;
  for (const Qualifier& qualifier : qualifiers) {
    if (!scanner_.take_word(qualifier.word)) continue;
    scanner_.take(".");
    return qualifier.form;
  }
  for (const Qualifier& sign : signs) {
    if (scanner_.take(sign.word)) return sign.form;
  }
  return std::nullopt;
}

FigureScan::Fault FigureScan::read_tail(Figure& figure) {
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  if (scanner_.done()) return std::nullopt;
  if (take_plus_minus(scanner_)) return read_spread(figure);
  if (scanner_.rest().starts_with("...") || scanner_.rest().starts_with("\u2026")) {
    return scanner_.failure_at(scanner_.at, 3, "a range is written with two dots, as in 25..31");
  }
  if (take_range_mark()) return read_range_end(figure);
  if (scanner_.peek() == '+' && is_digit(scanner_.peek(1))) {
    // "28 N·m + 60°" is a stage, "28 +4 -1 N·m" a tolerance: what follows the second number tells.
    const Scanner plus = scanner_;
    ++scanner_.at;
    auto above = scan_number(scanner_, input_);
    scanner_.skip_spaces();
    if (!scanner_.take("/")) scanner_.skip_spaces();
    const bool tolerance = above && (take_minus(scanner_) || scanner_.take("/"));
    scanner_ = plus;
    if (tolerance) return read_uneven(figure, true);
    scanner_ = before;
    return std::nullopt;
  }
  if (take_minus(scanner_)) {
    Scanner ahead = scanner_;
    ahead.skip_spaces();
    if (is_digit(ahead.peek())) return read_after_hyphen(figure);
  }
  if (at_band()) return read_band(figure);
  scanner_ = before;
  return std::nullopt;
}

FigureScan::Fault FigureScan::read_spread(Figure& figure) {
  scanner_.skip_spaces();
  const std::size_t from = scanner_.at;
  auto spread = scan_number(scanner_, input_);
  if (!spread) return spread.failure();
  if (spread->digits <= 0) return scanner_.failure_since(from, "a tolerance is more than nothing");
  figure.spread = *spread;

  const Scanner before_unit = scanner_;
  scanner_.skip_spaces();
  const bool ratio = figure.unit != nullptr && figure.unit->dimension == Dimension::ratio;
  if (!ratio && dimension_ != Dimension::ratio && scanner_.take("%")) {
    if (figure.nominal->digits == 0) return scanner_.failure_since(from, "a percentage of nothing is nothing");
    figure.form = Form::per_cent;
    figure.least = less_by_per_cent(*figure.nominal, *spread);
    figure.most = more_by_per_cent(*figure.nominal, *spread);
  } else {
    scanner_ = before_unit;
    figure.form = Form::plus_minus;
    figure.least = subtract(*figure.nominal, *spread);
    figure.most = add(*figure.nominal, *spread);
  }
  if (!figure.least || !figure.most) {
    return scanner_.failure_since(from, "this tolerance cannot be worked out exactly; write the range");
  }
  return std::nullopt;
}

bool FigureScan::take_range_mark() {
  if (scanner_.take("..")) return true;
  const Scanner before = scanner_;
  if (scanner_.take("\u2013") || scanner_.take_word("to")) {
    scanner_.skip_spaces();
    if (begins_number(scanner_)) return true;
  }
  scanner_ = before;
  return false;
}

FigureScan::Fault FigureScan::read_range_end(Figure& figure) {
  scanner_.skip_spaces();
  auto most = scan_number(scanner_, input_);
  if (!most) return most.failure();
  const Number least = *std::exchange(figure.nominal, std::nullopt);
  return set_range(figure, least, *most);
}

FigureScan::Fault FigureScan::set_range(Figure& figure, const Number& least, const Number& most) {
  if (compare(least, most) >= 0) {
    return scanner_.failure_since(start_, "a range runs from the smaller number to the greater");
  }
  figure.form = Form::range;
  figure.least = least;
  figure.most = most;
  return std::nullopt;
}

// A hyphen between two numbers is a range ("25-31"), unless a plus follows ("28 -1 +4").
FigureScan::Fault FigureScan::read_after_hyphen(Figure& figure) {
  const Scanner behind = scanner_;
  scanner_.skip_spaces();
  auto second = scan_number(scanner_, input_);
  if (!second) return second.failure();
  scanner_.skip_spaces();
  scanner_.take("/");
  const bool uneven = scanner_.peek() == '+';
  scanner_ = behind;
  return uneven ? read_uneven(figure, false) : read_range_end(figure);
}

FigureScan::Fault FigureScan::read_uneven(Figure& figure, bool plus_first) {
  std::array<Number, 2> spreads;
  for (std::size_t i = 0; i < 2; ++i) {
    if (i == 0 ? plus_first : !plus_first) scanner_.take("+");
    if (i == 1 && plus_first) take_minus(scanner_);
    scanner_.skip_spaces();
    auto spread = scan_number(scanner_, input_);
    if (!spread) return spread.failure();
    if (spread->digits < 0) return scanner_.failure_since(start_, "a tolerance has one sign");
    spreads[i] = *spread;
    if (i == 1) break;
    scanner_.skip_spaces();
    if (scanner_.take("/")) scanner_.skip_spaces();
  }
  const auto& [above, below] = plus_first ? std::pair{spreads[0], spreads[1]} : std::pair{spreads[1], spreads[0]};
  if (above.digits == 0 && below.digits == 0) {
    return scanner_.failure_since(start_, "a tolerance is more than nothing");
  }
  figure.form = Form::plus_minus_uneven;
  figure.least = subtract(*figure.nominal, below);
  figure.most = add(*figure.nominal, above);
  if (!figure.least || !figure.most) {
    return scanner_.failure_since(start_, "this tolerance cannot be worked out exactly; write the range");
  }
  return std::nullopt;
}

// "(25..31)": a bracket that holds two numbers and a range mark.
bool FigureScan::at_band() const {
  Scanner ahead = scanner_;
  if (!ahead.take("(")) return false;
  ahead.skip_spaces();
  if (!begins_number(ahead) || !scan_number(ahead, Input::prompt)) return false;
  ahead.skip_spaces();
  if (ahead.rest().starts_with("..") || ahead.rest().starts_with("\u2013") || ahead.take_word("to")) return true;
  return ahead.rest().starts_with("-");
}

FigureScan::Fault FigureScan::read_band(Figure& figure) {
  const Scanner before = scanner_;
  scanner_.take("(");
  scanner_.skip_spaces();
  auto least = scan_number(scanner_, input_);
  if (!least) return least.failure();
  scanner_.skip_spaces();
  if (!take_range_mark()) scanner_.take("-");
  scanner_.skip_spaces();
  auto most = scan_number(scanner_, input_);
  if (!most) return most.failure();
  Figure inside;
  if (auto fault = read_unit_if_any(inside)) return fault;
  if (inside.unit != nullptr && figure.unit != nullptr && inside.unit != figure.unit) {
    scanner_ = before;  // another unit: the printed pair, which the statement reads
    return std::nullopt;
  }
  if (inside.unit != nullptr) figure.unit = inside.unit;
  scanner_.skip_spaces();
  if (!scanner_.take(")")) return scanner_.failure_since(scanner_.at, "a bracket is left open");
  const std::optional<Number> nominal = figure.nominal;
  if (auto fault = set_range(figure, *least, *most)) return fault;
  figure.nominal = nominal;
  return std::nullopt;
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

FigureScan::Fault FigureScan::take_suffix(Figure& figure) {
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  const bool minimum = scanner_.take_word("min") || scanner_.take_word("minimum");
  const bool maximum = !minimum && (scanner_.take_word("max") || scanner_.take_word("maximum"));
  if (!minimum && !maximum) {
    scanner_ = before;
    return std::nullopt;
  }
  if (figure.form != Form::nominal) {
    return scanner_.failure_since(start_, "a figure with a tolerance is not also a minimum or maximum");
  }
  scanner_.take(".");
  figure.form = minimum ? Form::minimum : Form::maximum;
  return std::nullopt;
}

FigureScan::Fault FigureScan::check(const Figure& figure) const {
  if (figure.nominal && figure.least && figure.most &&
      (compare(*figure.nominal, *figure.least) < 0 || compare(*figure.nominal, *figure.most) > 0)) {
    return scanner_.failure_since(start_, "the figure lies outside its own range");
  }
  if (figure.unit->dimension == Dimension::temperature) {
    const BaseBand band = base_band(figure);
    if (std::min(band.most, figure.least ? band.least : band.most) < -1e-9) {
      return scanner_.failure_since(start_, "nothing is colder than absolute zero, -273.15 °C");
    }
  }
  return std::nullopt;
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
