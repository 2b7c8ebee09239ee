// SPDX-License-Identifier: GPL-2.0-or-later
// What the words that were read mean beside each other: a tool beside a part asks what fits it.
#include <algorithm>
#include <iterator>
#include <utility>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/clauses.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

// "Hinterachse", "Vorderrad": a side, and a part that the glossary knows as a whole.
void read_compound_sides(QuestionReading& reading) {
  constexpr std::pair<std::string_view, std::string_view> sides[] = {{"hinter", "rear"}, {"vorder", "front"}};
  for (const auto& part : reading.parts)
    for (const auto& word : part.words)
      for (const auto& [beginning, side] : sides)
        if (word.starts_with(beginning) && word.size() > beginning.size())
          add_new(reading.sides, std::string(side));
}

bool is_tool(const PartAsked& part) {
  constexpr std::string_view tools[] = {"wrench", "socket", "hex-key"};
  return std::ranges::any_of(part.groups, [&](const std::string& group) {
    return std::ranges::find(tools, group) != std::end(tools);
  });
}

// A tool beside a part asks what fits it: "axle nut socket", "what size spanner", "fork bolt hex key".
void read_tools(QuestionReading& reading) {
  if (std::ranges::all_of(reading.parts, is_tool)) return;
  if (std::erase_if(reading.parts, is_tool) == 0) return;
  add_new(reading.figures, "drive");  // or the tool itself
  std::erase(reading.figures, "size");
}

// "stator screws locker": beside a part it asks whether any is put on it.
void read_threadlocker(QuestionReading& reading) {
  const auto is_locker = [](const PartAsked& part) { return part.has_group("threadlocker"); };
  if (std::ranges::all_of(reading.parts, is_locker)) return;
  if (std::erase_if(reading.parts, is_locker) > 0) add_new(reading.figures, "threadlocker");
}

// "head studs dry", "header nuts copper paste": beside a part it asks in what state that is fitted; "coolant
// dry" is filled into what was empty.
void read_states(QuestionReading& reading) {
  const auto is_state = [](const PartAsked& part) {
    return part.has_group("anti-seize") || std::ranges::any_of(part.groups, [](const std::string& group) {
             return group.starts_with("state-");
           });
  };
  const auto is_fastener = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, [](const std::string& group) {
      return group == "bolt" || group == "nut" || group == "stud" || group.ends_with("-bolt") ||
             group.ends_with("-nut") || group.ends_with("-stud");
    });
  };
  const auto is_fluid = [](const PartAsked& part) {
    return std::ranges::any_of(
        part.groups, [](const std::string& group) { return group == "coolant" || group.ends_with("-oil"); });
  };
  const auto is_dry = [](const PartAsked& part) { return part.has_group("state-dry"); };
  if (std::ranges::any_of(reading.parts, is_fastener)) {
    if (std::erase_if(reading.parts, is_state) > 0) add_new(reading.figures, "state");
  } else if ((reading.asks("volume") || std::ranges::any_of(reading.parts, is_fluid)) &&
             std::erase_if(reading.parts, is_dry) > 0) {
    add_new(reading.figures, "dry-fill");
  }
}

// "half inch clicker on a flywheel bolt": what is set on it is the torque of the other.
void read_torque_wrench(QuestionReading& reading) {
  const auto is_wrench = [](const PartAsked& part) { return part.has_group("torque-wrench"); };
  const auto names_other = [&](const PartAsked& part) { return !is_wrench(part) && !part.groups.empty(); };
  if (std::ranges::none_of(reading.parts, names_other)) return;
  if (std::erase_if(reading.parts, is_wrench) > 0) add_new(reading.figures, "torque");
}

// "fast compression screw": what the damping is set with.
void read_screws_of_settings(QuestionReading& reading) {
  constexpr std::string_view turned[] = {"screw", "screws", "clicker", "knob", "dial"};
  auto& parts = reading.parts;
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const bool is_turned =
        parts[i].words.size() == 1 && std::ranges::find(turned, parts[i].words.front()) != std::end(turned);
    const bool is_setting = std::ranges::any_of(parts[i - 1].groups, [](const std::string& group) {
      return group.starts_with("compression") || group.starts_with("rebound");
    });
    const bool follows = parts[i].token == parts[i - 1].token + parts[i - 1].words.size();
    if (is_turned && is_setting && follows)
      return void(parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(i)));
  }
}

