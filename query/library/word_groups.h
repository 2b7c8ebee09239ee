// SPDX-License-Identifier: GPL-2.0-or-later
// Groups of words that mean the same part, found in a text. An entry's names and a question go through
// the same matcher, so "Gabelverschluss" and "top cap" meet in the group "fork-cap".
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"

namespace sheaf {

// One word of a group, ready to be compared: the stems of its folded words, in order.
struct GroupWord {
  std::string group;
  std::vector<std::string> stems;
  bool never = false;  // a false friend: where it stands, the group is not meant
};

// `count` words from number `first` name the group.
struct GroupMatch {
  std::string group;
  std::size_t first = 0;
  std::size_t count = 0;
};

// All the words of all groups that begin with this stem; they outlive the next call.
using GroupLookup = std::function<std::span<const GroupWord>(const std::string& first_stem)>;

// Every group named in the text, in order of place, the longest first at each; a group may be found
// several times, and one match may lie within another's ("axle" within "axle nut"). A match that lies
// within a false friend of its group is left out ("seal" within "dust seal", if that is one).
// `words` are folded words (words_of).
std::vector<GroupMatch> match_groups(const std::vector<std::string>& words, const GroupLookup& lookup);

// A word of the glossary under each way in which it may be typed: spellings_of, and words of other languages
// than English without their prepositions too ("aceite motor").
std::vector<GroupWord> group_words_of(const WordRecord& record);

// All words of a library, in memory: what the compiler matches names with.
class WordGroups {
 public:
  explicit WordGroups(const std::vector<WordRecord>& words);
  std::vector<GroupMatch> match(const std::vector<std::string>& words) const;

 private:
  std::map<std::string, std::vector<GroupWord>, std::less<>> by_first_stem_;
};

}  // namespace sheaf
