// SPDX-License-Identifier: GPL-2.0-or-later
// A word of a long table, held in the table itself. One of std::string_view holds addresses instead, which
// are put right whenever a program starts: every page of the table is copied then, though few questions look
// into it.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

namespace sheaf {

class ShortWord {
 public:
  template <std::size_t size>
  constexpr ShortWord(const char (&word)[size]) {
    static_assert(size <= longest + 1);
    std::copy_n(word, size, letters_.begin());
  }

  constexpr std::string_view text() const { return letters_.data(); }
  constexpr operator std::string_view() const { return text(); }

 private:
  static constexpr std::size_t longest = 16;
  std::array<char, longest + 1> letters_{};
};

}  // namespace sheaf
