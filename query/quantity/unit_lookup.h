// SPDX-License-Identifier: GPL-2.0-or-later
// From what was typed to the units it may mean: spellings are folded to one form, and the folded forms of
// the whole unit table stand in a hash table that the compiler builds. Nothing is allocated.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/unit.h"

namespace sheaf {

// A spelling without case and without the marks between unit parts: "FT. LB" -> "ftlb", "µm" -> "um",
// "mm²/s" -> "mm2/s", "°C" -> "degc". It remembers where the marks were: "m in" is not "min".
class Folded {
 public:
  static constexpr std::size_t capacity = 40;

  // Folds the character at the front of the text and says how many bytes it took; 0 if no unit has
  // such a character, or the spelling grows longer than any unit's.
  constexpr std::size_t add(std::string_view text);

  constexpr std::string_view text() const { return {text_.data(), size_}; }

  // One bit for each place, counted in folded characters, at which parts are joined.
  constexpr std::uint64_t joints() const { return joints_; }
  constexpr void allow_joints(std::uint64_t joints) { joints_ |= joints; }

 private:
  constexpr bool append(std::string_view part) {
    if (size_ + part.size() > capacity) return false;
    const bool bar = part == "/" || (size_ > 0 && text_[size_ - 1] == '/');  // a bar joins anyway
    if (joined_ && size_ > 0 && !bar) joints_ |= std::uint64_t{1} << size_;
    joined_ = false;
    for (const char c : part) text_[size_++] = c;
    return true;
  }

  std::array<char, capacity> text_{};
  std::size_t size_ = 0;
  std::uint64_t joints_ = 0;
  bool joined_ = false;  // a mark was read and waits for what it joins
};

// The bytes of a mark that may stand between the parts of a unit (· ⋅ * . - space), or 0.
constexpr std::size_t joint_length(std::string_view text) {
  const char c = text.empty() ? 'x' : text.front();
  if ((c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z')) return 0;
  constexpr std::array<std::string_view, 10> joints{" ",      ".",      "-",      "*",      "\u00B7",
                                                    "\u22C5", "\u2219", "\u00A0", "\u202F", "\u2009"};
  for (const std::string_view joint : joints) {
    if (text.starts_with(joint)) return joint.size();
  }
  return 0;
}

constexpr std::size_t Folded::add(std::string_view text) {
  if (text.empty()) return 0;
  const char c = text.front();
  if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '/' || c == '%')
    return append({&c, 1}) ? 1 : 0;
  if (c >= 'A' && c <= 'Z') {
    const char lower = static_cast<char>(c - 'A' + 'a');
    return append({&lower, 1}) ? 1 : 0;
  }
  if (const std::size_t joint = joint_length(text)) {
    joined_ = true;
    return joint;
  }
  struct Replacement {
    std::string_view from, to;
  };
  constexpr std::array<Replacement, 17> replacements{{{"^", ""},        // "mm^2"
                                                      {"\u00B5", "u"},  // micro sign
                                                      {"\u03BC", "u"},  // Greek mu
                                                      {"\u00B2", "2"},
                                                      {"\u00B3", "3"},
                                                      {"\u00B0", "deg"},
                                                      {"\u00BA", "deg"},  // ordinal sign, typed for a degree
                                                      {"\u2103", "degc"},
                                                      {"\u2109", "degf"},
                                                      {"\u03A9", "ohm"},  // Greek omega
                                                      {"\u2126", "ohm"},  // ohm sign
                                                      {"\"", "in"},
                                                      {"\u2033", "in"},
                                                      {"\u201D", "in"},
                                                      {"'", "ft"},
                                                      {"\u2032", "ft"},
                                                      {"\u2019", "ft"}}};
  for (const Replacement& replacement : replacements) {
    if (text.starts_with(replacement.from)) return append(replacement.to) ? replacement.from.size() : 0;
  }
  return 0;
}

// The folded form of a whole text; nullopt if it holds a character that no unit has.
constexpr std::optional<Folded> fold(std::string_view text) {
  Folded folded;
  while (!text.empty()) {
    const std::size_t length = folded.add(text);
    if (length == 0) return std::nullopt;
    text.remove_prefix(length);
  }
  return folded;
}

// The units that one spelling may mean, in table order. A unit that serves two dimensions counts once.
class UnitChoices {
 public:
  void add(const Unit& unit);
  bool empty() const { return size_ == 0; }
  std::size_t size() const { return size_; }
  const Unit* operator[](std::size_t i) const { return units_[i]; }
  const Unit* const* begin() const { return units_.data(); }
  const Unit* const* end() const { return units_.data() + size_; }

 private:
  std::array<const Unit*, 8> units_{};
  std::size_t size_ = 0;
};

UnitChoices find_units(const Folded& spelling, std::optional<Dimension> dimension);

// Why the spelling, as typed, names no single unit.
std::string unit_fault(std::string_view spelling, std::optional<Dimension> dimension);

// What to say of a spelling that would fold to a unit but means something else ("mPa" is no MPa, "10 wt"
// no weight); empty if there is nothing to say.
std::string_view false_friend(std::string_view spelling);

// "N·m, lbf·ft, lbf·in or kgf·m"
std::string workshop_units(Dimension dimension);

}  // namespace sheaf
