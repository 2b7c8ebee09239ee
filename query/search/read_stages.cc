// SPDX-License-Identifier: GPL-2.0-or-later
// How a torque is reached: "60 + 60 deg", "stage 2 nm", "back off 45". Numbers of its stages, and no figure
// that is stated alone.
#include <cmath>

#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr std::string_view loosening[] = {"loosen", "slacken", "ease", "unscrew", "undo"};
constexpr std::string_view degrees[] = {"deg", "degs", "degree", "degrees", "grad", "\u00B0"};

bool is_newton_metres(std::string_view unit) {
  const auto units = readings(unit);
  return !units.empty() && units.front()->symbol == "N·m";
}

bool is_degrees(std::string_view unit) { return std::ranges::find(degrees, unit) != std::end(degrees); }

// The number of a stage that stands there: "30", "+60", "60deg", "15nm"; empty if there is none. A year is no
// stage, nor is a machine's number.
std::string stage_at(Draft& draft, std::size_t i) {
  if (!draft.is_free(i, 1) || !draft.token(i).has_digit) return {};
  const std::string typed = draft.token(i).typed.substr(draft.token(i).typed.starts_with('+') ? 1 : 0);
  const std::size_t end = std::min(typed.find_first_not_of("0123456789."), typed.size());
  const std::string number = typed.substr(0, end), unit = typed.substr(end);
  if (number.empty() || !parse_number(number, Input::prompt)) return {};
  if (!unit.empty()) return is_degrees(unit) || is_newton_metres(unit) ? number : std::string();
  constexpr std::size_t of_year = 4;
  const bool is_year = number.size() == of_year && year_in(number);
  const bool is_machine = number.size() >= shortest_beginning && !draft.lexicon.machines_with(number).empty();
  return is_year || is_machine ? std::string() : number;
}

// "60 deg", "60deg"
bool says_degrees(const Draft& draft, std::size_t i) {
  if (i >= draft.size()) return false;
  const std::string& typed = draft.token(i).typed;
  return draft.has_any(i + 1, degrees) || is_degrees(std::string_view(typed).substr(std::min(
                                              typed.find_first_not_of("+0123456789"), typed.size())));
}

// "15 nm", "15nm"
bool says_newton_metres(const Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  return (i + 1 < draft.size() && is_newton_metres(draft.token(i + 1).typed)) ||
         is_newton_metres(
             std::string_view(typed).substr(std::min(typed.find_first_not_of("+0123456789."), typed.size())));
}

// Where what follows that number and its unit begins.
std::size_t behind_number(const Draft& draft, std::size_t i) {
  const bool has_unit =
      i + 1 < draft.size() && (draft.has_any(i + 1, degrees) || is_newton_metres(draft.token(i + 1).typed));
  return i + (has_unit ? 2 : 1);
}

// Degrees by which something may be turned that are no width of a wrench: 45, 180.
bool is_turn(const std::string& number) {
  constexpr double least = 30, step = 15, most = 720;
  const auto parsed = parse_number(number, Input::prompt);
  const double turned = parsed ? approximate(*parsed) : 0;
  return turned >= least && turned <= most && std::fmod(turned, step) == 0;
}

bool says_fastener(const Token& token) {
  constexpr std::string_view fasteners[] = {"nut",   "nuts",   "bolt", "bolts", "stud", "studs",
                                            "screw", "screws", "head", "plug",  "plugs"};
  return token.words.size() == 1 &&
         std::ranges::find(fasteners, std::string_view(token.words.front())) != std::end(fasteners);
}

// Whether a plus stands before it.
bool is_added(const Draft& draft, std::size_t i) {
  if (i >= draft.size() || !draft.token(i).has_digit) return false;
  if (draft.token(i).typed.starts_with('+')) return true;
  const std::size_t end = draft.token(i - 1).end;
  return std::string_view(draft.question.text).substr(end, draft.token(i).begin - end).find('+') !=
         std::string_view::npos;
}

