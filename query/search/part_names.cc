// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/part_names.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "query/library/vocabulary.h"
#include "query/search/draft.h"

namespace sheaf {
namespace {

using Groups = std::vector<std::string_view>;

bool is_one_of(const Groups& groups, const std::string& group) {
  return std::find(groups.begin(), groups.end(), group) != groups.end();
}

}  // namespace

bool says_little(const std::string& group) {
  static const Groups said_of_many = {"bolt",   "nut",       "stud",    "washer",     "sealing-washer",
                                      "grease", "gasket",    "oil",     "cap-screw",  "self-locking-nut",
                                      "spring", "split-pin", "jam-nut", "pinch-bolt", "snap-ring"};
  return kind_named(group) || is_one_of(said_of_many, group);
}

bool says_what_of_it(const std::string& group) {
  static const Groups measured = {"flatness",    "run-out",   "side-run-out", "height-run-out", "free-play",
                                  "temperature", "side-play", "thickness",    "tooth",          "colour"};
  return is_one_of(measured, group);
}

bool names_a_part(const PartAsked& part) {
  return !part.groups.empty() && !std::ranges::all_of(part.groups, says_little) &&
         std::ranges::none_of(part.groups, says_what_of_it);
}

bool tells_another(const PartAsked& part, const QuestionReading& reading) {
  const auto follows = [&](const PartAsked& other) {
    return other.token == part.token + 1 && other.phrase == part.phrase;
  };
  const std::string& word = part.words.front();
  return part.groups.empty() && is_everyday(word) && !is_ordinary(word) &&
         std::ranges::any_of(reading.parts, follows);
}

}  // namespace sheaf
