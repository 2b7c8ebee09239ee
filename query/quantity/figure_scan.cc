// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/figure_scan.h"

#include <algorithm>
#include <array>
#include <utility>

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
  if (auto fault = read_tail(figure)) return *fault;
  if (figure.unit == nullptr || figure.form != Form::nominal) {
    if (auto fault = read_unit_if_any(figure)) return *fault;
  }
  if (figure.unit == nullptr) return missing_unit();
  if (auto fault = qualify(figure, form ? form : take_suffix())) return *fault;
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

// "2.0 mm min"
std::optional<Form> FigureScan::take_suffix() {
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  std::optional<Form> form;
  if (scanner_.take_word("min") || scanner_.take_word("minimum")) form = Form::minimum;
  if (scanner_.take_word("max") || scanner_.take_word("maximum")) form = Form::maximum;
  if (form) {
    scanner_.take(".");
  } else {
    scanner_ = before;
  }
  return form;
}

FigureScan::Fault FigureScan::qualify(Figure& figure, std::optional<Form> form) {
  if (!form) return std::nullopt;
  if (figure.form != Form::nominal) {
    return scanner_.failure_since(start_, "a minimum, a maximum or an \"about\" has no tolerance besides");
  }
  figure.form = *form;
  if (*form == Form::minimum) figure.least = std::exchange(figure.nominal, std::nullopt);
  if (*form == Form::maximum) figure.most = std::exchange(figure.nominal, std::nullopt);
  return std::nullopt;
}

FigureScan::Fault FigureScan::check(const Figure& figure) const {
  if (figure.nominal && figure.least && figure.most &&
      (compare(*figure.nominal, *figure.least) < 0 || compare(*figure.nominal, *figure.most) > 0)) {
    return scanner_.failure_since(start_, "the figure lies outside its own range");
  }
  if (figure.form == Form::per_cent && figure.unit->dimension == Dimension::ratio) {
    return scanner_.failure_since(start_, "per cent of a per cent or points of it? write the range");
  }
  if (figure.unit->dimension == Dimension::temperature) {
    const BaseBand band = base_band(figure);
    if (std::min(band.most, figure.least ? band.least : band.most) < -1e-9) {
      return scanner_.failure_since(start_, "nothing is colder than absolute zero, -273.15 °C");
    }
  }
  return std::nullopt;
}

}  // namespace sheaf
