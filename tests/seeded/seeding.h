// SPDX-License-Identifier: GPL-2.0-or-later
// One realistic mistake put into good sheets: which bytes change, and what should come of it.
#pragma once

#include <functional>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/link/linked_sheets.h"

namespace seeded {

using Random = std::mt19937;

// Replaces `length` bytes at a place of a sheet's text.
struct Edit {
  std::string_view file;
  std::size_t at = 0;
  std::size_t length = 0;
  std::string text;
};

struct Seeding {
  std::vector<Edit> edits;
  std::string slip;  // words by which the report should name the slip; empty: none is asked
};

// What can be asked of a kind of mistake.
enum class Asked {
  impossible,  // the figure cannot be right: an error or a warning
  unlikely,    // a warning, or an error
  note,        // a note counts
  peers,       // can only be seen among five or more of its like: tabled apart
};

// Tries to put the mistake into one entry; nothing where the entry offers no place for it.
using Sow = std::function<std::optional<Seeding>(const sheafc::LinkedEntry&, Random&)>;

struct Mistake {
  int number;  // in the list of authoring mistakes
  std::string_view name;
  Asked asked;
  Sow sow;
};

const std::vector<Mistake>& all_mistakes();

}  // namespace seeded
