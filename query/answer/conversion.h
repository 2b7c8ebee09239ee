// SPDX-License-Identifier: GPL-2.0-or-later
// Answers of `sheaf convert`, as text, JSON and CSV. What is typed is primary, the rest is derived.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/answer/json.h"
#include "query/answer/page.h"
#include "query/quantity/request.h"

namespace sheaf {

// One line that was typed, with its readings or with why there are none.
struct Conversion {
  std::string typed;
  std::vector<Reading> readings;
  std::optional<Failure> failure;
  std::optional<Number> step;  // of the scale that the setting is for
};

Conversion convert_line(const std::string& typed, const std::optional<Number>& step);

void write_text(Page& page, const Conversion& conversion);
void write_json(JsonWriter& json, const Conversion& conversion);

// "35 N·m ≈ 25.8 lbf·ft": one line for each line of a batch. A fault is marked with "?".
std::string one_line(const Conversion& conversion);

std::string csv_heading();
std::string csv_rows(const Conversion& conversion);

void write_text(Page& page, const ConversionTable& table);
void write_json(JsonWriter& json, const ConversionTable& table);
std::string csv_rows(const ConversionTable& table);

}  // namespace sheaf
