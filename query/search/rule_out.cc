// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/rule_out.h"

#include <algorithm>
#include <iterator>
#include <numeric>

#include "query/library/fold.h"
#include "query/search/digits.h"
#include "query/search/keep_asked.h"
#include "query/search/measures.h"
#include "query/search/part_names.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

using Entries = std::vector<Weighed>;

template <typename May>
void keep(Entries& entries, May may) {
  for (auto& each : entries) each.may_answer = each.may_answer && may(each);
}

// Words of the question of that sort that it has so, or that were asked at all.
double count(const Evidence& evidence, Said said, Held held) {
  return evidence.words[static_cast<std::size_t>(said)][static_cast<std::size_t>(held)];
}
double named(const Evidence& evidence, Said said) {
  return count(evidence, said, Held::name) + count(evidence, said, Held::brief);
}
double asked(const Evidence& evidence, Said said) {
  const auto& held = evidence.words[static_cast<std::size_t>(said)];
  return std::accumulate(held.begin(), held.end(), 0.0);
}

// "how many kilos": of what nobody weighs there is none, where something else is weighed.
void rule_out_unstated(Entries& entries, const QuestionReading& reading) {
  const auto units = units_that_tell(reading);
  const auto is_stated = [&](const Weighed& each) { return states_some(*each.hit.entry, units); };
  if (std::ranges::any_of(entries, is_stated)) keep(entries, is_stated);
}

// Of a step no figure is asked, but the order of the work.
void rule_out_steps(Entries& entries, const QuestionReading& reading) {
  if (reading.figures.empty() || reading.asks("step") || reading.asks("order") || reading.asks("pattern"))
    return;
  keep(entries, [](const Weighed& each) { return each.hit.entry->kind != "step"; });
}

// "muleback 450": a bare number of three digits that is no measure of the entry may be the model of another
// machine.
void rule_out_of_model(Entries& entries, const QuestionReading& reading) {
  const auto may_be_model = [](const LengthAsked& length) {
    return length.bare && length.typed.size() >= 3 && is_digits(length.typed);
  };
  if (std::ranges::none_of(reading.lengths, may_be_model)) return;
  keep(entries, [&](const Weighed& each) { return meet_measures(*each.hit.entry, reading).meets; });
}

// "rear psi two up": what has nothing of what was named is none, whatever is measured of it.
void rule_out_unnamed(Entries& entries) {
  keep(entries, [](const Weighed& each) {
    const Evidence& evidence = each.evidence;
    double all = 0, held = named(evidence, Said::around) + named(evidence, Said::unknown);
    for (const Said said : {Said::part, Said::kind, Said::free}) {
      all += asked(evidence, said);
      held += named(evidence, said);
    }
    return all == 0 || held > 0 || evidence.designations[0] > 0;
  });
}

// "oil strainer plug", "starter relay screws", "speedo cable": the strainer is no plug, the starter's screws
// are not the relay's, and the throttle's cable is not the speedometer's.
void rule_out_of_another(Entries& entries, const QuestionReading& reading, Witness& witness) {
  const auto stands_before = [&](const PartAsked& part) {
    return std::ranges::any_of(reading.parts, [&](const PartAsked& other) {
      return other.phrase == part.phrase && other.token + 1 == part.token;
    });
  };
  for (const auto& part : reading.parts) {
    const bool is_within = tells_another(part, reading) && (stands_before(part) || reading.parts.size() == 2);
    const bool is_name = part.words.size() > 1 && names_a_part(part) && reading.parts.size() == 1;
    if (is_within || is_name)
      keep(entries, [&](const Weighed& each) { return witness.names(each.hit, part.words.back()); });
  }
}

// "31 mm fork oil": the fork's oil seal is none.
void rule_out_seals_of_oil(Entries& entries, const QuestionReading& reading) {
  const auto asks = [&](std::string_view ending) {
    return std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
      return std::ranges::any_of(part.groups, [&](const std::string& group) {
        return group == ending || group.ends_with("-" + std::string(ending));
      });
    });
  };
  if (asks("oil") && !asks("seal"))
    keep(entries, [](const Weighed& each) { return each.hit.entry->kind != "seal"; });
}

