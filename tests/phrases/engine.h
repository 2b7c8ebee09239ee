// SPDX-License-Identifier: GPL-2.0-or-later
// What is asked: sheaf itself, and two plain searches over the same entries.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "query/library/library.h"

namespace phrases {

struct Given {
  std::string address;
  std::vector<sheaf::FitRecord> fits;
  bool says_none = false;  // begins with what was asked for and is not recorded
};

struct Reply {
  std::vector<Given> answers;          // best first
  std::vector<std::string> near;       // addresses offered as not the answer
  std::vector<std::string> converted;  // figures
};

class Engine {
 public:
  virtual ~Engine() = default;
  virtual std::string name() const = 0;
  virtual Reply ask(const std::string& question) = 0;
};

std::unique_ptr<Engine> make_sheaf(sheaf::Library& library);
// Xapian's query parser, stemmer and ranking as they are by default, over all words of an entry.
std::unique_ptr<Engine> make_plain_xapian(sheaf::Library& library);
// SQLite's FTS5 as it is by default, over the same words.
std::unique_ptr<Engine> make_plain_fts(sheaf::Library& library);

// All that is written on an entry, its sheet's title and its machines.
std::string words_of_entry(const sheaf::EntryRecord& entry, const sheaf::SheetRecord& sheet);

}  // namespace phrases
