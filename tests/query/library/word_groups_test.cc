// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/word_groups.h"

#include <doctest/doctest.h>

#include "query/library/fold.h"

using namespace sheaf;

namespace {

const std::vector<WordRecord> glossary = {{"fork-cap", "fork cap", "en", true, false},
                                          {"fork-cap", "top nut", "en", false, false},
                                          {"fork-cap", "Gabelverschluß", "de", false, false},
                                          {"axle", "axle", "en", true, false},
                                          {"axle", "spindle", "en", false, false},
                                          {"axle-nut", "axle nut", "en", true, false},
                                          {"axle-nut", "spindle nut", "en", false, false},
                                          {"oil-seal", "oil seal", "en", true, false},
                                          {"oil-seal", "seal", "en", false, false},
                                          {"oil-seal", "dust seal", "en", false, true},
                                          {"o-ring", "O-ring", "en", true, false},
                                          {"fork-oil", "Gabelöl", "de", false, false},
                                          {"nothing", "--", "en", false, false}};

// "group first count" of each match, in order.
std::vector<std::string> found_in(const std::string& text) {
  static const WordGroups groups(glossary);
  std::vector<std::string> found;
  for (const GroupMatch& match : groups.match(words_of(fold(text)))) {
    found.push_back(match.group + ' ' + std::to_string(match.first) + ' ' + std::to_string(match.count));
  }
  return found;
}

using Found = std::vector<std::string>;

}  // namespace

TEST_CASE("a group is found by any of its words, in any language and spelling") {
  CHECK(found_in("front fork cap torque") == Found{"fork-cap 1 2"});
  CHECK(found_in("TOP NUT") == Found{"fork-cap 0 2"});
  CHECK(found_in("Gabelverschluss") == Found{"fork-cap 0 1"});
  CHECK(found_in("gabeloel") == Found{"fork-oil 0 1"});
  CHECK(found_in("gabelol") == Found{"fork-oil 0 1"});
  CHECK(found_in("oring") == Found{"o-ring 0 1"});
  CHECK(found_in("o-rings") == Found{"o-ring 0 2"});
}

TEST_CASE("plurals are the same word") { CHECK(found_in("fork caps") == Found{"fork-cap 0 2"}); }

TEST_CASE("of several groups at one place the longest comes first") {
  CHECK(found_in("front spindle nut") == Found{"axle-nut 1 2", "axle 1 1"});
}

TEST_CASE("a false friend hides its own group, and only where it stands") {
  CHECK(found_in("oil seal") == Found{"oil-seal 0 2", "oil-seal 1 1"});
  CHECK(found_in("dust seal") == Found{});
  CHECK(found_in("dust seal or oil seal") == Found{"oil-seal 3 2", "oil-seal 4 1"});
}

TEST_CASE("words of a group must stand together and in order") {
  CHECK(found_in("cap for the fork") == Found{});
  CHECK(found_in("fork") == Found{});
  CHECK(found_in("") == Found{});
}

TEST_CASE("a word of the glossary is left out only where it cannot stand in the text") {
  const std::vector<WordRecord> records = {{"seal", "fork oil seal", "en", true, false},
                                           {"ring", "fork o-ring", "en", true, false},
                                           {"oil", "fork öl", "de", true, false},
                                           {"leg", "fork de la pata", "es", true, false}};
  const WordsBeginning words("fork", records);
  const auto groups_in = [&](const std::vector<std::string>& text) {
    std::vector<std::string> groups;
    for (const GroupWord* word : words.possible(letters_of(text))) groups.push_back(word->group);
    std::sort(groups.begin(), groups.end());
    groups.erase(std::unique(groups.begin(), groups.end()), groups.end());
    return groups;
  };
  CHECK(groups_in({"fork"}) ==
        std::vector<std::string>{"leg", "oil", "ring"});  // a short Spanish word may be a preposition
  CHECK(groups_in({"seal", "of", "fork"}) == std::vector<std::string>{"leg", "oil", "ring", "seal"});
}
