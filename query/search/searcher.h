// SPDX-License-Identifier: GPL-2.0-or-later
// One search over all libraries: candidates from the index, read, tested and ranked. Internal to search.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "query/search/candidates.h"
#include "query/search/find.h"
#include "query/search/plan.h"

namespace sheaf {

// Costs that differ by no more are of entries that differ in no more than a side: equally the answer.
inline constexpr double as_good = 0.15;
inline constexpr double much_too_many = 1;  // from here on nothing is called what was asked
// Up to here nothing stands in its name that was not said but a side, or what goes without saying.
inline constexpr double called_just_so = 0.5;

struct Hits {
  std::vector<Hit> hits;  // best first
  std::size_t total = 0;  // that fit, read or not
  bool total_is_exact = true;
};

class Searcher {
 public:
  // Reads `most` entries of each library and search; where more match, `enough` that are called what was
  // asked.
  Searcher(Lexicon& lexicon, std::size_t most, std::size_t enough)
      : lexicon_(lexicon), most_(most), enough_(enough) {}

  Hits search(const QuestionReading& reading, const Demand& demand);

  // Entries of the machine and year that have some word of the question: those that have most, whatever else
  // was asked. Their cost is not reckoned. A table's rows are among them where no machine, or a designation,
  // was named.
  std::vector<Hit> holding_some(const QuestionReading& reading);

  // Those with that address in the library of the hit that fit the machine and the year, ranked as the hit
  // is.
  std::vector<Hit> entries_at(const Hit& like, const std::string& address, const QuestionReading& reading);

  // What went wrong in a library; a search after it is incomplete.
  const std::optional<Failure>& failure() const { return failure_; }

 private:
  Candidates candidates(std::size_t library, const QuestionReading& reading, const Demand& demand);
  // How many of the candidates were read.
  std::size_t read(std::size_t library, const Candidates& candidates, const QuestionReading& reading,
                   const Demand& demand, Hits& into);
  std::vector<EntryId> ids_holding_some(std::size_t library, const QuestionReading& reading);
  KnownTerms& terms_of(std::size_t library);
  void fail(std::size_t library, const Xapian::Error& error);
  // None where it cannot be read.
  EntryOnSheet entry_of(std::size_t library, EntryId id);

  Lexicon& lexicon_;
  std::size_t most_, enough_;
  std::optional<Failure> failure_;
  std::map<std::size_t, KnownTerms> terms_;  // by library
  std::map<std::size_t, SizeTerms> sizes_;   // by library
};

// Makes all of these the answers, and nothing near.
void answer_with(Findings& findings, std::vector<Hit> hits);

// Called so far otherwise than what was asked that it is another thing, and only near.
bool is_another_thing(const Hit& hit);

}  // namespace sheaf
