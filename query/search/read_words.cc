// SPDX-License-Identifier: GPL-2.0-or-later
// Words by the glossary: parts in five languages, sides, and what is asked of them. The glossary itself
// says which of its groups are not parts, by their names: side-front, kind-torque, hand-left.
#include <algorithm>
#include <iterator>
#include <optional>
#include <tuple>

#include "query/library/vocabulary.h"
#include "query/search/clauses.h"
#include "query/search/loose_words.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

// "kind-torque" with "kind-" gives "torque".
std::optional<std::string> value_after(std::string_view group, std::string_view beginning) {
  if (!group.starts_with(beginning)) return std::nullopt;
  return std::string(group.substr(beginning.size()));
}

bool says_end(const Draft& draft) {
  return std::ranges::any_of(draft.question.tokens, [](const Token& token) {
    return token.words.size() == 1 &&
           (token.words.front() == "front" || token.words.front() == "rear" || token.words.front() == "back");
  });
}

void read_meaning(QuestionReading& reading, const std::string& group, const std::string& typed) {
  if (const auto side = side_of_group(group); !side.empty()) {
    return add_new(reading.sides, std::string(side));
  }
  if (auto hand = value_after(group, "hand-")) {
    add_new(reading.figures, "hand");
    reading.hand = *std::move(hand);
    return;
  }
  if (auto kind = value_after(group, "kind-")) {
    add_new(reading.figures, *std::move(kind));
    add_unit(reading, typed);
  }
}

// What is asked of a thing may name it as well: "what oil", "seal size", "chain links".
bool names_thing(Draft& draft, const std::string& word) {
  constexpr std::string_view things[] = {"oil", "coolant", "grease", "fuel", "chain"};
  const auto matches = draft.lexicon.groups_in({word});
  return std::ranges::any_of(matches, [&](const GroupMatch& match) {
    return std::ranges::find(things, match.group) != std::end(things) || kind_named(match.group);
  });
}

// Of several words that ask for a figure, the one that names the thing itself is left to be read as a part.
void leave_thing(Draft& draft, LooseWords& words, const GroupMatch& asked) {
  if (asked.count == 1 || asked.group == "kind-state") return;  // "greased or dry" asks of no grease
  for (std::size_t i = asked.first; i < asked.first + asked.count; ++i)
    words[i].taken = !names_thing(draft, words[i].word);
}

// "bar clamps", "bars", "on the bar": no pressure is meant; "tyre bar" is one.
bool is_handlebar(const Draft& draft, const LooseWords& words, std::size_t i, const GroupMatch& chosen) {
  constexpr std::string_view articles[] = {"the", "my", "your", "his", "her", "its"};
  if (words[i].word == "bars") return true;
  if (words[i].word != "bar") return false;
  const bool follows_article =
      words[i].token > 0 && std::ranges::any_of(articles, [&](std::string_view word) {
        return draft.has_word(words[i].token - 1, word);
      });
  return follows_article || i + 1 < chosen.first + chosen.count;
}

// All groups that the same words name, those of parts before the others.
void read_match(Draft& draft, LooseWords& words, const std::vector<GroupMatch>& matches,
                const GroupMatch& chosen) {
  const std::string typed = typed_of(words, chosen);
  PartAsked part = part_of(draft, typed);
  part.token = words[chosen.first].token;
  for (const auto& match : matches)
    if (match.first == chosen.first && match.count == chosen.count && is_part_group(match.group))
      part.groups.push_back(match.group);
  part.is_aspect = std::ranges::any_of(part.groups, [](const std::string& group) {
    return group == "temperature" || group == "thickness" || group == "six-lobe" || group == "suspension-sag";
  });
  if (!part.groups.empty()) {
    for (std::size_t i = chosen.first; i < chosen.first + chosen.count; ++i)
      if (words[i].word.size() >= 3 && !is_handlebar(draft, words, i, chosen))
        add_unit(draft.reading, words[i].word);
    draft.reading.parts.push_back(std::move(part));
    take(words, chosen);
    return;
  }
  const std::string_view other =
      says_end(draft) ? "side-rear" : "side-right";  // "r": rear, or where an end is said, right
  for (const auto& match : matches)
    if (match.first == chosen.first && match.count == chosen.count &&
        !(typed == "r" && match.group == other)) {
      read_meaning(draft.reading, match.group, typed);
      if (const auto side = side_of_group(match.group); !side.empty())
        draft.sides_said.push_back({std::string(side), words[chosen.first].token});
    }
  take(words, chosen);
  leave_thing(draft, words, chosen);
}

