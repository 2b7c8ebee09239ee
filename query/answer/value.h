// SPDX-License-Identifier: GPL-2.0-or-later
// The value of one field as an answer says it: the figure as its source states it, and the same in the
// units of the reader's tools, marked as derived.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"
#include "query/library/vocabulary.h"
#include "query/quantity/convert.h"

namespace sheaf {

// A statement in another unit. Stages that are angles stay as they are.
struct Derived {
  const Unit* unit = nullptr;
  Statement statement;
  std::string lead, band;
  bool exact = false;  // no digit was rounded
};

struct Value {
  std::string key;         // "dry-fill"
  std::string label;       // "dry fill"
  std::string text;        // as written in the sheet, in canonical spelling
  std::string lead;        // what is shown large: "28 N·m", "41 × 54 × 11 mm", "left"
  std::string band;        // "25–31", in the unit of the lead; empty where the source states none
  std::string conditions;  // "per leg", "at 40 °C, spring out"
  std::optional<Statement> statement;  // where the value is a quantity
  std::vector<Derived> derived;
  Place place;
};

// Units that the reader has tools in, most wanted first: of any dimension, each taken where it fits.
using PreferredUnits = std::vector<const Unit*>;

// `declaration` may be null: a column of a table, whose type its text shows.
Value say(const FieldRecord& field, const FieldDeclaration* declaration, const PreferredUnits& preferred);

// "28 N·m" of 28 ± 3 N·m; the whole figure where it has no nominal.
std::string lead_of(const Figure& figure);
// "25–31" of 28 ± 3 N·m; empty where the lead says all.
std::string band_of(const Figure& figure);

// What a choice or a count means to the reader: hand left -> "left-hand thread", reuse no -> "fit new",
// count 2 -> "2 of them".
std::string choice_words(std::string_view key, std::string_view choice);

// Foot-pounds for inch-pounds is a slip of twelve: lbf·in, the one unit whose name is spelled out beside it.
std::string_view spelled_out(const Unit& unit);

// "dry-fill" -> "dry fill"
std::string in_words(std::string_view kebab);

}  // namespace sheaf
