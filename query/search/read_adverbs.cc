// SPDX-License-Identifier: GPL-2.0-or-later
// Words that name a side or a figure elsewhere and here do not: "half a turn back", "how many mm left", "on
// top of", "a set of pads". They are left out before groups of words are read.

#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr std::string_view moves[] = {"turn", "turns", "put",   "go",  "goes",    "going", "screw",  "wind",
                                      "come", "comes", "bring", "fit", "fitting", "click", "clicks", "pour"};
constexpr std::string_view behind_back[] = {"out", "off", "again", "then"};
constexpr std::string_view put_back[] = {"on", "in", "into", "to", "together"};  // in a sentence
constexpr std::string_view articles[] = {"the", "a", "my", "der", "le", "la"};
constexpr std::string_view moved_back[] = {"it", "them", "him", "her"};  // "back it off"
constexpr std::string_view places[] = {"line", "phone", "telephone", "counter", "bench", "list",
                                       "road", "shelf", "lift",      "ramp",    "floor"};
constexpr std::string_view measured[] = {"mm",    "millimetres", "millimeters", "is",   "are",  "much",
                                         "metal", "lining",      "material",    "meat", "what", "thread"};
constexpr std::string_view behind_left[] = {"over", "standing", "in", "on", "before", "when"};
constexpr std::string_view asked[] = {"is", "whats", "what", "are", "not", "that", "this", "it"};
constexpr std::string_view amounts[] = {"a", "per", "full", "complete", "new", "one", "whole", "je", "pro"};

// "psi both ends": of neither alone.
bool stands_at_both(const Draft& draft, std::size_t i) {
  return (draft.has_word(i, "both") && draft.has_word(i + 1, "ends")) ||
         (i > 0 && draft.has_word(i, "ends") && draft.has_word(i - 1, "both"));
}

// "fork level, spring out": how it is measured.
bool is_taken_out(const Draft& draft, std::size_t i) {
  const auto says_level = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) {
      return word == "level" || word == "oil" || word == "gap";
    });
  };
  const bool is_spring = draft.has_word(i, "spring") || draft.has_word(i, "springs");
  return is_spring && draft.has_word(i + 1, "out") && std::ranges::any_of(draft.question.tokens, says_level);
}

// "he is on the line", "what do I put on the order": where it is said.
bool says_where_asked(const Draft& draft, std::size_t i) {
  return i > 1 && draft.has_word(i - 2, "on") &&
         (draft.has_word(i - 1, "the") || draft.has_word(i - 1, "my")) && draft.has_any(i, places);
}

// "hanging or with weight on it": of the machine, and of no oil.
bool rests_on_it(const Draft& draft, std::size_t i) {
  constexpr std::string_view behind[] = {"on", "off"}, before[] = {"with", "full"};
  return i > 0 && draft.has_word(i, "weight") && draft.has_any(i + 1, behind) && draft.has_any(i - 1, before);
}

// "how much up and down"; of a rim it says which run-out.
bool is_up_and_down(const Draft& draft, std::size_t i) {
  if (draft.says_any({"rim", "rims", "runout", "felge", "jante"})) return false;
  if (i > 1 && draft.has_word(i - 1, "much") && draft.has_word(i, "up"))
    return false;  // asks for a clearance
  if (i > 3 && draft.has_word(i - 3, "much") && draft.has_word(i, "down")) return false;
  const bool is_up = draft.has_word(i, "up") && draft.has_word(i + 1, "and") && draft.has_word(i + 2, "down");
  return is_up ||
         (i > 1 && draft.has_word(i, "down") && draft.has_word(i - 1, "and") && draft.has_word(i - 2, "up"));
}

// "all over the floor", "side by side"
bool is_idiom(const Draft& draft, std::size_t i) {
  if (draft.has_word(i, "over")) return i > 0 && draft.has_word(i - 1, "all");
  if (!draft.has_word(i, "side")) return false;
  return (draft.has_word(i + 1, "by") && draft.has_word(i + 2, "side")) ||
         (i > 1 && draft.has_word(i - 1, "by") && draft.has_word(i - 2, "side"));
}

// "the fork is in bits": taken apart, and no tool's.
bool is_in_pieces(const Draft& draft, std::size_t i) {
  return i > 0 && draft.has_word(i - 1, "in") && (draft.has_word(i, "bits") || draft.has_word(i, "pieces"));
}

bool is_adverb(const Draft& draft, std::size_t i) {
  if (is_idiom(draft, i) || is_up_and_down(draft, i) || is_in_pieces(draft, i)) return true;
  if (says_where_asked(draft, i) || rests_on_it(draft, i)) return true;
  const auto follows = [&](SomeWords said) { return i > 0 && draft.has_any(i - 1, said); };
  const auto stands_in = [&](std::string_view before, std::string_view behind) {
    return i > 0 && draft.has_word(i - 1, before) && draft.has_word(i + 1, behind);
  };
  if (draft.has_word(i, "first")) return i + 1 == draft.size() && i > 1;  // "front pair first?"
  if (draft.has_word(i, "spring") || draft.has_word(i, "springs")) return is_taken_out(draft, i);
  if (draft.has_word(i, "out") && i > 0) return is_taken_out(draft, i - 1);
  if (draft.has_word(i, "top")) return stands_in("on", "of");
  if (draft.has_word(i, "ends") || draft.has_word(i, "both")) return stands_at_both(draft, i);
  if (draft.has_word(i, "front")) return stands_in("in", "of");
  if (draft.has_word(i, "back") && i > 0 && (draft.has_word(i - 1, "and") || draft.has_word(i - 1, "or")))
    return false;  // "front and back"
  if (draft.has_word(i, "back") && draft.has_word(i + 1, "in") && i + 2 < draft.size() &&
      year_in(draft.token(i + 2).typed))
    return true;                                                     // "back in 2014"
  if (draft.has_word(i, "back") && follows(articles)) return false;  // "at the back on the muleback"
  if (draft.has_word(i, "back") && draft.reading.is_spoken && draft.has_any(i + 1, put_back) &&
      (i + 2 >= draft.size() || std::ranges::all_of(draft.token(i + 2).words, is_noise) ||
       readings(draft.token(i + 2).typed).empty()))
    return true;
  if (draft.has_word(i, "back"))
    return follows(moves) || draft.has_any(i + 1, behind_back) ||
           (draft.has_any(i + 1, moved_back) && !follows(amounts));
  if (draft.has_word(i, "right")) return i + 1 == draft.size() && follows(asked);  // "what is right"
  if (draft.has_word(i, "left"))
    return follows(measured) || (draft.has_any(i + 1, behind_left) && !draft.has_word(i - 1, "the"));
  const bool is_set = draft.has_word(i, "set") || draft.has_word(i, "sets");
  return is_set && (follows(amounts) || draft.has_word(i + 1, "of"));
}

}  // namespace

void read_adverbs(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i] || !is_adverb(draft, i)) continue;
    draft.reading.left_out.push_back(draft.token(i).typed);
    draft.take(i, 1);
  }
}

}  // namespace sheaf
