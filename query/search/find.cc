// SPDX-License-Identifier: GPL-2.0-or-later
// One strict search decides what the answers are; only where it finds none does find_near.cc look further.
#include "query/search/find.h"

#include <algorithm>
#include <functional>

#include "query/library/fold.h"
#include "query/search/count_by.h"
#include "query/search/designated.h"
#include "query/search/digits.h"
#include "query/search/figures.h"
#include "query/search/filters.h"
#include "query/search/find_near.h"
#include "query/search/machine_of_chain.h"
#include "query/search/measures.h"
#include "query/search/part_names.h"
#include "query/search/read.h"
#include "query/search/reread.h"
#include "query/search/searcher.h"
#include "query/search/shelf.h"
#include "query/search/sides.h"
#include "query/search/split.h"
#include "query/search/weigh.h"

namespace sheaf {
namespace {

constexpr std::size_t candidates_read = 60;  // entries that are read and ranked, of each library
constexpr std::size_t named_read = 30;  // where no size or figure tells them apart: first what is called so
constexpr std::size_t counted_at_most = 10000;  // entries that are read to be counted
constexpr std::size_t few_answers = 8;          // beside which near sizes are offered
constexpr std::size_t few_machines = 4;         // that are looked through while one types

// The rows of a table, more than are looked at, before which no machine's part came to light: "fork seal".
bool is_crowded(const Findings& findings) {
  return !findings.reading.has_designation() && findings.total > candidates_read &&
         findings.answers.front().entry->fits.empty();
}

// "seal 41 mm tube": which dimension it is, is said, so that the index brings no other.
bool is_sized_by_place(const QuestionReading& reading) {
  QuestionReading rest = reading;
  std::erase_if(rest.lengths, [](const LengthAsked& length) {
    return length.of == LengthOf::inside || length.of == LengthOf::outside;
  });
  return !rest.has_designation();
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
           hit.entry->kind == "step";
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

// "rivet link 520": what is called just so stays, where the number is said of something on its sheet.
// Whether it was so.
bool keep_beside_described(std::vector<Hit>& hits, const std::vector<Hit>& described) {
  const auto is_named = [](const Hit& hit) { return hit.by_name && hit.cost < called_just_so; };
  const auto is_beside = [&](const Hit& hit) {
    return is_named(hit) && std::ranges::any_of(described, [&](const Hit& other) {
             return other.library == hit.library && other.sheet->name == hit.sheet->name;
           });
  };
  if (std::ranges::any_of(described, is_named) || std::ranges::none_of(hits, is_beside)) {
    hits = described;
    return false;
  }
  std::erase_if(hits, std::not_fn(is_beside));
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
                               [&](const LengthAsked& length) { return is_described(length, *hit.entry); });
  };
  std::vector<Hit> described;
  std::ranges::copy_if(hits, std::back_inserter(described), says_all);
  auto& lengths = findings.reading.lengths;
  const bool is_beside = std::ranges::all_of(lengths, names_chain) && keep_beside_described(hits, described);
  if (!is_beside) hits = std::move(described);
  if (hits.empty() || hits.size() > most_answers) return false;
  for (const auto& length : lengths)
    if (is_beside) findings.reading.left_aside.push_back(length.typed);
  if (is_beside) lengths.clear();
  answer_with(findings, std::move(hits));
  return true;
}

// "silencer wool, how much": by its mass, where no volume of it is stated.
bool answer_by_mass(Findings& findings, Searcher& searcher, std::size_t most_answers) {
  const auto is_volume = [](const Unit* unit) { return unit->dimension == Dimension::volume; };
  if (!findings.reading.asks("volume") || std::ranges::any_of(findings.reading.units, is_volume))
    return false;
  std::vector<const Unit*> of_mass;
  for (const Unit& unit : units_of(Dimension::mass)) of_mass.push_back(&unit);
  auto hits = searcher.search(findings.reading, {.figures = false}).hits;
  std::erase_if(hits, [&](const Hit& hit) {
    return !hit.by_name || hit.cost >= called_just_so || !describes_in(*hit.entry, of_mass);
  });
  if (hits.empty() || hits.size() > most_answers) return false;
  std::ranges::replace(findings.reading.figures, "volume", "description");  // which says it
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
  const auto has_stages_asked = [&](const Hit& hit) { return has_stages(*hit.entry, reading.stages); };
  if (!reading.stages.empty() && attempt({.figures = false, .sides_stated = false, .stages = true})) {
    if (std::ranges::all_of(findings.answers, has_stages_asked)) return;
    findings.answers.clear();
    findings.also.clear();
  }
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
  if (answer_by_mass(findings, searcher, request.limit)) return;
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
    return without_end(hit.sheet->assembly) == without_end(hits.front().sheet->assembly);
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
// through many machines.
bool may_be_weighed(const Request& request, const QuestionReading& reading) {
  const auto& filters = request.filters;
  const bool is_filtered = !filters.kind.empty() || !filters.thread.empty() || !filters.drive.empty() ||
                           !filters.between.empty() || !filters.assembly.empty();
  const bool has_time =
      request.offers_near || (!reading.machines.empty() && reading.machines.size() <= few_machines);
  return !is_filtered && request.count_by.empty() && has_time;
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

// "32006 fits causeway?": no row of a table, but what says there that it is not that bearing.
void offer_noted_bearing(Findings& findings, Searcher& searcher) {
  const auto is_row = [](const Hit& hit) { return hit.entry->fits.empty(); };
  const auto& asked = findings.reading;
  if (asked.machines.empty() || asked.bearings.size() != 1 || !asked.figures.empty() ||
      std::ranges::any_of(asked.parts, &PartAsked::is_aspect) ||
      !std::ranges::all_of(findings.answers, is_row) || !std::ranges::all_of(findings.near, is_row))
    return;
  QuestionReading noted = asked;
  PartAsked number;
  number.typed = asked.bearings.front().basic;
  number.words = words_of(fold(number.typed));
  number.groups_of_words.resize(number.words.size());
  noted.bearings.clear();
  noted.parts = {number};
  auto hits = searcher.search(noted, {.sides_stated = false}).hits;
  std::erase_if(hits, is_row);
  if (hits.size() > few_answers) hits.resize(few_answers);
  if (!hits.empty()) findings.answers = std::move(hits);
  if (!findings.answers.empty()) demote(findings, Near::other_sizes);
}

// "lower head bearing, causeway, a 32006?": what the machine has is asked for, before the row of a table.
void put_machine_first(Findings& findings, Searcher& searcher, Lexicon& lexicon) {
  const auto& reading = findings.reading;
  if (findings.answers.empty() || !findings.answers.front().entry->fits.empty()) return;
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
    return states_some(*hit.entry, units) || describes_in(*hit.entry, units);
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
  const auto is_part = [](const Hit& hit) { return !hit.entry->fits.empty(); };
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

// What is reached by other stages is no answer; an order that no answer has is said to be left aside.
void leave_unmet_aside(Findings& findings) {
  auto& reading = findings.reading;
  const auto has_stages_asked = [&](const Hit& hit) { return has_stages(*hit.entry, reading.stages); };
  if (!findings.answers.empty() && std::ranges::none_of(findings.answers, has_stages_asked))
    demote(findings, Near::other_sizes);
  const auto is_left_handed = [](const Hit& hit) { return has_hand(*hit.entry, "left"); };
  const bool may_be_side = std::ranges::find(reading.sides, "left") != reading.sides.end();
  if (reading.hand == "left" && !may_be_side && std::ranges::none_of(findings.answers, is_left_handed))
    for (const auto& hit : findings.answers)
      reading.doubts.push_back("“" + hit.entry->name + "” is not stated to have a left-hand thread.");
  const auto is_bare_row = [](const Hit& hit) {
    return hit.entry->fits.empty() && !states(*hit.entry, Dimension::torque);
  };
  if (reading.asks("torque") && std::ranges::all_of(findings.answers, is_bare_row))
    reading.unstated.emplace_back("torque");  // "m10 nut torque", answered by the rows of its thread
  const auto has_pattern_asked = [&](const Hit& hit) { return has_pattern(*hit.entry, reading.pattern); };
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
      return other.library == hit.library && other.entry->address == hit.entry->address &&
             other.entry->variant == hit.entry->variant;
    };
    if (std::ranges::none_of(answers, is_it)) answers.push_back(std::move(hit));
  };
  for (auto& hit : findings.answers) {
    std::vector<Hit> successors;
    if (!hit.entry->withdrawn.empty())
      successors = searcher.entries_at(hit, hit.entry->withdrawn.front().instead, findings.reading);
    for (auto& successor : successors) add(successor);
    if (successors.empty()) {
      add(hit);
      continue;
    }
    const auto& withdrawal = hit.entry->withdrawn.front();
    findings.reading.doubts.push_back("“" + hit.entry->name + "” was withdrawn " + withdrawal.on + ": " +
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
  const auto& reading = findings.reading;
  const bool is_told_apart = (reading.has_designation() && !is_sized_by_place(reading)) ||
                             !reading.quantities.empty() || !reading.stages.empty();
  const std::size_t read = std::max(is_told_apart ? candidates_read : named_read, request.limit);
  const std::size_t most = request.count_by.empty() ? read : counted_at_most;
  Searcher searcher(lexicon, most, request.count_by.empty() ? request.limit : most);
  if (is_blocked(findings.reading)) {
    const bool has_number = std::ranges::any_of(findings.reading.unread, has_digit);
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
      offer_noted_bearing(findings, searcher);
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
