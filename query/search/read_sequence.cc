// SPDX-License-Identifier: GPL-2.0-or-later
// "pivot adjuster before the nut", "the bolt, not the nut", "105 or 120": what comes later in the job, what
// is excluded and figures between which the asker doubts are not what is asked for.
#include <functional>

#include "query/library/fold.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"

namespace sheaf {
namespace {

constexpr std::size_t longest_later = 2;     // words for what comes later; more are a question of their own
constexpr std::size_t longest_excluded = 4;  // words; more are a question of their own
constexpr std::string_view articles[] = {"the", "a", "an", "its", "my", "any"};
constexpr std::string_view excluding[] = {"without", "except", "excluding"};

bool names_something(const Draft& draft, std::size_t i) {
  return !draft.taken[i] && !std::ranges::all_of(draft.token(i).words, is_noise);
}

std::vector<std::size_t> naming(const Draft& draft, std::size_t first, std::size_t end) {
  std::vector<std::size_t> tokens;
  for (std::size_t i = first; i < end; ++i)
    if (names_something(draft, i)) tokens.push_back(i);
  return tokens;
}

void leave_out(Draft& draft, std::size_t i) {
  draft.reading.left_out.push_back(draft.token(i).typed);
  draft.take(i, 1);
}

void exclude(Draft& draft, std::size_t i) {
  const auto& words = draft.token(i).words;
  draft.reading.excluded.insert(draft.reading.excluded.end(), words.begin(), words.end());
  leave_out(draft, i);
}

// "not the nut", "without the bottle"; but "without filter change" is a figure of its own.
bool excludes(Draft& draft, std::size_t i) {
  if (draft.taken[i]) return false;
  const bool is_first = i == 0 || (i == 1 && draft.has_word(0, "no"));  // "not two up, alone"
  if (draft.has_word(i, "not"))
    return is_first ||
           (draft.has_any(i + 1, articles) && !std::ranges::all_of(draft.token(i - 1).words, is_noise));
  if (!draft.has_any(i, excluding)) return false;
  std::vector<std::string> words;
  for (std::size_t at = i; at < draft.size() && at <= i + longest_excluded + 1; ++at)
    words.insert(words.end(), draft.token(at).words.begin(), draft.token(at).words.end());
  std::erase_if(
      words, [](const std::string& word) { return std::ranges::find(articles, word) != std::end(articles); });
  return std::ranges::none_of(draft.lexicon.groups_in(words),
                              [](const GroupMatch& match) { return match.first == 0; });
}

// "litres", "torque": what is asked, whatever was excluded before it.
bool asks_figure(Draft& draft, std::size_t i) {
  if (!readings(draft.token(i).typed).empty()) return true;
  return std::ranges::any_of(draft.lexicon.groups_in(draft.token(i).words),
                             [](const GroupMatch& match) { return match.group.starts_with("kind-"); });
}

// "leaving the bottle aside", "expansion bottle not counted"
void read_uncounted(Draft& draft) {
  constexpr std::string_view before[] = {"leaving", "minus", "less", "counting"},
                             behind[] = {"counted", "included", "aside"};
  constexpr std::size_t longest_uncounted = 2;  // words
  for (std::size_t i = 1; i < draft.size(); ++i) {
    if (!draft.has_any(i, behind) || (!draft.has_word(i - 1, "not") && !draft.has_word(i, "aside"))) continue;
    std::size_t first = draft.has_word(i - 1, "not") ? i - 1 : i;
    const std::size_t end = first;
    while (first > 0 && end < first + longest_uncounted && names_something(draft, first - 1) &&
           !asks_figure(draft, first - 1) && (first == end || !begins_clause(draft, first)) &&
           !draft.has_any(first - 1, before))
      --first;
    if (first == end) continue;
    if (draft.has_word(end - 1, "filter")) add_new(draft.reading.figures, "after-drain");
    for (std::size_t at = first; at < end; ++at) exclude(draft, at);
    draft.take(i, 1);
    const std::size_t article = first > 0 && draft.has_any(first - 1, articles) ? first - 1 : first;
    if (article > 0 && draft.has_any(article - 1, before)) draft.take(article - 1, 1);
  }
}

// "no play on the lever, what should it be"
bool is_measured(Draft& draft, std::size_t i) {
  return std::ranges::any_of(draft.lexicon.groups_in(draft.token(i).words),
                             [](const GroupMatch& match) { return says_what_of_it(match.group); });
}

// "no nut there", "no washer on it", "has no nut, it"
void read_absences(Draft& draft) {
  constexpr std::string_view behind[] = {"there", "here", "on", "fitted", "anywhere"};
  for (std::size_t i = 0; i + 2 < draft.size(); ++i)
    if (draft.has_word(i, "no") && names_something(draft, i + 1) && !draft.token(i + 1).has_digit &&
        !asks_figure(draft, i + 1) && !is_measured(draft, i + 1) &&
        (draft.has_any(i + 2, behind) || begins_clause(draft, i + 2)))
      leave_out(draft, i + 1);
}

void read_exclusions(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (!excludes(draft, i)) continue;
    std::size_t first = i + 1;
    while (first < draft.size() && draft.has_any(first, articles)) ++first;
    std::size_t end = first;
    while (end < draft.size() && names_something(draft, end) && !asks_figure(draft, end) &&
           (end == first || !begins_clause(draft, end)))
      ++end;
    if (end == first || end > first + longest_excluded) continue;
    draft.take(i, 1);
    for (std::size_t at = first; at < end; ++at) exclude(draft, at);
  }
}

// "surely not DOT 4"
void read_excluded_codes(Draft& draft) {
  for (std::size_t i = 0; i + 1 < draft.size(); ++i) {
    if (!draft.has_word(i, "not") || !draft.token(i + 1).words.front().starts_with("dot")) continue;
    const std::string said =
        squeeze(draft.token(i + 1).typed +
                (draft.has_word(i + 1, "dot") && i + 2 < draft.size() ? draft.token(i + 2).typed : ""));
    if (std::erase(draft.reading.codes, said) > 0) draft.reading.left_out.push_back(said);
  }
}

// That nothing is designated by.
bool is_plain_number(Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  if (draft.taken[i] || typed.find_first_not_of("0123456789.,") != std::string::npos || year_in(typed))
    return false;
  return !draft.lexicon.has_term(Prefix::bearing, typed) && !is_listed_number(draft.lexicon, typed);
}

// "22 mm" of "22"
bool is_of(const std::string& typed, const std::string& number) {
  return typed.starts_with(number) && typed.size() > number.size() &&
         std::string_view("0123456789.,").find(typed[number.size()]) == std::string_view::npos;
}

// "105 or 120", "18 or 20 or 22 nm", "dot 4 or 5.1"
void read_doubted_figures(Draft& draft) {
  auto& reading = draft.reading;
  std::vector<bool> doubted(draft.size());
  for (std::size_t i = 1; i + 1 < draft.size(); ++i) {
    if (!draft.has_word(i, "or")) continue;
    const bool is_of_code =
        draft.taken[i - 1] && !reading.codes.empty() && reading.codes.back().starts_with("dot");
    if (is_of_code && is_plain_number(draft, i + 1)) {
      reading.codes.push_back("dot" + draft.token(i + 1).typed);
      draft.take(i + 1, 1);
      continue;
    }
    if (!doubted[i - 1] && !is_plain_number(draft, i - 1)) continue;
    const std::string& last = draft.token(i + 1).typed;
    const auto quantity = std::ranges::find_if(
        reading.quantities, [&](const QuantityAsked& each) { return is_of(each.typed, last); });
    const auto length = std::ranges::find_if(
        reading.lengths, [&](const LengthAsked& each) { return is_of(each.typed, last); });
    if (draft.taken[i + 1] && length != reading.lengths.end()) {
      reading.left_out.push_back(length->typed);
      reading.lengths.erase(length);
    } else if (draft.taken[i + 1] && quantity != reading.quantities.end()) {
      reading.left_out.push_back(quantity->typed);
      reading.units.push_back(quantity->figures.front().unit);
      reading.quantities.erase(quantity);
    } else if (is_plain_number(draft, i + 1)) {
      leave_out(draft, i + 1);
      doubted[i + 1] = true;
    } else {
      continue;
    }
    if (!doubted[i - 1]) leave_out(draft, i - 1);
  }
}

// "before the caliper bolts comes the pad pin": the bolts are not asked for. Of "before the swingarm nut
// comes the adjuster" the swingarm stays, as the adjuster alone is none.
void read_coming_first(Draft& draft) {
  if (!draft.has_any(0, {"before", "after"})) return;
  for (std::size_t i = 2; i + 2 < draft.size(); ++i) {
    if (!draft.has_any(i, {"comes", "come", "goes", "theres"})) continue;
    if (!draft.has_any(i + 1, {"the", "that", "this", "a"})) continue;
    const auto later = naming(draft, 1, i), asked = naming(draft, i + 1, draft.size());
    const auto is_said_again = [&](std::size_t token) {
      return std::ranges::any_of(
          asked, [&](std::size_t other) { return draft.token(other).words == draft.token(token).words; });
    };
    if (later.empty() || later.size() > longest_excluded || asked.empty()) return;
    const bool is_same_kind = asked.size() > 1 && draft.token(asked[1]).words ==
                                                      draft.token(later.back()).words;  // "the clutch nut"
    if (is_said_again(later.back()) && !is_same_kind) return;
    const bool is_adjuster = draft.has_any(asked.front(), {"adjuster", "adjusters"}) ||
                             (asked.size() > 1 && draft.has_any(asked[1], {"adjuster", "adjusters"}));
    for (const std::size_t token : later)
      if (token == later.back() || !is_adjuster) exclude(draft, token);
    return;
  }
}

// "drain bolt out, spark plug torque", "valve cover off, head bolts": what is done already is not asked for.
// Where it is on the machine stays, and what it is of, if only "the nut" is asked for.
void read_done_first(Draft& draft) {
  constexpr std::string_view done[] = {"off",  "out", "on",      "in",    "loose",    "undone",
                                       "done", "set", "greased", "tight", "adjusted", "tensioned"};
  constexpr std::string_view taken_off[] = {"bolt", "bolts", "nut",   "nuts", "screw", "screws",
                                            "plug", "plugs", "cover", "cap",  "caps",  "chain"};
  constexpr std::string_view places[] = {"fork",    "forks", "shock", "clutch", "swingarm",
                                         "linkage", "front", "rear",  "engine", "gearbox"};
  if (draft.size() < 2) return;
  std::size_t comma = 1;
  while (comma < draft.size() && !begins_clause(draft, comma)) ++comma;
  std::size_t last = comma;
  while (last > 0 && draft.taken[last - 1]) --last;
  const bool is_of_machine = last < comma && last > 3 && draft.has_any(last - 1, articles) &&
                             draft.has_word(last - 2, "on") && draft.has_any(last - 3, done);
  if (is_of_machine) last -= 2;  // "adjusted on the muleback"
  if (comma == draft.size() || last < 2 || !draft.has_any(last - 1, done)) return;
  const auto is_part = [&](std::size_t token) {
    constexpr std::string_view tools[] = {"socket", "wrench", "hex-key", "spanner"};
    const auto names = [&](const GroupMatch& match) {
      return is_part_group(match.group) && std::ranges::find(tools, match.group) == std::end(tools);
    };
    const auto& words = draft.token(token).words;
    const bool is_tool = std::ranges::find(tools, words.front()) != std::end(tools);
    const bool is_named = !is_tool && draft.lexicon.names_with(words.front()) && !is_everyday(words.front());
    return !draft.taken[token] && !asks_figure(draft, token) &&
           (is_named || std::ranges::any_of(draft.lexicon.groups_in(words), names));
  };
  constexpr std::string_view asking[] = {"how", "what", "whats", "which"};
  constexpr std::string_view meant_before[] = {"it", "its", "they", "them", "those", "these", "one", "ones"};
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (draft.has_any(i, i < comma ? SomeWords(asking) : SomeWords(meant_before))) return;
  auto before = naming(draft, 0, last - 1), asked = naming(draft, comma, draft.size());
  std::erase_if(asked, std::not_fn(is_part));
  if (before.empty() || asked.empty() || !draft.has_any(before.back(), taken_off)) return;
  const bool is_of_it = asked.size() == 1 && draft.has_any(asked.front(), taken_off);
  if (is_of_it && draft.has_any(before.back(), {"cap", "caps", "cover"})) return;  // whose screws they are
  const auto is_fastener = [&](std::size_t token) { return draft.has_any(token, taken_off); };
  const bool is_chains =
      draft.says_any({"adjuster", "adjusters", "lock", "locknut", "locknuts", "tensioner"}) ||
      std::ranges::none_of(asked, is_fastener);
  if (draft.has_word(before.back(), "chain") && is_chains) return;
  for (const std::size_t token : before)
    if (token == before.back() || (!is_of_it && !draft.has_any(token, places))) leave_out(draft, token);
}

}  // namespace

void read_sequence(Draft& draft) {
  read_coming_first(draft);
  read_done_first(draft);
  read_exclusions(draft);
  read_absences(draft);
  read_excluded_codes(draft);
  read_uncounted(draft);
  read_doubted_figures(draft);
  for (std::size_t i = 1; i < draft.size(); ++i) {
    if (!draft.has_word(i, "before") || naming(draft, 0, i).empty()) continue;
    const auto later = naming(draft, i + 1, draft.size());
    const bool has_digits =
        std::ranges::any_of(later, [&](std::size_t at) { return draft.token(at).has_digit; });
    if (later.empty() || later.size() > longest_later || has_digits) continue;
    for (const std::size_t at : later) leave_out(draft, at);
  }
}

}  // namespace sheaf
