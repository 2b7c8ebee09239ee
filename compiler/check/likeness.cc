// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/likeness.h"

#include <algorithm>
#include <array>
#include <unordered_map>
#include <vector>

#include "query/library/fold.h"

namespace sheafc {
namespace {

class Remembered {
 public:
  explicit Remembered(std::string (*made_of)(std::string_view)) : made_of_(made_of) {}

  Likeness of(std::string_view name) {
    const auto found = known_.find(std::hash<std::string_view>()(name));
    if (found != known_.end() && found->second.name == name) return found->second.likeness;
    if (known_.size() >= most) known_.clear();
    const Likeness made = likeness({made_of_(name)});
    known_.insert_or_assign(std::hash<std::string_view>()(name), Known{std::string(name), made});
    return made;
  }

 private:
  static constexpr std::size_t most = 50'000;
  struct Known {
    std::string name;
    Likeness likeness;
  };
  std::string (*made_of_)(std::string_view);
  std::unordered_map<std::size_t, Known> known_;
};

}  // namespace

std::string role_of(std::string_view name) {
  constexpr std::array<std::string_view, 14> sides = {"front", "rear", "left", "right", "upper", "lower", "inner", "outer",
                                                      "top",   "bottom", "the", "at", "of", "in"};
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
