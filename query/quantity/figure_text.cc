// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/figure_text.h"

#include <limits>

#include "query/quantity/arithmetic.h"
#include "query/quantity/exact.h"

namespace sheaf {
namespace {

bool at_most_one(const Number& number) { return number.digits > 0 && compare(number, Number{1, 0, 1}) <= 0; }

// "3/4 turn", "2 turns", "0 turns"; a degree of angle stands close to its number.
void write_unit(Writer& writer, const Unit& unit, bool singular) {
  if (unit.symbol != "°") writer.put(writer.typography().space);
  writer.put(singular && !unit.singular.empty() ? unit.singular : unit.symbol);
}

// A range with a minus sign in it is clearer with a word between its ends.
void write_range(Writer& writer, const Number& least, const Number& most) {
  writer.put(least);
  const bool dash = writer.typography().range != "..";
  writer.put(dash && (least.digits < 0 || most.digits < 0) ? " to " : writer.typography().range);
  writer.put(most);
}

void write_plus_minus(Writer& writer, const Figure& figure) {
  writer.put(*figure.nominal);
  const bool ratio = figure.unit->dimension == Dimension::ratio;  // "50 ± 5 %" would say less than it means
  if (ratio || figure.form == Form::per_cent) write_unit(writer, *figure.unit, false);
  writer.put(" ± ");
  writer.put(*figure.spread);
  if (figure.form == Form::per_cent) {
    writer.put(writer.typography().space);
    writer.put("%");
  } else {
    write_unit(writer, *figure.unit, false);
  }
}

void write_uneven(Writer& writer, const Figure& figure) {
  const auto above = subtract(*figure.most, *figure.nominal);
  const auto below = subtract(*figure.nominal, *figure.least);
  writer.put(*figure.nominal);
  writer.put(" +");
  writer.put(above.value_or(Number{}));
  writer.put(" ");
  writer.put(writer.typography().minus);
  writer.put(below.value_or(Number{}));
  write_unit(writer, *figure.unit, false);
}

void write_with_range(Writer& writer, const Figure& figure) {
  if (figure.nominal) {
    writer.put(*figure.nominal);
    if (writer.typography().range != "..") write_unit(writer, *figure.unit, false);
    writer.put(" (");
  }
  write_range(writer, *figure.least, *figure.most);
  if (figure.nominal) {
    writer.put(")");
    if (writer.typography().range != "..") return;
  }
  write_unit(writer, *figure.unit, false);
}

void write_single(Writer& writer, std::string_view word, const Number& number, const Unit& unit) {
  writer.put(word);
  writer.put(number);
  write_unit(writer, unit, at_most_one(number));
}

template <typename Value, typename Write>
std::string_view written(const Value& value, FigureBuffer& buffer, const Typography& typography,
                         Write write) {
  Writer writer(buffer, typography);
  write(writer, value);
  return writer.text();
}

}  // namespace

void write_figure(Writer& writer, const Figure& figure) {
  switch (figure.form) {
    case Form::nominal:
      return write_single(writer, "", *figure.nominal, *figure.unit);
    case Form::about:
      return write_single(writer, "about ", *figure.nominal, *figure.unit);
    case Form::minimum:
      return write_single(writer, "min ", *figure.least, *figure.unit);
    case Form::maximum:
      return write_single(writer, "max ", *figure.most, *figure.unit);
    case Form::plus_minus:
    case Form::per_cent:
      return write_plus_minus(writer, figure);
    case Form::plus_minus_uneven:
      return write_uneven(writer, figure);
    case Form::range:
      return write_with_range(writer, figure);
  }
}

void write_quantity(Writer& writer, const Quantity& quantity) {
  write_single(writer, "", quantity.value, *quantity.unit);
}

std::string_view to_text(const Figure& figure, FigureBuffer& buffer) {
  return written(figure, buffer, as_typed, write_figure);
}

std::string_view shown(const Figure& figure, FigureBuffer& buffer) {
  return written(figure, buffer, as_shown, write_figure);
}

std::string to_text(const Figure& figure) {
  FigureBuffer buffer;
  return std::string(to_text(figure, buffer));
}

std::string shown(const Figure& figure) {
  FigureBuffer buffer;
  return std::string(shown(figure, buffer));
}

std::string to_text(const Quantity& quantity) {
  FigureBuffer buffer;
  return std::string(written(quantity, buffer, as_typed, write_quantity));
}

std::string shown(const Quantity& quantity) {
  FigureBuffer buffer;
  return std::string(written(quantity, buffer, as_shown, write_quantity));
}

BaseBand base_band(const Figure& figure) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const Rational factor = figure.unit->factor, offset = figure.unit->offset;
  const auto in_base = [&](const Number& number) {
    return approximate(number) *
               (static_cast<double>(factor.numerator) / static_cast<double>(factor.denominator)) +
           static_cast<double>(offset.numerator) / static_cast<double>(offset.denominator);
  };
  const bool banded = figure.least || figure.most;
  const std::optional<Number>& least = banded ? figure.least : figure.nominal;
  const std::optional<Number>& most = banded ? figure.most : figure.nominal;
  return {least ? in_base(*least) : -infinity, most ? in_base(*most) : infinity};
}

}  // namespace sheaf
