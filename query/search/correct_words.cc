// SPDX-License-Identifier: GPL-2.0-or-later
// Words that nobody knows are read as the nearest known one; words run together are parted, and parted ones
// joined.
#include <algorithm>

#include "query/library/fold.h"
#include "query/search/draft.h"
#include "query/search/short_form.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

bool is_unit(std::string_view word) { return !readings(word).empty(); }

void replace_words(Draft& draft, std::size_t i, std::vector<std::string> words) {
  Token& token = draft.question.tokens[i];
  std::string read;
  for (const auto& word : words) read += (read.empty() ? "" : " ") + word;
  draft.reading.corrections.push_back({token.typed, read});
  token.words = std::move(words);
  token.has_digit = std::ranges::any_of(token.words, has_digit);
}

bool names_side(Draft& draft, const std::string& word) {
  return std::ranges::any_of(draft.lexicon.groups_in({word}),
                             [](const GroupMatch& match) { return !side_of_group(match.group).empty(); });
}

constexpr std::size_t shortest_piece = 3, most_pieces = 5;

// What a word without spaces may be made of: a word of names, a machine, a word of the glossary; digits.
bool is_piece(Draft& draft, const std::string& word) {
  if (is_digits(word)) return true;
  return draft.lexicon.has_term(Prefix::word, word) || !draft.lexicon.machines_with(word).empty() ||
         names_side(draft, word);
}

// The fewest pieces from there on, the longest first; empty if there are none.
std::vector<std::string> pieces_of(Draft& draft, const std::string& word, std::size_t most) {
  if (is_piece(draft, word)) return {word};
  std::vector<std::string> best;
  for (std::size_t at = word.size() - 1; most > 1 && at >= shortest_piece; --at) {
    const bool parts_digits = has_digit(word.substr(at - 1, 2)) &&
                              is_digits(word.substr(at - 1, 1)) == is_digits(word.substr(at, 1));
    if (word.size() - at < shortest_piece || parts_digits || !is_piece(draft, word.substr(0, at))) continue;
    auto rest = pieces_of(draft, word.substr(at), most - 1);
    if (rest.empty() || (!best.empty() && rest.size() + 1 >= best.size())) continue;
    rest.insert(rest.begin(), word.substr(0, at));
    best = std::move(rest);
  }
  return best;
}

// "topplug", "causewayrearaxlenut": a space was left out, or several. "Hinterachsmutter": a side, and a part
// by the glossary.
bool split_word(Draft& draft, std::size_t i, const std::string& word) {
  if (auto pieces = pieces_of(draft, word, most_pieces); pieces.size() > 1) {
    replace_words(draft, i, std::move(pieces));
    return true;
  }
  for (std::size_t at = shortest_piece; at + shortest_piece <= word.size(); ++at) {
    const std::string left = word.substr(0, at), right = word.substr(at);
    const auto is_both = [](const GroupMatch& match) { return match.count == 2; };  // "tripleclamp"
    const bool names_them = std::ranges::any_of(draft.lexicon.groups_in({left, right}), is_both);
    if (!names_them && (!names_side(draft, left) || draft.lexicon.groups_in({right}).empty())) continue;
    replace_words(draft, i, {left, right});
    return true;
  }
  return false;
}

// "swing arm" where only "swingarm" is known: the first takes both, the second becomes empty.
bool join_with_next(Draft& draft, std::size_t i) {
  if (!draft.is_free(i, 2) || draft.token(i + 1).words.size() != 1) return false;
  const std::string joined = draft.token(i).words.front() + draft.token(i + 1).words.front();
  if (has_digit(joined) || !draft.lexicon.knows(joined)) return false;
  draft.reading.corrections.push_back({draft.question.typed(i, 2), joined});
  draft.question.tokens[i].words = {joined};
  draft.take(i + 1, 1);
  return true;
}

// "handle bar": names say only "handlebar". "Gabelöl Stand": the glossary says only "Gabelölstand".
bool join_if_named(Draft& draft, std::size_t i) {
  if (!draft.is_free(i, 2) || draft.token(i + 1).words.size() != 1) return false;
  const std::string& left = draft.token(i).words.front();
  const std::string& right = draft.token(i + 1).words.front();
  if (left.size() < 3 || right.size() < 3 || has_digit(left + right)) return false;
  const auto stands = [&](const std::string& word) { return draft.lexicon.has_term(Prefix::word, word); };
  if (stands(left)) return stands(left + right) && !stands(right) && join_with_next(draft, i);
  if (stands(left + right)) return join_with_next(draft, i);
  const auto tells_already = [&](const GroupMatch& match) {
    return match.count == 2 || !is_part_group(match.group);
  };  // "Gabelöl Menge", "Auslass Ventilspiel"
  return !draft.lexicon.groups_in({left + right}).empty() &&
         std::ranges::none_of(draft.lexicon.groups_in({left, right}), tells_already) &&
         join_with_next(draft, i);
}

