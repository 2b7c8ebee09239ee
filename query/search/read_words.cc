// SPDX-License-Identifier: GPL-2.0-or-later
// Words by the glossary: parts in five languages, sides, and what is asked of them. The glossary itself
// says which of its groups are not parts, by their names: side-front, kind-torque, hand-left.
#include <algorithm>
#include <optional>
#include <tuple>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

// One word of the question that no other reader took.
struct Loose {
  std::string word;
  std::size_t token = 0;
  bool taken = false;
};

using LooseWords = std::vector<Loose>;

LooseWords loose_words(const Draft& draft) {
  LooseWords words;
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i]) continue;
    for (const auto& word : draft.token(i).words) words.push_back({word, i, false});
  }
  return words;
}

std::vector<std::string> texts_of(const LooseWords& words) {
  std::vector<std::string> texts;
  for (const auto& each : words) texts.push_back(each.word);
  return texts;
}

bool is_free(const LooseWords& words, const GroupMatch& match) {
  for (std::size_t i = match.first; i < match.first + match.count; ++i)
    if (words[i].taken) return false;
  return true;
}

void take(LooseWords& words, const GroupMatch& match) {
  for (std::size_t i = match.first; i < match.first + match.count; ++i) words[i].taken = true;
}

// "kind-torque" with "kind-" gives "torque".
std::optional<std::string> value_after(std::string_view group, std::string_view beginning) {
  if (!group.starts_with(beginning)) return std::nullopt;
  return std::string(group.substr(beginning.size()));
}

void add_new(std::vector<std::string>& list, std::string value) {
  if (std::ranges::find(list, value) == list.end()) list.push_back(std::move(value));
}

// A unit among the words of "kind-torque" says in what the answer is wanted.
void add_unit(QuestionReading& reading, const std::string& typed) {
  const auto units = readings(typed);
  for (const Unit* unit : units)
    if (std::ranges::find(reading.units, unit) == reading.units.end()) reading.units.push_back(unit);
}

bool is_part_group(std::string_view group) {
  return side_of_group(group).empty() && !group.starts_with("kind-") && !group.starts_with("hand-");
}

bool says_end(const Draft& draft) {
  return std::ranges::any_of(draft.question.tokens, [](const Token& token) {
    return token.words.size() == 1 && (token.words.front() == "front" || token.words.front() == "rear" || token.words.front() == "back");
  });
}

void read_meaning(QuestionReading& reading, const std::string& group, const std::string& typed) {
  if (const auto side = side_of_group(group); !side.empty()) {
    return add_new(reading.sides, std::string(side));
  }
  if (auto hand = value_after(group, "hand-")) {
    add_new(reading.figures, "hand");
    reading.hand = *std::move(hand);
    return;
  }
  if (auto kind = value_after(group, "kind-")) {
    add_new(reading.figures, *std::move(kind));
    add_unit(reading, typed);
  }
}

std::string typed_of(const LooseWords& words, const GroupMatch& match) {
  std::string typed;
  for (std::size_t i = match.first; i < match.first + match.count; ++i)
    typed += (typed.empty() ? "" : " ") + words[i].word;
  return typed;
}

PartAsked part_of(Draft& draft, const std::string& typed) {
  PartAsked part{typed, words_of(typed), {}};
  for (const auto& word : part.words) {
    part.groups_of_words.emplace_back();
    for (const auto& match : draft.lexicon.groups_in({word}))
      if (is_part_group(match.group)) part.groups_of_words.back().push_back(match.group);
  }
  return part;
}

// What is asked of a thing may name it as well: "what oil", "seal size", "chain links".
bool names_thing(Draft& draft, const std::string& word) {
  constexpr std::string_view things[] = {"oil", "coolant", "grease", "fuel", "chain"};
  const auto matches = draft.lexicon.groups_in({word});
  return std::ranges::any_of(matches, [&](const GroupMatch& match) {
    return std::ranges::find(things, match.group) != std::end(things) || kind_named(match.group);
  });
}

