// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/beside_number.h"

#include <algorithm>
#include <cmath>

#include "query/library/fold.h"
#include "query/search/measures.h"
#include "query/search/part_names.h"
#include "query/search/set_aside.h"

namespace sheaf {
namespace {

constexpr double called_so_on_a_sheet = 3;    // where the sheet is known, a name may say more than was asked
constexpr double worn_to = 0.5, grown_to = 2;  // of what is stated: beyond, another thing was measured

bool holds_words(std::string_view text, const std::vector<std::string>& words) {
  const auto said = words_of(fold(text));
  return std::search(said.begin(), said.end(), words.begin(), words.end()) != said.end();
}

// "below the rim", "at 5000 rpm"
bool is_stated_for(const Hit& hit, const std::string& typed) {
  const auto words = words_of(fold(typed));
  return std::ranges::any_of(hit.entry.fields, [&](const FieldRecord& field) { return holds_words(field.text, words); });
}

// "48 mm inverted fork": by the digits, whatever unit stands behind them.
bool is_of_sheet_sized(const Hit& hit, const LengthAsked& length) {
  const auto words = words_of(fold(length.typed.substr(0, length.typed.find_first_not_of("0123456789."))));
  return !words.empty() && (holds_words(hit.sheet.title, words) || holds_words(hit.sheet.name, words));
}

// A length of about that size is all that the entry is about.
bool is_measured_so(const Hit& hit, const LengthAsked& length) {
  const bool is_of_wear = hit.entry.kind == "limit" || hit.entry.kind == "clearance";
  return is_of_wear && std::ranges::any_of(hit.entry.fields, [&](const FieldRecord& field) {
    if (field.key != "limit" && field.key != "new" && field.key != "value") return false;
    const auto statement = parse_statement(field.text, Dimension::length, Input::sheet);
    if (!statement || !statement->figure().unit) return false;
    const BaseBand band = base_band(statement->figure());
    const double least = std::isinf(band.least) ? band.most : band.least;
    const double most = std::isinf(band.most) ? band.least : band.most;
    const double metres = length.mm / 1000;
    return metres >= least * worn_to && metres <= most * grown_to;
  });
}

class BesideNumber {
 public:
  BesideNumber(Findings& findings, Searcher& searcher) : findings_(findings), searcher_(searcher), rest_(findings.reading) {
    rest_.lengths.clear();
    rest_.quantities.clear();
    std::erase(rest_.figures, "size");  // "measured 2.6"
  }

  bool run() {
    const auto& asked = findings_.reading;
    if (asked.lengths.empty() && asked.quantities.empty()) return false;
    const bool names_part = std::ranges::any_of(asked.parts, names_a_part);
    if (rest_.has_designation() || asked.parts.empty() || asked.machine_is_guess) return false;
    if (names_part && take(false, "the condition of the figure", [&](const Hit& hit) {
          const auto is_stated = [&](const auto& each) { return is_stated_for(hit, each.typed); };
          return std::ranges::all_of(asked.quantities, is_stated) && std::ranges::all_of(asked.lengths, is_stated);
        }))
      return true;
    if (!asked.quantities.empty()) return false;
    const auto all = [&](auto is_so) {
      return [this, is_so](const Hit& hit) {
        return std::ranges::all_of(findings_.reading.lengths, [&](const LengthAsked& length) { return is_so(hit, length); });
      };
    };
    if (take(true, "the size of what the sheet is about", all(is_of_sheet_sized))) return true;
    return names_part && take(false, "what was measured, not what is stated", all(is_measured_so));
  }

 private:
  template <typename IsMeant>
  bool take(bool is_of_one_sheet, std::string_view meaning, IsMeant is_meant) {
    auto hits = searcher_.search(rest_, {.figures_named = false, .sides_stated = false}).hits;
    std::erase_if(hits, [&](const Hit& hit) { return (!hit.by_name && !is_of_one_sheet) || !is_meant(hit); });
    if (hits.empty() || hits.front().cost > (is_of_one_sheet ? called_so_on_a_sheet : called_just_so)) return false;
    const double limit = hits.front().cost + as_good;
    std::erase_if(hits, [&](const Hit& hit) { return hit.cost > limit; });
    const bool is_one = hits.size() == 1 || (findings_.reading.machines.size() == 1 && are_of_one_place(hits)) || is_of_one_sheet;
    if (!is_one) return false;
    for (const auto& length : findings_.reading.lengths) doubt(length.typed, meaning);
    for (const auto& quantity : findings_.reading.quantities) doubt(quantity.typed, meaning);
    findings_.total = hits.size();
    findings_.total_is_exact = true;
    findings_.answers = std::move(hits);
    return true;
  }

  void doubt(const std::string& typed, std::string_view meaning) {
    findings_.reading.doubts.push_back("“" + typed + "” is taken for " + std::string(meaning) + ".");
  }

  Findings& findings_;
  Searcher& searcher_;
  QuestionReading rest_;
};

}  // namespace

bool answer_beside_number(Findings& findings, Searcher& searcher) { return BesideNumber(findings, searcher).run(); }

}  // namespace sheaf
