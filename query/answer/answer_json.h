// SPDX-License-Identifier: GPL-2.0-or-later
// An answer as JSON for programs. JSON.md describes every member.
#pragma once

#include "query/answer/answer.h"
#include "query/answer/json.h"

namespace sheaf {

inline constexpr int json_schema = 1;

void write_json(JsonWriter& json, const Answer& answer);
void write_fits(JsonWriter& json, const std::vector<FitRecord>& fits);  // member "machines"
void write_json(JsonWriter& json, const Figure& figure);                // members of an object already begun
void write_json(JsonWriter& json, const Statement& statement);          // the same

}  // namespace sheaf
