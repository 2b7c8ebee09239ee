// SPDX-License-Identifier: GPL-2.0-or-later
// What ranking compares: the name of an entry in words, and what goes without saying where it stands.
// Internal to search.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "query/search/lexicon.h"

namespace sheaf {

// A name is a thing and, behind a comma or a word such as "at", where or which it is.
struct NameRead {
  std::vector<std::string> words, stems;  // one stem a word
  std::size_t thing = 0;                  // words of the thing itself
  const std::vector<GroupMatch>& groups;  // that its words name; the lexicon's
};

NameRead read_name(const std::string& text, Lexicon& lexicon);

// The words that go without saying on this sheet: its assembly, its machines, its maker. Most names do not
// ask for them, so they are gathered when the first does.
class Context {
 public:
  Context(const EntryRecord& entry, const SheetRecord& sheet) : entry_(entry), sheet_(sheet) {}

  bool holds(const std::string& stem);

 private:
  const EntryRecord& entry_;
  const SheetRecord& sheet_;
  std::optional<std::set<std::string>> stems_;
};

}  // namespace sheaf
