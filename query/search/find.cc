// SPDX-License-Identifier: GPL-2.0-or-later
// One strict search decides what the answers are; only where it finds none does find_near.cc look further.
#include "query/search/find.h"

#include <algorithm>
#include <map>
#include <set>

#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/search/count_by.h"
#include "query/search/designated.h"
#include "query/search/draft.h"
#include "query/search/figures.h"
#include "query/search/filters.h"
#include "query/search/find_near.h"
#include "query/search/machine_of_chain.h"
#include "query/search/measures.h"
#include "query/search/meets.h"
#include "query/search/part_names.h"
#include "query/search/read.h"
#include "query/search/searcher.h"
#include "query/search/shelf.h"
#include "query/search/sides.h"
#include "query/search/weigh.h"

namespace sheaf {
namespace {

constexpr std::size_t candidates_read = 60;     // entries that are read and ranked, of each library
constexpr std::size_t counted_at_most = 10000;  // entries that are read to be counted
constexpr std::size_t most_also = 8;
constexpr std::size_t few_answers = 8;  // beside which near sizes are offered
constexpr double worth_a_look = 1;      // beyond the best: what is called less alike is not offered beside it
constexpr double called_almost_so = 1.6;  // "front axle nut" for "front axle", on another machine
constexpr double called_more = 2;         // "gearbox oil drain plug" beside the engine's, for "drain plug"
constexpr double much_too_many = 1;       // from here on nothing is called what was asked

using BestByMachine = std::map<std::string, double>;

// The least cost at which each machine has an entry among the hits.
BestByMachine best_by_machine(const std::vector<Hit>& hits) {
  BestByMachine best;
  for (const auto& hit : hits)
    for (const auto& fit : hit.entry.fits) best.try_emplace(machine_body(fit.make, fit.model), hit.cost);
  return best;
}

bool is_best_of_a_machine(const Hit& hit, const BestByMachine& best) {
  return std::ranges::any_of(hit.entry.fits, [&](const FitRecord& fit) {
    return hit.cost <= best.at(machine_body(fit.make, fit.model)) + as_good;
  });
}

// One measure picks many rows of a table; beside the parts of machines none of them is of use.
bool is_row_beside_parts(const Hit& hit, const Findings& findings) {
  return hit.entry.fits.empty() && !findings.reading.lengths.empty() &&
         !findings.answers.front().entry.fits.empty();
}

std::set<std::string> stems_of_names(const EntryRecord& entry) {
  std::set<std::string> stems;
  for (const auto& word : words_of(fold(entry.name))) stems.insert(stem_of(word));
  return stems;
}

// "rear tyre pressure": of the rider alone and of two, where nobody said which.
bool differs_in_load(const EntryRecord& left, const EntryRecord& right, const QuestionReading& reading) {
  const auto load_of = [](const EntryRecord& entry) {
    const auto found = std::ranges::find(entry.fields, "load", &FieldRecord::key);
    return found == entry.fields.end() ? std::string() : found->text;
  };
  const auto of_left = load_of(left), of_right = load_of(right);
  if (of_left.empty() || of_right.empty() || of_left == of_right) return false;
  const auto is_said = [&](const std::string& load) {
    return std::ranges::any_of(words_of(fold(load)), [&](const std::string& word) {
      return std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
        return std::ranges::find(part.words, word) != part.words.end();
      });
    });
  };
  return !is_said(of_left) && !is_said(of_right);
}

// "rebound": of the fork and of the shock. The one says its place in its name, the other does not need to.
bool differs_in_place(const Hit& hit, const Hit& best) {
  const double named_after_place = hit.entry.kind == "setting" ? 2 : 1;  // a damper has all of them
  return hit.cost <= best.cost + named_after_place && hit.sheet.assembly != best.sheet.assembly;
}

// "upper yoke pinch bolts", "lower yoke pinch bolts": nobody said which.
bool are_twins(const EntryRecord& left, const EntryRecord& right, const QuestionReading& reading) {
  const auto one = words_of(fold(left.name)), other = words_of(fold(right.name));
  if (one.size() != other.size() || one == other) return false;
  const auto is_said = [&](const std::string& word) {
    return std::ranges::find(reading.sides, word) != reading.sides.end() ||
           std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
             return std::ranges::find(part.words, word) != part.words.end();
           });
  };
  for (std::size_t i = 0; i < one.size(); ++i)
    if (one[i] != other[i] && (opposite_of(one[i]) != other[i] || is_said(one[i]) || is_said(other[i])))
      return false;
  return true;
}

