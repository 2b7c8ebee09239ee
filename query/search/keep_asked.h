// SPDX-License-Identifier: GPL-2.0-or-later
// Of what was found, what is as the question says beyond its words: reached by those stages, tightened in
// that order, numbered so. Internal to search.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <vector>

#include "query/search/find.h"

namespace sheaf {

// Where some of the hits are so, only those stay; how many went.
std::size_t keep_asked(std::vector<Hit>& hits, const QuestionReading& reading);

// "front axle nut": of a machine whose axle has no nut, it is none beside the nuts of others.
bool is_other_fastener(const EntryRecord& entry, const EntryRecord& best, const QuestionReading& reading);

// "ordinary M12 bolt": the figure for nuts is none.
bool is_other_general_fastener(const EntryRecord& entry, const QuestionReading& reading);

// Stems of the words of its name.
std::set<std::string> stems_of_name(const EntryRecord& entry);

// "nut", "bolt": what a part's name says it is; empty if it says nothing of the kind.
std::string fastener_named(const std::vector<std::string>& words);

}  // namespace sheaf
