// SPDX-License-Identifier: GPL-2.0-or-later
// Groups of words that mean the same part, found in a text. An entry's names and a question go through
// the same matcher, so "Gabelverschluss" and "top cap" meet in the group "fork-cap".
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
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

// The words of all groups that begin with this stem; those that cannot stand in the text may lack. They
// outlive the match.
using GroupLookup = std::function<std::vector<const GroupWord*>(const std::string& first_stem)>;

// Every group named in the text, in order of place, the longest first at each; a group may be found
// several times, and one match may lie within another's ("axle" within "axle nut"). A match that lies
// within a false friend of its group is left out ("seal" within "dust seal", if that is one).
// `words` are folded words (words_of).
std::vector<GroupMatch> match_groups(const std::vector<std::string>& words, const GroupLookup& lookup);

// A word of the glossary under each way in which it may be typed: spellings_of, and words of other languages
// than English without their prepositions too ("aceite motor").
std::vector<GroupWord> group_words_of(const WordRecord& record);

// The first letters of the words of a text, a bit each.
using Letters = std::uint32_t;
Letters letters_of(const std::vector<std::string>& words);

// All words of a glossary that begin with one stem. There may be hundreds, of which a text holds few: what
// one is under its spellings is found out when it may stand there.
class WordsBeginning {
 public:
  WordsBeginning(std::string first_stem, std::vector<WordRecord> words);
  bool empty() const { return words_.empty(); }
  // Those that may stand in a text of such words.
  std::vector<const GroupWord*> possible(Letters letters) const;

 private:
  std::string first_stem_;
  std::vector<WordRecord> words_;
  std::vector<Letters> needed_;  // by word; 0: whatever the text
  mutable std::vector<std::optional<std::vector<GroupWord>>> made_;
};

using WordsBeginningPtr = std::shared_ptr<const WordsBeginning>;

// All words of a library, in memory: what the compiler matches names with.
class WordGroups {
 public:
  explicit WordGroups(const std::vector<WordRecord>& words);
  std::vector<GroupMatch> match(const std::vector<std::string>& words) const;

 private:
  std::map<std::string, std::vector<GroupWord>, std::less<>> by_first_stem_;
};

}  // namespace sheaf