// Of several words that ask for a figure, the one that names the thing itself is left to be read as a part.
void leave_thing(Draft& draft, LooseWords& words, const GroupMatch& asked) {
  if (asked.count == 1 || asked.group == "kind-state") return;  // "greased or dry" asks of no grease
  for (std::size_t i = asked.first; i < asked.first + asked.count; ++i)
    words[i].taken = !names_thing(draft, words[i].word);
}

// All groups that the same words name, those of parts before the others.
void read_match(Draft& draft, LooseWords& words, const std::vector<GroupMatch>& matches,
                const GroupMatch& chosen) {
  const std::string typed = typed_of(words, chosen);
  PartAsked part = part_of(draft, typed);
  part.token = words[chosen.first].token;
  for (const auto& match : matches)
    if (match.first == chosen.first && match.count == chosen.count && is_part_group(match.group))
      part.groups.push_back(match.group);
  part.is_aspect = std::ranges::any_of(part.groups, [](const std::string& group) { return group == "temperature" || group == "thickness" || group == "six-lobe"; });
  if (!part.groups.empty()) {
    for (std::size_t i = chosen.first; i < chosen.first + chosen.count; ++i)
      if (words[i].word.size() >= 3) add_unit(draft.reading, words[i].word);
    draft.reading.parts.push_back(std::move(part));
    take(words, chosen);
    return;
  }
  const std::string_view other = says_end(draft) ? "side-rear" : "side-right";  // "r": rear, or where an end is said, right
  for (const auto& match : matches)
    if (match.first == chosen.first && match.count == chosen.count && !(typed == "r" && match.group == other))
      read_meaning(draft.reading, match.group, typed);
  take(words, chosen);
  leave_thing(draft, words, chosen);
}

// The "FR" of "HX1O4-FR" is no side: it belongs to a number that may yet be recognised.
bool is_within_number(const Draft& draft, const LooseWords& words, const GroupMatch& match) {
  const Token& token = draft.token(words[match.first].token);
  return match.count == 1 && token.has_digit && token.words.size() > 1;
}

// "back axle nut is off": what was read between "back" and "off" parts them.
bool is_parted(const Draft& draft, const LooseWords& words, const GroupMatch& match) {
  for (std::size_t i = match.first + 1; i < match.first + match.count; ++i)
    for (std::size_t at = words[i - 1].token + 1; at < words[i].token; ++at)
      if (!std::ranges::all_of(draft.token(at).words, is_noise)) return true;
  return false;
}

// The longest first; of equal ones that on the left.
void read_groups(Draft& draft, LooseWords& words, std::size_t at_least) {
  auto matches = draft.lexicon.groups_in(texts_of(words));
  std::ranges::stable_sort(matches, [](const GroupMatch& left, const GroupMatch& right) {
    return std::tuple(right.count, left.first) < std::tuple(left.count, right.first);
  });
  // "link" is no "links", left in German; nor are the links of a chain.
  const bool has_chain = std::ranges::any_of(words, [](const Loose& each) { return each.word == "chain"; });
  std::erase_if(matches, [&](const GroupMatch& match) {
    const std::string& word = words[match.first].word;
    return match.group == "side-left" && match.count == 1 && (word == "link" || (word == "links" && has_chain));
  });
  for (const auto& match : matches)
    if (match.count >= at_least && is_free(words, match) && !is_within_number(draft, words, match) &&
        (is_part_group(match.group) || !is_parted(draft, words, match)))
      read_match(draft, words, matches, match);
}

LooseWords without_taken(const LooseWords& words) {
  LooseWords left;
  std::ranges::copy_if(words, std::back_inserter(left), [](const Loose& each) { return !each.taken; });
  return left;
}