// "clutch fluid, can I use dot 4": the brake's has the code, and is not what was named, where another is.
void rule_out_of_other_part(Entries& entries) {
  const auto lacks_one = [](const Weighed& each) {
    return count(each.evidence, Said::part, Held::nowhere) > 0;
  };
  const auto names_all = [](const Weighed& each) {
    return named(each.evidence, Said::part) > 0 &&
           named(each.evidence, Said::part) == asked(each.evidence, Said::part);
  };
  if (std::ranges::any_of(entries, names_all))
    keep(entries, [&](const Weighed& each) { return !lacks_one(each); });
}

// "does a 6203 go in the back hub of a packlet": what is the machine's, and no row of a table.
void rule_out_rows(Entries& entries, const QuestionReading& reading) {
  if (reading.machines.empty() ||
      (reading.sides.empty() && std::ranges::none_of(reading.parts, names_a_part)))
    return;
  keep(entries, [](const Weighed& each) { return !each.hit.entry->fits.empty(); });
}

// "gear rod lh locknut": those with such a thread, if any has.
void rule_out_other_hand(Entries& entries, const QuestionReading& reading) {
  const auto has_it = [&](const Weighed& each) { return has_hand(*each.hit.entry, reading.hand); };
  if (reading.hand == "left" && std::ranges::any_of(entries, has_it)) keep(entries, has_it);
}

// "M8x999": another thread, size or bearing than it has of the kind asked for.
void rule_out_otherwise_designated(Entries& entries, const QuestionReading& reading) {
  if (!has_designation_but_length(reading) || !reading.machines.empty())
    return;  // "would a 32006 fit": what the machine has
  const auto states_other = [&](const FieldRecord& field) {
    return (field.key == "thread" && !reading.threads.empty()) ||
           (field.key == "size" && !reading.sizes.empty()) ||
           (field.key == "bearing" && !reading.bearings.empty());
  };
  keep(entries, [&](const Weighed& each) {
    const bool is_row = each.hit.entry->fits.empty();
    return each.evidence.designations[0] > 0 ||
           !(is_row || std::ranges::any_of(each.hit.entry->fields, states_other));
  });
}

// "front tyre two up", of a pressure for its rider alone.
void rule_out_other_loads(Entries& entries, const QuestionReading& reading, Lexicon& lexicon) {
  const auto is_load = [](const std::string& group) { return group == "two-up" || group == "rider-alone"; };
  std::vector<std::string> asked;
  for (const auto& part : reading.parts)
    std::ranges::copy_if(part.groups, std::back_inserter(asked), is_load);
  if (asked.empty()) return;
  keep(entries, [&](const Weighed& each) {
    return std::ranges::all_of(each.hit.entry->fields, [&](const FieldRecord& field) {
      if (field.key != "load") return true;
      const auto is_asked = [&](const GroupMatch& match) {
        return std::ranges::find(asked, match.group) != asked.end();
      };
      return std::ranges::any_of(lexicon.groups_in(words_of(fold(field.text))), is_asked);
    });
  });
}

// "for an M12 flange bolt, not the nut"
void rule_out_excluded(Entries& entries, const QuestionReading& reading) {
  for (const auto& word : reading.excluded) {
    const std::string stem = stem_of(word);
    const auto has_stem = [&](const std::string& other) { return stem_of(other) == stem; };
    if (std::ranges::any_of(reading.parts,
                            [&](const PartAsked& part) { return std::ranges::any_of(part.words, has_stem); }))
      continue;
    keep(entries, [&](const Weighed& each) {
      return std::ranges::none_of(words_of(fold(each.hit.entry->name)), has_stem);
    });
  }
}

