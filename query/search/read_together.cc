// SPDX-License-Identifier: GPL-2.0-or-later
// What the words that were read mean beside each other: a tool beside a part asks what fits it.
#include <algorithm>
#include <iterator>
#include <utility>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
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
        if (word.starts_with(beginning) && word.size() > beginning.size()) add_new(reading.sides, std::string(side));
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
  const auto is_locker = [](const PartAsked& part) {
    return part.has_group("threadlocker");
  };
  if (std::ranges::all_of(reading.parts, is_locker)) return;
  if (std::erase_if(reading.parts, is_locker) > 0) add_new(reading.figures, "threadlocker");
}

// "head studs dry", "header nuts copper paste": beside a part it asks in what state that is fitted; "coolant dry" is
// filled into what was empty.
void read_states(QuestionReading& reading) {
  const auto is_state = [](const PartAsked& part) {
    return part.has_group("anti-seize") || std::ranges::any_of(part.groups, [](const std::string& group) { return group.starts_with("state-"); });
  };
  const auto is_fastener = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, [](const std::string& group) {
      return group == "bolt" || group == "nut" || group == "stud" || group.ends_with("-bolt") || group.ends_with("-nut") || group.ends_with("-stud");
    });
  };
  const auto is_fluid = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, [](const std::string& group) { return group == "coolant" || group.ends_with("-oil"); });
  };
  const auto is_dry = [](const PartAsked& part) { return part.has_group("state-dry"); };
  if (std::ranges::any_of(reading.parts, is_fastener)) {
    if (std::erase_if(reading.parts, is_state) > 0) add_new(reading.figures, "state");
  } else if ((reading.asks("volume") || std::ranges::any_of(reading.parts, is_fluid)) && std::erase_if(reading.parts, is_dry) > 0) {
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

// "flywheel nut lh": of the left side, or with a left-hand thread.
void read_hands(Draft& draft) {
  auto& reading = draft.reading;
  const auto is_called = [](const PartAsked& part, std::string_view ending) {
    return std::ranges::any_of(part.groups, [&](const std::string& group) { return group.ends_with(ending); }) ||
           std::ranges::any_of(part.words, [&](const std::string& word) { return stem_of(word).ends_with(ending); });
  };
  const auto is_screwed = [&](const PartAsked& part) { return is_called(part, "nut") || is_called(part, "bolt"); };
  bool is_one_word = false;  // "front spacer lefthand", but "left hand nut"
  for (std::size_t i = 0; i < draft.size(); ++i) is_one_word = is_one_word || draft.has_word(i, "lefthand") || draft.has_word(i, "righthand");
  for (std::size_t i = 0; i + 2 < draft.size(); ++i) {  // "left hand wheel bearing"
    const bool is_said = (draft.has_word(i, "left") || draft.has_word(i, "right")) && draft.has_word(i + 1, "hand");
    const auto follows = [&](const PartAsked& part) { return part.token == i + 2 && !part.groups.empty(); };
    is_one_word = is_one_word || (is_said && std::ranges::any_of(reading.parts, follows));
  }
  if (is_one_word && !reading.hand.empty() && !reading.parts.empty() && std::ranges::none_of(reading.parts, is_screwed)) {
    add_new(reading.sides, std::exchange(reading.hand, {}));
    std::erase(reading.figures, "hand");
    return;
  }
  if (!reading.hand.empty() || std::ranges::none_of(reading.parts, is_screwed)) return;
  const auto is_nut = [&](const PartAsked& part) { return is_called(part, "nut"); };
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (draft.has_word(i, "lh")) reading.hand = "left";
  if (!reading.hand.empty() && std::ranges::any_of(reading.parts, is_nut)) std::erase(reading.sides, "left");  // of nuts there is seldom one a side
}

// "3/8 wrench range": of the torque wrench with that square, which alone has a range.
void read_crib_drives(QuestionReading& reading) {
  const auto is_wrench = [](const PartAsked& part) { return part.has_group("torque-wrench") || part.has_group("wrench"); };
  const bool is_alone = reading.machines.empty() && std::ranges::any_of(reading.parts, is_wrench);  // "quarter inch clicker, how low"
  if (!reading.asks("range") && !reading.asks("calibration-due") && !is_alone) return;
  for (auto& drive : reading.drives)
    if (drive.shape == Drive::Shape::hexagon) drive.shape = Drive::Shape::square;
}

// "tank litres": of what it is filled with.
void read_tanks(Draft& draft) {
  auto& reading = draft.reading;
  bool says_tank = false, says_reserve = false;  // in that order: "tank litres reserve" speaks of no reserve tank
  for (std::size_t i = 0; i < draft.size(); ++i) {
    says_reserve = says_reserve || (says_tank && draft.has_word(i, "reserve"));
    says_tank = says_tank || draft.has_word(i, "tank");
  }
  const auto is_tank = [&](const PartAsked& part) { return part.words.back() == "tank" && (part.has_group("tank") || says_reserve); };
  if (reading.parts.size() != 1 || !is_tank(reading.parts.front()) || !reading.asks("volume")) return;
  reading.parts.front().groups = {"fuel"};
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

// "coolant drain and refill": of what is filled in, not of the plug.
void read_refills(Draft& draft) {
  auto& reading = draft.reading;
  bool says_refill = false;
  for (std::size_t i = 0; i < draft.size(); ++i) says_refill = says_refill || draft.has_word(i, "refill") || draft.has_word(i, "fill");
  for (auto& part : reading.parts) {
    const bool is_drain = says_refill && part.words.back() == "drain";
    const bool is_drained = reading.asks("volume") && (part.words.back() == "drained" || part.words.front() == "drained");  // "coolant litres, drained"
    if (part.words.size() < 2 || (!is_drain && !is_drained)) continue;
    if (part.words.front() == "drained") std::ranges::rotate(part.words, part.words.begin() + 1);
    const std::size_t token = part.token;
    std::string fluid;
    for (std::size_t word = 0; word + 1 < part.words.size(); ++word) fluid += (fluid.empty() ? "" : " ") + part.words[word];
    part = part_of(draft, fluid);
    part.token = token;
    for (const auto& match : draft.lexicon.groups_in(part.words))
      if (match.count == part.words.size() && is_part_group(match.group)) part.groups.push_back(match.group);
  }
}

// "preload step": counted, and not in turns.
void read_steps_of_preload(Draft& draft) {
  const auto says_preload = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) { return word == "preload" || word == "collar"; });
  };
  const auto says_step = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) { return stem_of(word) == "step" || stem_of(word) == "notch"; });
  };
  const auto& tokens = draft.question.tokens;
  if (std::ranges::any_of(tokens, says_preload) && std::ranges::any_of(tokens, says_step)) {
    std::erase_if(draft.reading.figures, [](const std::string& figure) { return figure == "step" || figure == "stage"; });
    add_unit(draft.reading, "clicks");
  }
}