// "per leg", "each side": every figure says for itself what it is counted by.
bool counts_by(const LooseWords& words, std::size_t i) {
  static constexpr std::string_view by[] = {"per", "each", "every", "both", "pro", "je"};
  static constexpr std::string_view counted[] = {"leg", "legs", "side", "wheel", "bein", "holm"};
  return i > 0 && std::ranges::find(by, words[i - 1].word) != std::end(by) &&
         std::ranges::find(counted, words[i].word) != std::end(counted);
}

LooseWords without_noise(Draft& draft, const LooseWords& words) {
  LooseWords left;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (is_noise(words[i].word) || counts_by(words, i))
      draft.reading.left_out.push_back(words[i].word);
    else
      left.push_back(words[i]);
  }
  return left;
}

// "bolts" of "heat shield bolts silencer" belongs to what stands before it.
bool follows_a_name(const Draft& draft, const LooseWords& words, std::size_t i) {
  const std::size_t token = words[i].token;
  const auto matches = draft.lexicon.groups_in({words[i].word});
  const bool is_fastener = std::ranges::any_of(
      matches, [](const GroupMatch& match) { return match.group == "bolt" || match.group == "nut"; });
  if (!is_fastener || token == 0 || draft.taken[token - 1]) return false;
  const bool is_loose = std::ranges::any_of(words, [&](const Loose& each) { return each.token == token - 1; });
  return !is_loose && !std::ranges::all_of(draft.token(token - 1).words, is_noise);
}

// "plug drain", "nut front axle": two words that name a part in the other order, or with others between.
bool read_parted_pair(Draft& draft, LooseWords& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (std::size_t j = 0; j < words.size(); ++j) {
      if (i == j || (j < i && follows_a_name(draft, words, j))) continue;
      const LooseWords pair = {words[i], words[j]};
      const auto matches = draft.lexicon.groups_in(texts_of(pair));
      for (const auto& match : matches) {
        if (match.count != 2 || !is_part_group(match.group)) continue;
        LooseWords taken = pair;
        read_match(draft, taken, matches, match);
        words[i].taken = words[j].taken = true;
        words = without_taken(words);
        return true;
      }
    }
  }
  return false;
}

// "3/8-16, what drill for the tap": before they are read as things of a machine.
void read_tap_drill(Draft& draft, LooseWords& words) {
  const auto is = [&](std::string_view word) { return [word](const Loose& each) { return stem_of(each.word) == word; }; };
  const auto tap = std::ranges::find_if(words, is("tap")), drill = std::ranges::find_if(words, is("drill"));
  if (draft.reading.threads.empty() || tap == words.end() || drill == words.end() || !draft.lexicon.has_term(Prefix::field, "tap-drill")) return;
  add_new(draft.reading.figures, "tap-drill");
  tap->taken = drill->taken = true;
}

// "proof stress": two words that are the name of a column of some table.
void read_column_names(Draft& draft, LooseWords& words) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    std::string key = words[i].word + "-" + words[i + 1].word;
    if (!draft.lexicon.has_term(Prefix::field, key)) key = stem_of(words[i].word) + "-" + words[i + 1].word;  // "tapping drill"
    const bool is_said = is_noise(words[i].word) || is_noise(words[i + 1].word);  // "same as"
    if (words[i].taken || words[i + 1].taken || is_said || !draft.lexicon.has_term(Prefix::field, key)) continue;
    add_new(draft.reading.figures, key);
    take(words, {{}, i, 2});
  }
}

bool asks_how_many(const LooseWords& words, std::size_t i) {
  const std::string& how = words[i].word;
  const std::string& many = words[i + 1].word;
  return (how == "how" && (many == "many" || many == "much")) || (how == "wie" && many.starts_with("viel"));
}

