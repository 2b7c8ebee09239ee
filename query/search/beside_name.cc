// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/beside_name.h"

#include <algorithm>
#include <array>
#include <set>

#include "query/search/draft.h"
#include "query/search/part_names.h"
#include "query/search/set_aside.h"

namespace sheaf {
namespace {

using Phrases = std::set<std::size_t>;

class BesideName {
 public:
  BesideName(Findings& findings, Searcher& searcher) : findings_(findings), searcher_(searcher) {}

  bool run() {
    const QuestionReading whole = findings_.reading;
    leave_out_ordinary_words();
    if (answer_rest(whole.parts.size() != findings_.reading.parts.size())) return true;
    findings_.reading = whole;
    return false;
  }

 private:
  // "customer wants his throttle play checked": said around what is sought, though a note holds it.
  void leave_out_ordinary_words() {
    auto& reading = findings_.reading;
    std::erase_if(reading.parts, [&](const PartAsked& part) {
      const bool is_said = part.groups.empty() && part.words.size() == 1 && is_ordinary(part.words.front());
      if (is_said && !part.is_aspect) reading.left_aside.push_back(part.typed);
      return is_said;
    });
  }

  bool answer_rest(bool is_less) {
    const auto& asked = findings_.reading;
    if (asked.machine_is_guess || asked.machines.size() > 1 || !asked.sizes.empty() || !asked.bearings.empty()) return false;
    if (asked.quantities.empty() && asked.lengths.empty()) return (is_less && answer_as_named()) || answer_without_figure() || answer_without_phrases();
    if (asked.machines.empty() || std::ranges::any_of(asked.quantities, may_choose)) return false;
    if (std::ranges::any_of(asked.lengths, &LengthAsked::bare)) return false;  // "muleback 450": another machine's name
    const QuestionReading whole = asked;
    findings_.reading.lengths.clear();
    findings_.reading.quantities.clear();
    if (!answer_as_named() && !answer_without_figure() && !answer_without_phrases()) {
      findings_.reading = whole;
      return false;
    }
    for (const auto& length : whole.lengths) findings_.reading.left_aside.push_back(length.typed);
    for (const auto& quantity : whole.quantities) findings_.reading.left_aside.push_back(quantity.typed);
    return true;
  }

  // "drain plug with the 17 N·m" tells one from others, and "at 3000 rpm" is a condition; what is poured or weighed
  // may be what is at hand.
  static bool may_choose(const QuantityAsked& quantity) {
    return std::ranges::none_of(quantity.figures, [](const Figure& figure) {
      const Dimension dimension = figure.unit->dimension;
      return dimension == Dimension::volume || dimension == Dimension::mass || dimension == Dimension::length;
    });
  }

  // "one 500 ml bottle of fork oil, is it enough": what was typed is no figure of it.
  bool answer_as_named() {
    auto hits = called_so(findings_.reading, {.figures_named = false, .figures_all = false, .sides_stated = false});
    if (hits.empty() || !names_enough(findings_.reading)) return false;
    take(findings_.reading, std::move(hits));
    return true;
  }

  // "main fuse rating", "chain play, measured where": it is there, and nobody records that of such a thing.
  bool answer_without_figure() {
    const auto& asked = findings_.reading;
    if (asked.figures.empty()) return false;
    auto hits = called_so(asked, {.figures = false, .sides_stated = false});
    std::erase_if(hits, [&](const Hit& hit) {
      return std::ranges::any_of(asked.figures, [&](const std::string& figure) { return is_expected_of(hit.entry, figure); });
    });
    if (hits.empty() || !names_enough(asked)) return false;
    take(asked, std::move(hits));
    for (const auto& figure : asked.figures) findings_.reading.doubts.push_back("No “" + figure + "” is recorded of it.");
    return true;
  }

  // Whether a technician counts on that figure: then its absence is the answer.
  static bool is_expected_of(const EntryRecord& entry, const std::string& figure) {
    constexpr std::array<std::string_view, 14> said_loosely = {"size",   "count",   "length", "height", "change-every", "setting",
                                                              "bore",   "stage",   "state",  "order",  "number",  "quantity",     "rate",  "step"};
    if (figure == "volume") return entry.kind == "fluid";  // "how much"
    return std::ranges::find(said_loosely, figure) == said_loosely.end();
  }

  // "cush rubbers in a causeway hub": without one of the other phrases, or all of them.
  bool answer_without_phrases() {
    const auto& asked = findings_.reading;
    Phrases others;
    std::size_t first = std::string::npos;  // what is named first is what is meant
    for (const auto& part : asked.parts)
      if (!part.is_aspect && !part.groups.empty()) first = std::min(first, part.phrase);
    for (const auto& part : asked.parts)
      if (part.phrase != first) others.insert(part.phrase);
    std::vector<Phrases> attempts;
    for (auto each = others.rbegin(); each != others.rend(); ++each) attempts.push_back({*each});
    if (others.size() > 1) attempts.push_back(others);
    for (const Phrases& aside : attempts)
      if (answer_without(aside)) return true;
    return answer_beside_others(first);
  }

