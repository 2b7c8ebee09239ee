// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_two.h"

#include <algorithm>
#include <array>

#include "query/library/fold.h"
#include "query/search/measures.h"

namespace sheaf {
namespace {

constexpr std::array<std::string_view, 3> between = {" vs ", " vs. ", " versus "};

std::string difference(const SizeRow& first, const SizeRow& second) {
  std::string words;
  for (const auto& [name, by] : {std::pair("inside", second.inside - first.inside),
                                 std::pair("outside", second.outside - first.outside),
                                 std::pair("height", second.height - first.height)})
    if (by != 0) words += (words.empty() ? "" : ", ") + std::string(name) + " " + signed_amount(by, "mm");
  return words.empty() ? "equal in size" : words;
}

const MatchedPart* first_with_size(const Matches& matches) {
  const auto found =
      std::ranges::find_if(matches.same, [](const MatchedPart& part) { return part.dimensions.has_value(); });
  return found == matches.same.end() ? nullptr : &*found;
}

template <typename List, typename Same>
void add_new(List& list, const List& more, Same same) {
  for (const auto& each : more)
    if (std::ranges::none_of(list, [&](const auto& known) { return same(known, each); }))
      list.push_back(each);
}

}  // namespace

std::optional<std::pair<std::string, std::string>> two_sides(std::string_view text) {
  const std::string folded = fold(text);
  if (folded.size() != text.size()) return std::nullopt;
  for (const auto word : between) {
    const auto at = folded.find(word);
    if (at == std::string::npos) continue;
    return std::pair(std::string(text.substr(0, at)), std::string(text.substr(at + word.size())));
  }
  return std::nullopt;
}

Matches beside(Matches first, Matches second) {
  const MatchedPart* const sized = first_with_size(first);
  std::vector<MatchedPart> others;
  for (auto* list : {&second.same, &second.within})
    for (auto& part : *list) {
      const bool is_comparable = sized && part.dimensions && part.shape == sized->shape;
      part.differs = is_comparable ? difference(*sized->dimensions, *part.dimensions) : second.read_as;
      others.push_back(std::move(part));
    }
  first.near = std::move(others);
  first.read_as += " beside " + second.read_as;
  add_new(first.meanings, second.meanings,
          [](const Meaning& left, const Meaning& right) { return left.part == right.part; });
  add_new(first.cautions, second.cautions, std::equal_to<>());
  first.more = first.more || second.more;
  return first;
}

}  // namespace sheaf