// "how many ltr", "wie viele bar": how much there is of what the unit measures, and no number of pieces.
void read_counted_units(Draft& draft, LooseWords& words) {
  constexpr Dimension asked[] = {Dimension::torque, Dimension::pressure, Dimension::volume};  // each a figure by its name
  constexpr Dimension measured[] = {Dimension::mass, Dimension::force, Dimension::length};
  for (std::size_t i = 0; i + 2 < words.size(); ++i) {
    if (!asks_how_many(words, i)) continue;
    std::string unit = words[i + 2].word;
    const std::string of_two = i + 3 < words.size() ? unit + " " + words[i + 3].word : "";  // "newton metres"
    const bool is_of_two = !of_two.empty() && !readings(of_two).empty();
    if (is_of_two) unit = of_two;
    const auto units = readings(unit);
    if (units.empty()) continue;
    const Dimension dimension = units.front()->dimension;
    const bool is_asked = std::ranges::find(asked, dimension) != std::end(asked);
    const bool is_turns = unit.starts_with("turn");  // of a screw; degrees are a stage of a torque
    if (!is_asked && !is_turns && std::ranges::find(measured, dimension) == std::end(measured)) continue;
    if (is_asked) add_new(draft.reading.figures, std::string(name_of(dimension)));
    add_unit(draft.reading, unit);
    take(words, {{}, i, is_of_two ? std::size_t{4} : std::size_t{3}});
  }
}

// "with filter", "after drain", "free length": a field by its own name, where that has several words.
void read_field_names(Draft& draft, LooseWords& words) {
  for (const auto& kind : all_kinds()) {
    for (const auto& field : kind.fields) {
      if (field.key.find('-') == std::string_view::npos) continue;
      std::string spaced(field.key);
      std::ranges::replace(spaced, '-', ' ');
      const auto name = words_of(spaced);
      const auto texts = texts_of(words);
      const auto found = std::search(texts.begin(), texts.end(), name.begin(), name.end());
      if (found == texts.end()) continue;
      add_new(draft.reading.figures, std::string(field.key));
      take(words, {{}, static_cast<std::size_t>(found - texts.begin()), name.size()});
    }
  }
}

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

// "flywheel nut lh": of the left side, or with a left-hand thread.
void read_hands(Draft& draft) {
  auto& reading = draft.reading;
  const auto is_screwed = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, [](const std::string& group) { return group.ends_with("nut") || group.ends_with("bolt"); });
  };
  if (!reading.hand.empty() || std::ranges::none_of(reading.parts, is_screwed)) return;
  const auto is_nut = [](const PartAsked& part) { return std::ranges::any_of(part.groups, [](const std::string& group) { return group.ends_with("nut"); }); };
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (draft.has_word(i, "lh")) reading.hand = "left";
  if (!reading.hand.empty() && std::ranges::any_of(reading.parts, is_nut)) std::erase(reading.sides, "left");  // of nuts there is seldom one a side
}

// "oil change with filter, litres", "ml per leg": what is filled in so goes without saying.
void read_implied_oil(Draft& draft) {
  auto& reading = draft.reading;
  if (!reading.parts.empty() || reading.has_designation()) return;
  const auto imply = [&](const char* oil, const char* group) {
    PartAsked part = part_of(draft, oil);
    part.groups = {group};
    part.groups_of_words = {part.groups, part.groups};
    reading.parts.push_back(std::move(part));
  };
  const auto asks = [&](std::string_view figure) { return std::ranges::find(reading.figures, figure) != reading.figures.end(); };
  if (asks("with-filter")) return imply("engine oil", "engine-oil");
  for (std::size_t i = 1; i < draft.size() && asks("volume"); ++i)
    if ((draft.has_word(i, "leg") || draft.has_word(i, "legs")) && (draft.has_word(i - 1, "per") || draft.has_word(i - 1, "each"))) return imply("fork oil", "fork-oil");
}

