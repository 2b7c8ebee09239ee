// SPDX-License-Identifier: GPL-2.0-or-later
// The years of a machine are cut where any variant begins or ends. Within one such span the same variants
// hold throughout; they must then differ by market or by frame numbers that follow one another.
#include "compiler/link/variants.h"

#include <algorithm>
#include <set>

#include "compiler/link/link_rules.h"

namespace sheafc {
namespace {

constexpr int before_all = 0;
constexpr int after_all = 9999;

int end_of(const Years& years) { return years.to ? years.to : after_all; }

// An end of a range of frame numbers; an open one lies before or after all numbers.
constexpr long long first_frame = -1;
constexpr long long last_frame = 1'000'000'000'000'000'000;
long long begin_of(const Frames& frames) {
  return frames.from.empty() ? first_frame : take_apart(frames.from).number;
}
long long end_of(const Frames& frames) {
  return frames.to.empty() ? last_frame : take_apart(frames.to).number;
}
bool is_open(const Frames& frames) { return frames.from.empty() && frames.to.empty(); }
std::string_view series_of(const Frames& frames) {
  return take_apart(frames.from.empty() ? frames.to : frames.from).series;
}

std::string in_words(int from, int to) {
  Years years{from == before_all ? 0 : from, to == after_all ? 0 : to};
  return !years.from && !years.to ? "every year" : to_text(years);
}

class Cover {
 public:
  Cover(const Fit& fit, bool any_machine, std::span<const When> variants, Diagnostics& sink)
      : fit_(fit), any_machine_(any_machine), variants_(variants), sink_(sink) {}

  void check() {
    const std::vector<int> cuts = year_cuts();
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) check_years(cuts[i], cuts[i + 1] - 1);
  }

 private:
  using Active = std::vector<const When*>;

  std::vector<int> year_cuts() const {
    const int from = fit_.years.from, to = end_of(fit_.years);
    std::set<int> cuts = {from, to + 1};
    for (const When& when : variants_) {
      if (!when.years) continue;
      for (const int cut : {when.years->from, end_of(*when.years) + 1}) {
        if (cut > from && cut <= to) cuts.insert(cut);
      }
    }
    return {cuts.begin(), cuts.end()};
  }

  void check_years(int from, int to) {
    Active active;
    for (const When& when : variants_) {
      const bool in_years = !when.years || (when.years->from <= from && end_of(*when.years) >= to);
      if (in_years && narrowed(fit_, when)) active.push_back(&when);
    }
    if (active.empty()) {
      if (!any_machine_) gap("no variant is for " + in_words(from, to) + machine());
      return;
    }
    check_markets(active);
  }

  void check_markets(const Active& active) {
    std::set<std::string_view> markets;
    for (const When* when : active) markets.insert(when->market);
    if (markets.size() == 1 && !markets.contains("") && fit_.market.empty()) {
      gap("a variant for the market '" + std::string(*markets.begin()) + "' needs another for the rest" +
          machine());
    }
    if (markets.size() > 1) markets.erase("");
    for (const std::string_view market : markets) {
      Active of_market;
      for (const When* when : active) {
        if (when->market.empty() || when->market == market) of_market.push_back(when);
      }
      check_frames(of_market);
    }
  }

  void check_frames(Active active) {
    if (active.size() == 1 && !active.front()->frames) return;
    for (const When* when : active) {
      if (!when->frames) return overlap(*when, *active[active.front() == when ? 1 : 0]);
      if (series_of(*when->frames) != series_of(*active.front()->frames))
        return;  // two series: two lines of machines
    }
    std::ranges::sort(active, {}, [](const When* when) { return begin_of(*when->frames); });
    long long covered = is_open(fit_.frames) ? first_frame - 1 : begin_of(fit_.frames) - 1;
    for (std::size_t i = 0; i < active.size(); ++i) {
      const Frames& frames = *active[i]->frames;
      const long long begin = begin_of(frames);
      if (i > 0 && begin <= end_of(*active[i - 1]->frames))
        overlap(*active[i], *active[i - 1]);
      else if (begin > covered + 1)
        gap_before(*active[i], i == 0);
      covered = std::max(covered, end_of(frames));
    }
    if (covered < end_of(fit_.frames)) {
      gap("no variant is for the frame numbers after " + active.back()->frames->to + machine());
    }
  }

  void gap_before(const When& when, bool first) {
    gap("no variant is for the frame numbers " + std::string(first ? "" : "just ") + "before " +
        when.frames->from + machine());
  }

  void gap(std::string message) {
    sink_.error(rule::variant_gap, variants_.front().where, message + "; a variant must have both sides");
  }

  void overlap(const When& one, const When& other) {
    const bool later = one.where.line > other.where.line ||
                       (one.where.line == other.where.line && one.where.column > other.where.column);
    const When& second = later ? one : other;
    const When& first = later ? other : one;
    sink_.report(
        {Severity::error,
         rule::variant_overlap,
         second.where,
         "the variants " + to_text(first) + " and " + to_text(second) + " both hold for some machines",
         {{Severity::note, rule::variant_overlap, first.where, "the other variant"}}});
  }

  std::string machine() const { return fit_.model.empty() ? "" : " of the " + fit_.make + " " + fit_.model; }

  const Fit& fit_;
  bool any_machine_;
  std::span<const When> variants_;
  Diagnostics& sink_;
};

}  // namespace

When when_of(const Variant& variant) {
  When when;
  if (const Years* years = variant.fields.years("years")) when.years = *years;
  if (const Frames* frames = variant.fields.frames("frames")) when.frames = *frames;
  when.market = variant.fields.text("market");
  when.where = variant.where;
  return when;
}

std::string to_text(const When& when) {
  std::string text = when.years ? to_text(*when.years) : "";
  if (when.frames) text += (text.empty() ? "frames " : ", frames ") + to_text(*when.frames);
  if (!when.market.empty()) text += (text.empty() ? "market " : ", market ") + when.market;
  return text;
}

std::optional<Fit> narrowed(const Fit& fit, const When& when) {
  Fit narrow = fit;
  if (when.years) {
    narrow.years.from = std::max(fit.years.from, when.years->from);
    const int to = std::min(end_of(fit.years), end_of(*when.years));
    if (narrow.years.from > to) return {};
    narrow.years.to = to == after_all ? 0 : to;
  }
  if (!when.market.empty()) {
    if (!fit.market.empty() && fit.market != when.market) return {};
    narrow.market = when.market;
  }
  if (when.frames) {
    const bool bounded = !is_open(fit.frames);
    if (bounded && series_of(fit.frames) != series_of(*when.frames)) return {};
    if (bounded && begin_of(*when.frames) < begin_of(fit.frames))
      narrow.frames.from = fit.frames.from;
    else
      narrow.frames.from = when.frames->from;
    if (bounded && end_of(*when.frames) > end_of(fit.frames))
      narrow.frames.to = fit.frames.to;
    else
      narrow.frames.to = when.frames->to;
    if (begin_of(narrow.frames) > end_of(narrow.frames)) return {};
  }
  return narrow;
}

void check_variants(std::span<const Fit> fits, std::span<const When> variants, Diagnostics& sink) {
  if (variants.empty()) return;
  Diagnostics found;
  for (const Fit& fit : fits) Cover(fit, false, variants, found).check();
  if (fits.empty()) Cover(Fit{}, true, variants, found).check();
  found.sort();  // one fault, met again in another span of years, is one report
  sink.take(std::move(found));
}

}  // namespace sheafc
