// SPDX-License-Identifier: GPL-2.0-or-later
// Figures that are asked for by the names of fields and columns, or by how many of a unit there are.
#include <algorithm>
#include <iterator>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/loose_words.h"

namespace sheaf {
namespace {

bool asks_how_many(const LooseWords& words, std::size_t i) {
  const std::string& how = words[i].word;
  const std::string& many = words[i + 1].word;
  return (how == "how" && (many == "many" || many == "much")) || (how == "wie" && many.starts_with("viel"));
}

// "how many mil a leg": of oil, millilitres; "how many mil clearance" are none.
bool is_millilitres(const Draft& draft, const std::string& unit) {
  constexpr std::string_view said[] = {"mil", "mils", "mill", "mills"},
                             filled[] = {"oil", "fluid", "coolant"}, counted[] = {"leg", "side"},
                             by[] = {"a", "per", "each", "every"},
                             measured[] = {"bent",  "play", "clearance", "wear", "long",
                                           "thick", "gap",  "slack",     "wide"};
  bool counts = false;
  for (std::size_t i = 1; i < draft.size(); ++i)
    counts = counts || (draft.has_any(i, counted) && draft.has_any(i - 1, by));
  return std::ranges::find(said, unit) != std::end(said) && (counts || draft.says_any(filled)) &&
         !draft.says_any(measured);
}

// "how many ltr", "wie viele bar": how much there is of what the unit measures, and no number of pieces.
void read_counted_units(Draft& draft, LooseWords& words) {
  constexpr Dimension asked[] = {Dimension::torque, Dimension::pressure,
                                 Dimension::volume};  // each a figure by its name
  constexpr Dimension measured[] = {Dimension::mass, Dimension::force, Dimension::length};
  for (std::size_t i = 0; i + 2 < words.size(); ++i) {
    if (!asks_how_many(words, i)) continue;
    std::string unit = words[i + 2].word;
    const std::string of_two = i + 3 < words.size() ? unit + " " + words[i + 3].word : "";  // "newton metres"
    const bool is_of_two = !of_two.empty() && !readings(of_two).empty();
    if (is_of_two) unit = of_two;
    if (is_millilitres(draft, unit)) unit = "ml";
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
      const auto name = words_of(field.key);
      const auto texts = texts_of(words);
      const auto found = std::search(texts.begin(), texts.end(), name.begin(), name.end());
      if (found == texts.end()) continue;
      add_new(draft.reading.figures, std::string(field.key));
      take(words, {{}, static_cast<std::size_t>(found - texts.begin()), name.size()});
    }
  }
}

// "thread showing above the lock nut": how much of it, and no size.
void read_thread_left(Draft& draft, LooseWords& words) {
  constexpr std::string_view left[] = {"above", "over",     "beyond",  "past",  "showing", "show",
                                       "shows", "standing", "visible", "proud", "exposed", "sticking"};
  const auto thread = std::ranges::find_if(
      words, [](const Loose& each) { return each.word == "thread" || each.word == "threads"; });
  if (thread == words.end()) return;
  constexpr std::size_t near = 3;  // words
  const auto is_left = [&](const Loose& each) {
    return each.token > thread->token && each.token <= thread->token + near &&
           std::ranges::find(left, std::string_view(each.word)) != std::end(left);
  };
  const auto is_nut = [](const Loose& each) { return each.word.ends_with("nut") || each.word == "locknuts"; };
  if (std::ranges::none_of(words, is_left) || std::ranges::none_of(words, is_nut)) return;
  draft.reading.parts.push_back(part_of(draft, thread->word));
  draft.reading.parts.back().token = thread->token;
  thread->taken = true;
}

// "how heavy can the rack take"
void read_heaviness(Draft& draft, LooseWords& words) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (words[i].word != "how" || words[i + 1].word != "heavy") continue;
    add_unit(draft.reading, "kg");
    take(words, {{}, i, 2});
  }
}

// "tapping drill 10x1.25": of the thread M10x1.25.
void take_size_for_thread(Draft& draft) {
  auto& reading = draft.reading;
  const auto says_tap = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& word) { return stem_of(word) == "tap"; });
  };
  if (draft.says_any_stem({"oring", "ring", "seal"})) return;  // "tap cup oring 23.6x1.8"
  if (reading.sizes.size() != 1 || reading.sizes.front().count != 2 || !reading.threads.empty() ||
      std::ranges::none_of(draft.question.tokens, says_tap))
    return;
  auto thread = parse_thread("M" + to_text(reading.sizes.front()), Input::prompt);
  if (!thread) return;
  reading.threads.push_back(*std::move(thread));
  reading.sizes.clear();
}

// "3/8-16, what drill for the tap": before they are read as things of a machine.
void read_tap_drill(Draft& draft, LooseWords& words) {
  const auto is = [&](std::string_view word) {
    return [word](const Loose& each) { return stem_of(each.word) == word; };
  };
  const auto tap = std::ranges::find_if(words, is("tap"));
  auto drill = std::ranges::find_if(words, is("drill"));
  if (drill == words.end() && tap != words.end() && tap + 1 != words.end() && is("size")(tap[1]))
    drill = tap + 1;  // "tapping size"
  take_size_for_thread(draft);
  if (draft.reading.threads.empty() || tap == words.end() || drill == words.end() ||
      !draft.lexicon.has_term(Prefix::field, "tap-drill"))
    return;
  add_new(draft.reading.figures, "tap-drill");
  tap->taken = drill->taken = true;
  for (auto& each : words)
    if (each.word == "thread" || each.word == "threads") each.taken = true;
}

// "proof stress": two words that are the name of a column of some table.
void read_column_names(Draft& draft, LooseWords& words) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    std::string key = words[i].word + "-" + words[i + 1].word;
    if (!draft.lexicon.has_term(Prefix::field, key))
      key = stem_of(words[i].word) + "-" + words[i + 1].word;                     // "tapping drill"
    const bool is_said = is_noise(words[i].word) || is_noise(words[i + 1].word);  // "same as"
    if (words[i].taken || words[i + 1].taken || is_said || !draft.lexicon.has_term(Prefix::field, key))
      continue;
    add_new(draft.reading.figures, key);
    take(words, {{}, i, 2});
  }
}

}  // namespace

void read_figure_names(Draft& draft, LooseWords& words) {
  for (const auto read : {read_counted_units, read_heaviness, read_thread_left, read_field_names,
                          read_tap_drill, read_column_names}) {
    read(draft, words);
    words = without_taken(words);
  }
}

}  // namespace sheaf
