// SPDX-License-Identifier: GPL-2.0-or-later
// Parts that go without saying, or that other words stand for: "ml per leg" is of the fork's oil.
#include <algorithm>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

// Whether some token is one of these words, and of what nobody has read yet all others say but a side or a
// year.
bool says_only(const Draft& draft, std::initializer_list<std::string_view> words) {
  const auto says_nothing = [](const std::string& word) {
    return is_noise(word) || word == "which" || word == "what" || !opposite_of(side_said(word)).empty();
  };
  bool says_it = false;
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.has_any(i, words))
      says_it = true;
    else if (!draft.taken[i] && !year_in(draft.token(i).typed) &&
             !std::ranges::all_of(draft.token(i).words, says_nothing))
      return false;
  }
  return says_it;
}

// "oil change with filter, litres", "ml per leg", "how many links": what is filled in so, or has them, goes
// without saying.
void read_implied_parts(Draft& draft) {
  auto& reading = draft.reading;
  if (!reading.parts.empty()) return;
  const auto imply = [&](const char* words, const char* group) {
    PartAsked part = part_of(draft, words);
    part.groups = {group};
    part.groups_of_words.assign(part.words.size(), part.groups);
    reading.parts.push_back(std::move(part));
  };
  const auto says_sprocket = [](const Token& token) {
    return std::ranges::any_of(token.words,
                               [](const std::string& word) { return stem_of(word) == "sprocket"; });
  };
  if (std::ranges::any_of(reading.lengths, counts_teeth) &&
      std::ranges::none_of(draft.question.tokens, says_sprocket))
    return imply("sprocket", "sprocket");
  if (reading.has_designation()) return;
  for (std::size_t i = 1; i < draft.size() && reading.asks("level"); ++i)
    if (draft.has_word(i - 1, "air") && draft.has_word(i, "gap") && says_only(draft, {"air", "gap"}))
      return imply("fork oil", "fork-oil");
  if (reading.asks("with-filter")) return imply("engine oil", "engine-oil");
  if (reading.asks("links")) return imply("chain", "chain");
  for (std::size_t i = 1; i < draft.size() && reading.asks("volume"); ++i)
    if ((draft.has_word(i, "leg") || draft.has_word(i, "legs")) &&
        (draft.has_word(i - 1, "per") || draft.has_word(i - 1, "each") || draft.has_word(i - 1, "a")))
      return imply("fork oil", "fork-oil");
}

// "tank litres": of what it is filled with.
void read_tanks(Draft& draft) {
  auto& reading = draft.reading;
  bool says_tank = false,
       says_reserve = false;  // in that order: "tank litres reserve" speaks of no reserve tank
  for (std::size_t i = 0; i < draft.size(); ++i) {
    says_reserve = says_reserve || (says_tank && draft.has_word(i, "reserve"));
    says_tank = says_tank || draft.has_word(i, "tank");
  }
  const auto is_tank = [&](const PartAsked& part) {
    return part.words.back() == "tank" && (part.has_group("tank") || says_reserve);
  };
  if (reading.parts.size() != 1 || !is_tank(reading.parts.front()) || !reading.asks("volume")) return;
  reading.parts.front().groups = {"fuel"};
}

// "coolant drain and refill": of what is filled in, not of the plug.
void read_refills(Draft& draft) {
  auto& reading = draft.reading;
  bool says_refill = false;
  for (std::size_t i = 0; i < draft.size(); ++i)
    says_refill = says_refill || draft.has_word(i, "refill") || draft.has_word(i, "fill");
  for (auto& part : reading.parts) {
    const bool is_drain = says_refill && part.words.back() == "drain";
    const bool is_drained =
        reading.asks("volume") &&
        (part.words.back() == "drained" || part.words.front() == "drained");  // "coolant litres, drained"
    if (part.words.size() < 2 || (!is_drain && !is_drained)) continue;
    if (part.words.front() == "drained")
      std::rotate(part.words.begin(), part.words.begin() + 1, part.words.end());
    const std::size_t token = part.token;
    std::string fluid;
    for (std::size_t word = 0; word + 1 < part.words.size(); ++word)
      fluid += (fluid.empty() ? "" : " ") + part.words[word];
    part = part_of(draft, fluid);
    part.token = token;
    for (const auto& match : draft.lexicon.groups_in(part.words))
      if (match.count == part.words.size() && is_part_group(match.group)) part.groups.push_back(match.group);
  }
}