// The "FR" of "HX1O4-FR" is no side: it belongs to a number that may yet be recognised.
bool is_within_number(const Draft& draft, const LooseWords& words, const GroupMatch& match) {
  const Token& token = draft.token(words[match.first].token);
  return match.count == 1 && token.has_digit && token.words.size() > 1;
}

// "back axle nut is off": what was read between "back" and "off" parts them.
bool is_parted(const Draft& draft, const LooseWords& words, const GroupMatch& match) {
  for (std::size_t i = match.first + 1; i < match.first + match.count; ++i)
    for (std::size_t at = words[i - 1].token + 1; at < words[i].token; ++at)
      if (!std::ranges::all_of(draft.token(at).words, is_noise)) return true;
  return false;
}

// "linkage grease fittings": grease fittings, of the linkage, since no name here has a word for what the
// linkage's grease would leave over.
bool leaves_more(Draft& draft, const LooseWords& words, const std::vector<GroupMatch>& matches,
                 const GroupMatch& match) {
  const std::size_t last = match.first + match.count;  // left over
  if (match.count != 2 || last >= words.size() || words[last].taken ||
      draft.lexicon.names_with(words[last].word) || !draft.lexicon.groups_in({words[last].word}).empty())
    return false;
  const auto takes_it = [&](const GroupMatch& other) {
    return other.count == 2 && other.first == match.first + 1 && is_part_group(other.group);
  };
  return std::ranges::any_of(matches, takes_it) && draft.lexicon.names_with(words[match.first].word);
}

// Whether that token stands behind the clause that asks, or before it, if any does.
bool is_beside_question(const Draft& draft, std::size_t token) {
  const Clause asked = asking_clause(draft);
  return asked.end > asked.begin && (token < asked.begin || token >= asked.end);
}

// "what does the plug get, gap is set": no plug gap.
bool reaches_beside_question(const Draft& draft, const LooseWords& words, const GroupMatch& match) {
  if (!draft.reading.is_spoken || match.count < 2) return false;
  const std::size_t first = words[match.first].token, last = words[match.first + match.count - 1].token;
  for (std::size_t i = first + 1; i <= last; ++i)
    if (begins_clause(draft, i)) return is_beside_question(draft, last);
  return false;
}

// "which oil seals": no grade of oil is asked for.
bool begins_part(const std::vector<GroupMatch>& matches, const GroupMatch& match) {
  return !is_part_group(match.group) && std::ranges::any_of(matches, [&](const GroupMatch& other) {
    return other.count > 1 && other.first + 1 == match.first + match.count && is_part_group(other.group);
  });
}

// The longest first; of equal ones that on the left.
void read_groups(Draft& draft, LooseWords& words, std::size_t at_least) {
  auto matches = draft.lexicon.groups_in(texts_of(words));
  std::ranges::stable_sort(matches, [](const GroupMatch& left, const GroupMatch& right) {
    return std::tuple(right.count, left.first) < std::tuple(left.count, right.first);
  });
  // "link" is no "links", left in German; nor are the links of a chain.
  const bool has_chain = draft.says_any({"chain", "kette", "chaine", "cadena", "catena"});
  std::erase_if(matches, [&](const GroupMatch& match) {
    const std::string& word = words[match.first].word;
    if ((word == "bare" || word == "backing") && match.count == 1)
      return true;  // no plural of the unit, no side
    const std::size_t token = words[match.first].token;
    const bool is_counted = token > 0 && is_number(draft.token(token - 1));  // "15 links"
    return match.group == "side-left" && match.count == 1 &&
           (word == "link" || (word == "links" && (has_chain || is_counted)));
  });
  for (const auto& match : matches)
    if (match.count >= at_least && is_free(words, match) &&
        !(match.count == 2 && begins_part(matches, match)) && !reaches_beside_question(draft, words, match) &&
        !leaves_more(draft, words, matches, match) && !is_within_number(draft, words, match) &&
        (is_part_group(match.group) || !is_parted(draft, words, match)))
      read_match(draft, words, matches, match);
}

// "per leg", "each side": every figure says for itself what it is counted by.
bool counts_by(const LooseWords& words, std::size_t i) {
  static constexpr std::string_view by[] = {"a", "per", "each", "every", "both", "pro", "je"};
  static constexpr std::string_view counted[] = {"leg", "legs", "side", "wheel", "bein", "holm"};
  return i > 0 && std::ranges::find(by, words[i - 1].word) != std::end(by) &&
         std::ranges::find(counted, words[i].word) != std::end(counted);
}

LooseWords without_noise(Draft& draft, const LooseWords& words) {
  LooseWords left;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (is_noise(words[i].word) || counts_by(words, i))
      draft.reading.left_out.push_back(words[i].word);
    else
      left.push_back(words[i]);
  }
  return left;
}