// "both drain plugs"
bool wants_several(const QuestionReading& reading) {
  return std::ranges::any_of(reading.parts,
                             [](const PartAsked& part) { return part.is_aspect && part.typed == "both"; });
}

// "drain plug" of a machine that has the engine's and the gearbox's: where nothing is called just that,
// another of its kind on the same sheet, which is called that and more, may as well be meant. So may all that
// have the size.
bool is_as_likely(const Hit& hit, const Hit& best, const QuestionReading& reading) {
  if (!hit.by_name || hit.entry.kind != best.entry.kind || reading.parts.empty()) return false;
  if (!reading.sizes.empty()) return !hit.entry.fits.empty() && hit.differs.empty();
  if (differs_in_load(hit.entry, best.entry, reading)) return true;
  if (hit.sheet.name == best.sheet.name && reading.sides.empty() && are_twins(hit.entry, best.entry, reading))
    return true;
  if (hit.sheet.name != best.sheet.name && !differs_in_place(hit, best)) return false;
  if (hit.cost > best.cost + called_more) return false;
  std::set<std::string> asked(reading.sides.begin(), reading.sides.end());
  for (const auto& part : reading.parts)
    if (!part.groups.empty() ||
        !(part.is_aspect || is_ordinary(part.words.front())))  // "what do I do the oil drain plug up to"
      for (const auto& word : part.words) asked.insert(stem_of(word));
  const auto called = stems_of_names(hit.entry), best_called = stems_of_names(best.entry);
  const auto holds_all = [](const std::set<std::string>& all, const std::set<std::string>& some) {
    return std::includes(all.begin(), all.end(), some.begin(), some.end());
  };
  const bool is_called_just_so = best_called == asked && !wants_several(reading);
  return holds_all(called, asked) && holds_all(best_called, asked) && !is_called_just_so;
}

// Only machines of which some hit states frames of the series asked, if any does.
void keep_machines_of_frame(std::vector<Hit>& hits, const QuestionReading& reading) {
  if (reading.frame.empty() || !reading.machines.empty()) return;
  std::set<std::string> machines;
  for (const auto& hit : hits)
    for (const auto& fit : hit.entry.fits)
      if (states_frame(fit, reading)) machines.insert(machine_body(fit.make, fit.model));
  if (machines.empty()) return;
  std::erase_if(hits, [&](const Hit& hit) {
    return std::ranges::none_of(hit.entry.fits, [&](const FitRecord& fit) {
      return machines.contains(machine_body(fit.make, fit.model));
    });
  });
}

// "head bolts 60 + 60 deg": those whose torque is reached so, if any is.
std::size_t keep_stages(std::vector<Hit>& hits, const std::vector<std::string>& stages) {
  const auto has_all = [&](const Hit& hit) { return has_stages(hit.entry, stages); };
  if (stages.empty() || std::ranges::none_of(hits, has_all)) return 0;
  return std::erase_if(hits, std::not_fn(has_all));
}

// "head bolts 1-4-2-3": those that are tightened in that order, if any are.
bool has_pattern(const EntryRecord& entry, const std::string& pattern) {
  return std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
    return field.key == "pattern" && field.text == pattern;
  });
}

std::size_t keep_pattern(std::vector<Hit>& hits, const std::string& pattern) {
  const auto has_it = [&](const Hit& hit) { return has_pattern(hit.entry, pattern); };
  if (pattern.empty() || std::ranges::none_of(hits, has_it)) return 0;
  return std::erase_if(hits, std::not_fn(has_it));
}

// "chain stretch over 15 links": what is called after another number is another's.
std::size_t keep_numbered(std::vector<Hit>& hits, const std::vector<PartAsked>& parts) {
  std::size_t erased = 0;
  for (const auto& part : parts)
    for (const auto& word : part.words) {
      if (word.find_first_not_of("0123456789") != std::string::npos) continue;
      const auto is_called_so = [&](const Hit& hit) { return is_called(hit.entry, word); };
      if (std::ranges::any_of(hits, is_called_so))
        erased += std::erase_if(hits, std::not_fn(is_called_so));
      else if (part.words.size() > 1)
        erased += std::erase_if(hits, [](const Hit& hit) { return is_numbered(hit.entry); });
    }
  return erased;
}

