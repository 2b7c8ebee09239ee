// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/word_groups.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <tuple>

#include "query/library/fold.h"

namespace sheaf {
namespace {

std::vector<std::string> stems_of(const std::vector<std::string>& words) {
  std::vector<std::string> stems;
  for (const std::string& word : words) stems.push_back(stem_of(word));
  return stems;
}

bool stands_at(const GroupWord& word, const std::vector<std::string>& stems, std::size_t at) {
  return word.stems.size() <= stems.size() - at &&
         std::equal(word.stems.begin(), word.stems.end(), stems.begin() + static_cast<std::ptrdiff_t>(at));
}

bool within(const GroupMatch& inner, const GroupMatch& outer) {
  return inner.group == outer.group && inner.first >= outer.first &&
         inner.first + inner.count <= outer.first + outer.count;
}

// People leave them out who type with one finger: "aceite motor", "huile fourche".
std::vector<std::string> without_prepositions(std::vector<std::string> words) {
  constexpr std::array<std::string_view, 12> prepositions = {"a",   "au", "d",    "da", "de", "del",
                                                             "des", "di", "dell", "du", "l",  "la"};
  std::erase_if(words, [&](const std::string& word) {
    return std::ranges::find(prepositions, word) != prepositions.end();
  });
  return words;
}

// The letters with which the words of a record begin, whatever their spelling; 0 where a hyphen, an accent or
// a digit gives it several. Stems begin as their words do.
Letters letters_needed(const WordRecord& record) {
  constexpr std::size_t longest_preposition = 4;  // of other languages than English: may be left out
  Letters letters = 0;
  const std::string_view text = record.word;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    for (const char sign : word)
      if (!(sign >= 'a' && sign <= 'z') && !(sign >= 'A' && sign <= 'Z')) return 0;
    const bool may_lack = record.language != "en" && word.size() <= longest_preposition;
    if (!word.empty() && !may_lack) letters |= Letters{1} << ((word.front() | 0x20) - 'a');
    at = end + 1;
  }
  return letters;
}

}  // namespace

std::vector<GroupMatch> match_groups(const std::vector<std::string>& words, const GroupLookup& lookup) {
  const std::vector<std::string> stems = stems_of(words);
  std::vector<GroupMatch> meant;
  std::vector<GroupMatch> never;
  for (std::size_t at = 0; at < stems.size(); ++at) {
    for (const GroupWord* word : lookup(stems[at])) {
      if (!stands_at(*word, stems, at)) continue;
      (word->never ? never : meant).push_back({word->group, at, word->stems.size()});
    }
  }
  std::erase_if(meant, [&](const GroupMatch& match) {
    return std::ranges::any_of(never, [&](const GroupMatch& other) { return within(match, other); });
  });
  std::ranges::sort(meant, [](const GroupMatch& left, const GroupMatch& right) {
    return std::tie(left.first, right.count, left.group) < std::tie(right.first, left.count, right.group);
  });
  const auto same = [](const GroupMatch& left, const GroupMatch& right) {
    return left.first == right.first && left.count == right.count && left.group == right.group;
  };
  meant.erase(std::unique(meant.begin(), meant.end(), same), meant.end());
  return meant;
}

std::vector<GroupWord> group_words_of(const WordRecord& record) {
  std::vector<GroupWord> words;
  for (const std::vector<std::string>& spelling : spellings_of(record.word)) {
    words.push_back({record.group, stems_of(spelling), record.never});
    auto short_form = record.language == "en" ? spelling : without_prepositions(spelling);
    if (short_form.size() > 1 && short_form.size() < spelling.size())
      words.push_back({record.group, stems_of(short_form), record.never});
  }
  return words;
}

Letters letters_of(const std::vector<std::string>& words) {
  Letters letters = 0;
  for (const std::string& word : words)
    if (const char first = word.empty() ? '\0' : word.front(); first >= 'a' && first <= 'z')
      letters |= Letters{1} << (first - 'a');
  return letters;
}

WordsBeginning::WordsBeginning(std::string first_stem, std::vector<WordRecord> words)
    : first_stem_(std::move(first_stem)), words_(std::move(words)), made_(words_.size()) {
  for (const WordRecord& word : words_) needed_.push_back(letters_needed(word));
}

std::vector<const GroupWord*> WordsBeginning::possible(Letters letters) const {
  std::vector<const GroupWord*> words;
  for (std::size_t i = 0; i < words_.size(); ++i) {
    if ((needed_[i] & ~letters) != 0) continue;
    if (!made_[i]) made_[i] = group_words_of(words_[i]);
    for (const GroupWord& word : *made_[i])
      if (word.stems.front() == first_stem_) words.push_back(&word);
  }
  return words;
}

WordGroups::WordGroups(const std::vector<WordRecord>& words) {
  for (const WordRecord& record : words) {
    for (GroupWord& word : group_words_of(record)) {
      by_first_stem_[word.stems.front()].push_back(std::move(word));
    }
  }
}

std::vector<GroupMatch> WordGroups::match(const std::vector<std::string>& words) const {
  return match_groups(words, [this](const std::string& stem) {
    std::vector<const GroupWord*> beginning_so;
    if (const auto found = by_first_stem_.find(stem); found != by_first_stem_.end())
      for (const GroupWord& word : found->second) beginning_so.push_back(&word);
    return beginning_so;
  });
}

}  // namespace sheaf
