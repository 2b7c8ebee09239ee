// SPDX-License-Identifier: GPL-2.0-or-later
// One strict search; only if it finds nothing, further ones that each give up one demand. What those
// find is never the answer.
#include "query/search/find.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "query/library/index.h"
#include "query/library/index_terms.h"
#include "query/search/filters.h"
#include "query/search/measures.h"
#include "query/search/meets.h"
#include "query/search/plan.h"
#include "query/search/rank.h"
#include "query/search/read.h"

namespace sheaf {
namespace {

constexpr Xapian::doccount candidates_read = 60;    // entries that are read and ranked, of each library
constexpr Xapian::doccount counted_exactly = 2000;  // hits up to which the total is no estimate
constexpr std::size_t most_near = 8;
constexpr double as_good = 0.15;          // entries that differ in no more than a side are equally the answer
constexpr double called_almost_so = 1.6;  // "front axle nut" for "front axle", on another machine
constexpr double much_too_many = 1;       // from here on nothing is called what was asked

class Finder {
 public:
  Finder(const Request& request, Lexicon& lexicon) : request_(request), lexicon_(lexicon) {}

  Result<Findings> run();

 private:
  using Ids = std::vector<EntryId>;

  std::vector<Hit> search(const QuestionReading& reading, const Demand& demand);
  Ids candidates(Library& library, const Xapian::Query& query);
  void read_hits(std::size_t library, const Ids& ids, const QuestionReading& reading, const Demand& demand,
                 std::vector<Hit>& hits);
  const SheetRecord* sheet_of(std::size_t library, const EntryRecord& entry);

  void split(std::vector<Hit> hits);
  void offer_near_sizes();
  bool look_near();
  bool offer(Near why, const Demand& demand);
  bool offer_without_a_word();
  bool reread_words_of_notes();
  bool is_blocked() const;

