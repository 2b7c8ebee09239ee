// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <numeric>

#include "query/quantity/arithmetic.h"
#include "query/quantity/request.h"

namespace sheaf {
namespace {

// 2/16 is 1/8 on a wall.
Number in_lowest_terms(Number number) {
  const auto common = std::gcd(number.digits, std::int64_t{number.denominator});
  number.digits /= common;
  number.denominator = static_cast<std::uint16_t>(number.denominator / common);
  return number;
}

// The source's column aligns too: every row has the decimals of the step.
std::vector<Quantity> steps_of(const Figure& range, const Number& every) {
  std::vector<Quantity> steps;
  std::optional<Number> value = add(*range.least, Number{0, every.places, every.denominator});
  while (value && compare(*value, *range.most) <= 0 && steps.size() <= most_table_rows) {
    steps.push_back({in_lowest_terms(*value), range.unit});
    value = add(*value, every);
  }
  return steps;
}

// Zeros at the end of every row of the column say nothing.
void drop_common_zeros(std::vector<TableRow>& rows) {
  const auto ends_in_zero = [](const TableRow& row) {
    return row.derived.value.places > 0 && row.derived.value.digits % 10 == 0;
  };
  while (std::all_of(rows.begin(), rows.end(), ends_in_zero)) {
    for (TableRow& row : rows) {
      row.derived.value.digits /= 10;
      --row.derived.value.places;
    }
  }
}

}  // namespace

Result<ConversionTable> tabulate(const Figure& range, const Unit& to, const Number& every) {
  if (range.form != Form::range) return Failure{"a table needs a range, as in 10..60 N·m"};
  if (range.unit->dimension != to.dimension) return convert(range, to).failure();
  if (every.digits <= 0) return Failure{"the step of a table is more than nothing"};
  const auto steps = steps_of(range, every);
  if (steps.empty()) return Failure{"the step and the range do not go together: write both as decimals"};
  if (steps.size() > most_table_rows) return Failure{"the table would have more than 10000 rows"};

  // The greatest value decides the places, so that the small ones are no finer.
  const Figure greatest{Form::nominal, steps.back().value, {}, {}, {}, range.unit};
  const int places = places_in(greatest, to);
  ConversionTable table{range.unit, &to, {}};
  for (const Quantity& step : steps) {
    const auto derived = convert_to_places(step, to, places);
    if (!derived) return Failure{"the range has too many digits to be shown in " + std::string(to.symbol)};
    table.rows.push_back({step, {*derived, &to}});
  }
  drop_common_zeros(table.rows);
  return table;
}

}  // namespace sheaf