// A tyre's size says it all, and is no name.
bool is_tyre_alone(const QuestionReading& reading) {
  return reading.parts.size() == 1 && is_tyre_size(reading.parts.front().typed);
}

// The best, and what is as good, are the answers; if nothing is called what was asked, all that comes
// close to the best. Where no machine was named, one machine's part that is called just so must not hide
// that of another, called almost so.
void split(Findings& findings, std::vector<Hit> hits, std::size_t most_answers) {
  if (!is_tyre_alone(findings.reading)) findings.total -= std::erase_if(hits, is_another_thing);
  keep_machines_of_frame(hits, findings.reading);
  findings.total -= keep_stages(hits, findings.reading.stages);
  findings.total -= keep_pattern(hits, findings.reading.pattern);
  findings.total -= keep_numbered(hits, findings.reading.parts);
  if (hits.empty()) return;
  const double best = hits.front().cost;
  const double limit = best < much_too_many ? best + as_good : best + much_too_many;
  const bool open_machine = findings.reading.machines.size() != 1;
  const auto of_machines = best_by_machine(hits);
  const Hit first = hits.front();
  for (auto& hit : hits) {
    const bool almost =
        open_machine && hit.cost <= best + called_almost_so && is_best_of_a_machine(hit, of_machines);
    const bool is_row_of_any =
        hit.entry.fits.empty() && !first.entry.fits.empty() && !findings.reading.machines.empty();
    const bool is_answer =
        !is_row_of_any && (hit.cost <= limit || almost || is_as_likely(hit, first, findings.reading));
    if (is_answer) {
      if (findings.answers.size() < most_answers) findings.answers.push_back(std::move(hit));
      continue;
    }
    --findings.total;  // a look at others is no more of the answer
    const bool is_alike = hit.by_name && hit.cost <= best + worth_a_look;
    if (is_alike && !is_row_beside_parts(hit, findings) && findings.also.size() < most_also)
      findings.also.push_back(std::move(hit));
  }
}

// "bolt" and "nut" are said of anything that is tightened; "unit", "assembly" of anything at all.
bool says_nothing_alone(const PartAsked& part) {
  if (part.is_aspect) return true;
  const bool is_nut = part.words.size() == 1 && part.has_group("nut");
  return is_generic_fastener(part) || is_nut;
}

bool holds_digit(const std::string& word) { return word.find_first_of("0123456789") != std::string::npos; }

// A word that nobody knows may be a machine that is not in the library, and a number that nobody could
// read may be its model: the figure of another must not answer. Beside a machine that is known, a word
// says nothing; a number still does.
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
         std::ranges::any_of(reading.unread, holds_digit);
}

// "bar" asks for a pressure, though the handlebar is called so too.
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

// What was typed for a part that stands alone in the reading as a corrected word; null if it was not.
const Correction* correction_behind(const PartAsked& part, const QuestionReading& reading) {
  const auto is_it = [&](const Correction& each) {
    return part.words.size() == 1 && each.read == part.words.front();
  };
  const auto found = std::ranges::find_if(reading.corrections, is_it);
  return found == reading.corrections.end() ? nullptr : &*found;
}

// A word that no name here holds and the glossary does not know, though some note does, says nothing beside
// others that name a part; nor does one that was corrected to what leads nowhere.
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

// A word that stands in notes alone may be a slip for one that names parts ("break" for "brake").
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

// The rows of a table, more than are looked at, before which no machine's part came to light: "fork seal".
bool is_crowded(const Findings& findings) {
  return !findings.reading.has_designation() && findings.total > candidates_read &&
         findings.answers.front().entry.fits.empty();
}

// "6203 size", "P22A o-ring size": the row itself says it, under whatever names.
bool asks_size_of_designated(const QuestionReading& reading) {
  const bool is_designated = !reading.codes.empty() || !reading.bearings.empty() || !reading.threads.empty();
  return is_designated && reading.asks("size");
}

