// SPDX-License-Identifier: GPL-2.0-or-later
// How a torque is reached: "60 + 60 deg", "stage 2 nm", "back off 45". Numbers of its stages, and no figure
// that is stated alone.
#include <span>

#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr std::string_view loosening[] = {"loosen", "slacken", "ease", "unscrew"};
constexpr std::string_view behind_back[] = {"off", "out", "it", "back"};
constexpr std::string_view degrees[] = {"deg", "degs", "degree", "degrees", "grad"};

// "90" of "90deg"; empty if it is not written so.
std::string number_of_degrees(const Token& token) {
  const std::size_t end = token.typed.find_first_not_of("0123456789");
  const bool is_so =
      end != std::string::npos && end > 0 &&
      std::ranges::find(degrees, std::string_view(token.typed).substr(end)) != std::end(degrees);
  return is_so ? token.typed.substr(0, end) : std::string();
}

bool is_torque(const std::string& unit) {
  const auto units = readings(unit);
  return !units.empty() && units.front()->dimension == Dimension::torque;
}

// "15" of "15nm"; empty if it is not written so.
std::string number_before_unit(const Token& token) {
  const std::size_t end = token.typed.find_first_not_of("0123456789.");
  return end != std::string::npos && end > 0 && is_torque(token.typed.substr(end))
             ? token.typed.substr(0, end)
             : std::string();
}