// "preload step": counted, and not in turns.
void read_steps_of_preload(Draft& draft) {
  const auto says_preload = [](const Token& token) { return std::ranges::find(token.words, "preload") != token.words.end(); };
  const auto says_step = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) { return stem_of(word) == "step" || stem_of(word) == "notch"; });
  };
  const auto& tokens = draft.question.tokens;
  if (std::ranges::any_of(tokens, says_preload) && std::ranges::any_of(tokens, says_step)) add_unit(draft.reading, "clicks");
}

// "3/8 wrench range": of the torque wrench with that square, which alone has a range.
void read_crib_drives(QuestionReading& reading) {
  const auto asks = [&](std::string_view figure) { return std::ranges::find(reading.figures, figure) != reading.figures.end(); };
  if (!asks("range") && !asks("calibration-due")) return;
  for (auto& drive : reading.drives)
    if (drive.shape == Drive::Shape::hexagon) drive.shape = Drive::Shape::square;
}

bool has_group(const PartAsked& part, std::string_view group) {
  return std::ranges::find(part.groups, group) != part.groups.end();
}

// "head studs dry", "header nuts copper paste": beside a part it asks in what state that is fitted; "coolant dry" is
// filled into what was empty.
void read_states(QuestionReading& reading) {
  const auto is_state = [](const PartAsked& part) {
    return has_group(part, "anti-seize") || std::ranges::any_of(part.groups, [](const std::string& group) { return group.starts_with("state-"); });
  };
  const auto is_fastener = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, [](const std::string& group) {
      return group == "bolt" || group == "nut" || group == "stud" || group.ends_with("-bolt") || group.ends_with("-nut") || group.ends_with("-stud");
    });
  };
  const auto is_fluid = [](const PartAsked& part) {
    return std::ranges::any_of(part.groups, [](const std::string& group) { return group == "coolant" || group.ends_with("-oil"); });
  };
  const auto is_dry = [](const PartAsked& part) { return has_group(part, "state-dry"); };
  if (std::ranges::any_of(reading.parts, is_fastener)) {
    if (std::erase_if(reading.parts, is_state) > 0) add_new(reading.figures, "state");
  } else if (std::ranges::any_of(reading.parts, is_fluid) && std::erase_if(reading.parts, is_dry) > 0) {
    add_new(reading.figures, "dry-fill");
  }
}

// "half inch clicker on a flywheel bolt": what is set on it is the torque of the other.
void read_torque_wrench(QuestionReading& reading) {
  const auto is_wrench = [](const PartAsked& part) { return has_group(part, "torque-wrench"); };
  const auto names_other = [&](const PartAsked& part) { return !is_wrench(part) && !part.groups.empty(); };
  if (std::ranges::none_of(reading.parts, names_other)) return;
  if (std::erase_if(reading.parts, is_wrench) > 0) add_new(reading.figures, "torque");
}

// "front or back": of which end it is, was not known.
void read_both_ends(QuestionReading& reading) {
  const auto has = [&](std::string_view side) { return std::ranges::find(reading.sides, side) != reading.sides.end(); };
  if (has("front") && has("rear")) std::erase_if(reading.sides, [](const std::string& side) { return side == "front" || side == "rear"; });
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
        if (!stands_in_names(part) && match.count == words.size() && has_group(part, match.group)) part.assemblies.push_back(assembly);
  }
}

// Where what follows only describes what was named: behind "with", "that", "if", or a comma.
bool begins_description(const Draft& draft, std::size_t i) {
  constexpr std::string_view begins[] = {"with", "that", "which", "who", "using", "while", "if", "because", "since", "so", "mit", "avec", "con"};
  if (std::ranges::any_of(begins, [&](std::string_view word) { return draft.has_word(i, word); })) return true;
  return begins_clause(draft, i);
}

void read_descriptions(Draft& draft) {
  const auto names_before = [&](std::size_t i) {
    return std::ranges::any_of(draft.reading.parts, [&](const PartAsked& part) { return part.token < i && !part.groups.empty(); });
  };
  for (std::size_t i = 1; i < draft.size(); ++i) {
    if (!names_before(i) || !begins_description(draft, i)) continue;
    for (auto& part : draft.reading.parts) part.describes = part.describes || part.token >= i;
  }
}