// "bolts" of "heat shield bolts silencer" belongs to what stands before it.
bool follows_a_name(const Draft& draft, const LooseWords& words, std::size_t i) {
  const std::size_t token = words[i].token;
  const auto matches = draft.lexicon.groups_in({words[i].word});
  const bool is_fastener = std::ranges::any_of(
      matches, [](const GroupMatch& match) { return match.group == "bolt" || match.group == "nut"; });
  if (!is_fastener || token == 0 || draft.taken[token - 1]) return false;
  const bool is_loose =
      std::ranges::any_of(words, [&](const Loose& each) { return each.token == token - 1; });
  return !is_loose && !std::ranges::all_of(draft.token(token - 1).words, is_noise);
}

// "back wheel, rim lock nut": the "back" is the wheel's, and makes no back nut.
bool is_side_of_another(const Draft& draft, const LooseWords& words, std::size_t i, std::size_t j) {
  const auto is_doubted = [&](const Loose& side) {  // "top or bottom"
    constexpr std::string_view sides[] = {"top",  "bottom", "upper", "lower", "front",
                                          "back", "rear",   "left",  "right"};
    return std::ranges::find(sides, std::string_view(side.word)) != std::end(sides) &&
           (draft.has_word(side.token + 1, "or") || (side.token > 0 && draft.has_word(side.token - 1, "or")));
  };
  if (is_doubted(words[i]) || is_doubted(words[j])) return true;
  const auto stands_before_other = [&](const Loose& side, const Loose& other) {
    if (side.word != "back" || side.token + 1 == other.token || side.token + 1 >= draft.size()) return false;
    return std::ranges::any_of(words, [&](const Loose& each) { return each.token == side.token + 1; });
  };
  return stands_before_other(words[i], words[j]) || stands_before_other(words[j], words[i]);
}

// "calliper off for pads, how tight do its bolts go": not those of what was said on the way.
bool is_said_on_the_way(const Draft& draft, const Loose& one, const Loose& other) {
  constexpr std::string_view ways[] = {"for", "at", "with", "under", "behind", "from"},
                             articles[] = {"the", "a", "new", "its"};
  const std::size_t first = std::min(one.token, other.token), last = std::max(one.token, other.token);
  const std::size_t before = first > 0 && draft.has_any(first - 1, articles) ? first - 1 : first;
  if (!draft.reading.is_spoken) return false;
  const bool is_turned = one.token > other.token &&
                         begins_clause(draft, one.token);      // "oil gauge in, engine hot": no engine oil
  const bool is_told_after = is_beside_question(draft, last);  // "the caliper bolts, hose is still on"
  const bool is_on_the_way = before > 0 && draft.has_any(before - 1, ways);
  if (!is_turned && !is_told_after && !is_on_the_way) return false;
  for (std::size_t i = first + 1; i <= last; ++i)
    if (begins_clause(draft, i)) return true;
  return false;
}

// "plug drain", "nut front axle": two words that name a part in the other order, or with others between.
bool read_parted_pair(Draft& draft, LooseWords& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (std::size_t j = 0; j < words.size(); ++j) {
      if (i == j || (j < i && follows_a_name(draft, words, j)) || is_side_of_another(draft, words, i, j) ||
          is_said_on_the_way(draft, words[i], words[j]))
        continue;
      const LooseWords pair = {words[i], words[j]};
      const auto matches = draft.lexicon.groups_in(texts_of(pair));
      for (const auto& match : matches) {
        if (match.count != 2 || !is_part_group(match.group) || match.group == "two-up")
          continue;  // "two sensors up north"
        LooseWords taken = pair;
        read_match(draft, taken, matches, match);
        words[i].taken = words[j].taken = true;
        words = without_taken(words);
        return true;
      }
    }
  }
  return false;
}

constexpr std::size_t most_words_in_pairs = 8;  // 56 pairs to look at

void mark_read_tokens(Draft& draft, const LooseWords& left) {
  for (std::size_t i = 0; i < draft.size(); ++i) {
    const bool is_left = std::ranges::any_of(left, [&](const Loose& each) { return each.token == i; });
    if (!is_left) draft.taken[i] = true;
  }
}

}  // namespace

void read_words(Draft& draft) {
  LooseWords words = loose_words(draft);
  read_figure_names(draft, words);
  read_groups(draft, words, 2);  // "how much", "which oil": before their noise words go
  words = without_noise(draft, without_taken(words));
  read_groups(draft, words, 2);
  words = without_taken(words);
  while (words.size() <= most_words_in_pairs && read_parted_pair(draft, words)) {
  }
  read_groups(draft, words, 1);
  read_together(draft);
  mark_read_tokens(draft, without_taken(words));
}

}  // namespace sheaf