// "battery size", of which none is recorded, is not the size of the battery's terminals: what is called just
// so comes first.
void put_named_first(Findings& findings, Searcher& searcher, std::size_t most_answers) {
  const auto& reading = findings.reading;
  if (reading.figures.empty() || reading.machines.empty() || reading.has_designation()) return;
  if (std::ranges::any_of(reading.figures, may_be_its_value)) return;
  const double given = findings.answers.front().cost;
  if (given < called_just_so) return;
  auto hits = searcher.search(reading, {.figures = false}).hits;
  std::erase_if(hits, [&](const Hit& hit) {
    return !hit.by_name || hit.cost >= called_just_so || hit.cost + called_just_so > given ||
           hit.entry.kind == "step";
  });
  if (hits.empty()) return;
  const double limit = hits.front().cost + as_good;
  std::erase_if(hits, [&](const Hit& hit) { return hit.cost > limit; });
  findings.total += hits.size();
  std::ranges::move(findings.answers, std::back_inserter(hits));
  if (hits.size() > most_answers)
    hits.erase(hits.begin() + static_cast<std::ptrdiff_t>(most_answers), hits.end());
  findings.answers = std::move(hits);
}

// "31 mm fork oil": of the fork whose tubes are so wide.
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

// "filter cup 65mm", "428 spring link chain": a number that only stands in what is said of it.
bool answer_described(Findings& findings, Searcher& searcher, std::size_t most_answers) {
  QuestionReading rest = findings.reading;
  if (rest.lengths.empty() || rest.parts.empty()) return false;
  std::erase_if(rest.lengths, [](const LengthAsked& length) { return !counts_teeth(length); });
  auto hits = searcher.search(rest, {.sides_stated = false}).hits;
  std::erase_if(hits, is_another_thing);
  const auto says_all = [&](const Hit& hit) {
    return std::ranges::all_of(findings.reading.lengths,
                               [&](const LengthAsked& length) { return is_described(length, hit.entry); });
  };
  std::erase_if(hits, std::not_fn(says_all));
  if (hits.empty() || hits.size() > most_answers) return false;
  answer_with(findings, std::move(hits));
  return true;
}

// Strictly first; then also what leaves its side open, and what is itself the figure asked for; then with
// words of the notes corrected, and without them.
void find_answers(Findings& findings, Searcher& searcher, const Request& request, Lexicon& lexicon) {
  const auto attempt = [&](const Demand& demand) {
    Hits found = searcher.search(findings.reading, demand);
    findings.total = found.total;
    findings.total_is_exact = found.total_is_exact;
    if (!request.count_by.empty()) findings.counts = count_by(request.count_by, found.hits);
    split(findings, std::move(found.hits), request.limit);
    if (!request.count_by.empty()) findings.total = found.total;  // all are counted, whatever they are called
    return !findings.answers.empty();
  };
  const auto& reading = findings.reading;
  if (attempt({}) && is_crowded(findings)) {
    Findings crowd = findings;
    findings.answers.clear();
    findings.also.clear();
    if (!attempt({.table_rows = false})) findings = std::move(crowd);
  }
  if (!findings.answers.empty()) return put_named_first(findings, searcher, request.limit);
  if (!reading.sides.empty() && attempt({.sides_stated = false})) return;
  if (!reading.figures.empty() && attempt({.figures_named = false, .sides_stated = false})) return;
  const bool names_column = std::ranges::any_of(
      reading.figures, [](const std::string& figure) { return figure.find('-') != std::string::npos; });
  if (reading.figures.size() > 1 && !names_column &&
      attempt({.figures_named = false, .figures_all = false, .sides_stated = false}))
    return;
  if (asks_size_of_designated(reading) && attempt({.figures = false, .sides_stated = false})) return;
  if (reread_words_of_notes(findings.reading, lexicon) && attempt({.sides_stated = false})) return;
  QuestionReading whole = findings.reading;
  if (take_machine_of_chain(findings.reading, searcher) &&
      attempt({.figures_named = false, .sides_stated = false}))
    return;
  findings.reading = whole;
  if (leave_out_units(findings.reading) && attempt({.sides_stated = false})) return;
  findings.reading = whole;
  if (answer_described(findings, searcher, request.limit)) return;
  if (take_tube_of_fork(findings.reading, lexicon) &&
      attempt({.figures_named = false, .sides_stated = false}))
    return;
  findings.reading = whole;
  if (leave_out_words_of_notes(findings.reading, lexicon) &&
      attempt({.figures_named = false, .sides_stated = false}))
    return;
  findings.reading = std::move(whole);
}

// Of one assembly, or of the same at both ends of the machine.
bool are_of_one_place(const std::vector<Hit>& hits) {
  return std::ranges::all_of(hits, [&](const Hit& hit) {
    return without_end(hit.sheet.assembly) == without_end(hits.front().sheet.assembly);
  });
}

