// SPDX-License-Identifier: GPL-2.0-or-later
// Prints what every unit is in every other of its dimension, by the library's own conversion, for comparison
// with other programs: DIMENSION, FROM, TO, VALUE, CONVERTED, tab-separated, with 15 or more digits where the
// number type can hold them.
#include <iostream>

#include "query/quantity/convert.h"

namespace {

using namespace sheaf;

// A power of ten of the unit whose conversion is one or more, so that 15 places are 15 digits and more.
void print_pair(const Unit& from, const Unit& to, Number value) {
  for (int places = 15; places >= 0; --places) {
    const auto converted = convert_to_places({value, &from}, to, places);
    if (!converted) continue;
    const bool small =
        converted->digits < 100'000'000'000'000 && value.digits < 1'000'000'000'000'000 && value.digits > 0;
    if (small && places == 15) return print_pair(from, to, {value.digits * 1000, 0, 1});
    std::cout << name_of(from.dimension) << '\t' << from.symbol << '\t' << to.symbol << '\t' << to_text(value)
              << '\t' << to_text(*converted) << '\n';
    return;
  }
}

}  // namespace

int main() {
  for (const Unit& from : all_units()) {
    for (const Unit& to : units_of(from.dimension)) {
      if (&from == &to) continue;
      if (from.dimension != Dimension::temperature) {
        print_pair(from, to, {1, 0, 1});
      } else {
        for (const std::int64_t degrees : {-40, 0, 25, 100, 212}) {
          const bool absolute = from.offset.numerator == 0;  // nothing lies below its zero
          if (degrees >= 0 || !absolute) print_pair(from, to, {degrees, 0, 1});
        }
      }
    }
  }
}