// "dot 5 in the front brake", "which dot at the rear": of its fluid.
void read_fluid_of_code(Draft& draft) {
  auto& reading = draft.reading;
  if (reading.codes.empty() && reading.parts.empty() && says_only(draft, {"dot"})) {
    reading.parts = {part_of(draft, "brake fluid")};
    reading.parts.front().groups = {"brake-fluid"};
    for (std::size_t i = 0; i < draft.size(); ++i)
      if (draft.has_word(i, "dot")) draft.take(i, 1);
    return;
  }
  const auto is_dot = [](const std::string& code) { return code.starts_with("dot"); };
  bool says_dot = std::ranges::any_of(reading.codes, is_dot);  // "dot for the front brake"
  for (std::size_t i = 0; i < draft.size(); ++i) says_dot = says_dot || draft.has_word(i, "dot");
  std::erase_if(reading.parts,
                [&](const PartAsked& part) { return part.typed == "dot" && reading.parts.size() > 1; });
  if (reading.machines.empty() || reading.parts.size() != 1 || !says_dot) return;
  PartAsked& part = reading.parts.front();
  if (part.groups != std::vector<std::string>{"brake"} && part.groups != std::vector<std::string>{"clutch"})
    return;
  const std::string fluid = part.groups.front() + "-fluid";
  const std::size_t token = part.token;
  part = part_of(draft, part.groups.front() + " fluid");
  part.groups = {fluid};
  part.token = token;
}

// "fork clicks": of whatever is counted so in it.
void read_clicks_of_place(Draft& draft) {
  auto& reading = draft.reading;
  const auto says_clicks = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) { return stem_of(word) == "click"; });
  };
  const bool is_place =
      reading.parts.size() == 1 && reading.parts.front().groups.size() == 1 &&
      std::ranges::find(all_assemblies(), reading.parts.front().groups.front()) != all_assemblies().end();
  if (!is_place || !reading.asks("setting") || std::ranges::none_of(draft.question.tokens, says_clicks))
    return;
  reading.assemblies = reading.parts.front().groups;
  reading.parts.clear();
  add_unit(reading, "clicks");
}

// "oil weeping behind the front sprocket, what seal": of the shaft that it sits on.
void read_seal_behind(Draft& draft) {
  auto& parts = draft.reading.parts;
  const auto is_sprocket = [](const PartAsked& part) { return part.has_group("front-sprocket"); };
  const auto is_seal = [](const PartAsked& part) { return stem_of(part.words.back()) == "seal"; };
  const auto sprocket = std::ranges::find_if(parts, is_sprocket);
  constexpr std::size_t near = 4;  // words: "behind the 2018 causeway's front sprocket"
  const auto stands_behind = [&](std::size_t token) {
    for (std::size_t i = token; i > 0 && i + near > token; --i)
      if (draft.has_word(i - 1, "behind")) return true;
    return false;
  };
  if (sprocket == parts.end() || !stands_behind(sprocket->token) || std::ranges::none_of(parts, is_seal))
    return;
  const std::size_t token = sprocket->token;
  std::erase_if(parts, [&](const PartAsked& part) { return is_sprocket(part) || is_seal(part); });
  parts.push_back(part_of(draft, "countershaft seal"));
  parts.back().groups = {"countershaft-seal"};
  parts.back().token = token;
}

// "which notch are the shocks on", "standard step of the rear shocks": of their preload.
void read_notch_of_shock(Draft& draft) {
  auto& reading = draft.reading;
  const auto is_shock = [](const PartAsked& part) {
    return part.has_group("shock") || part.words.front() == "shock";
  };  // "shock collar"
  const bool says_it =
      draft.says_any_stem({"notch"}) ||
      (draft.says_any_stem({"step"}) && draft.says_any_stem({"standard", "normal", "collar"}));
  const auto shock = std::ranges::find_if(reading.parts, is_shock);
  const auto names_other = [&](const PartAsked& part) {
    return !is_shock(part) && !part.is_aspect && names_a_part(part);
  };
  if (!says_it || shock == reading.parts.end() || std::ranges::any_of(reading.parts, names_other)) return;
  const std::size_t token = shock->token;
  *shock = part_of(draft, "shock");
  shock->groups = {"shock"};
  shock->token = token;
  reading.parts.push_back(part_of(draft, "preload"));
  reading.parts.back().groups = {"preload-adjuster"};
  reading.parts.back().token = token;
  std::erase_if(reading.figures, [](const std::string& figure) {
    return figure == "step" || figure == "stage" || figure == "pattern";
  });
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (draft.has_word(i, "notch") || draft.has_word(i, "notches")) draft.take(i, 1);
  add_unit(reading, "clicks");
}

// "M8 flange bolt, no figure given": the figures for all that have none of their own.
void read_no_figure_given(Draft& draft) {
  constexpr std::string_view figures[] = {"figure", "figures", "torque", "value", "spec"};
  auto& reading = draft.reading;
  if (reading.threads.empty() || !reading.machines.empty() || !draft.lexicon.names_with("general")) return;
  for (std::size_t i = 0; i + 1 < draft.size(); ++i) {
    const std::size_t named = draft.has_any(i + 1, {"own", "other"}) ? i + 2 : i + 1;
    const bool is_none = (draft.has_word(i, "no") && draft.has_any(named, figures)) ||
                         (draft.has_word(i, "none") && draft.has_word(i + 1, "given"));
    if (!is_none ||
        std::ranges::any_of(reading.parts, [](const PartAsked& part) { return part.typed == "general"; }))
      continue;
    reading.parts.push_back(part_of(draft, "general"));
    reading.parts.back().token = i;
    draft.take(i, named + 1 - i);
  }
}

