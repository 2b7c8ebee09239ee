// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/read.h"

#include "query/search/draft.h"
#include "query/search/spoken_numbers.h"
#include "query/trade/measured.h"

namespace sheaf {

QuestionReading read_question(std::string_view text, Lexicon& lexicon) {
  Draft draft(question_of(with_digits(with_leading_zeros(text))), lexicon);
  read_designations(draft);
  read_frames(draft);
  correct_words(draft);
  read_machines(draft);
  read_sequence(draft);
  read_adverbs(draft);
  read_words(draft);
  read_numbers(draft);
  read_rest(draft);
  read_phrases(draft);
  return std::move(draft.reading);
}

}  // namespace sheaf
