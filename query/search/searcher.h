// SPDX-License-Identifier: GPL-2.0-or-later
// One search over all libraries: candidates from the index, read, tested and ranked. Internal to search.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "query/search/find.h"
#include "query/search/plan.h"

namespace sheaf {

struct Hits {
  std::vector<Hit> hits;  // best first
  std::size_t total = 0;  // that fit, read or not
  bool total_is_exact = true;
};

class Searcher {
 public:
  // Reads `most` entries of each library and search.
  Searcher(Lexicon& lexicon, std::size_t most) : lexicon_(lexicon), most_(most) {}

  Hits search(const QuestionReading& reading, const Demand& demand);

  // What went wrong in a library; a search after it is incomplete.
  const std::optional<Failure>& failure() const { return failure_; }

 private:
  using Ids = std::vector<EntryId>;

  // What the index brings for a plan: the numbers of the entries to read, and how many more there are.
  struct Candidates {
    Ids ids;
    std::size_t unread = 0;
  };

  const Candidates& candidates(std::size_t library, const Plan& plan);
  Candidates look_up(std::size_t library, const Plan& plan);
  void read(std::size_t library, const Ids& ids, const QuestionReading& reading, const Demand& demand,
            Hits& into);
  const SheetRecord* sheet_of(std::size_t library, const EntryRecord& entry);

  Lexicon& lexicon_;
  std::size_t most_;
  std::optional<Failure> failure_;
  std::map<std::pair<std::size_t, std::string>, SheetRecord> sheets_;  // read before
  std::map<std::pair<std::size_t, std::string>, Candidates>
      candidates_;  // by library and query: many a
                    // demand makes the same of a reading
};

// Called so far otherwise than what was asked that it is another thing, and only near.
bool is_another_thing(const Hit& hit);

}  // namespace sheaf
