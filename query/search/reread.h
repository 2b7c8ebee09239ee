// SPDX-License-Identifier: GPL-2.0-or-later
// Questions that must not be answered as they are, and other readings for where the first finds nothing: each
// changes the reading and says whether it did. Internal to search.
#pragma once

#include "query/search/lexicon.h"
#include "query/search/reading.h"

namespace sheaf {

// A word that nobody knows may be a machine that is not in the library, and a number that nobody could
// read may be its model: the figure of another must not answer. Beside a machine that is known, a word
// says nothing; a number still does.
bool is_blocked(const QuestionReading& reading);

// "bar" asks for a pressure, though the handlebar is called so too.
bool leave_out_units(QuestionReading& reading);

// A word that no name here holds and the glossary does not know, though some note does, says nothing beside
// others that name a part; nor does one that was corrected to what leads nowhere.
bool leave_out_words_of_notes(QuestionReading& reading, Lexicon& lexicon);

// A word that stands in notes alone may be a slip for one that names parts ("break" for "brake").
bool reread_words_of_notes(QuestionReading& reading, Lexicon& lexicon);

// "31 mm fork oil": of the fork whose tubes are so wide.
bool take_tube_of_fork(QuestionReading& reading, Lexicon& lexicon);

}  // namespace sheaf
