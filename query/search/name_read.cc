// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/name_read.h"

#include <algorithm>
#include <array>

#include "query/library/fold.h"

namespace sheaf {
namespace {

std::string spaced(std::string text) {
  std::ranges::replace(text, '-', ' ');
  return text;
}

}  // namespace

NameRead read_name(const std::string& text, Lexicon& lexicon) {
  constexpr std::array<std::string_view, 7> places = {"at", "of", "on", "for", "in", "to", "over"};
  const auto words = words_of(fold(text));
  NameRead name{words, {}, words.size(), lexicon.groups_in(words)};
  for (const auto& word : words) name.stems.push_back(stem_of(word));
  if (const auto comma = text.find(','); comma != std::string::npos)
    name.thing = words_of(fold(text.substr(0, comma))).size();
  for (std::size_t i = 1; i < name.thing; ++i)
    if (std::ranges::find(places, words[i]) != places.end()) name.thing = i;
  return name;
}

bool Context::holds(const std::string& stem) {
  if (stems_) return stems_->contains(stem);
  stems_.emplace();
  const auto add = [this](const std::string& text) {
    for (const auto& word : words_of(fold(text))) stems_->insert(stem_of(word));
  };
  add(spaced(sheet_.assembly));
  add(sheet_.maker);
  for (const auto& fit : entry_.fits) add(fit.make + " " + fit.model);
  return stems_->contains(stem);
}

}  // namespace sheaf