// "mule back 380"
bool join_machine(Draft& draft, std::size_t i) {
  if (!draft.is_free(i, 2) || draft.token(i + 1).words.size() != 1) return false;
  const std::string joined = draft.token(i).words.front() + draft.token(i + 1).words.front();
  const bool is_side = names_side(draft, draft.token(i + 1).words.front());
  if (is_side && i + 2 < draft.size() && !draft.taken[i + 2] && !draft.token(i + 2).has_digit)
    return false;  // "mule back tyre"
  return !has_digit(joined) && !draft.lexicon.machines_with(joined).empty() && join_with_next(draft, i);
}

// The beginning of a model's name is a name for it: "mule" for Muleback.
bool begins_machine(Draft& draft, const std::string& word) {
  return word.size() >= shortest_beginning && !draft.lexicon.machines_beginning(word).empty();
}

// "cway", "pckt": the one model's name that begins and ends so and has its letters in that order; empty if
// none.
std::string machine_shortened(Draft& draft, const std::string& word) {
  constexpr std::size_t shortest = 4, most_tried = 3;
  std::string whole;
  const std::size_t vowels = word.size() - consonants_of(word).size();
  if (word.size() < shortest || vowels > 1 || draft.machines_tried++ >= most_tried)
    return whole;  // each try reads all machines with that letter
  for (const auto& machine : draft.lexicon.machines_beginning(word.substr(0, 1)))
    for (const auto& name : words_of(fold(machine.model))) {
      if (name == whole || name.back() != word.back() || 2 * word.size() < name.size() ||
          !shortens(word, name))
        continue;
      if (!whole.empty()) return {};
      whole = name;
    }
  return whole;
}

// "oil filter no.", "no. 12": of the number, where the point stands.
bool says_number(const Draft& draft, std::size_t i) {
  const auto& text = draft.question.text;
  const std::size_t end = draft.token(i).end;
  const bool is_at_end = i + 1 == draft.size() || draft.token(i + 1).has_digit;
  return is_at_end && draft.has_word(i, "no") && end < text.size() && text[end] == '.';
}

// "how many w": watts, and not "with".
bool stands_for_unit(const Draft& draft, std::size_t i) {
  return i > 0 && draft.has_word(i, "w") &&
         (draft.has_word(i - 1, "many") || draft.has_word(i - 1, "much") || draft.has_word(i - 1, "in"));
}

// "2 up": two riders, and no measure of 2.
bool says_riders(const Draft& draft, std::size_t i) {
  return draft.token(i).typed == "2" && draft.has_word(i + 1, "up");
}

// "braket": an everyday thing that has one letter more, and no brake; empty if there is none.
std::string thing_with_a_letter(const std::string& word) {
  constexpr std::size_t shortest = 5;
  std::string thing;
  if (word.size() < shortest) return thing;
  for (std::size_t at = 1; at <= word.size(); ++at)
    for (char letter = 'a'; letter <= 'z'; ++letter) {
      std::string whole = word;
      whole.insert(at, 1, letter);
      if (is_thing(whole)) thing = std::move(whole);
    }
  return thing;
}