void take_stages(Draft& draft, std::size_t first, std::size_t end, const std::vector<std::string>& stages) {
  draft.take(first, end - first);
  draft.reading.stages.insert(draft.reading.stages.end(), stages.begin(), stages.end());
}

// "60+60", as one word; its numbers, none if it is no sum.
std::vector<std::string> summed(std::string_view typed) {
  std::vector<std::string> numbers;
  const bool is_sum = typed.find('+') != std::string_view::npos &&
                      typed.find_first_not_of("0123456789+") == std::string_view::npos;
  for (std::size_t at = 0; is_sum && at <= typed.size();) {
    const std::size_t end = std::min(typed.find('+', at), typed.size());
    if (end > at) numbers.emplace_back(typed.substr(at, end - at));
    at = end + 1;
  }
  return numbers.size() > 1 ? numbers : std::vector<std::string>{};
}

// "30 nm + 60 + 60", "60+60 deg", "+90 deg" behind a first stage.
bool read_sum(Draft& draft, std::size_t i) {
  std::vector<std::string> stages = summed(draft.token(i).typed);
  std::size_t end = behind_number(draft, i);
  if (stages.empty()) {
    if (!is_added(draft, end)) return false;  // machines are looked up for what may be a stage
    stages = {stage_at(draft, i)};
    if (stages.front().empty()) return false;
    for (std::string next; is_added(draft, end) && !(next = stage_at(draft, end)).empty();
         end = behind_number(draft, end))
      stages.push_back(std::move(next));
    if (stages.size() == 1) return false;
  }
  const bool are_turns = std::all_of(stages.begin() + 1, stages.end(), is_turn);
  if (!names_fastener(draft) && !says_newton_metres(draft, i) && !are_turns) return false;
  if (i >= 2 && draft.has_word(i - 1, "then"))
    if (const std::string before = stage_at(draft, i - 2); !before.empty()) {  // "30 then 60 + 60"
      draft.reading.stages.push_back(before);
      draft.take(i - 2, 1);
    }
  take_stages(draft, i, end, stages);
  return true;
}

// "20, 35, then 90", "30 then 60 60", "19, 50, off, 14 + 90": numbers one after the other, and no sizes.
bool read_succession(Draft& draft, std::size_t i) {
  std::vector<std::string> stages;
  bool says_then = false, ends_with_number = false;
  constexpr std::string_view between[] = {"then", "plus", "off", "loosen", "slacken"};
  if (!draft.says_any(between) || !names_fastener(draft)) return false;
  std::size_t at = i;
  while (at < draft.size() && !draft.taken[at]) {
    if (auto stage = stage_at(draft, at); !stage.empty()) {
      if (!stages.empty() && !says_then && !is_number(draft.token(at))) break;
      stages.push_back(std::move(stage));
      at = behind_number(draft, at);
      ends_with_number = true;
    } else if (draft.has_any(at, between) && at > i) {
      says_then = true;
      ends_with_number = false;
      ++at;
    } else {
      break;
    }
  }
  if (!says_then || !ends_with_number || stages.size() < 2) return false;
  take_stages(draft, i, at, stages);
  return true;
}

// "1-4-2-3": in that order, if it is each of the numbers once.
bool read_pattern(Draft& draft, std::size_t i) {
  constexpr std::size_t fewest = 3;
  const std::string& typed = draft.token(i).typed;
  std::vector<std::string> numbers = draft.token(i).words;
  if (numbers.size() < fewest || typed.find_first_not_of("0123456789-") != std::string::npos) return false;
  for (std::size_t number = 1; number <= numbers.size(); ++number)
    if (std::ranges::find(numbers, std::to_string(number)) == numbers.end()) return false;
  draft.reading.pattern = typed;
  draft.take(i, 1);
  return true;
}

