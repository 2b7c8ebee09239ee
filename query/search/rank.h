// SPDX-License-Identifier: GPL-2.0-or-later
// How well an entry's names answer the words of a question. Internal to search.
#pragma once

#include <set>
#include <string>

#include "query/search/lexicon.h"
#include "query/search/reading.h"

namespace sheaf {

class Ranker {
 public:
  Ranker(const QuestionReading& reading, Lexicon& lexicon);

  // 0: the entry is called just what was asked. Each word of its name that was not asked for adds 1, a
  // side or the name of its assembly less; each part asked for that its names do not hold adds too.
  double cost_of(const EntryRecord& entry, const SheetRecord& sheet);

 private:
  double cost_of_name(const std::string& name, const std::set<std::string>& context);
  double cost_of_absent_parts(const EntryRecord& entry);
  bool is_asked(const std::string& word) const;

  const QuestionReading& reading_;
  Lexicon& lexicon_;
  std::set<std::string> stems_;   // of all words asked
  std::set<std::string> groups_;  // that the question names
};

}  // namespace sheaf