// "flywheel nut lh": of the left side, or with a left-hand thread.
void read_hands(Draft& draft) {
  auto& reading = draft.reading;
  const auto is_called = [](const PartAsked& part, std::string_view ending) {
    return std::ranges::any_of(part.groups,
                               [&](const std::string& group) { return group.ends_with(ending); }) ||
           std::ranges::any_of(part.words,
                               [&](const std::string& word) { return stem_of(word).ends_with(ending); });
  };
  const auto is_screwed = [&](const PartAsked& part) {
    return is_called(part, "nut") || is_called(part, "bolt");
  };
  bool is_one_word = false;  // "front spacer lefthand", but "left hand nut"
  for (std::size_t i = 0; i < draft.size(); ++i)
    is_one_word = is_one_word || draft.has_word(i, "lefthand") || draft.has_word(i, "righthand");
  for (std::size_t i = 0; i + 2 < draft.size(); ++i) {  // "left hand wheel bearing"
    const bool is_said =
        (draft.has_word(i, "left") || draft.has_word(i, "right")) && draft.has_word(i + 1, "hand");
    const auto follows = [&](const PartAsked& part) { return part.token == i + 2 && !part.groups.empty(); };
    is_one_word = is_one_word || (is_said && std::ranges::any_of(reading.parts, follows));
  }
  if (is_one_word && !reading.hand.empty() && !reading.parts.empty() &&
      std::ranges::none_of(reading.parts, is_screwed)) {
    add_new(reading.sides, std::exchange(reading.hand, {}));
    std::erase(reading.figures, "hand");
    return;
  }
  if (!reading.hand.empty() || std::ranges::none_of(reading.parts, is_screwed)) return;
  const auto is_nut = [&](const PartAsked& part) { return is_called(part, "nut"); };
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (draft.has_word(i, "lh")) reading.hand = "left";
  if (!reading.hand.empty() && std::ranges::any_of(reading.parts, is_nut))
    std::erase(reading.sides, "left");  // of nuts there is seldom one a side
}

// "3/8 wrench range": of the torque wrench with that square, which alone has a range.
void read_crib_drives(QuestionReading& reading) {
  const auto is_wrench = [](const PartAsked& part) {
    return part.has_group("torque-wrench") || part.has_group("wrench");
  };
  const bool is_alone = reading.machines.empty() &&
                        std::ranges::any_of(reading.parts, is_wrench);  // "quarter inch clicker, how low"
  if (!reading.asks("range") && !reading.asks("calibration-due") && !is_alone) return;
  for (auto& drive : reading.drives)
    if (drive.shape == Drive::Shape::hexagon) drive.shape = Drive::Shape::square;
}

// "oil strainer cap 30x1.5": a thread where no ring of that size is known.
void read_threads_of_sizes(Draft& draft) {
  auto& reading = draft.reading;
  if (reading.sizes.size() != 1 || reading.sizes.front().count != 2 || !reading.threads.empty()) return;
  if (draft.lexicon.has_term(Prefix::size, size_key(reading.sizes.front()))) return;
  auto thread = parse_thread("M" + to_text(reading.sizes.front()), Input::prompt);
  if (!thread || !draft.lexicon.has_term(Prefix::thread, thread_key(*thread))) return;
  reading.threads.push_back(*std::move(thread));
  reading.sizes.clear();
}

// "key blank number": no tool.
void read_keys(Draft& draft) {
  auto& reading = draft.reading;
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (!draft.has_word(i, "key") || !draft.has_word(i + 1, "blank")) continue;
    std::erase(reading.figures, "drive");
    reading.unread.push_back("key");
    return;
  }
}

// "preload step": counted, and not in turns.
void read_steps_of_preload(Draft& draft) {
  const auto says_preload = [](const Token& token) {
    return std::ranges::any_of(token.words,
                               [](const std::string& word) { return word == "preload" || word == "collar"; });
  };
  const auto says_step = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) {
      return stem_of(word) == "step" || stem_of(word) == "notch";
    });
  };
  const auto& tokens = draft.question.tokens;
  if (std::ranges::any_of(tokens, says_preload) && std::ranges::any_of(tokens, says_step)) {
    std::erase_if(draft.reading.figures,
                  [](const std::string& figure) { return figure == "step" || figure == "stage"; });
    add_unit(draft.reading, "clicks");
  }
}

// "lower" is a part of a fork too; beside another part it says which of the two.
void read_sides_beside_parts(QuestionReading& reading) {
  const auto is_side = [](const PartAsked& part) { return !opposite_of(part.typed).empty(); };
  if (std::ranges::all_of(reading.parts, is_side)) return;
  const auto names_none = [&](const PartAsked& part) {
    return is_side(part) || std::ranges::any_of(part.groups, says_little);
  };
  const auto is_exhaust = [](const PartAsked& part) { return part.typed == "exhaust"; };
  if (std::ranges::any_of(reading.parts, is_exhaust) && std::ranges::all_of(reading.parts, names_none))
    return;  // "exhaust stud" is the exhaust's
  for (const auto& part : reading.parts)
    if (is_side(part)) add_new(reading.sides, part.typed);
  std::erase_if(reading.parts, is_side);
}

