// SPDX-License-Identifier: GPL-2.0-or-later
// Numbers without a unit, once it is known that they are no machine: years, sizes, bearings, part
// numbers, and what is left, a measure of which only the entry can say what it measures.
#include <cmath>

#include "query/library/fold.h"
#include "query/search/draft.h"

namespace sheaf {
namespace {

constexpr int oldest_year = 1950, newest_year = 2049;  // four digits outside are a number, not a year
constexpr std::size_t shortest_part_number = 4;        // letters and digits
constexpr std::size_t most_numbers = 12;               // candidates for a number that is not whole
constexpr std::size_t most_looked_alike = 200;

constexpr std::ptrdiff_t shortest_frame = 4;  // digits of a frame number

bool is_two_numbers(const Token& token) {
  return token.has_digit && token.typed.find_first_not_of("0123456789.,/") == std::string::npos;
}

// "7/16": inches.
bool is_fraction(const Token& token) {
  const auto number = parse_number(token.typed, Input::prompt);
  return number && number->denominator > 1;
}

// "frame HM3-002100", "chassis no. HM3-002100"
bool read_frame(Draft& draft, std::size_t i) {
  constexpr std::string_view frames[] = {"frame",        "chassis", "vin",      "rahmen",
                                         "rahmennummer", "cadre",   "bastidor", "telaio"};
  constexpr std::string_view numbers[] = {"number", "no", "nr", "num", "numero"};
  if (!draft.reading.frame.empty() || draft.taken[i] || !draft.has_any(i, frames)) return false;
  const std::size_t at = draft.has_any(i + 1, numbers) ? i + 2 : i + 1;
  if (!draft.is_free(at, 1)) return false;
  const std::string& typed = draft.token(at).typed;
  if (std::ranges::count_if(typed, [](char sign) { return sign >= '0' && sign <= '9'; }) < shortest_frame)
    return false;
  draft.reading.frame = typed;
  draft.take(i, at + 1 - i);
  return true;
}

// "HM3-002100": letters, then a long run of digits, where no part has that number.
bool read_frame_alone(Draft& draft, std::size_t i) {
  constexpr std::ptrdiff_t shortest_run = 6;
  const std::string& typed = draft.token(i).typed;
  if (!draft.reading.frame.empty() || draft.taken[i] || draft.size() == 1) return false;
  const std::size_t run = typed.find_last_not_of("0123456789") + 1;
  if (run == 0 || static_cast<std::ptrdiff_t>(typed.size() - run) < shortest_run) return false;
  const std::string_view series = std::string_view(typed).substr(0, run);
  const auto is_of_series = [](char sign) {
    return (sign >= 'A' && sign <= 'Z') || (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9') ||
           sign == '-';
  };
  const bool begins_with_letter = series.front() > '9';
  if (!begins_with_letter || !std::ranges::all_of(series, is_of_series)) return false;
  if (is_listed_number(draft.lexicon, squeeze(typed))) return false;
  draft.reading.frame = typed;
  draft.take(i, 1);
  return true;
}

// "2013", "'13", "2011-2013", "2011..2013"
bool read_year(Draft& draft, std::size_t i) {
  if (draft.reading.year != 0) return false;
  const std::string_view typed = draft.token(i).typed;
  const bool is_short = typed.size() == 2 && typed.front() == '0' && is_number(draft.token(i)) &&
                        !draft.reading.machines.empty();
  if (const auto year = year_in(is_short ? "'" + std::string(typed) : typed)) {  // "an 09 muleback"
    draft.reading.year = draft.reading.year_to = *year;
  } else {
    const std::size_t gap = typed.find_first_of("-./");
    const std::size_t next = gap == std::string_view::npos ? gap : typed.find_first_of("0123456789", gap);
    if (next == std::string_view::npos) return false;
    const auto from = year_in(typed.substr(0, gap)), to = year_in(typed.substr(next));
    if (!from || !to || *to < *from) return false;
    draft.reading.year = *from;
    draft.reading.year_to = *to;
  }
  draft.take(i, 1);
  return true;
}

// "43 55 9,5": two numbers or more in a row are the dimensions of one size.
bool read_row_of_numbers(Draft& draft, std::size_t i) {
  std::size_t count = 0;
  const auto is_of_links = [&](std::size_t token) { return draft.has_any(token + 1, {"links", "pitches"}); };
  while (count < 4 && draft.is_free(i + count, 1) && is_number(draft.token(i + count)) &&
         !is_of_links(i + count))  // "428 118 links"
    ++count;
  if (count >= 2 && draft.is_free(i + count, 1) && is_two_numbers(draft.token(i + count)))
    ++count;  // "43 55 9,5/10,5"
  for (; count >= 2; --count) {
    auto size = parse_size(draft.question.typed(i, count), Input::prompt);
    if (!size || size->count < 2) continue;
    draft.reading.sizes.push_back(*std::move(size));
    draft.take(i, count);
    return true;
  }
  return false;
}

bool read_bare_bearing(Draft& draft, std::size_t i) {
  if (draft.token(i).typed.size() < 3) return false;
  auto bearing = parse_bearing(draft.token(i).typed, Input::prompt);
  if (!bearing) return false;
  const bool is_listed = draft.lexicon.has_term(Prefix::bearing, fold(bearing->basic));
  if (!is_listed && draft.token(i).typed.size() < 4) return false;  // "620" is more likely a measure
  draft.reading.bearings.push_back(*std::move(bearing));
  draft.take(i, 1);
  return true;
}

// Where one sign could not be read, people put x, ?, * or _ in its place.
std::string pattern_of(std::string_view typed, char unread) {
  std::string pattern;
  for (const char sign : typed) {
    const char lower = sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
    const bool is_letter_or_digit = (lower >= 'a' && lower <= 'z') || (lower >= '0' && lower <= '9');
    if (sign == unread)
      pattern += '?';
    else if (is_letter_or_digit)
      pattern += lower;
  }
  return pattern;
}

void take_candidates(Draft& draft, std::size_t i, std::vector<std::string> numbers,
                     std::string_view because) {
  const std::string typed = draft.token(i).typed;
  draft.reading.doubts.push_back("“" + typed + "” is no whole number here; " + std::string(because) +
                                 ": compare every sign.");
  for (auto& number : numbers) draft.reading.numbers.push_back(std::move(number));
  draft.reading.number_is_guess = true;
  draft.take(i, 1);
}

// Signs that a label and a hand confuse; each is compared as its digit.
char digit_like(char sign) { return sign == 'o' ? '0' : sign == 'i' || sign == 'l' ? '1' : sign; }

bool looks_alike(std::string_view left, std::string_view right) {
  return std::ranges::equal(left, right, {}, digit_like, digit_like);
}

// "Q7-410-O4" for Q7-410-04.
std::vector<std::string> numbers_looking_like(Lexicon& lexicon, const std::string& squeezed) {
  std::string pattern = squeezed;
  for (char& sign : pattern)
    if (digit_like(sign) != sign || sign == '0' || sign == '1') sign = '?';
  if (pattern == squeezed || pattern.starts_with('?')) return {};
  auto numbers = lexicon.numbers_like(pattern, most_looked_alike);
  std::erase_if(numbers, [&](const std::string& number) { return !looks_alike(number, squeezed); });
  return numbers;
}

bool read_part_number(Draft& draft, std::size_t i) {
  const std::string& typed = draft.token(i).typed;
  const std::string squeezed = squeeze(typed);
  if (squeezed.size() < shortest_part_number) return false;
  if (is_listed_number(draft.lexicon, squeezed)) {
    draft.reading.numbers.push_back(squeezed);
    draft.take(i, 1);
    return true;
  }
  for (const char unread : {'?', '*', '_', 'x', 'X'}) {
    if (typed.find(unread) == std::string::npos) continue;
    auto numbers = draft.lexicon.numbers_like(pattern_of(typed, unread), most_numbers);
    if (numbers.empty()) continue;
    take_candidates(draft, i, std::move(numbers), "one sign is unread, these could be meant");
    return true;
  }
  auto numbers = numbers_looking_like(draft.lexicon, squeezed);
  if (!numbers.empty()) {
    take_candidates(draft, i, std::move(numbers), "a letter and a digit look alike, these could be meant");
    return true;
  }
  numbers = draft.lexicon.numbers_beginning(squeezed, most_numbers);
  if (numbers.empty()) return false;
  take_candidates(draft, i, std::move(numbers), "these begin with it");
  return true;
}

LengthOf meaning_beside(const Draft& draft, std::size_t i) {
  const auto is = [&](std::size_t at, std::string_view word) { return draft.has_word(at, word); };
  if (is(i + 1, "od") || (i > 0 && is(i - 1, "od"))) return LengthOf::outside;
  if (is(i + 1, "id") || (i > 0 && is(i - 1, "id"))) return LengthOf::inside;
  return LengthOf::anything;
}

// "after the 30, how many degrees": a stage of the torque whose rest is asked.
bool is_stage_said(const Draft& draft) { return draft.reading.asks("angle") || draft.reading.asks("stage"); }

bool read_measure(Draft& draft, std::size_t i) {
  if (is_stage_said(draft)) {
    draft.reading.left_out.push_back(draft.token(i).typed);
    draft.take(i, 1);
    return true;
  }
  const auto number = parse_number(draft.token(i).typed, Input::prompt);
  if (!number || number->digits == 0) return false;
  draft.reading.lengths.push_back(length_of(draft.token(i).typed, *number, meaning_beside(draft, i)));
  draft.take(i, 1);
  return true;
}

}  // namespace

std::optional<int> year_in(std::string_view text) {
  if (text.starts_with('\'') && text.size() == 3) {
    const int short_year = std::atoi(std::string(text.substr(1)).c_str());
    const bool digits = text.find_first_not_of("0123456789", 1) == std::string_view::npos;
    return digits ? std::optional((short_year < 50 ? 2000 : 1900) + short_year) : std::nullopt;
  }
  if (text.size() != 4 || !is_digits(text)) return std::nullopt;
  const int year = std::atoi(std::string(text).c_str());
  return year >= oldest_year && year <= newest_year ? std::optional(year) : std::nullopt;
}

void read_frames(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i) read_frame(draft, i);
  for (std::size_t i = 0; i < draft.size(); ++i) read_frame_alone(draft, i);
}

void read_numbers(Draft& draft) {
  for (std::size_t i = 0; i < draft.size(); ++i)
    if (!draft.taken[i] && draft.token(i).has_digit) read_year(draft, i);
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i] || !draft.token(i).has_digit) continue;
    if (!is_number(draft.token(i)))
      read_part_number(draft, i) || (is_fraction(draft.token(i)) && read_measure(draft, i));
    else
      read_row_of_numbers(draft, i) || read_bare_bearing(draft, i) || read_part_number(draft, i) ||
          read_measure(draft, i);
  }
}

}  // namespace sheaf
