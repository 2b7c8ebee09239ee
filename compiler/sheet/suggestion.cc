// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/suggestion.h"

#include "query/library/near_word.h"

namespace sheafc {

std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates) {
  const std::string_view near = sheaf::near_word(word, candidates);
  return near.empty() ? "" : "; did you mean '" + std::string(near) + "'?";
}

std::string any_of(std::span<const std::string_view> words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += words[i];
  }
  return list;
}

}  // namespace sheafc
