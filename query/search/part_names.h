// SPDX-License-Identifier: GPL-2.0-or-later
// What the groups of a part's words tell of it: some name a part, some are said of very many, some say what
// is measured. Internal to search.
#pragma once

#include <string>

#include "query/search/reading.h"

namespace sheaf {

// "bolt", "seal", "oil": said of so many things that another word must tell which.
bool says_little(const std::string& group);

// "flatness", "free-play": what is measured of a part; a question without it is another.
bool says_what_of_it(const std::string& group);

// Whether the part is known by it alone: "drain plug", not "bolt" nor "flatness".
bool names_a_part(const PartAsked& part);

// "relay" of "starter relay screws": an everyday thing right before another word is what that belongs to.
bool tells_another(const PartAsked& part, const QuestionReading& reading);

}  // namespace sheaf
