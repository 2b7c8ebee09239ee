// SPDX-License-Identifier: GPL-2.0-or-later
// The dimensions in words.
#include <array>

#include "query/quantity/unit.h"

namespace sheaf {
namespace {

struct DimensionWords {
  std::string_view name, base;
};

// In the order of the enumeration.
constexpr std::array<DimensionWords, 27> words{{
    {"torque", "N·m"},
    {"length", "m"},
    {"area", "m²"},
    {"volume", "m³"},
    {"mass", "kg"},
    {"force", "N"},
    {"pressure", "Pa"},
    {"stress", "Pa"},
    {"temperature", "K"},
    {"temperature difference", "K"},
    {"kinematic viscosity", "m²/s"},
    {"dynamic viscosity", "Pa·s"},
    {"Saybolt viscosity", "s"},
    {"spring rate", "N/m"},
    {"rotation speed", "1/s"},
    {"speed", "m/s"},
    {"angle", "°"},
    {"count of clicks", "clicks"},
    {"energy", "J"},
    {"power", "W"},
    {"time", "s"},
    {"distance", "m"},
    {"ratio", "1"},
    {"voltage", "V"},
    {"current", "A"},
    {"resistance", "Ω"},
    {"density", "kg/m³"},
}};
static_assert(words.size() == static_cast<std::size_t>(Dimension::density) + 1);

const DimensionWords& words_of(Dimension dimension) { return words[static_cast<std::size_t>(dimension)]; }

}  // namespace

std::string_view name_of(Dimension dimension) { return words_of(dimension).name; }

std::string_view base_of(Dimension dimension) { return words_of(dimension).base; }

std::string with_article(Dimension dimension) {
  const std::string_view name = name_of(dimension);
  const bool vowel = std::string_view("aeiou").find(name.front()) != std::string_view::npos;
  return (vowel ? "an " : "a ") + std::string(name);
}

}  // namespace sheaf