bool correct_word(Draft& draft, std::size_t i) {
  if (draft.token(i).typed == "2up") {
    draft.question.tokens[i].words = {"two", "up"};
    draft.question.tokens[i].has_digit = false;
    return true;
  }
  if (says_riders(draft, i)) {
    draft.question.tokens[i].words = {"two"};
    draft.question.tokens[i].has_digit = false;
    return true;
  }
  if (says_number(draft, i)) {
    draft.question.tokens[i].words = {"number"};
    return true;
  }
  const std::string word = draft.token(i).words.front();
  const auto whole = whole_of(word);
  if ((has_digit(word) && whole.empty()) || stands_for_unit(draft, i)) return false;
  const bool is_brief = !whole.empty() && !draft.lexicon.names_with(word) &&
                        draft.lexicon.groups_in({word}).empty();  // some note may hold "hd"
  if (!is_brief && is_known(draft, word)) return join_if_named(draft, i);
  if (begins_machine(draft, word)) return join_machine(draft, i);
  if (is_brief) {
    replace_words(draft, i, {std::string(whole)});
    return true;
  }
  if (join_with_next(draft, i) || split_word(draft, i, word)) return true;
  if (is_aspect(word) || is_everyday(word)) return false;
  if (auto machine = machine_shortened(draft, word); !machine.empty()) {
    replace_words(draft, i, {std::move(machine)});
    return true;
  }
  const auto meant = draft.lexicon.correction_of(word, 1);
  const bool lacks_letter = !meant || meant->size() < word.size();
  if (auto thing = lacks_letter ? thing_with_a_letter(word) : std::string(); !thing.empty()) {
    draft.question.tokens[i].words = {std::move(thing)};
    return true;
  }
  if (meant) {
    replace_words(draft, i, {*meant});
  } else if (const auto said = noise_near(word); !said.empty()) {
    draft.question.tokens[i].words = {std::string(said)};  // says nothing, so nothing is said of it
  } else if (const auto far = draft.lexicon.correction_of(word)) {
    replace_words(draft, i, {*far});
  } else {
    return false;
  }
  return true;
}

// "muleback2012": the machine, and its year as a word of its own.
void part_year_from_machine(Draft& draft, std::size_t i) {
  Token& token = draft.question.tokens[i];
  if (token.words.size() != 1 || token.words.front().size() < 4 + shortest_beginning) return;
  const std::string word = token.words.front();
  const std::string name = word.substr(0, word.size() - 4), year = word.substr(word.size() - 4);
  if (has_digit(name) || !year_in(year) || draft.lexicon.machines_with(name).empty()) return;
  Token of_year = token;
  of_year.typed = year;
  of_year.words = {year};
  token.words = {name};
  token.has_digit = false;
  draft.question.tokens.insert(draft.question.tokens.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                               std::move(of_year));
  draft.taken.insert(draft.taken.begin() + static_cast<std::ptrdiff_t>(i) + 1, false);
}

// "450chain": a machine's number, and a word of its own.
void part_number_from_word(Draft& draft, std::size_t i) {
  Token& token = draft.question.tokens[i];
  if (token.words.size() != 1) return;
  const std::string word = token.words.front();
  const std::size_t at = word.find_first_not_of("0123456789");
  if (at == std::string::npos || at < shortest_beginning || word.size() < at + shortest_beginning) return;
  const std::string number = word.substr(0, at), name = word.substr(at);
  if (has_digit(name) || is_unit(name) || !draft.lexicon.names_with(name) ||
      draft.lexicon.machines_with(number).empty())
    return;
  Token of_name = token;
  of_name.typed = of_name.typed.substr(at);
  of_name.words = {name};
  of_name.begin += at;
  of_name.has_digit = false;
  token.end = of_name.begin;
  token.typed = number;
  token.words = {number};
  draft.question.tokens.insert(draft.question.tokens.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                               std::move(of_name));
  draft.taken.insert(draft.taken.begin() + static_cast<std::ptrdiff_t>(i) + 1, false);
}

// "themuleback", once its words are parted: each a word of its own.
void part_from_machine(Draft& draft, std::size_t i) {
  const auto words = draft.token(i).words;
  const auto names_machine = [&](const std::string& word) {
    return !has_digit(word) && !is_noise(word) && !draft.lexicon.machines_with(word).empty();
  };
  if (words.size() < 2 || draft.token(i).has_digit || std::ranges::none_of(words, names_machine)) return;
  std::vector<Token> tokens(words.size(), draft.token(i));
  for (std::size_t word = 0; word < words.size(); ++word) tokens[word].words = {words[word]};
  const auto at = static_cast<std::ptrdiff_t>(i);
  draft.question.tokens.erase(draft.question.tokens.begin() + at);
  draft.question.tokens.insert(draft.question.tokens.begin() + at, tokens.begin(), tokens.end());
  draft.taken.insert(draft.taken.begin() + at, words.size() - 1, false);
}

}  // namespace

void correct_words(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (auto whole = whole_of_slashed(fold(draft.token(i).typed)); !draft.taken[i] && !whole.empty())
      draft.question.tokens[i].words = std::move(whole);
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (!draft.taken[i]) part_year_from_machine(draft, i), part_number_from_word(draft, i);
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (!draft.taken[i] && draft.token(i).words.size() == 1) correct_word(draft, i);
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (!draft.taken[i]) part_from_machine(draft, i);
}

}  // namespace sheaf