// "oil change with filter, litres", "ml per leg", "how many links": what is filled in so, or has them, goes without saying.
void read_implied_parts(Draft& draft) {
  auto& reading = draft.reading;
  if (!reading.parts.empty()) return;
  const auto imply = [&](const char* words, const char* group) {
    PartAsked part = part_of(draft, words);
    part.groups = {group};
    part.groups_of_words.assign(part.words.size(), part.groups);
    reading.parts.push_back(std::move(part));
  };
  const auto says_sprocket = [](const Token& token) { return std::ranges::any_of(token.words, [](const std::string& word) { return stem_of(word) == "sprocket"; }); };
  if (std::ranges::any_of(reading.lengths, counts_teeth) && std::ranges::none_of(draft.question.tokens, says_sprocket)) return imply("sprocket", "sprocket");
  if (reading.has_designation()) return;
  if (reading.asks("with-filter")) return imply("engine oil", "engine-oil");
  if (reading.asks("links")) return imply("chain", "chain");
  for (std::size_t i = 1; i < draft.size() && reading.asks("volume"); ++i)
    if ((draft.has_word(i, "leg") || draft.has_word(i, "legs")) && (draft.has_word(i - 1, "per") || draft.has_word(i - 1, "each"))) return imply("fork oil", "fork-oil");
}

// "lower" is a part of a fork too; beside another part it says which of the two.
void read_sides_beside_parts(QuestionReading& reading) {
  const auto is_side = [](const PartAsked& part) { return !opposite_of(part.typed).empty(); };
  if (std::ranges::all_of(reading.parts, is_side)) return;
  const auto names_none = [&](const PartAsked& part) { return is_side(part) || std::ranges::any_of(part.groups, says_little); };
  const auto is_exhaust = [](const PartAsked& part) { return part.typed == "exhaust"; };
  if (std::ranges::any_of(reading.parts, is_exhaust) && std::ranges::all_of(reading.parts, names_none))
    return;  // "exhaust stud" is the exhaust's
  for (const auto& part : reading.parts)
    if (is_side(part)) add_new(reading.sides, part.typed);
  std::erase_if(reading.parts, is_side);
}