// "ordinary M12 nut", "any old M8 bolt": as one that has no figure of its own.
void read_ordinary_fasteners(Draft& draft) {
  auto& reading = draft.reading;
  const auto is_fastener = [](const PartAsked& part) {
    return part.has_group("nut") || is_generic_fastener(part);
  };
  if (reading.threads.empty() || reading.parts.size() != 1 || !is_fastener(reading.parts.front()) ||
      !draft.lexicon.names_with("general"))
    return;
  for (std::size_t i = 0; i < draft.size(); ++i) {
    const bool is_any_old = draft.has_word(i, "any") && draft.has_word(i + 1, "old");
    if (draft.taken[i] || (!is_any_old && !draft.has_word(i, "ordinary"))) continue;
    reading.parts.push_back(part_of(draft, "general"));
    reading.parts.back().token = i;
    return draft.take(i, is_any_old ? 2 : 1);
  }
}

// "how much oil when the filter is changed too", "oil cap w/ filter": of the engine's oil. The filter of "oil
// filter" is what is asked for. Where the filter may stay, both figures are shown.
void read_oil_with_filter(Draft& draft) {
  constexpr std::string_view others[] = {"air",  "foam",    "sponge", "element", "fuel",  "wet",
                                         "fork", "gearbox", "gear",   "torque",  "tight", "plug"},
                             unsure[] = {"dont", "didnt", "not", "no", "stays", "old", "same", "skip"};
  auto& reading = draft.reading;
  std::size_t oil = 0;
  while (oil < draft.size() && !draft.has_word(oil, "oil")) ++oil;
  if (oil == draft.size() || draft.has_word(oil + 1, "filter") || !draft.says_any({"filter"}) ||
      draft.says_any(others))
    return;
  const auto is_oil_or_filter = [](const PartAsked& part) {
    return part.words.front() == "oil" || part.has_group("engine-oil") || part.words.back() == "filter";
  };
  const bool is_much = oil > 0 && draft.has_word(oil - 1, "much");
  const bool says_which = reading.asks("with-filter") || reading.asks("after-drain");
  if (std::ranges::none_of(reading.parts, is_oil_or_filter) ||
      (!is_much && !says_which && !reading.asks("volume")))
    return;
  std::erase_if(reading.parts, is_oil_or_filter);
  reading.parts.push_back(part_of(draft, "engine oil"));
  reading.parts.back().groups = {"engine-oil"};
  reading.parts.back().token = oil;
  if (is_much) std::erase(reading.figures, "torque");  // as which "how much" is read beside a filter
  if (says_which || draft.says_any(unsure)) return add_new(reading.figures, "volume");
  add_new(reading.figures, draft.says_any({"without", "leaving"}) ? "after-drain" : "with-filter");
}

// "pinch bolts, which leg first", "front pinch bolts": those that hold the axle.
void read_pinch_bolts_of_axle(Draft& draft) {
  const auto says_leg = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) {
      return word == "leg" || word == "legs" || word == "foot" || word == "feet";
    });
  };
  const auto says_order = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) {
      return word == "first" || word == "which" || word == "foot" || word == "feet";
    });
  };
  const bool is_of_leg = std::ranges::any_of(draft.question.tokens, says_leg) &&
                         std::ranges::any_of(draft.question.tokens, says_order);
  const bool is_of_front = draft.reading.parts.size() == 1 &&
                           std::ranges::find(draft.reading.sides, "front") != draft.reading.sides.end();
  if (!is_of_leg && !is_of_front) return;
  for (auto& part : draft.reading.parts)
    if (part.groups == std::vector<std::string>{"pinch-bolt"}) part.groups = {"axle-pinch-bolt"};
}

// "how tight with two lambda probes": of no riders.
void read_two_of_a_part(Draft& draft) {
  auto& parts = draft.reading.parts;
  for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
    const bool is_said = parts[i].typed == "with two" && parts[i].has_group("two-up");
    const auto follows = [&](const PartAsked& part) {
      return part.token == parts[i].token + 2 && names_a_part(part);
    };
    if (is_said && std::ranges::any_of(parts, follows))
      return void(parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(i)));
  }
}

}  // namespace

void read_implied(Draft& draft) {
  read_implied_parts(draft);
  read_tanks(draft);
  read_refills(draft);
  read_fluid_of_code(draft);
  read_clicks_of_place(draft);
  read_seal_behind(draft);
  read_notch_of_shock(draft);
  read_no_figure_given(draft);
  read_ordinary_fasteners(draft);
  read_oil_with_filter(draft);
  read_two_of_a_part(draft);
  read_pinch_bolts_of_axle(draft);
}

}  // namespace sheaf
