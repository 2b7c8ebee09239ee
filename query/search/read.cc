// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/read.h"

#include "query/search/draft.h"
#include "query/search/spoken_numbers.h"
#include "query/trade/measured.h"

namespace sheaf {

namespace {

// "got a 2014 packlet here, which seals do I order"
bool is_sentence(const Question& question) {
  constexpr std::size_t shortest = 8;
  constexpr std::ptrdiff_t least_said = 3;  // words that say nothing
  const auto says_nothing = [](const Token& token) { return std::ranges::all_of(token.words, is_noise); };
  return question.tokens.size() >= shortest &&
         std::ranges::count_if(question.tokens, says_nothing) >= least_said;
}

}  // namespace

QuestionReading read_question(std::string_view text, Lexicon& lexicon) {
  Draft draft(question_of(with_digits(with_leading_zeros(text))), lexicon);
  draft.reading.is_spoken = is_sentence(draft.question);
  read_designations(draft);
  read_frames(draft);
  correct_words(draft);
  read_machines(draft);
  read_sequence(draft);
  read_adverbs(draft);
  read_words(draft);
  read_numbers(draft);
  read_rest(draft);
  read_measured(draft);
  read_phrases(draft);
  return std::move(draft.reading);
}

}  // namespace sheaf
