// SPDX-License-Identifier: GPL-2.0-or-later
// What was found, as one JSON document. JSON.md describes every member.
#pragma once

#include "query/answer/findings.h"
#include "query/answer/json.h"

namespace sheaf {

void write_json(JsonWriter& json, const FoundAnswers& found);
void write_json(JsonWriter& json, const QuestionReading& reading);

}  // namespace sheaf