  const Request& request_;
  Lexicon& lexicon_;
  Findings findings_;
  std::optional<Failure> failure_;
  std::map<std::pair<std::size_t, std::string>, SheetRecord> sheets_;
};

bool comes_before(const Hit& left, const Hit& right) {
  return std::tie(left.cost, left.library, left.id) < std::tie(right.cost, right.library, right.id);
}

Finder::Ids Finder::candidates(Library& library, const Xapian::Query& query) try {
  Xapian::Enquire enquire(index_of(library).database());
  enquire.set_weighting_scheme(Xapian::CoordWeight());
  enquire.set_query(query);
  const auto wanted = std::max(candidates_read, static_cast<Xapian::doccount>(request_.limit));
  const Xapian::MSet found = enquire.get_mset(0, wanted, counted_exactly);
  if (found.size() == wanted) {  // there may be more than are read
    findings_.total += found.get_matches_estimated() - wanted;
    findings_.total_is_exact = false;
  }
  Ids ids;
  for (auto hit = found.begin(); hit != found.end(); ++hit) ids.push_back(*hit);
  return ids;
} catch (const Xapian::Error& error) {
  failure_ = Failure{library.facts().path + ": the index is damaged (" + error.get_msg() +
                     "); sheaf about --verify says more"};
  return {};
}

const SheetRecord* Finder::sheet_of(std::size_t library, const EntryRecord& entry) {
  const std::string name = entry.address.substr(0, entry.address.find('/'));
  const auto key = std::pair(library, name);
  if (const auto known = sheets_.find(key); known != sheets_.end()) return &known->second;
  auto sheet = lexicon_.libraries()[library]->sheet_without_entries(name);
  if (!sheet) {
    failure_ = sheet.failure();
    return nullptr;
  }
  return &sheets_.emplace(key, sheet->empty() ? SheetRecord{} : sheet->front()).first->second;
}

void Finder::read_hits(std::size_t library, const Ids& ids, const QuestionReading& reading,
                       const Demand& demand, std::vector<Hit>& hits) {
  Ranker ranker(reading, lexicon_);
  for (const EntryId id : ids) {
    auto entry = lexicon_.libraries()[library]->entry_by_id(id);
    if (!entry) {
      failure_ = entry.failure();
      return;
    }
    if (demand.machine && !fits_machine(*entry, reading, demand.year)) continue;
    if (demand.sizes_exact && !has_threads_asked(*entry, reading)) continue;
    const SheetRecord* sheet = sheet_of(library, *entry);
    if (!sheet) return;
    auto meeting = meet_measures(*entry, reading);
    if (demand.sizes_exact ? !meeting.meets : !meeting.is_near) continue;
    Hit hit{id, library, *std::move(entry), *sheet, 0, std::move(meeting.differs)};
    hit.cost = ranker.cost_of(hit.entry, *sheet) + meeting.cost + meeting.distance;
    hits.push_back(std::move(hit));
  }
}

std::vector<Hit> Finder::search(const QuestionReading& reading, const Demand& demand) {
  findings_.total = 0;  // counted by the search that gave what is shown
  findings_.total_is_exact = true;
  const Xapian::Query query = plan_query(reading, demand);
  std::vector<Hit> hits;
  for (std::size_t i = 0; i < lexicon_.libraries().size() && !failure_; ++i)
    read_hits(i, candidates(*lexicon_.libraries()[i], query), reading, demand, hits);
  std::ranges::stable_sort(hits, comes_before);
  findings_.total += hits.size();
  return hits;
}

// The least cost at which each machine has an entry among the hits.
std::map<std::string, double> best_by_machine(const std::vector<Hit>& hits) {
  std::map<std::string, double> best;
  for (const auto& hit : hits)
    for (const auto& fit : hit.entry.fits) best.try_emplace(machine_body(fit.make, fit.model), hit.cost);
  return best;
}

bool is_best_of_a_machine(const Hit& hit, const std::map<std::string, double>& best) {
  return std::ranges::any_of(hit.entry.fits, [&](const FitRecord& fit) {
    return hit.cost <= best.at(machine_body(fit.make, fit.model)) + as_good;
  });
}

// The best, and what is as good, are the answers; if nothing is called what was asked, all that comes
// close to the best. Where no machine was named, one machine's part that is called just so must not hide
// that of another, called almost so.
void Finder::split(std::vector<Hit> hits) {
  if (hits.empty()) return;
  const double best = hits.front().cost;
  const double limit = best < much_too_many ? best + as_good : best + much_too_many;
  const bool open_machine = findings_.reading.machines.size() != 1;
  const auto of_machines = best_by_machine(hits);
  for (auto& hit : hits) {
    const bool is_answer = hit.cost <= limit || (open_machine && hit.cost <= best + called_almost_so &&
                                                 is_best_of_a_machine(hit, of_machines));
    auto& list = is_answer ? findings_.answers : findings_.also;
    if (list.size() < (is_answer ? request_.limit : most_near)) list.push_back(std::move(hit));
  }
}

// A word that nobody knows may be a machine that is not in the library, and a number that nobody could
// read may be its model: the figure of another must not answer. Beside a machine that is known, a word
// says nothing; a number still does.
bool Finder::is_blocked() const {
  const auto& reading = findings_.reading;
  const auto has_digit = [](const std::string& word) {
    return word.find_first_of("0123456789") != std::string::npos;
  };
  if (std::ranges::any_of(reading.unread, has_digit)) return true;
  const bool is_all_that_names = reading.parts.empty() && !reading.has_designation();
  if (!reading.unread.empty() && is_all_that_names) return true;
  return !reading.unread.empty() && reading.machines.empty();
}

bool Finder::offer(Near why, const Demand& demand) {
  auto hits = search(findings_.reading, demand);
  if (hits.empty()) return false;
  findings_.why_near = why;
  const double limit = hits.front().cost + much_too_many;
  for (auto& hit : hits)
    if (findings_.near.size() < most_near && hit.cost <= limit) findings_.near.push_back(std::move(hit));
  return true;
}

// Leaves out the part without which the rest is called best.
bool Finder::offer_without_a_word() {
  const auto& parts = findings_.reading.parts;
  int best_part = -1;
  double best_cost = 0;
  for (std::size_t i = 0; i < parts.size() && parts.size() > 1; ++i) {
    const auto hits =
        search(findings_.reading, Demand{.sides_stated = false, .without_part = static_cast<int>(i)});
    if (hits.empty() || (best_part >= 0 && hits.front().cost >= best_cost)) continue;
    best_part = static_cast<int>(i);
    best_cost = hits.front().cost;
  }
  if (best_part < 0) return false;
  findings_.dropped.push_back(parts[static_cast<std::size_t>(best_part)].typed);
  return offer(Near::fewer_words, Demand{.sides_stated = false, .without_part = best_part});
}

// Beside what has the very size, what nearly has it, so that a worn part is not taken for another.
void Finder::offer_near_sizes() {
  const auto& reading = findings_.reading;
  const bool by_size = !reading.sizes.empty() ||
                       ((!reading.lengths.empty() || !reading.quantities.empty()) && !reading.parts.empty());
  if (!by_size || findings_.answers.size() > most_near) return;
  const auto total = findings_.total;
  for (auto& hit : search(reading, Demand{.sides_stated = false, .sizes_exact = false})) {
    if (hit.differs.empty() || hit.cost >= much_too_many + 1 || findings_.near.size() == most_near / 2)
      continue;
    findings_.near.push_back(std::move(hit));
    findings_.why_near = Near::other_sizes;
  }
  findings_.total = total;
}

bool Finder::look_near() {
  const auto& reading = findings_.reading;
  const bool measured = !reading.sizes.empty() || !reading.lengths.empty() || !reading.quantities.empty() ||
                        !reading.threads.empty();
  if (measured && offer(Near::other_sizes, Demand{.sizes_exact = false})) return true;
  if (reading.year != 0 && !reading.machines.empty() && offer(Near::other_years, Demand{.year = false}))
    return true;
  if (!reading.figures.empty() && offer(Near::figure_not_stated, Demand{.figures = false})) return true;
  if (offer(Near::fewer_words, Demand{.sides_stated = false, .names_whole = false})) return true;
  if (!reading.machines.empty() && offer(Near::other_machines, Demand{.machine = false, .year = false}))
    return true;
  if (!reading.sides.empty()) {
    QuestionReading without_sides = reading;
    without_sides.sides.clear();
    std::swap(findings_.reading, without_sides);
    const bool found = offer(Near::other_sides, Demand{});
    std::swap(findings_.reading, without_sides);
    if (found) return true;
  }
  return offer_without_a_word();
}

// A word that stands in notes alone may be a slip for one that names parts ("break" for "brake").
bool Finder::reread_words_of_notes() {
  bool changed = false;
  for (auto& part : findings_.reading.parts) {
    if (!part.groups.empty() || part.words.size() != 1 || lexicon_.names_with(part.words.front())) continue;
    const auto meant = lexicon_.correction_of(part.words.front());
    if (!meant || *meant == part.words.front()) continue;
    findings_.reading.corrections.push_back({part.typed, *meant});
    part.words = {*meant};
    for (const auto& match : lexicon_.groups_in(part.words)) part.groups.push_back(match.group);
    part.groups_of_words = {part.groups};
    changed = true;
  }
  return changed;
}

Result<Findings> Finder::run() {
  findings_.reading = read_question(request_.words, lexicon_);
  if (auto fault = apply_filters(request_.filters, findings_.reading, lexicon_)) return *fault;
  if (lexicon_.failure()) return *lexicon_.failure();
  if (is_blocked()) {
    offer(Near::unknown_words, Demand{.sides_stated = false});
  } else {
    split(search(findings_.reading, Demand{}));
    if (findings_.answers.empty()) split(search(findings_.reading, Demand{.sides_stated = false}));
    if (findings_.answers.empty() && reread_words_of_notes())
      split(search(findings_.reading, Demand{.sides_stated = false}));
    if (findings_.answers.empty())
      look_near();
    else
      offer_near_sizes();
  }
  if (failure_) return *failure_;
  if (lexicon_.failure()) return *lexicon_.failure();
  return std::move(findings_);
}

}  // namespace

std::string xapian_version() { return Xapian::version_string(); }

Result<Findings> find(const Request& request, Lexicon& lexicon) { return Finder(request, lexicon).run(); }

}  // namespace sheaf
