// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/lexicon.h"

#include <algorithm>
#include <array>

#include "query/library/fold.h"
#include "query/library/index.h"
#include "query/search/digits.h"
#include "query/search/short_form.h"

namespace sheaf {
namespace {

constexpr std::size_t longest_corrected = 24;       // bytes; beyond it looking for a spelling takes too long
constexpr std::size_t long_word = 6;                // letters
constexpr std::size_t most_words_looked_at = 2000;  // that begin with the letters typed
constexpr std::size_t most_numbers_looked_at = 200'000;

// How many slips a word of that length may hold and still be recognised.
unsigned slips_allowed(std::size_t length) { return length < 3 ? 0 : length < 6 ? 1 : 2; }

// "plg", "hed": of three letters nothing can be wrong but that one within them was left out.
bool lacks_one_within(std::string_view typed, std::string_view meant) {
  return meant.size() == typed.size() + 1 && meant.front() == typed.front() && meant.back() == typed.back();
}

// "tapet" of "tappet"
bool lacks_one(std::string_view typed, std::string_view meant) {
  if (meant.size() != typed.size() + 1) return false;
  const auto at = static_cast<std::size_t>(std::ranges::mismatch(typed, meant).in1 - typed.begin());
  return typed.substr(at) == meant.substr(at + 1);
}

bool matches(std::string_view text, std::string_view pattern) {
  if (text.size() != pattern.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (pattern[i] != '?' && pattern[i] != text[i]) return false;
  return true;
}

bool begins_swapped(std::string_view left, std::string_view right) {
  return left.size() == right.size() && left[0] == right[1] && left[1] == right[0];
}

void add_new(std::vector<Machine>& machines, Machine machine) {
  const auto is_same = [&](const Machine& other) {
    return other.make == machine.make && other.model == machine.model;
  };
  const auto found = std::ranges::find_if(machines, is_same);
  if (found == machines.end()) return machines.push_back(std::move(machine));
  if (machine.year_from < found->year_from) found->year_from = machine.year_from;
  if (found->year_to != 0 && (machine.year_to == 0 || machine.year_to > found->year_to))
    found->year_to = machine.year_to;
}

}  // namespace

const std::vector<WordsBeginningPtr>& Lexicon::group_words(const std::string& stem) {
  const auto known = group_words_.find(stem);
  if (known != group_words_.end()) return known->second;
  std::vector<WordsBeginningPtr> all;
  for (Library* library : libraries_) {
    auto words = library->group_words(stem);
    if (!words)
      failure_ = failure_ ? failure_ : words.failure();
    else if (!(*words)->empty())
      all.push_back(*words);
  }
  return group_words_.emplace(stem, std::move(all)).first->second;
}

const std::vector<GroupMatch>& Lexicon::groups_in(const std::vector<std::string>& words) {
  const auto known = groups_.find(words);
  if (known != groups_.end()) return known->second;
  const Letters letters = letters_of(words);
  auto groups = match_groups(words, [&](const std::string& stem) {
    std::vector<const GroupWord*> possible;
    for (const auto& beginning_so : group_words(stem)) {
      const auto more = beginning_so->possible(letters);
      possible.insert(possible.end(), more.begin(), more.end());
    }
    return possible;
  });
  return groups_.emplace(words, std::move(groups)).first->second;
}

const NameRead& Lexicon::read_name(const std::string& name) {
  constexpr std::array<std::string_view, 7> places = {"at", "of", "on", "for", "in", "to", "over"};
  if (const auto known = names_.find(name); known != names_.end()) return known->second;
  const auto words = words_of(fold(name));
  NameRead read{words, {}, words.size(), groups_in(words)};
  for (const auto& word : words) read.stems.push_back(stem_of(word));
  if (const auto comma = name.find(','); comma != std::string::npos)
    read.thing = words_of(fold(name.substr(0, comma))).size();
  for (std::size_t i = 1; i < read.thing; ++i)
    if (std::ranges::find(places, words[i]) != places.end()) read.thing = i;
  return names_.emplace(name, std::move(read)).first->second;
}

const std::vector<Machine>& Lexicon::machines_matching(const std::string& word, bool whole_word) {
  const std::pair key(word, whole_word);
  if (const auto known = machines_.find(key); known != machines_.end()) return known->second;
  std::vector<Machine> all;
  for (Library* library : libraries_) {
    auto machines = whole_word ? library->machines_with_word(word) : library->machines_beginning(word);
    if (!machines) {
      failure_ = failure_ ? failure_ : machines.failure();
      continue;
    }
    if (all.empty()) {
      all = std::move(machines).value();
      continue;
    }
    for (Machine& machine : std::move(machines).value()) add_new(all, std::move(machine));
  }
  return machines_.emplace(key, std::move(all)).first->second;
}

bool Lexicon::has_text_term(const std::string& text) try {
  for (Library* library : libraries_)
    if (index_of(*library).database().term_exists(text)) return true;
  return false;
} catch (const Xapian::Error& error) {
  failure_ = failure_ ? failure_ : Failure{"the index is damaged: " + error.get_msg()};
  return false;
}

bool Lexicon::has_term(Prefix prefix, std::string_view body) { return has_text_term(term(prefix, body)); }

bool Lexicon::names_with(const std::string& word) {
  return has_term(Prefix::word, word) || has_term(Prefix::stem, stem_of(word));
}

bool Lexicon::is_spelling(const std::string& word) try {
  for (Library* library : libraries_) {
    const auto& database = index_of(*library).database();
    auto at = database.spellings_begin();
    at.skip_to(word);
    if (at != database.spellings_end() && *at == word) return true;
  }
  return false;
} catch (const Xapian::Error& error) {
  failure_ = failure_ ? failure_ : Failure{"the index is damaged: " + error.get_msg()};
  return false;
}

bool Lexicon::is_as_common(const std::string& word, const std::string& other) {
  constexpr Xapian::doccount times = 3;  // by which the other must be commoner in names
  Xapian::doccount of_word = 0, of_other = 0;
  for (Library* library : libraries_) {
    const auto& database = index_of(*library).database();
    of_word += database.get_termfreq(term(Prefix::stem, stem_of(word)));
    of_other += database.get_termfreq(term(Prefix::stem, stem_of(other)));
  }
  return of_word * times >= of_other;
}

bool Lexicon::knows(const std::string& word) {
  return names_with(word) || has_term(Prefix::other_stem, stem_of(word)) || is_spelling(word) ||
         !group_words(stem_of(word)).empty();
}

std::optional<std::string> Lexicon::with_letters_swapped(const std::string& word) {
  constexpr std::size_t shortest = 4;
  for (std::size_t i = 1; i + 1 < word.size() && word.size() >= shortest; ++i) {
    std::string swapped = word;
    std::swap(swapped[i], swapped[i + 1]);
    if (swapped != word && is_spelling(swapped)) return swapped;
  }
  return std::nullopt;
}

std::optional<std::string> Lexicon::with_letter_left_out(const std::string& word) {
  constexpr std::size_t shortest = 4, kept = 2;  // letters; those at the beginning are seldom left out
  std::optional<std::string> meant;
  Xapian::doccount most = 0;
  for (Library* library : libraries_) {
    const auto& database = index_of(*library).database();
    const std::string start = word.substr(0, kept);
    auto at = database.spellings_begin();
    if (word.size() >= shortest) at.skip_to(start);
    std::size_t looked_at = 0;
    for (; word.size() >= shortest && at != database.spellings_end() && ++looked_at <= most_words_looked_at;
         ++at) {
      const std::string spelling = *at;
      if (!spelling.starts_with(start)) break;
      if (lacks_one(word, spelling) && at.get_termfreq() > most) {
        most = at.get_termfreq();
        meant = spelling;
      }
    }
  }
  return meant;
}

std::optional<std::string> Lexicon::whole_of_consonants(const std::string& word, bool lacks_vowels_alone) {
  std::optional<std::string> meant;
  Xapian::doccount most = 0;
  if (word.size() > consonants_of(word).size() + 1) return meant;
  for (Library* library : libraries_) {
    const auto& database = index_of(*library).database();
    auto at = database.spellings_begin();
    at.skip_to(word.substr(0, 1));
    std::size_t looked_at = 0;
    for (; at != database.spellings_end() && ++looked_at <= most_words_looked_at; ++at) {
      const std::string spelling = *at;
      if (spelling.front() != word.front()) break;
      if (spelling.back() != word.back() || spelling.size() > 2 * word.size() || !shortens(word, spelling))
        continue;
      if (lacks_vowels_alone && consonants_of(spelling) != consonants_of(word)) continue;
      if (at.get_termfreq() > most) most = at.get_termfreq(), meant = spelling;
    }
  }
  return meant;
}

std::optional<std::string> Lexicon::correction_of(const std::string& word, unsigned most_slips) try {
  if (has_digit(word) || word.size() > longest_corrected) return std::nullopt;
  const auto whole = with_letter_left_out(word);  // "spocket", to which "socket" is as near as "sprocket"
  for (unsigned slips = 1; slips <= std::min(most_slips, slips_allowed(word.size())); ++slips) {
    if (slips > 1)
      if (auto meant = whole_of_consonants(word, false)) return meant;  // "clrnce"
    for (Library* library : libraries_) {
      const auto meant = index_of(*library).database().get_spelling_suggestion(word, slips);
      const bool begins_alike =
          !meant.empty() &&
          (meant[0] == word[0] || (word.size() >= long_word && slips == 1) || begins_swapped(meant, word));
      const bool is_sure = word.size() > 3 || lacks_one_within(word, meant) ||
                           (meant.size() == 3 && begins_swapped(meant.substr(1), word.substr(1)));
      if (begins_alike && is_sure) return slips == 1 && whole && is_as_common(*whole, meant) ? whole : meant;
    }
    if (slips == 1 && whole) return whole;
    if (slips == 1)
      if (auto swapped = with_letters_swapped(word))
        return swapped;  // "bsae", to which "sae" is as near as "base"
  }
  constexpr std::size_t shortest = 4;
  if (most_slips > 1 && word.size() >= shortest) return whole_of_consonants(word, true);  // "exhst"
  return std::nullopt;
} catch (const Xapian::Error& error) {
  failure_ = failure_ ? failure_ : Failure{"the index is damaged: " + error.get_msg()};
  return std::nullopt;
}

std::vector<std::pair<std::string, std::size_t>> Lexicon::words_beginning(const std::string& beginning) try {
  std::map<std::string, std::size_t> entries;
  for (Library* library : libraries_) {
    const auto& database = index_of(*library).database();
    const std::string start = term(Prefix::word, beginning);
    std::size_t looked_at = 0;
    for (auto at = database.allterms_begin(start); at != database.allterms_end(start); ++at) {
      if (++looked_at > most_words_looked_at) break;
      entries[*at] += at.get_termfreq();
    }
  }
  return {entries.begin(), entries.end()};
} catch (const Xapian::Error& error) {
  failure_ = failure_ ? failure_ : Failure{"the index is damaged: " + error.get_msg()};
  return {};
}

std::vector<std::string> Lexicon::numbers(std::string_view beginning, std::string_view pattern,
                                          std::size_t limit) try {
  std::vector<std::string> found;
  for (Library* library : libraries_) {
    for (const Prefix prefix : {Prefix::part_number, Prefix::other_number}) {
      const std::string start = term(prefix, beginning);
      const auto& database = index_of(*library).database();
      std::size_t looked_at = 0;
      for (auto at = database.allterms_begin(start); at != database.allterms_end(start); ++at) {
        const std::string number = (*at).substr(letters_of(prefix).size());
        if (++looked_at > most_numbers_looked_at || found.size() >= limit) break;
        const bool is_new = std::ranges::find(found, number) == found.end();
        if (is_new && (pattern.empty() || matches(number, pattern))) found.push_back(number);
      }
    }
  }
  return found;
} catch (const Xapian::Error& error) {
  failure_ = failure_ ? failure_ : Failure{"the index is damaged: " + error.get_msg()};
  return {};
}

std::vector<std::string> Lexicon::numbers_like(std::string_view pattern, std::size_t limit) {
  return numbers(pattern.substr(0, pattern.find('?')), pattern, limit);
}

std::vector<std::string> Lexicon::numbers_beginning(std::string_view beginning, std::size_t limit) {
  return numbers(beginning, {}, limit);
}

}  // namespace sheaf