// What was found comes close, and is no answer.
void demote(Findings& findings, Near why) {
  findings.near = std::move(findings.answers);
  findings.why_near = why;
  findings.answers.clear();
  findings.also.clear();
  findings.total = 0;
}

// "differential oil", "knock sensor": beside a word that nobody knows, what is not called just so, or what is
// so called in several places, may be another thing.
void demote_guesses(Findings& findings) {
  if (findings.answers.empty()) return;
  const Hit& best = findings.answers.front();
  const bool is_elsewhere_alone = findings.answers.size() == 1 && findings.reading.machines.empty() &&
                                  !findings.reading.has_designation() &&
                                  std::ranges::any_of(findings.reading.parts, is_generic_fastener) &&
                                  !best.by_name &&
                                  best.cost >= much_too_many;  // "tank bolts", of a screw beside the tank
  const bool is_sure = best.cost < called_just_so && are_of_one_place(findings.answers);
  if (!is_elsewhere_alone && (findings.reading.unread.empty() || is_sure)) return;
  demote(findings, Near::unknown_words);
}

// What a filter asks for is held by every answer. While a question is being typed there is no time to look
// through all machines.
bool may_be_weighed(const Request& request, const QuestionReading& reading) {
  const auto& filters = request.filters;
  const bool is_filtered = !filters.kind.empty() || !filters.thread.empty() || !filters.drive.empty() ||
                           !filters.between.empty() || !filters.assembly.empty();
  return !is_filtered && request.count_by.empty() && (request.offers_near || !reading.machines.empty());
}

// Answers by weight instead; where that finds nothing, all is as it was.
bool weigh_instead(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  Findings before = findings;
  findings.answers.clear();
  findings.also.clear();
  if (answer_by_weight(findings, searcher, lexicon)) return true;
  findings = std::move(before);
  findings.weighed = true;
  return false;
}

// "lower head bearing, causeway, a 32006?": what the machine has is asked for, before the row of a table.
void put_machine_first(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  const auto& reading = findings.reading;
  if (findings.answers.empty() || !findings.answers.front().entry.fits.empty()) return;
  if (reading.machines.empty() ||
      (reading.sides.empty() && std::ranges::none_of(reading.parts, names_a_part)))
    return;
  if (!weigh_instead(findings, searcher, lexicon)) demote(findings, Near::fewer_words);
}

// "how many kilos on the rear carrier": its rear bolts weigh nothing, where something else of it is weighed.
void put_stated_first(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  constexpr Dimension never_unsaid[] = {Dimension::resistance, Dimension::power,   Dimension::mass,
                                        Dimension::pressure,   Dimension::current, Dimension::voltage};
  const auto units = units_that_tell(findings.reading);
  const auto is_stated = [&](const Hit& hit) {
    return states_some(hit.entry, units) || describes_in(hit.entry, units);
  };
  if (findings.answers.empty() || units.empty() || std::ranges::any_of(findings.answers, is_stated)) return;
  weigh_instead(findings, searcher, lexicon);
  const auto is_so = [&](const Unit* unit) {
    return std::ranges::find(never_unsaid, unit->dimension) != std::end(never_unsaid) &&
           unit->symbol != "bar";
  };
  const bool may_be_word = std::ranges::none_of(units, is_so) &&
                           !findings.reading.parts.empty();  // "bar", "turns" are words of names too
  if (!may_be_word && !is_stated(findings.answers.front())) demote(findings, Near::figure_not_stated);
}

// "M8x1.25", of which there are many: first what the thread itself is.
void put_row_of_thread_first(Findings& findings, Searcher& searcher, std::size_t most_answers) {
  QuestionReading rest = findings.reading;
  rest.threads.clear();
  if (findings.reading.threads.size() != 1 || !rest.names_nothing() || findings.total <= few_answers) return;
  const auto is_part = [](const Hit& hit) { return !hit.entry.fits.empty(); };
  auto rows = searcher.search(findings.reading, {}).hits;
  std::erase_if(rows, is_part);
  if (rows.size() != 1 || !std::ranges::all_of(findings.answers, is_part)) return;
  findings.answers.insert(findings.answers.begin(), std::move(rows.front()));
  if (findings.answers.size() > most_answers) findings.answers.pop_back();
  ++findings.total;
}

// What only its notes hold together is weighed against the others.
void put_named_before_noted(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  if (findings.answers.empty() || findings.answers.front().by_name || findings.reading.has_designation() ||
      is_tyre_alone(findings.reading))
    return;
  if (!weigh_instead(findings, searcher, lexicon) && !findings.answers.front().names_some)
    demote(findings, Near::fewer_words);
}

