// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/candidates.h"

#include <algorithm>
#include <set>

namespace sheaf {
namespace {

using Ids = std::vector<EntryId>;

constexpr Xapian::doccount counted_exactly = 500;  // hits up to which the total is no estimate

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

Ids ids_of(const Xapian::MSet& found) {
  Ids ids;
  for (auto hit = found.begin(); hit != found.end(); ++hit) ids.push_back(*hit);
  return ids;
}

}  // namespace

Candidates candidates_for(const Plan& plan, const Xapian::Database& database, std::size_t most) {
  Xapian::Enquire enquire(database);
  enquire.set_weighting_scheme(Xapian::BoolWeight());
  const auto wanted = static_cast<Xapian::doccount>(most);
  const auto first_of = [&](const Xapian::Query& query, Xapian::doccount count, Xapian::doccount counted) {
    enquire.set_query(query);
    return enquire.get_mset(0, count, counted);
  };
  const Xapian::MSet found = first_of(plan.all, std::max(wanted, counted_exactly), counted_exactly);
  const Ids all = ids_of(found);
  if (all.size() <= most) return {all, 0};

  const bool all_are_known = all.size() < std::max(wanted, counted_exactly);
  Among among(all);
  const auto is_known = [&](const std::string& term) { return database.term_exists(term); };
  const auto narrowed = [&](const Likely& likely) {
    if (!likely.needed.empty() && std::ranges::none_of(likely.needed, is_known)) return Ids();
    if (!all_are_known) return ids_of(first_of(likely.narrowed, wanted, 0));
    return ids_of(first_of({Xapian::Query::OP_AND, Xapian::Query(&among), likely.called}, wanted, 0));
  };
  Candidates chosen{{}, found.get_matches_estimated() - most};
  std::set<EntryId> known;
  const auto choose = [&](const Ids& ids) {
    for (const EntryId id : ids)
      if (chosen.ids.size() < most && known.insert(id).second) chosen.ids.push_back(id);
  };
  const auto& likely = plan.likely;
  if (likely.size() > 1) choose(narrowed(likely.front()));
  if (!likely.empty() && chosen.ids.size() < most) {
    const Ids widest = narrowed(likely.back());  // unless it is cut off it holds the others, and one walk is enough
    for (std::size_t i = 1; i + 1 < likely.size() && widest.size() == most; ++i)
      if (chosen.ids.size() < most) choose(narrowed(likely[i]));
    choose(widest);
  }
  choose(all);
  return chosen;
}

std::vector<EntryId> having_most(const Xapian::Query& query, const Xapian::Database& database, std::size_t most) {
  Xapian::Enquire enquire(database);
  enquire.set_weighting_scheme(Xapian::CoordWeight());
  enquire.set_query(query);
  return ids_of(enquire.get_mset(0, static_cast<Xapian::doccount>(most)));
}

}  // namespace sheaf