// "in two steps", of a torque.
void read_steps_of_torque(QuestionReading& reading) {
  if (reading.asks("stage")) std::erase(reading.figures, "step");
}

// "how much do their bolts get", "how much play": no volume.
void read_how_much(Draft& draft) {
  auto& reading = draft.reading;
  bool says_it = false, says_fluid = false;
  for (std::size_t i = 0; i < draft.size(); ++i)  // "how much goes back in"
    says_fluid = says_fluid || draft.has_word(i, "pour") || draft.has_word(i, "fill") ||
                 ((draft.has_word(i, "goes") || draft.has_word(i, "go")) && !draft.has_word(i + 1, "on"));
  bool says_get = false;  // "how much does the spark plug get"
  for (std::size_t i = 0; i < draft.size(); ++i)
    says_get = says_get || draft.has_word(i, "get") || draft.has_word(i, "gets");
  for (std::size_t i = 0; i + 1 < draft.size(); ++i)
    says_it = says_it || (draft.has_word(i, "how") && draft.has_word(i + 1, "much"));
  const auto is_fastener = [](const PartAsked& part) {
    return is_generic_fastener(part) || std::ranges::any_of(part.groups, [](const std::string& group) {
             return group == "nut" || group.ends_with("-nut") || group.ends_with("-bolt") ||
                    group.ends_with("-bolts");
           });
  };
  for (const auto& part : reading.parts)
    says_fluid =
        says_fluid || std::ranges::any_of(part.groups, [](const std::string& group) {
          return group.ends_with("oil") || group.ends_with("fluid") || group == "coolant" || group == "fuel";
        });
  if (!says_it || says_fluid || !reading.units.empty() || !reading.asks("volume")) return;
  const auto is_measured = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, says_what_of_it);
  };
  if (std::ranges::any_of(reading.parts,
                          [](const PartAsked& part) { return stem_of(part.typed) == "thread"; }))
    return;  // that shows above a nut
  const bool has_fastener = says_get || std::ranges::any_of(reading.parts, is_fastener);
  if (!has_fastener && std::ranges::none_of(reading.parts, is_measured)) return;
  std::erase(reading.figures, "volume");
  if (has_fastener && reading.figures.empty()) add_new(reading.figures, "torque");
}

// "rear wheel off, what do the front disc bolts get": of the side that is said where it is asked. "front or
// back", "top or bottom": of which end it is, was not known.
void read_both_ends(Draft& draft) {
  auto& sides = draft.reading.sides;
  const Clause clause = asking_clause(draft);
  const auto is_asked = [&](std::string_view side) {
    return std::ranges::any_of(draft.sides_said, [&](const Draft::SideSaid& said) {
      return said.side == side && said.token >= clause.begin && said.token < clause.end;
    });
  };
  const auto has = [&](std::string_view side) { return std::ranges::find(sides, side) != sides.end(); };
  for (const auto& axis : side_axes) {
    if (!has(axis[0]) || !has(axis[1])) continue;
    const bool one = is_asked(axis[0]), other = is_asked(axis[1]);
    std::erase_if(sides, [&](const std::string& side) {
      return (side == axis[0] && (!one || other)) || (side == axis[1] && (!other || one));
    });
  }
}

// "headstock" is the steering head, of which whole sheets are, though no name holds the word.
void read_assemblies(Draft& draft) {
  const auto stands_in_names = [&](const PartAsked& part) {
    return part.groups.empty() || std::ranges::any_of(part.words, [&](const std::string& word) {
             return draft.lexicon.names_with(word);
           });
  };
  if (std::ranges::all_of(draft.reading.parts, stands_in_names)) return;
  for (const auto assembly : all_assemblies()) {
    const auto words = words_of(assembly);
    for (const auto& match : draft.lexicon.groups_in(words))
      for (auto& part : draft.reading.parts)
        if (!stands_in_names(part) && match.count == words.size() && part.has_group(match.group))
          part.assemblies.push_back(assembly);
  }
}

}  // namespace

void read_together(Draft& draft) {
  read_tools(draft.reading);
  read_threadlocker(draft.reading);
  read_states(draft.reading);
  read_torque_wrench(draft.reading);
  read_screws_of_settings(draft.reading);
  read_hands(draft);
  read_crib_drives(draft.reading);
  read_steps_of_preload(draft);
  read_keys(draft);
  read_threads_of_sizes(draft);
  read_sides_beside_parts(draft.reading);
  read_compound_sides(draft.reading);
  read_both_ends(draft);
  read_steps_of_torque(draft.reading);
  read_how_much(draft);
  read_implied(draft);
  read_assemblies(draft);
}

}  // namespace sheaf
