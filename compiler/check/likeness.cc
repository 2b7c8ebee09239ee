// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/likeness.h"

#include <algorithm>
#include <array>
#include <vector>

#include "query/library/fold.h"

namespace sheafc {
namespace {

class Remembered {
 public:
  explicit Remembered(std::string (*made_of)(std::string_view)) : made_of_(made_of), known_(places) {}

  Likeness of(std::string_view name) {
    Known& known = known_[std::hash<std::string_view>()(name) % places];
    if (known.name != name || name.empty()) known = {std::string(name), likeness({made_of_(name)})};
    return known.likeness;
  }

 private:
  static constexpr std::size_t places = 1 << 14;  // one a name; the later of two that share theirs stays
  struct Known {
    std::string name;
    Likeness likeness = 0;
  };
  std::string (*made_of_)(std::string_view);
  std::vector<Known> known_;
};

}  // namespace

std::string role_of(std::string_view name) {
  constexpr std::array<std::string_view, 14> sides = {"front", "rear",  "left",  "right", "upper",
                                                      "lower", "inner", "outer", "top",   "bottom",
                                                      "the",   "at",    "of",    "in"};
  std::vector<std::string> stems;
  for (const std::string& word : sheaf::words_of(sheaf::fold(name))) {
    if (std::ranges::find(sides, word) == sides.end()) stems.push_back(sheaf::stem_of(word));
  }
  std::ranges::sort(stems);
  std::string role;
  for (const std::string& stem : stems) role += (role.empty() ? "" : " ") + stem;
  return role;
}

Likeness role_likeness(std::string_view name) {
  static thread_local Remembered roles(role_of);
  return roles.of(name);
}

Likeness squeezed_likeness(std::string_view name) {
  static thread_local Remembered squeezed(sheaf::squeeze);
  return squeezed.of(name);
}

Likeness folded_likeness(std::string_view name) {
  static thread_local Remembered folded([](std::string_view text) { return sheaf::fold(text); });
  return folded.of(name);
}

}  // namespace sheafc