bool says_fastener(const Token& token) {
  constexpr std::string_view fasteners[] = {"nut",   "nuts",  "bolt",   "bolts", "stud",
                                            "studs", "screw", "screws", "head"};
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

// "+60" is 60.
void take_stage(Draft& draft, std::size_t i, const std::string& number) {
  draft.reading.stages.push_back(number.substr(number.starts_with('+') ? 1 : 0));
  draft.take(i, 1);
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

bool read_sum(Draft& draft, std::size_t i) {
  const bool has_unit = i + 1 < draft.size() && is_torque(draft.token(i + 1).typed);  // "15 nm + 120"
  const std::size_t first = i + (has_unit ? 2 : 1);
  std::size_t end = first;
  std::vector<std::string> numbers = summed(draft.token(i).typed);
  const bool is_one_word = !numbers.empty();
  while (!is_one_word && is_added(draft, end)) ++end;
  if (!is_one_word &&
      (end == first || (!is_number(draft.token(i)) && number_before_unit(draft.token(i)).empty())))
    return false;
  const bool says_torque = has_unit || !number_before_unit(draft.token(i)).empty();
  if (!names_fastener(draft) && !says_torque) return false;
  for (const auto& number : numbers) take_stage(draft, i, number);
  for (std::size_t at = i; !is_one_word && at < end; ++at)
    if (draft.token(at).has_digit) {
      const std::string figure = number_before_unit(draft.token(at)),
                        angle = number_of_degrees(draft.token(at));
      take_stage(draft, at, !figure.empty() ? figure : !angle.empty() ? angle : draft.token(at).typed);
    } else {
      draft.take(at, 1);
    }
  if (i >= 2 && draft.has_word(i - 1, "then") && is_number(draft.token(i - 2)) && !draft.taken[i - 2])
    take_stage(draft, i - 2, draft.token(i - 2).typed);  // "30 then 60 + 60"
  if (draft.has_any(end, degrees)) draft.take(end, 1);
  return true;
}

// "20, 35, then 90", "30 then 60 60": numbers one after the other, and no sizes.
bool read_succession(Draft& draft, std::size_t i) {
  std::vector<std::size_t> numbers;
  bool says_then = false;
  std::size_t at = i;
  for (; at < draft.size() && !draft.taken[at]; ++at) {
    if (is_number(draft.token(at)) || (says_then && !number_of_degrees(draft.token(at)).empty()))
      numbers.push_back(at);
    else if (draft.has_word(at, "then") && at > i)
      says_then = true;
    else if (at == i && !number_before_unit(draft.token(at)).empty())
      numbers.push_back(at);
    else if (at == i + 1 && !draft.token(at).has_digit && is_torque(draft.token(at).typed))
      continue;  // "15 nm then 120"
    else
      break;
  }
  const bool has_model =
      std::ranges::any_of(numbers, [&](std::size_t each) { return is_model(draft, each); });
  if (!says_then || has_model || numbers.size() < 2 || numbers.front() != i || numbers.back() + 1 != at ||
      !names_fastener(draft))
    return false;
  draft.take(i, at - i);
  for (const std::size_t each : numbers) {
    const Token& token = draft.token(each);
    draft.reading.stages.push_back(is_number(token) ? token.typed
                                   : each == i      ? number_before_unit(token)
                                                    : number_of_degrees(token));
  }
  if (draft.has_any(at, degrees)) draft.take(at, 1);
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

bool says_degrees(const Draft& draft, std::size_t i) {
  return draft.has_any(i + 1, degrees) || (i < draft.size() && !number_of_degrees(draft.token(i)).empty());
}

// "back off", "slacken it", "loosen", "back" before degrees: how many words say so from there on; 0 if none does.
std::size_t words_of_loosening(const Draft& draft, std::size_t i) {
  if (draft.has_word(i, "back"))
    return draft.has_any(i + 1, behind_back) ? 2 : says_degrees(draft, i + 1) ? 1 : 0;
  if (!draft.has_any(i, loosening)) return 0;
  return draft.has_any(i + 1, behind_back) ? 2 : 1;
}

// Degrees by which something may be turned that are no width of a wrench: 45, 180.
bool is_turn(const std::string& typed) {
  constexpr int least = 30, step = 15, most = 720;
  if (!is_digits(typed) || typed.size() > 3) return false;
  const int turned = std::stoi(typed);
  return turned >= least && turned <= most && turned % step == 0;
}

// The number there, and what says that it is of degrees: "45", "45 deg", "45deg".
bool take_turn(Draft& draft, std::size_t i) {
  const std::string in_one = number_of_degrees(draft.token(i));
  take_stage(draft, i, in_one.empty() ? draft.token(i).typed : in_one);
  if (draft.has_any(i + 1, degrees)) draft.take(i + 1, 1);
  return true;
}

// "back off 45", "loosen 180 deg"; "loosen 17 nut" is its width.
bool read_loosening(Draft& draft, std::size_t i) {
  const std::size_t words = words_of_loosening(draft, i), at = i + words;
  if (words == 0 || !draft.is_free(at, 1)) return false;
  const bool is_said = says_degrees(draft, at);
  if (!is_said && (!is_turn(draft.token(at).typed) || is_model(draft, at))) return false;
  if (!is_said && at + 1 < draft.size() && !readings(draft.token(at + 1).typed).empty()) return false;
  draft.take(i, words);
  return take_turn(draft, at);
}

// "25, back off 180", "52 nm, slacken off, 18": what is tightened to, loosened, and perhaps tightened to again.
bool read_loosened_stages(Draft& draft, std::size_t i) {
  const bool is_bare = is_number(draft.token(i));
  const bool has_unit = is_bare && i + 1 < draft.size() && is_torque(draft.token(i + 1).typed);
  const std::string first = is_bare ? draft.token(i).typed : number_before_unit(draft.token(i));
  const std::size_t next = i + (has_unit ? 2 : 1), words = words_of_loosening(draft, next);
  const std::size_t at = next + words;
  if (first.empty() || words == 0 || !draft.is_free(at, 1)) return false;
  if (!is_number(draft.token(at)) && number_of_degrees(draft.token(at)).empty()) return false;
  if (is_model(draft, i) || is_model(draft, at)) return false;
  draft.take(i, at - i);
  draft.reading.stages.push_back(first);
  return take_turn(draft, at);
}

// "big end nuts +120 deg", "head bolts + 90"
bool read_added_angle(Draft& draft, std::size_t i) {
  const bool is_alone =
      i > 0 && is_number(draft.token(i)) && is_added(draft, i) && !draft.token(i - 1).has_digit;
  const bool is_said = says_degrees(draft, i);
  if (!is_alone || (!is_said && (!names_fastener(draft) || !is_turn(draft.token(i).typed)))) return false;
  return take_turn(draft, i);
}

}  // namespace

bool names_fastener(const Draft& draft) { return std::ranges::any_of(draft.question.tokens, says_fastener); }

bool read_stages(Draft& draft, std::size_t i) {
  return read_pattern(draft, i) || read_sum(draft, i) || read_succession(draft, i) ||
         read_ordinal_of_stage(draft, i) || read_added_angle(draft, i) || read_loosened_stages(draft, i) ||
         read_loosening(draft, i);
}

}  // namespace sheaf