// "stator screws locker": beside a part it asks whether any is put on it.
void read_threadlocker(QuestionReading& reading) {
  const auto is_locker = [](const PartAsked& part) {
    return std::ranges::find(part.groups, "threadlocker") != part.groups.end();
  };
  if (std::ranges::all_of(reading.parts, is_locker)) return;
  if (std::erase_if(reading.parts, is_locker) > 0) add_new(reading.figures, "threadlocker");
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

constexpr std::size_t most_words_in_pairs = 8;  // 56 pairs to look at

void mark_read_tokens(Draft& draft, const LooseWords& left) {
  for (std::size_t i = 0; i < draft.size(); ++i) {
    const bool is_left = std::ranges::any_of(left, [&](const Loose& each) { return each.token == i; });
    if (!is_left) draft.taken[i] = true;
  }
}

bool is_bare_number(std::string_view word) {
  return word.find_first_not_of("0123456789.") == std::string_view::npos;
}

constexpr std::size_t shortest_name = 4;  // letters from which on a unit that stands in names is more likely one

// A unit that no number stands before: "in ft lbs", "psi".
bool read_units(Draft& draft, std::size_t i) {
  for (std::size_t count = 3; count > 0; --count) {
    if (!draft.is_free(i, count)) continue;
    const std::string typed = draft.question.typed(i, count);
    if (typed.size() < 2 || readings(typed).empty()) continue;
    if (count == 1 && is_aspect(fold(typed))) continue;  // "min" is least, and no minute
    if (count == 1 && typed.size() >= shortest_name && draft.lexicon.names_with(fold(typed))) continue;  // "second ring"
    add_unit(draft.reading, typed);
    draft.take(i, count);
    return true;
  }
  return false;
}

}  // namespace

void read_words(Draft& draft) {
  LooseWords words = loose_words(draft);
  read_counted_units(draft, words);
  words = without_taken(words);
  read_field_names(draft, words);
  words = without_taken(words);
  read_tap_drill(draft, words);
  words = without_taken(words);
  read_column_names(draft, words);
  words = without_taken(words);
  read_groups(draft, words, 2);  // "how much", "which oil": before their noise words go
  words = without_noise(draft, without_taken(words));
  read_groups(draft, words, 2);
  words = without_taken(words);
  while (words.size() <= most_words_in_pairs && read_parted_pair(draft, words)) {
  }
  read_groups(draft, words, 1);
  read_tools(draft.reading);
  read_threadlocker(draft.reading);
  read_states(draft.reading);
  read_torque_wrench(draft.reading);
  read_hands(draft);
  read_crib_drives(draft.reading);
  read_steps_of_preload(draft);
  read_implied_oil(draft);
  read_sides_beside_parts(draft.reading);
  read_compound_sides(draft.reading);
  read_both_ends(draft.reading);
  read_assemblies(draft);
  mark_read_tokens(draft, without_taken(words));
}