// "air filter": an oil filter is none, for what it shares with it belongs to a name of its own.
void rule_out_of_other_name(Entries& entries, const QuestionReading& reading, Lexicon& lexicon) {
  if (!reading.is_spoken || reading.parts.size() != 1 || reading.parts.front().words.size() < 2 ||
      !names_a_part(reading.parts.front()))
    return;
  const PartAsked& part = reading.parts.front();
  keep(entries, [&](const Weighed& each) {
    const auto words = words_of(fold(each.hit.entry->name));
    const auto holds = [&](const std::string& asked) {
      return std::ranges::any_of(words,
                                 [&](const std::string& word) { return stem_of(word) == stem_of(asked); });
    };
    const auto& matches = lexicon.groups_in(words);
    const bool is_called_so =
        std::ranges::all_of(part.words, holds) ||
        std::ranges::any_of(matches, [&](const GroupMatch& match) { return part.has_group(match.group); });
    const auto is_of_another = [&](const GroupMatch& match) {
      return match.count > 1 && stem_of(words[match.first + match.count - 1]) == stem_of(part.words.back());
    };
    return is_called_so || std::ranges::none_of(matches, is_of_another);
  });
}

// "how far may the rim hop": up and down, and not sideways.
void rule_out_other_run_out(Entries& entries, const QuestionReading& reading, Lexicon& lexicon) {
  constexpr std::string_view run_outs[] = {"height-run-out", "side-run-out"};
  for (const auto asked : run_outs) {
    const auto asks = [&](std::string_view group) {
      return std::ranges::any_of(reading.parts, [&](const PartAsked& part) { return part.has_group(group); });
    };
    const auto other = asked == run_outs[0] ? run_outs[1] : run_outs[0];
    if (!asks(asked) || asks(other)) continue;
    keep(entries, [&](const Weighed& each) {
      return std::ranges::none_of(lexicon.groups_in(words_of(fold(each.hit.entry->name))),
                                  [&](const GroupMatch& match) { return match.group == other; });
    });
  }
}

// "stretch over 15 links": of a chain measured over 20 it is none.
void rule_out_otherwise_numbered(Entries& entries, const QuestionReading& reading) {
  for (const auto& part : reading.parts)
    for (const auto& word : part.words) {
      if (part.words.size() == 1) continue;  // of a letter, or of a range
      if (!is_digits(word)) continue;
      const auto is_called_so = [&](const Weighed& each) { return is_called(*each.hit.entry, word); };
      if (std::ranges::any_of(entries, is_called_so))
        keep(entries, is_called_so);
      else
        keep(entries, [](const Weighed& each) { return !is_numbered(*each.hit.entry); });
    }
}

// "run-out of the rear axle": that of the rim is none.
void rule_out_beside_axle(Entries& entries, const QuestionReading& reading) {
  keep(entries, [&](const Weighed& each) { return !measures_beside_axle(*each.hit.entry, reading); });
}

void rule_out_other_general_fasteners(Entries& entries, const QuestionReading& reading) {
  keep(entries, [&](const Weighed& each) { return !is_other_general_fastener(*each.hit.entry, reading); });
}

// "upper yoke pinch bolts", of a machine that states those of the lower yoke alone: they are none.
void rule_out_other_side(Entries& entries, const QuestionReading& reading) {
  for (const auto& part : reading.parts)
    for (const auto& word : part.words) {
      const std::string side(side_said(word)), other(opposite_of(side));
      if (other.empty() || part.is_context) continue;
      keep(entries, [&](const Weighed& each) {
        const EntryRecord& entry = *each.hit.entry;
        return is_called(entry, side) || is_called(entry, word) || !is_called(entry, other);
      });
    }
}

}  // namespace

void rule_out(Entries& entries, const QuestionReading& reading, Witness& witness, Lexicon& lexicon) {
  rule_out_unstated(entries, reading);
  rule_out_steps(entries, reading);
  rule_out_of_model(entries, reading);
  rule_out_unnamed(entries);
  rule_out_of_another(entries, reading, witness);
  rule_out_seals_of_oil(entries, reading);
  rule_out_of_other_part(entries);
  rule_out_rows(entries, reading);
  rule_out_other_hand(entries, reading);
  rule_out_otherwise_designated(entries, reading);
  rule_out_other_loads(entries, reading, lexicon);
  rule_out_otherwise_numbered(entries, reading);
  rule_out_other_run_out(entries, reading, lexicon);
  rule_out_excluded(entries, reading);
  rule_out_of_other_name(entries, reading, lexicon);
  rule_out_beside_axle(entries, reading);
  rule_out_other_side(entries, reading);
  rule_out_other_general_fasteners(entries, reading);
}

}  // namespace sheaf