// "stage 2": which of them is no figure.
bool read_ordinal_of_stage(Draft& draft, std::size_t i) {
  if (i == 0 || !is_number(draft.token(i)) || draft.token(i).typed.size() != 1) return false;
  if (!draft.has_word(i - 1, "stage") && !draft.has_word(i - 1, "step")) return false;
  draft.reading.left_out.push_back(draft.token(i).typed);
  draft.take(i, 1);
  return true;
}

// "back off", "back it off", "slacken it fully", "loosen", "back" before degrees: how many words say so from
// there on; 0 if none does.
std::size_t words_of_loosening(const Draft& draft, std::size_t i) {
  std::size_t words = draft.has_word(i, "back") || draft.has_any(i, loosening) ? 1 : 0;
  if (words > 0 && draft.has_word(i + words, "it")) ++words;
  const bool says_off = words > 0 && draft.has_any(i + words, {"off", "out", "back"});
  if (says_off) ++words;
  if (words > 0 && draft.has_any(i + words, {"fully", "completely"})) ++words;
  const bool is_said = says_off || draft.has_any(i, loosening) || says_degrees(draft, i + words);
  return is_said ? words : 0;
}

// "back off 45", "loosen 180 deg"; "loosen 17 nut" is its width.
bool read_loosening(Draft& draft, std::size_t i) {
  const std::size_t words = words_of_loosening(draft, i), at = i + words;
  const std::string turn = words == 0 ? std::string() : stage_at(draft, at);
  if (turn.empty()) return false;
  const bool is_said = says_degrees(draft, at);
  if (!is_said && !is_turn(turn)) return false;
  if (!is_said && at + 1 < draft.size() && !readings(draft.token(at + 1).typed).empty()) return false;
  take_stages(draft, i, behind_number(draft, at), {turn});
  return true;
}

// "25, back off 180", "52 nm, slacken off, 18", "25, loosen 180, 6 nm": what is tightened to, loosened, and
// perhaps tightened to again.
bool read_loosened_stages(Draft& draft, std::size_t i) {
  const std::size_t next = behind_number(draft, i), words = words_of_loosening(draft, next);
  if (words == 0) return false;
  std::size_t at = next + words;
  std::vector<std::string> stages = {stage_at(draft, i)};
  if (stages.front().empty()) return false;
  stages.push_back(stage_at(draft, at));
  if (stages.back().empty()) return false;
  const bool is_turned = is_turn(stages.back()) || says_degrees(draft, at);
  if (!is_turned && !says_newton_metres(draft, i) && !says_newton_metres(draft, at)) return false;
  at = behind_number(draft, at);
  const std::size_t last = draft.has_word(at, "then") ? at + 1 : at;
  const bool is_last = is_turned && (behind_number(draft, last) >= draft.size() ||
                                     (last < draft.size() && says_newton_metres(draft, last)));
  if (const std::string again = is_last ? stage_at(draft, last) : std::string(); !again.empty()) {
    stages.push_back(again);
    at = behind_number(draft, last);
  }
  take_stages(draft, i, at, stages);
  return true;
}

// "big end nuts +120 deg", "head bolts + 90"
bool read_added_angle(Draft& draft, std::size_t i) {
  if (i == 0 || !is_added(draft, i) || draft.token(i - 1).has_digit) return false;
  const std::string turn = stage_at(draft, i);
  if (turn.empty() || (!says_degrees(draft, i) && (!names_fastener(draft) || !is_turn(turn)))) return false;
  take_stages(draft, i, behind_number(draft, i), {turn});
  return true;
}

}  // namespace

bool names_fastener(const Draft& draft) { return std::ranges::any_of(draft.question.tokens, says_fastener); }

bool read_stages(Draft& draft, std::size_t i) {
  return read_pattern(draft, i) || read_sum(draft, i) || read_succession(draft, i) ||
         read_ordinal_of_stage(draft, i) || read_added_angle(draft, i) || read_loosened_stages(draft, i) ||
         read_loosening(draft, i);
}

}  // namespace sheaf