// "dot 5 in the front brake": of its fluid.
void read_fluid_of_code(Draft& draft) {
  auto& reading = draft.reading;
  const auto is_dot = [](const std::string& code) { return code.starts_with("dot"); };
  if (reading.machines.empty() || reading.parts.size() != 1 || std::ranges::none_of(reading.codes, is_dot)) return;
  PartAsked& part = reading.parts.front();
  if (part.groups != std::vector<std::string>{"brake"} && part.groups != std::vector<std::string>{"clutch"}) return;
  const std::string fluid = part.groups.front() + "-fluid";
  const std::size_t token = part.token;
  part = part_of(draft, part.groups.front() + " fluid");
  part.groups = {fluid};
  part.token = token;
}

// "fork clicks": of whatever is counted so in it.
void read_clicks_of_place(Draft& draft) {
  auto& reading = draft.reading;
  const auto says_clicks = [](const Token& token) { return std::ranges::any_of(token.words, [](const std::string& word) { return stem_of(word) == "click"; }); };
  const bool is_place = reading.parts.size() == 1 && reading.parts.front().groups.size() == 1 && std::ranges::find(all_assemblies(), reading.parts.front().groups.front()) != all_assemblies().end();
  if (!is_place || !reading.asks("setting") || std::ranges::none_of(draft.question.tokens, says_clicks)) return;
  reading.assemblies = reading.parts.front().groups;
  reading.parts.clear();
  add_unit(reading, "clicks");
}

// "how tight with two lambda probes": of no riders.
void read_two_of_a_part(Draft& draft) {
  auto& parts = draft.reading.parts;
  for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
    const bool is_said = parts[i].typed == "with two" && parts[i].has_group("two-up");
    const auto follows = [&](const PartAsked& part) { return part.token == parts[i].token + 2 && names_a_part(part); };
    if (is_said && std::ranges::any_of(parts, follows)) return void(parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(i)));
  }
}

// "in two steps", of a torque.
void read_steps_of_torque(QuestionReading& reading) {
  if (reading.asks("stage")) std::erase(reading.figures, "step");
}

// "oil weeping behind the front sprocket, what seal": of the shaft that it sits on.
void read_seal_behind(Draft& draft) {
  auto& parts = draft.reading.parts;
  bool says_behind = false;
  for (std::size_t i = 0; i < draft.size(); ++i) says_behind = says_behind || draft.has_word(i, "behind");
  const auto is_sprocket = [](const PartAsked& part) { return part.has_group("front-sprocket"); };
  const auto is_seal = [](const PartAsked& part) { return stem_of(part.words.back()) == "seal"; };
  const auto sprocket = std::ranges::find_if(parts, is_sprocket);
  if (!says_behind || sprocket == parts.end() || std::ranges::none_of(parts, is_seal)) return;
  const std::size_t token = sprocket->token;
  std::erase_if(parts, [&](const PartAsked& part) { return is_sprocket(part) || is_seal(part); });
  parts.push_back(part_of(draft, "countershaft seal"));
  parts.back().groups = {"countershaft-seal"};
  parts.back().token = token;
}

// "which notch are the shocks on", "standard step of the rear shocks": of their preload.
void read_notch_of_shock(Draft& draft) {
  auto& reading = draft.reading;
  const auto says = [&](std::string_view stem) {
    return std::ranges::any_of(draft.question.tokens, [&](const Token& token) { return std::ranges::any_of(token.words, [&](const std::string& word) { return stem_of(word) == stem; }); });
  };
  const auto is_shock = [](const PartAsked& part) { return part.has_group("shock"); };
  const bool says_it = says("notch") || (says("step") && !says("preload"));
  if (!says_it || std::ranges::none_of(reading.parts, is_shock) || std::ranges::any_of(reading.parts, [](const PartAsked& part) { return part.has_group("preload-adjuster"); })) return;
  std::erase_if(reading.parts, is_shock);
  reading.parts.push_back(part_of(draft, "shock preload"));
  reading.parts.back().groups = {"preload-adjuster"};
  std::erase_if(reading.figures, [](const std::string& figure) { return figure == "step" || figure == "stage" || figure == "pattern"; });
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (draft.has_word(i, "notch") || draft.has_word(i, "notches")) draft.take(i, 1);
  add_unit(reading, "clicks");
}