  // "circlip on top of the fork seal": the one such thing on the sheet of the other.
  bool answer_beside_others(std::size_t first) {
    constexpr double called_much_so = 2.5;
    const auto& asked = findings_.reading;
    QuestionReading rest = asked;
    std::erase_if(rest.parts, [&](const PartAsked& part) { return part.phrase != first; });
    const auto is_few_on_a_sheet = [](const PartAsked& part) {
      return part.is_aspect || std::ranges::any_of(part.groups, [](const std::string& group) { return group == "seal" || group == "shaft-seal" || group == "snap-ring"; });
    };
    if (asked.machines.empty() || !asked.unread.empty() || !std::ranges::all_of(rest.parts, is_few_on_a_sheet)) return false;
    std::set<std::string> sheets;
    std::vector<std::string> aside;
    for (const auto& part : asked.parts) {
      if (part.phrase == first) continue;
      aside.push_back(part.typed);
      if (names_a_part(part)) sheets.merge(sheets_naming(part));
      else if (part.groups.empty() && !part.is_aspect) return false;
    }
    auto hits = searcher_.search(rest, {.sides_stated = false}).hits;
    std::erase_if(hits, [&](const Hit& hit) { return !hit.by_name || hit.cost > called_much_so || !sheets.contains(hit.sheet.name); });
    if (hits.size() != 1) return false;
    take(rest, std::move(hits));
    for (auto& typed : aside) findings_.reading.left_aside.push_back(std::move(typed));
    return true;
  }

  // Sheets on which something is called so.
  std::set<std::string> sheets_naming(const PartAsked& part) {
    std::set<std::string> sheets;
    for (const auto& hit : hits_of(part))
      if (hit.by_name) sheets.insert(hit.sheet.name);
    return sheets;
  }

  std::vector<Hit> hits_of(const PartAsked& part) {
    QuestionReading alone = findings_.reading;
    alone.parts = {part};
    alone.figures.clear();
    alone.sides.clear();
    return searcher_.search(alone, {.sides_stated = false}).hits;
  }

  bool answer_without(const Phrases& phrases) {
    QuestionReading rest = findings_.reading;
    std::vector<PartAsked> aside;
    std::erase_if(rest.parts, [&](const PartAsked& part) {
      const bool is_aside = phrases.contains(part.phrase);
      if (is_aside) aside.push_back(part);
      return is_aside;
    });
    if (!names_enough(rest)) return false;
    auto hits = called_so(rest, {.figures_named = false, .figures_all = false, .sides_stated = false});
    if (hits.empty()) return false;
    const bool is_fastener = hits.front().entry.kind == "fastener";  // is called after its place: "top nut of the steering stem"
    const auto is_elsewhere = [&](const PartAsked& part) {
      if (part.says_whose) return !part.is_aspect && !sheets_naming(part).contains(hits.front().sheet.name);
      return is_fastener && part.words.size() > 1 && names_a_part(part) && !is_spoken_of(part, hits.front().sheet.name);
    };
    if (std::ranges::any_of(aside, is_elsewhere)) return false;
    take(rest, std::move(hits));
    for (const auto& part : aside) findings_.reading.left_aside.push_back(part.typed);
    return true;
  }

  // Whether something on that sheet is called so, or a note there speaks of it.
  bool is_spoken_of(const PartAsked& part, const std::string& sheet) {
    const auto hits = hits_of(part);
    return std::ranges::any_of(hits, [&](const Hit& hit) { return hit.sheet.name == sheet; });
  }

  static bool names_enough(const QuestionReading& rest) {
    if (std::ranges::none_of(rest.parts, names_a_part)) return false;
    if (!rest.machines.empty()) return true;
    std::size_t words = 0;
    for (const auto& part : rest.parts) words += part.words.size();
    return rest.unread.empty() && words > 1;
  }

  // The hits that are called just so; none if they are of several places.
  std::vector<Hit> called_so(const QuestionReading& rest, const Demand& demand) {
    auto hits = called_just(searcher_.search(rest, demand).hits, findings_.reading);
    return are_of_one_place(hits) ? hits : std::vector<Hit>{};
  }

  void take(const QuestionReading& rest, std::vector<Hit> hits) {
    findings_.reading.parts = rest.parts;
    findings_.total = hits.size();
    findings_.total_is_exact = true;
    findings_.answers = std::move(hits);
    findings_.near.clear();
    findings_.why_near = Near::none;
  }

  Findings& findings_;
  Searcher& searcher_;
};

}  // namespace

bool answer_beside_name(Findings& findings, Searcher& searcher) { return BesideName(findings, searcher).run(); }

}  // namespace sheaf
