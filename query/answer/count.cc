// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/count.h"

#include <charconv>

#include "query/answer/value.h"

namespace sheaf {
namespace {

constexpr std::string_view per_word = " per ";

}  // namespace

std::vector<std::string> places_per(std::string_view per) {
  if (per.empty()) return {""};
  if (per == "leg" || per == "side") return {"left", "right"};
  if (per == "wheel") return {"front", "rear"};
  return {};
}

PlaceCount count_of(std::string_view text) {
  PlaceCount count;
  if (text.empty()) return count;
  const auto split = text.find(per_word);
  const auto digits = text.substr(0, split);
  std::from_chars(digits.data(), digits.data() + digits.size(), count.number);
  if (split != std::string_view::npos) count.per = text.substr(split + per_word.size());
  count.places = places_per(count.per);
  return count;
}

std::string count_words(std::string_view text) {
  if (text.empty()) return {};
  const PlaceCount count = count_of(text);
  const bool is_both = count.per == "leg" || count.per == "side";
  if (!is_both) return choice_words("count", text);
  return std::to_string(count.total()) + " for both " + count.per + "s";
}

}  // namespace sheaf
