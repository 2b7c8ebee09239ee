// SPDX-License-Identifier: GPL-2.0-or-later
// What makes entries of many sheets alike, as a number: parts of a text that is never built. Two kinds of
// likeness share a number about once in 2^64; whoever would say something untrue then compares the words.
#pragma once

#include <cstddef>
#include <functional>
#include <initializer_list>
#include <string>
#include <string_view>

namespace sheafc {

using Likeness = std::size_t;

inline Likeness likeness(Likeness one, std::string_view part) {
  return one * 0x9e3779b97f4a7c15 + std::hash<std::string_view>()(part);
}

inline Likeness likeness(std::initializer_list<std::string_view> parts) {
  Likeness all = parts.size();
  for (const std::string_view part : parts) all = likeness(all, part);
  return all;
}

// The words of a name without sides, in alphabetical order: "front axle pinch bolts" -> "axle bolt pinch".
std::string role_of(std::string_view name);

// The likeness of what role_of, sheaf::fold and sheaf::squeeze make of a name. All are dear, and most names
// come again: each thread remembers some.
Likeness role_likeness(std::string_view name);
Likeness folded_likeness(std::string_view name);
Likeness squeezed_likeness(std::string_view name);

}  // namespace sheafc
