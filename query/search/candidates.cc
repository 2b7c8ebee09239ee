// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/candidates.h"

#include <algorithm>
#include <set>

namespace sheaf {
namespace {

using Ids = std::vector<EntryId>;

// Hits up to which the total is no estimate, in a library of up to so many entries: in larger ones counting
// takes longer than answering.
constexpr Xapian::doccount counted_exactly = 500;
constexpr Xapian::doccount small_library = 20'000;

// Entries that are known to match, in order, so that what narrows them further is asked of them alone.
class Among final : public Xapian::PostingSource {
 public:
  explicit Among(const Ids& ids) : ids_(ids) {}

  Xapian::doccount get_termfreq_min() const override { return get_termfreq_est(); }
  Xapian::doccount get_termfreq_est() const override { return static_cast<Xapian::doccount>(ids_.size()); }
  Xapian::doccount get_termfreq_max() const override { return get_termfreq_est(); }
  void init(const Xapian::Database&) override { next_ = 0; }
  void next(double) override { ++next_; }
  void skip_to(Xapian::docid id, double) override {
    const auto from = ids_.begin() + static_cast<std::ptrdiff_t>(next_ == 0 ? 0 : next_ - 1);
    next_ = static_cast<std::size_t>(std::lower_bound(from, ids_.end(), id) - ids_.begin()) + 1;
  }
  bool at_end() const override { return next_ > ids_.size(); }
  Xapian::docid get_docid() const override { return ids_[next_ - 1]; }

 private:
  const Ids& ids_;
  std::size_t next_ = 0;  // the place behind the one it stands at; 0 before the first
};

// All matches by the place of the last of the first few: entries stand in the order of their sheets, so that
// no part of a library has many more than another.
std::size_t all_of(const Matches& first, const Xapian::Database& database) {
  if (first.least == first.most) return first.least;
  const double share = static_cast<double>(database.get_lastdocid()) / static_cast<double>(first.ids.back());
  const auto all = static_cast<std::size_t>(static_cast<double>(first.ids.size()) * share);
  return std::clamp<std::size_t>(all, first.least, first.most);
}

}  // namespace

Candidates candidates_for(const Plan& plan, Index& index, std::size_t most) {
  const Xapian::Database& database = index.database();
  const bool counts = plan.walks_values || database.get_doccount() <= small_library;
  const std::size_t looked_for = counts ? std::max<std::size_t>(most + 1, counted_exactly) : most + 1;
  const Matches first = index.first_matches(plan.all, looked_for);
  if (first.ids.size() <= most) return {first.ids, 0};

  Candidates chosen{{}, all_of(first, database) - most};
  std::set<EntryId> known;
  const auto choose = [&](const Ids& next) {
    for (const EntryId id : next)
      if (chosen.ids.size() < most && known.insert(id).second) chosen.ids.push_back(id);
  };
  Among among(first.ids);
  const bool all_are_known = first.ids.size() < looked_for;
  for (const auto& likely : plan.likely) {
    if (chosen.ids.size() == most) break;
    if (all_are_known)
      choose(
          first_of(Xapian::Query(Xapian::Query::OP_AND, Xapian::Query(&among), likely.called), database, most)
              .ids);
    else
      choose(index.first_matches(likely.narrowed, most).ids);
  }
  choose(first.ids);
  return chosen;
}

std::vector<EntryId> having_most(const Xapian::Query& query, const Xapian::Database& database,
                                 std::size_t most) {
  Xapian::Enquire enquire(database);
  enquire.set_weighting_scheme(Xapian::CoordWeight());
  enquire.set_query(query);
  const Xapian::MSet found = enquire.get_mset(0, static_cast<Xapian::doccount>(most));
  Ids ids;
  for (auto hit = found.begin(); hit != found.end(); ++hit) ids.push_back(*hit);
  return ids;
}

}  // namespace sheaf