namespace {

// Fields of what the machines have; those of the crib ask for nothing here.
bool is_field(std::string_view word) {
  const auto of_crib = [](const KindDeclaration& kind) {
    return kind.name == "wrench" || kind.name == "adapter";
  };
  if (is_aspect(word) || word == "checked") return false;  // of a play, by the one who asks
  return std::ranges::any_of(all_kinds(), [&](const KindDeclaration& kind) {
    return !of_crib(kind) && field_of(kind, word) != nullptr;
  });
}

// "17 mm adapter offset": the one figure of the crib that is asked for by its plain name.
bool is_offset_of_adapter(const Draft& draft, std::string_view word) {
  const auto is_adapter = [](const Token& token) { return std::ranges::find(token.words, "adapter") != token.words.end(); };
  return word == "offset" && std::ranges::any_of(draft.question.tokens, is_adapter);
}

bool tells_nothing(Draft& draft, std::size_t i) {
  return std::ranges::none_of(draft.token(i).words, [&](const std::string& word) { return !is_noise(word) && draft.lexicon.names_with(word); });
}

// "knock sensor": what stands before a part's name, as it is, tells it from others.
bool tells_apart(Draft& draft, std::size_t i) {
  if (i + 1 == draft.size() || draft.token(i + 1).words.size() != 1) return false;
  const std::string& next = draft.token(i + 1).words.front();
  return !is_noise(next) && draft.lexicon.names_with(next);
}

// "turbo oil pipe", "horn bracket": an everyday thing before a name makes it the name of another.
void read_unknown(Draft& draft, std::size_t i, const std::string& word) {
  const bool begins_name = i == 0 || tells_nothing(draft, i - 1);
  if (is_everyday(word) && !is_ordinary(word) && begins_name && tells_apart(draft, i)) draft.reading.names_another = true;
  draft.reading.unread.push_back(word);
}

// Need not be held by what is sought.
bool is_said_around(Draft& draft, std::size_t i, const std::string& word) {
  return is_aspect(word) || (is_ordinary(word) && !draft.lexicon.has_term(Prefix::word, word) && !tells_apart(draft, i));
}

PartAsked free_word(Draft& draft, std::size_t i, const std::string& word) {
  PartAsked part = part_of(draft, word);
  part.token = i;
  part.is_aspect = is_said_around(draft, i, word);
  return part;
}

// "60+60": stages of an angle, that name no model.
bool is_sum(std::string_view typed) {
  const std::size_t sign = typed.find('+');
  return sign != std::string_view::npos && sign > 0 && typed.find_first_not_of("0123456789+") == std::string_view::npos;
}

// "x3", "4x": how many of them there are.
bool is_count(std::string_view typed) {
  constexpr std::size_t most_digits = 2;
  if (typed.size() < 2 || typed.size() > most_digits + 1) return false;
  const bool is_before = typed.front() == 'x' || typed.front() == 'X';
  if (!is_before && typed.back() != 'x' && typed.back() != 'X') return false;
  typed = is_before ? typed.substr(1) : typed.substr(0, typed.size() - 1);
  return typed.find_first_not_of("0123456789") == std::string_view::npos;
}

}  // namespace

void read_rest(Draft& draft) {
  std::vector<PartAsked> fields;  // "tube", "load": words that name a figure, and things too
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i] || read_units(draft, i)) continue;
    if (draft.token(i).typed == "+" || is_count(draft.token(i).typed) || is_sum(draft.token(i).typed)) continue;
    if (is_tyre_size(draft.token(i).typed)) {
      draft.reading.parts.push_back(part_of(draft, draft.token(i).typed));
      draft.reading.parts.back().token = i;
      continue;
    }
    for (const auto& word : draft.token(i).words) {
      if (is_field(word) || is_offset_of_adapter(draft, word)) {
        add_new(draft.reading.figures, word);  // "order", "grade"
        if (draft.lexicon.names_with(word)) fields.push_back(free_word(draft, i, word));
      } else if (is_said_around(draft, i, word) && !draft.lexicon.knows(word))
        continue;  // "dia", where no name has it
      else if (is_bare_number(word) || draft.token(i).has_digit || !draft.lexicon.knows(word))
        read_unknown(draft, i, word);
      else
        draft.reading.parts.push_back(free_word(draft, i, word));
    }
  }
  if (draft.reading.parts.empty() && draft.reading.unread.empty() && fields.size() == 1 && !draft.reading.has_designation()) {  // "front tube, part no"
    std::erase(draft.reading.figures, fields.front().typed);
    draft.reading.parts = std::move(fields);
  }
  read_descriptions(draft);
}

}  // namespace sheaf
