// SPDX-License-Identifier: GPL-2.0-or-later
// A question half read: each reader takes the words that are its own. Internal to search.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/search/digits.h"
#include "query/search/lexicon.h"
#include "query/search/question.h"
#include "query/search/reading.h"

namespace sheaf {

using SomeWords = std::span<const std::string_view>;

struct Draft {
  Draft(Question asked, Lexicon& words)
      : question(std::move(asked)), lexicon(words), taken(question.tokens.size()) {}

  Question question;
  Lexicon& lexicon;
  QuestionReading reading;
  std::vector<bool> taken;  // by token
  struct SideSaid {
    std::string side;
    std::size_t token;
  };
  std::vector<SideSaid> sides_said;
  std::size_t machines_tried = 0;  // words taken for a machine's name cut short

  std::size_t size() const { return question.tokens.size(); }
  const Token& token(std::size_t i) const { return question.tokens[i]; }
  bool is_free(std::size_t first, std::size_t count) const {
    if (first + count > size()) return false;
    return std::none_of(taken.begin() + static_cast<std::ptrdiff_t>(first),
                        taken.begin() + static_cast<std::ptrdiff_t>(first + count),
                        [](bool is) { return is; });
  }
  void take(std::size_t first, std::size_t count) {
    for (std::size_t i = first; i < first + count && i < size(); ++i) taken[i] = true;
  }
  bool has_word(std::size_t i, std::string_view word) const {
    return i < size() && token(i).words.size() == 1 && token(i).words.front() == word;
  }
  // That token is one of them; some word of the question is.
  bool has_any(std::size_t i, SomeWords words) const {
    return std::any_of(words.begin(), words.end(), [&](std::string_view word) { return has_word(i, word); });
  }
  bool has_any(std::size_t i, std::initializer_list<std::string_view> words) const {
    return has_any(i, SomeWords(words.begin(), words.size()));
  }
  bool says_any(SomeWords words) const;
  bool says_any(std::initializer_list<std::string_view> words) const {
    return says_any(SomeWords(words.begin(), words.size()));
  }
  bool says_any_stem(std::initializer_list<std::string_view> stems) const;
};

// What readers write into the reading.
void add_new(std::vector<std::string>& list, std::string value);
void add_unit(QuestionReading& reading,
              const std::string& typed);  // in which the answer is wanted; none is no unit
// A part asked for by those words, with the groups that each of them names.
PartAsked part_of(Draft& draft, const std::string& typed);
// Whether a group of the glossary names parts; others name sides, hands and figures.
bool is_part_group(std::string_view group);

// Quantities that begin at that token: whether one may, a figure that is no length, and a length.
bool begins_quantity(const Draft& draft, std::size_t i);
bool read_figure(Draft& draft, std::size_t i);
bool read_length(Draft& draft, std::size_t i);
// A number that stands for millimetres though nothing says so.
LengthAsked length_of(const std::string& typed, const Number& number, LengthOf of);

// Says nothing, is a unit, or stands in a library or the glossary.
bool is_known(Draft& draft, const std::string& word);
inline constexpr std::size_t shortest_beginning = 3;  // letters of a model's name, enough to know it by

// "17", "9.5": no unit, no sign.
bool is_number(const Token& token);
// Whether that token is a number by which a machine goes: "380".
bool is_model(Draft& draft, std::size_t i);
// Whether the question has a word for what is tightened, or for its head.
bool names_fastener(const Draft& draft);
// How a torque is reached, from that token on.
bool read_stages(Draft& draft, std::size_t i);

// "2013", "'13": a model year; four digits outside 1950..2049 are a number.
std::optional<int> year_in(std::string_view text);

// Whether a part has that number, squeezed: its own, or one from before, after or elsewhere.
bool is_listed_number(Lexicon& lexicon, const std::string& squeezed);

// Whether it is a tyre's size, by its width, its shape and perhaps its rim: "160/60-17".
bool is_tyre_size(std::string_view typed);

// In this order. What one does not take is left to the next.
void read_designations(Draft& draft);  // threads, drives, sizes, bearings, codes, quantities with units
void read_frames(Draft& draft);        // frame numbers, by the word before them
void correct_words(Draft& draft);      // words that nobody knows
void read_machines(Draft& draft);
void read_sequence(Draft& draft);  // what is said to come after what is asked, or not to be meant
void read_adverbs(Draft& draft);   // "half a turn back"
void read_words(Draft& draft);     // parts, sides, kinds of figure, by the glossary
void read_together(Draft& draft);  // what the words mean beside each other
void read_implied(Draft& draft);   // parts that go without saying
void read_numbers(Draft& draft);   // years, bare sizes, part numbers
void read_rest(Draft& draft);      // free words, and those that say nothing
void read_measured(Draft& draft);  // what was measured, and is no size of what is sought
void read_phrases(Draft& draft);   // what stands together

// Whether a comma, a full stop or a dash stands before that token; not of the first.
bool begins_clause(const Draft& draft, std::size_t i);

// Whether a folded word says nothing of what is sought: "the", "for", "how", in five languages.
bool is_noise(std::string_view word);
// Whether a folded word says what of a thing is meant, as names may or may not: "diameter", "type".
bool is_aspect(std::string_view word);
// "bearing" of "brg"; empty where it is no short form of the trade's.
std::string_view whole_of(std::string_view brief);
// "left", "hand" of "l/h"; none where it is not written so.
std::vector<std::string> whole_of_slashed(std::string_view brief);
// Whether a folded word is one of everyday English that says what is done, how or when, not what of:
// "sticks".
bool is_ordinary(std::string_view word);
// Whether it is such a word or an everyday thing, "belt": it was meant as typed.
bool is_everyday(std::string_view word);
// Whether it is such a thing, by its plain name: "bracket".
bool is_thing(std::string_view word);
// Such a noise word of three letters or more that is one slip away; empty if there is none.
std::string_view noise_near(std::string_view word);

}  // namespace sheaf