// Stages and an order that no answer has are said to be left aside.
void leave_unmet_aside(Findings& findings) {
  auto& reading = findings.reading;
  const auto has_stages_asked = [&](const Hit& hit) { return has_stages(hit.entry, reading.stages); };
  if (!findings.answers.empty() && std::ranges::none_of(findings.answers, has_stages_asked))
    reading.left_aside.insert(reading.left_aside.end(), reading.stages.begin(), reading.stages.end());
  const auto has_pattern_asked = [&](const Hit& hit) { return has_pattern(hit.entry, reading.pattern); };
  if (!reading.pattern.empty() && !findings.answers.empty() &&
      std::ranges::none_of(findings.answers, has_pattern_asked))
    reading.left_aside.push_back(reading.pattern);
}

// A figure that was withdrawn is no answer where another took its place: that is, and what became of the
// first is said.
void put_successors_first(Findings& findings, Searcher& searcher) {
  std::vector<Hit> answers;
  const auto add = [&](Hit& hit) {
    const auto is_it = [&](const Hit& other) {
      return other.library == hit.library && other.entry.address == hit.entry.address &&
             other.entry.variant == hit.entry.variant;
    };
    if (std::ranges::none_of(answers, is_it)) answers.push_back(std::move(hit));
  };
  for (auto& hit : findings.answers) {
    std::vector<Hit> successors;
    if (!hit.entry.withdrawn.empty())
      successors = searcher.entries_at(hit, hit.entry.withdrawn.front().instead, findings.reading);
    for (auto& successor : successors) add(successor);
    if (successors.empty()) {
      add(hit);
      continue;
    }
    const auto& withdrawal = hit.entry.withdrawn.front();
    findings.reading.doubts.push_back("“" + hit.entry.name + "” was withdrawn " + withdrawal.on + ": " +
                                      withdrawal.reason);
    findings.also.push_back(std::move(hit));
  }
  findings.total += answers.size() - findings.answers.size();
  findings.answers = std::move(answers);
}

// What all of its words do not find.
void find_otherwise(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  if (!findings.reading.numbers.empty() && answer_by_designation(findings, searcher)) return;
  if (findings.weighed || !answer_by_weight(findings, searcher, lexicon))
    answer_by_designation(findings, searcher);
}

}  // namespace

Result<Findings> find(const Request& request, Lexicon& lexicon) {
  Findings findings;
  findings.reading = read_question(request.words, lexicon);
  if (auto fault = apply_filters(request.filters, findings.reading, lexicon)) return *fault;
  if (lexicon.failure()) return *lexicon.failure();
  if (request.count_by.empty() && asks_for_sheets(findings.reading)) {
    if (!request.offers_near) return findings;  // sheets are no answer to show below a line
    if (auto fault = fill_shelf(findings, lexicon)) return *fault;
    if (!findings.shelf.empty()) return findings;
  }
  const std::size_t most =
      request.count_by.empty() ? std::max(candidates_read, request.limit) : counted_at_most;
  Searcher searcher(lexicon, most, request.count_by.empty() ? request.limit : most);
  if (is_blocked(findings.reading)) {
    const bool has_number = std::ranges::any_of(findings.reading.unread, holds_digit);
    if (has_number || !answer_by_designation(findings, searcher))
      find_without_unknown_words(findings, searcher);
  } else {
    find_answers(findings, searcher, request, lexicon);
    demote_guesses(findings);
    if (may_be_weighed(request, findings.reading)) {
      put_machine_first(findings, searcher, lexicon);
      put_row_of_thread_first(findings, searcher, request.limit);
      put_stated_first(findings, searcher, lexicon);
      put_named_before_noted(findings, searcher, lexicon);
      if (findings.answers.empty()) find_otherwise(findings, searcher, lexicon);
    }
    put_successors_first(findings, searcher);
    leave_unmet_aside(findings);
    if (request.offers_near && findings.answers.empty() && findings.near.empty())
      find_near(findings, searcher);
    else if (request.offers_near && !findings.answers.empty() && findings.answers.size() <= few_answers)
      add_near_sizes(findings, searcher);
  }
  if (searcher.failure()) return *searcher.failure();
  if (lexicon.failure()) return *lexicon.failure();
  return findings;
}

std::string xapian_version() { return Xapian::version_string(); }

}  // namespace sheaf
