// SPDX-License-Identifier: GPL-2.0-or-later
// The words of a question that no reader has taken yet, one by one. Internal to search.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "query/library/vocabulary.h"
#include "query/search/draft.h"

namespace sheaf {

struct Loose {
  std::string word;
  std::size_t token = 0;  // that it stands in
  bool taken = false;
};
using LooseWords = std::vector<Loose>;

LooseWords loose_words(const Draft& draft);
LooseWords without_taken(const LooseWords& words);
std::vector<std::string> texts_of(const LooseWords& words);

// Of the words that a group of the glossary names.
bool is_free(const LooseWords& words, const GroupMatch& match);
void take(LooseWords& words, const GroupMatch& match);
std::string typed_of(const LooseWords& words, const GroupMatch& match);

// Figures by the names of fields and columns, "free length", and by how many of a unit there are.
void read_figure_names(Draft& draft, LooseWords& words);

}  // namespace sheaf
