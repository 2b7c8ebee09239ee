// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/reread.h"

#include <algorithm>

#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/search/digits.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"

namespace sheaf {
namespace {

// "bolt" and "nut" are said of anything that is tightened; "unit", "assembly" of anything at all.
bool says_nothing_alone(const PartAsked& part) {
  if (part.is_aspect) return true;
  const bool is_nut = part.words.size() == 1 && part.has_group("nut");
  return is_generic_fastener(part) || is_nut;
}

// What was typed for a part that stands alone in the reading as a corrected word; null if it was not.
const Correction* correction_behind(const PartAsked& part, const QuestionReading& reading) {
  const auto is_it = [&](const Correction& each) {
    return part.words.size() == 1 && each.read == part.words.front();
  };
  const auto found = std::ranges::find_if(reading.corrections, is_it);
  return found == reading.corrections.end() ? nullptr : &*found;
}

}  // namespace

bool is_blocked(const QuestionReading& reading) {
  if (reading.unread.empty() || !reading.numbers.empty()) return false;  // a part's number says it all
  if (reading.names_another) return true;
  const bool names_part = std::ranges::any_of(reading.parts, names_a_part);
  if (reading.is_spoken && !reading.machine_is_guess && names_part &&
      std::ranges::all_of(reading.unread, is_everyday))
    return false;  // "slid off its splines"
  const bool names_no_part =
      std::ranges::all_of(reading.parts, says_nothing_alone) && !reading.has_designation();
  return reading.machines.empty() || reading.machine_is_guess || names_no_part ||
         std::ranges::any_of(reading.unread, has_digit);
}

bool leave_out_units(QuestionReading& reading) {
  std::vector<std::string> measured;  // "pressure"
  const auto is_unit = [&](const PartAsked& part) {
    for (const Unit* unit : readings(part.typed)) {
      if (std::ranges::find(reading.units, unit) == reading.units.end()) continue;
      measured.emplace_back(name_of(unit->dimension));
      return true;
    }
    return false;
  };
  if (std::erase_if(reading.parts, is_unit) == 0 || reading.parts.empty()) return false;
  reading.figures.insert(reading.figures.end(), measured.begin(), measured.end());
  return true;
}

bool leave_out_words_of_notes(QuestionReading& reading, Lexicon& lexicon) {
  QuestionReading left = reading;
  left.parts.clear();
  for (const auto& part : reading.parts) {
    const auto* correction = correction_behind(part, reading);
    const bool is_of_notes = !part.is_aspect && part.groups.empty() && part.words.size() == 1 &&
                             !lexicon.names_with(part.words.front()) && !tells_another(part, reading);
    if (!correction && !is_of_notes) {
      left.parts.push_back(part);
      continue;
    }
    left.unread.push_back(correction ? correction->typed : part.typed);
    if (correction)
      std::erase_if(left.corrections, [&](const Correction& each) { return each.read == correction->read; });
  }
  if (left.unread.size() == reading.unread.size() || reading.machines.empty() || is_blocked(left))
    return false;
  reading = std::move(left);
  return true;
}

bool reread_words_of_notes(QuestionReading& reading, Lexicon& lexicon) {
  bool changed = false;
  for (auto& part : reading.parts) {
    if (!part.groups.empty() || part.is_aspect || part.words.size() != 1 ||
        lexicon.names_with(part.words.front()))
      continue;
    if (is_everyday(part.words.front()) || correction_behind(part, reading)) continue;
    const auto meant = lexicon.correction_of(part.words.front());
    if (!meant || *meant == part.words.front()) continue;
    const bool stands_in_notes = lexicon.has_term(Prefix::other_stem, stem_of(part.words.front()));
    if (stands_in_notes && !lexicon.names_with(*meant)) continue;  // "letter", which is no "letzter"
    reading.corrections.push_back({part.typed, *meant});
    part.words = {*meant};
    for (const auto& match : lexicon.groups_in(part.words)) part.groups.push_back(match.group);
    part.groups_of_words = {part.groups};
    changed = true;
  }
  return changed;
}

bool take_tube_of_fork(QuestionReading& reading, Lexicon& lexicon) {
  const auto says_fork = [](const PartAsked& part) {
    return std::ranges::any_of(part.words, [](const std::string& word) {
      return stem_of(word) == "fork" || stem_of(word) == "leg" || stem_of(word) == "bush";
    });
  };
  if (reading.lengths.size() != 1 || std::ranges::none_of(reading.parts, says_fork)) return false;
  std::string choice = tube_choice(reading.lengths.front().mm);
  if (!lexicon.has_term(Prefix::choice, choice)) return false;
  reading.choices.push_back(std::move(choice));
  reading.lengths.clear();
  std::erase_if(reading.parts, [](const PartAsked& part) {
    return part.words.size() == 1 &&
           (stem_of(part.words.front()) == "fork" || stem_of(part.words.front()) == "leg");
  });
  return true;
}

}  // namespace sheaf
