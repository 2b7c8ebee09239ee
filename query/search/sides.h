// SPDX-License-Identifier: GPL-2.0-or-later
// Sides in pairs of which an entry is of one or the other, as the vocabulary names them.
#pragma once

#include <array>
#include <string_view>

namespace sheaf {

using Axis = std::array<std::string_view, 2>;
inline constexpr std::array<Axis, 6> side_axes = {{{"front", "rear"},
                                                   {"left", "right"},
                                                   {"upper", "lower"},
                                                   {"inner", "outer"},
                                                   {"intake", "exhaust"},
                                                   {"clutch-side", "brake-side"}}};

constexpr std::string_view opposite_of(std::string_view side) {
  for (const auto& axis : side_axes) {
    if (axis[0] == side) return axis[1];
    if (axis[1] == side) return axis[0];
  }
  return {};
}

// "upper" for "top"; other words are as they are.
constexpr std::string_view side_said(std::string_view word) {
  return word == "top" ? "upper" : word == "bottom" ? "lower" : word;
}

// The side that a group of words stands for: "side-front" is "front"; "side-stand" is a part, and gives none.
constexpr std::string_view side_of_group(std::string_view group) {
  if (!group.starts_with("side-")) return {};
  const auto side = group.substr(5);
  return opposite_of(side).empty() ? std::string_view() : side;
}

// At which end of the machine an assembly is, where it is at one: nobody writes it on its sheet.
constexpr std::string_view end_of_assembly(std::string_view assembly) {
  for (const std::string_view name : {"front-wheel", "front-brake", "fork", "steering-head"})
    if (assembly == name) return "front";
  for (const std::string_view name :
       {"rear-wheel", "rear-brake", "shock", "linkage", "swingarm", "chain-drive"})
    if (assembly == name) return "rear";
  return {};
}

// "wheel" of "front-wheel": the same assembly, whichever end it is at.
constexpr std::string_view without_end(std::string_view assembly) {
  for (const std::string_view end : {"front-", "rear-"})
    if (assembly.starts_with(end)) return assembly.substr(end.size());
  return assembly;
}

}  // namespace sheaf
