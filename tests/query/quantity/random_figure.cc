// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/query/quantity/random_figure.h"

#include <string>

namespace sheaf::test {

Number RandomFigures::number(int longest) {
  if (below(10) == 0) {
    const int denominator = 1 << (1 + below(6));
    return {1 + below(denominator * 12), 0, static_cast<std::uint16_t>(denominator)};
  }
  const int length = 1 + below(longest);
  std::int64_t digits = 1 + below(9);
  for (int i = 1; i < length; ++i) digits = digits * 10 + below(10);
  return {digits, static_cast<std::uint8_t>(below(std::min(length + 2, 7))), 1};
}

const Unit& RandomFigures::unit() {
  return all_units()[static_cast<std::size_t>(below(static_cast<int>(all_units().size())))];
}

const Unit& RandomFigures::other_unit(const Unit& unit) {
  const auto units = units_of(unit.dimension);
  for (int i = 0; i < 20; ++i) {
    const Unit& other = units[static_cast<std::size_t>(below(static_cast<int>(units.size())))];
    if (&other != &unit) return other;
  }
  return unit;
}

// Built as text, so that the figure is one that can be written; what does not read is drawn again.
Figure RandomFigures::figure() {
  while (true) {
    const Unit& unit = this->unit();
    const std::string symbol = std::string(" ").append(unit.symbol);
    const std::string first = to_text(number()), second = to_text(number());
    std::string text;
    switch (below(8)) {
      case 0:
        text = first + ".." + second + symbol;
        break;
      case 1:
        text = first + " ± " + second + symbol;
        break;
      case 2:
        text = first + symbol + " ± " + std::to_string(1 + below(30)) + " %";
        break;
      case 3:
        text = first + " +" + second + " -" + to_text(number()) + symbol;
        break;
      case 4:
        text = (below(2) == 0 ? "min " : "max ") + first + symbol;
        break;
      case 5:
        text = "about " + first + symbol;
        break;
      default:
        text = first + symbol;
        break;
    }
    if (auto figure = parse_figure(text, unit.dimension, Input::sheet)) return *figure;
  }
}

}  // namespace sheaf::test
