// SPDX-License-Identifier: GPL-2.0-or-later
// What may follow the first number of a figure: a tolerance, the other end of a range, a band.
#include <utility>

#include "query/quantity/arithmetic.h"
#include "query/quantity/figure_scan.h"

namespace sheaf {
namespace {

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

FigureScan::Fault FigureScan::read_tail(Figure& figure) {
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  if (scanner_.done()) return std::nullopt;
  if (take_plus_minus(scanner_)) return read_spread(figure);
  if (scanner_.rest().starts_with("...") || scanner_.rest().starts_with("\u2026")) {
    return scanner_.failure_at(scanner_.at, 3, "a range is written with two dots, as in 25..31");
  }
  if (take_range_mark()) return read_range_end(figure);
  if (at_uneven()) return read_uneven(figure, true);
  if (take_minus(scanner_)) {
    Scanner ahead = scanner_;
    ahead.skip_spaces();
    if (is_digit(ahead.peek())) return read_after_hyphen(figure);
  }
  if (at_band()) return read_band(figure);
  scanner_ = before;
  return std::nullopt;
}

// "28 N·m + 60°" is a stage, "28 +4 -1 N·m" a tolerance: what follows the second number tells.
bool FigureScan::at_uneven() const {
  Scanner ahead = scanner_;
  if (!ahead.take("+") || !is_digit(ahead.peek()) || !scan_number(ahead, input_)) return false;
  ahead.skip_spaces();
  return ahead.take("/") || take_minus(ahead);
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
    if (figure.nominal->digits == 0)
      return scanner_.failure_since(from, "a percentage of nothing is nothing");
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

// The sign may have been read already.
Result<Number> FigureScan::read_one_side() {
  if (!scanner_.take("+")) take_minus(scanner_);
  scanner_.skip_spaces();
  auto spread = scan_number(scanner_, input_);
  if (spread && spread->digits < 0) return scanner_.failure_since(start_, "a tolerance has one sign");
  return spread;
}

FigureScan::Fault FigureScan::read_uneven(Figure& figure, bool plus_first) {
  auto first = read_one_side();
  if (!first) return first.failure();
  scanner_.skip_spaces();
  if (scanner_.take("/")) scanner_.skip_spaces();
  auto second = read_one_side();
  if (!second) return second.failure();
  if (first->digits == 0 && second->digits == 0) {
    return scanner_.failure_since(start_, "a tolerance is more than nothing");
  }
  figure.form = Form::plus_minus_uneven;
  figure.least = subtract(*figure.nominal, plus_first ? *second : *first);
  figure.most = add(*figure.nominal, plus_first ? *first : *second);
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
  if (ahead.rest().starts_with("..") || ahead.rest().starts_with("\u2013") || ahead.take_word("to"))
    return true;
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

}  // namespace sheaf