// "how much do their bolts get", "how much play": no volume.
void read_how_much(Draft& draft) {
  auto& reading = draft.reading;
  bool says_it = false, says_fluid = false;
  for (std::size_t i = 0; i + 1 < draft.size(); ++i) says_it = says_it || (draft.has_word(i, "how") && draft.has_word(i + 1, "much"));
  const auto is_fastener = [](const PartAsked& part) {
    return is_generic_fastener(part) || std::ranges::any_of(part.groups, [](const std::string& group) { return group == "nut" || group.ends_with("-nut") || group.ends_with("-bolt") || group.ends_with("-bolts"); });
  };
  for (const auto& part : reading.parts)
    says_fluid = says_fluid || std::ranges::any_of(part.groups, [](const std::string& group) { return group.ends_with("oil") || group.ends_with("fluid") || group == "coolant" || group == "fuel"; });
  if (!says_it || says_fluid || !reading.units.empty() || !reading.asks("volume")) return;
  const auto is_measured = [](const PartAsked& part) { return std::ranges::any_of(part.groups, says_what_of_it); };
  if (std::ranges::any_of(reading.parts, [](const PartAsked& part) { return stem_of(part.typed) == "thread"; })) return;  // that shows above a nut
  const bool has_fastener = std::ranges::any_of(reading.parts, is_fastener);
  if (!has_fastener && std::ranges::none_of(reading.parts, is_measured)) return;
  std::erase(reading.figures, "volume");
  if (has_fastener && reading.figures.empty()) add_new(reading.figures, "torque");
}

// "M8 flange bolt, no figure given": the figures for all that have none of their own.
void read_no_figure_given(Draft& draft) {
  constexpr std::string_view figures[] = {"figure", "figures", "torque", "value", "spec"};
  auto& reading = draft.reading;
  if (reading.threads.empty() || !reading.machines.empty() || !draft.lexicon.names_with("general")) return;
  const auto is_any = [&](std::size_t i, auto& words) { return std::ranges::any_of(words, [&](std::string_view word) { return draft.has_word(i, word); }); };
  for (std::size_t i = 0; i + 1 < draft.size(); ++i) {
    const std::size_t named = draft.has_word(i + 1, "own") ? i + 2 : i + 1;
    const bool is_none = (draft.has_word(i, "no") && is_any(named, figures)) || (draft.has_word(i, "none") && draft.has_word(i + 1, "given"));
    if (!is_none || std::ranges::any_of(reading.parts, [](const PartAsked& part) { return part.typed == "general"; })) continue;
    reading.parts.push_back(part_of(draft, "general"));
    reading.parts.back().token = i;
    draft.take(i, 2);
  }
}

// "front or back", "top or bottom": of which end it is, was not known.
void read_both_ends(QuestionReading& reading) {
  const auto has = [&](std::string_view side) { return std::ranges::find(reading.sides, side) != reading.sides.end(); };
  for (const auto& axis : side_axes)
    if (has(axis[0]) && has(axis[1])) std::erase_if(reading.sides, [&](const std::string& side) { return side == axis[0] || side == axis[1]; });
}

// "headstock" is the steering head, of which whole sheets are, though no name holds the word.
void read_assemblies(Draft& draft) {
  const auto stands_in_names = [&](const PartAsked& part) {
    return part.groups.empty() || std::ranges::any_of(part.words, [&](const std::string& word) { return draft.lexicon.names_with(word); });
  };
  if (std::ranges::all_of(draft.reading.parts, stands_in_names)) return;
  for (const auto assembly : all_assemblies()) {
    std::string spaced(assembly);
    std::ranges::replace(spaced, '-', ' ');
    const auto words = words_of(spaced);
    for (const auto& match : draft.lexicon.groups_in(words))
      for (auto& part : draft.reading.parts)
        if (!stands_in_names(part) && match.count == words.size() && part.has_group(match.group)) part.assemblies.push_back(assembly);
  }
}

}  // namespace

void read_together(Draft& draft) {
  read_tools(draft.reading);
  read_threadlocker(draft.reading);
  read_states(draft.reading);
  read_torque_wrench(draft.reading);
  read_hands(draft);
  read_crib_drives(draft.reading);
  read_steps_of_preload(draft);
  read_implied_parts(draft);
  read_tanks(draft);
  read_keys(draft);
  read_refills(draft);
  read_threads_of_sizes(draft);
  read_sides_beside_parts(draft.reading);
  read_compound_sides(draft.reading);
  read_both_ends(draft.reading);
  read_steps_of_torque(draft.reading);
  read_seal_behind(draft);
  read_notch_of_shock(draft);
  read_how_much(draft);
  read_no_figure_given(draft);
  read_two_of_a_part(draft);
  read_clicks_of_place(draft);
  read_fluid_of_code(draft);
  read_assemblies(draft);
}

}  // namespace sheaf
