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

bool is_any(const Draft& draft, std::size_t i, std::span<const std::string_view> words) {
  return std::ranges::any_of(words, [&](std::string_view word) { return draft.has_word(i, word); });
}

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
  const std::size_t end = draft.token(i - 1).end;
  return std::string_view(draft.question.text).substr(end, draft.token(i).begin - end).find('+') !=
         std::string_view::npos;
}

void take_stage(Draft& draft, std::size_t i, const std::string& number) {
  draft.reading.stages.push_back(number);
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
  if (!names_fastener(draft)) return false;
  for (const auto& number : numbers) take_stage(draft, i, number);
  for (std::size_t at = i; !is_one_word && at < end; ++at)
    if (draft.token(at).has_digit)
      take_stage(draft, at,
                 is_number(draft.token(at)) ? draft.token(at).typed : number_before_unit(draft.token(at)));
    else
      draft.take(at, 1);
  if (i >= 2 && draft.has_word(i - 1, "then") && is_number(draft.token(i - 2)) && !draft.taken[i - 2])
    take_stage(draft, i - 2, draft.token(i - 2).typed);  // "30 then 60 + 60"
  if (is_any(draft, end, degrees)) draft.take(end, 1);
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
  if (is_any(draft, at, degrees)) draft.take(at, 1);
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

// "big end nuts +120 deg"
bool read_added_angle(Draft& draft, std::size_t i) {
  const bool is_alone =
      i > 0 && is_number(draft.token(i)) && is_added(draft, i) && !draft.token(i - 1).has_digit;
  if (!is_alone || !is_any(draft, i + 1, degrees)) return false;
  take_stage(draft, i, draft.token(i).typed);
  draft.take(i + 1, 1);
  return true;
}

// "back off 45", "loosen 180 deg"
bool read_loosening(Draft& draft, std::size_t i) {
  constexpr std::size_t least_digits = 2, most_digits = 3;
  const std::string& typed = draft.token(i).typed;
  if (i == 0 || typed.size() < least_digits || typed.size() > most_digits || !is_number(draft.token(i)))
    return false;
  const bool is_backed = i > 1 && draft.has_word(i - 2, "back") && is_any(draft, i - 1, behind_back);
  const bool says_degrees = is_any(draft, i + 1, degrees);
  const bool is_loosened = says_degrees && (is_any(draft, i - 1, loosening) ||
                                            draft.has_word(i - 1, "back"));  // "loosen 17 nut" is its width
  if ((!is_backed && !is_loosened) || is_model(draft, i)) return false;
  if (i + 1 < draft.size() && !says_degrees && !readings(draft.token(i + 1).typed).empty()) return false;
  draft.take(i - (is_backed ? 2 : 1), is_backed ? 2 : 1);
  take_stage(draft, i, typed);
  if (says_degrees) draft.take(i + 1, 1);
  return true;
}

}  // namespace

bool names_fastener(const Draft& draft) { return std::ranges::any_of(draft.question.tokens, says_fastener); }

bool read_stages(Draft& draft, std::size_t i) {
  return read_pattern(draft, i) || read_sum(draft, i) || read_succession(draft, i) ||
         read_ordinal_of_stage(draft, i) || read_added_angle(draft, i) || read_loosening(draft, i);
}

}  // namespace sheaf
