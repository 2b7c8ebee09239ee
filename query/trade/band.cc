// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/band.h"

#include <array>
#include <charconv>

namespace sheaf {

std::optional<Failure> outside_range(std::initializer_list<Argument> arguments) {
  for (const Argument& argument : arguments) {
    if (argument.range.holds(argument.value)) continue;
    const std::string unit = argument.unit.empty() ? "" : " " + std::string(argument.unit);
    return Failure{std::string(argument.what) + " is " + brief(argument.value) + unit + ", outside " +
                   brief(argument.range.least) + " to " + brief(argument.range.most) + unit};
  }
  return std::nullopt;
}

std::string brief(double value) {
  std::array<char, 32> digits{};
  const auto [end, error] =
      std::to_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::general, 6);
  return error == std::errc() ? std::string(digits.data(), end) : "?";
}

}  // namespace sheaf
