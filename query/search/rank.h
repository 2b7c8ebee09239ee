// SPDX-License-Identifier: GPL-2.0-or-later
// How well an entry's names answer the words of a question. Internal to search.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "query/search/context.h"
#include "query/search/lexicon.h"
#include "query/search/reading.h"

namespace sheaf {

struct Rank {
  double cost = 0;         // 0: the entry is called just what was asked
  bool by_name = true;     // its names hold every part that was asked for
  bool names_some = true;  // or at least one
  int aspects_absent = 0;  // words such as "diameter" that its names do not hold
};

// Of each such word, where another entry's names hold it.
inline constexpr double aspect_elsewhere = 0.5;

class Ranker {
 public:
  Ranker(const QuestionReading& reading, Lexicon& lexicon);

  // Each word of its name that was not asked for adds 1, or less where it goes without saying; each part
  // asked for that its names do not hold adds too.
  Rank rank(const EntryRecord& entry, const SheetRecord& sheet);

 private:
  using Stems = std::set<std::string>;

  using Names = std::vector<const NameRead*>;  // its name, then those it has also

  Names names_of(const EntryRecord& entry);
  double cost_of_name(const NameRead& name, const EntryRecord& entry, Context& context) const;
  double cost_of_absent_parts(const EntryRecord& entry, const SheetRecord& sheet, Names names,
                              Context& context);
  void add_implied(const PartAsked& part);
  double cost_of_assembly(const NameRead& name, const SheetRecord& sheet) const;
  double cost_of_side(const EntryRecord& entry) const;
  double cost_of_kind(const EntryRecord& entry) const;
  double cost_of_stages(const EntryRecord& entry) const;
  double cost_of_order(const EntryRecord& entry) const;
  double cost_of_limit(const EntryRecord& entry) const;
  double cost_of_hand(const EntryRecord& entry) const;
  bool crosses_another(const GroupMatch& match, const std::vector<GroupMatch>& all) const;
  bool means_another(const GroupMatch& match, const std::vector<GroupMatch>& all) const;
  bool is_fastener_word(const std::string& word) const;
  bool is_fluid_word(const std::string& word) const;
  bool is_asked(const std::string& word, const std::string& stem) const;
  bool asks_for(const std::string& figure) const { return groups_.contains("kind-" + figure); }

  const QuestionReading& reading_;
  Lexicon& lexicon_;
  bool asks_least_or_most_ = false;
  bool asks_bound_ = false;              // "min", "max"
  bool asks_oil_ = false;                // and no seal of it
  bool asks_of_fluid_ = false;           // a level, a volume
  int aspects_absent_ = 0;               // of the entry that is ranked
  bool names_some_ = true;               // the same
  double share_of_name_ = 1;             // how much the words of a name matter beside a size or a number
  Stems stems_;                          // of all words asked
  std::set<std::string> groups_;         // that the question names
  std::set<std::string> kinds_;          // that the parts asked for are of: "fork seal" is a seal
  std::set<std::string> assemblies_;     // that a word of a part's name names: "swing arm" of its pivot
  std::vector<std::string> side_hints_;  // sides within the names of parts: "top" of "shock top bolt"
};

}  // namespace sheaf
