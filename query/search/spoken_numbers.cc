// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/spoken_numbers.h"

#include <algorithm>
#include <array>
#include <vector>

#include "query/library/fold.h"
#include "query/quantity/unit.h"
#include "query/search/short_word.h"

namespace sheaf {
namespace {

struct Spoken {
  ShortWord word;
  int number;
};

// Below ten most are words of their own ("one", "six bolts") and numbers only before a unit. Sorted.
// clang-format off
constexpr auto spoken = std::to_array<Spoken>({
    {"dieci", 10}, {"diez", 10}, {"dix", 10}, {"doce", 12}, {"dodici", 12}, {"douze", 12}, {"dreissig", 30},
    {"dreizehn", 13}, {"eight", 8}, {"eighteen", 18}, {"eighty", 80}, {"eleven", 11}, {"fifteen", 15}, {"fifty", 50},
    {"five", 5}, {"forty", 40}, {"four", 4}, {"fourteen", 14}, {"fourty", 40}, {"fuenfzehn", 15}, {"fuenfzig", 50}, {"funfzehn", 15},
    {"funfzig", 50}, {"nine", 9}, {"nineteen", 19}, {"ninety", 90}, {"quarante", 40}, {"quindici", 15},
    {"quinze", 15}, {"sechzehn", 16}, {"seven", 7}, {"seventeen", 17}, {"seventy", 70}, {"siebzehn", 17}, {"six", 6},
    {"sixteen", 16}, {"sixty", 60}, {"ten", 10}, {"thirteen", 13}, {"thirty", 30}, {"three", 3}, {"treinta", 30},
    {"trente", 30}, {"trenta", 30}, {"twelve", 12}, {"twenty", 20}, {"two", 2}, {"veinte", 20}, {"venti", 20},
    {"vierzehn", 14}, {"vierzig", 40}, {"vingt", 20}, {"zehn", 10}, {"zwanzig", 20}, {"zwoelf", 12}, {"zwolf", 12}});
// clang-format on

struct Word {
  std::size_t begin = 0, end = 0;
  std::string folded;
};

std::vector<Word> words_between_spaces(std::string_view text) {
  constexpr std::string_view parting = " -,;:?!.";
  std::vector<Word> words;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = text.find_first_not_of(parting, at);
    if (begin == std::string_view::npos) break;
    const std::size_t end = std::min(text.find_first_of(parting, begin), text.size());
    words.push_back({begin, end, fold(text.substr(begin, end - begin))});
    at = end;
  }
  return words;
}

int number_of(const Word& word) {
  const auto found = std::ranges::find(spoken, std::string_view(word.folded),
                                       [](const Spoken& each) { return each.word.text(); });
  return found == spoken.end() ? 0 : found->number;
}

bool is_unit(const std::vector<Word>& words, std::size_t i) {
  return i < words.size() && words[i].folded.size() > 1 && !readings(words[i].folded).empty();
}

// "twenty fourteen", "nineteen ninety five", "two thousand and nine": a year, and how many words say it; 0 of
// none.
std::pair<int, std::size_t> year_at(const std::vector<Word>& words, std::size_t i) {
  const auto number = [&](std::size_t at) { return at < words.size() ? number_of(words[at]) : 0; };
  const auto tens_and_ones = [&](std::size_t at) -> std::pair<int, std::size_t> {
    const int tens = number(at), ones = number(at + 1);
    if (tens < 10) return {0, 0};
    return tens >= 20 && tens % 10 == 0 && ones > 0 && ones < 10 ? std::pair(tens + ones, std::size_t{2})
                                                                 : std::pair(tens, std::size_t{1});
  };
  if ((number(i) == 20 || number(i) == 19) && number(i + 1) >= 10) {
    const auto [rest, count] = tens_and_ones(i + 1);
    return {number(i) * 100 + rest, count + 1};
  }
  const bool is_thousand = number(i) == 2 && i + 1 < words.size() && words[i + 1].folded == "thousand";
  if (!is_thousand) return {0, 0};
  const std::size_t at = i + 2 < words.size() && words[i + 2].folded == "and" ? i + 3 : i + 2;
  const int small = number(at);
  if (small > 0 && small < 10) return {2000 + small, at + 1 - i};
  const auto [rest, count] = tens_and_ones(at);
  if (is_unit(words, i + 2)) return {0, 0};  // "two thousand km"
  return count == 0 ? std::pair(0, std::size_t{0}) : std::pair(2000 + rest, at + count - i);
}

// "quarter inch", "three eighths", "five sixteenths": a fraction, and how many words say it; none of others.
std::pair<std::string, std::size_t> fraction_at(const std::vector<Word>& words, std::size_t i) {
  const auto is = [&](std::size_t at, std::string_view word) {
    return at < words.size() && words[at].folded == word;
  };
  constexpr std::string_view wrenches[] = {"wrench", "clicker", "ratchet"};
  constexpr std::size_t near = 5;                                        // words
  for (std::size_t at = i; at < std::min(i + near, words.size()); ++at)  // which are called so
    if (std::ranges::find(wrenches, std::string_view(words[at].folded)) != std::end(wrenches)) return {};
  const auto is_inch = [&](std::size_t at) { return is(at, "inch") || is(at, "inches"); };
  if ((is(i, "quarter") || is(i, "half")) && is_inch(i + 1)) return {is(i, "half") ? "1/2" : "1/4", 1};
  const int count = number_of(words[i]);
  const int parts = is(i + 1, "quarters") ? 4 : is(i + 1, "eighths") ? 8 : is(i + 1, "sixteenths") ? 16 : 0;
  return count > 0 && count < parts
             ? std::pair(std::to_string(count) + "/" + std::to_string(parts), std::size_t{2})
             : std::pair(std::string(), std::size_t{0});
}

// "17er Schlüssel", "die 46er": of so many millimetres; empty if it is not said so.
std::string_view german_size(std::string_view word) {
  constexpr std::size_t most_digits = 2;
  const std::size_t digits = std::min(word.find_first_not_of("0123456789"), word.size());
  return digits > 0 && digits <= most_digits && word.substr(digits) == "er" ? word.substr(0, digits)
                                                                            : std::string_view();
}

// "7/8 of an inch"
std::string in_inches(std::string text) {
  constexpr std::string_view of_an_inch = " of an inch";
  for (std::size_t at = text.find(of_an_inch); at != std::string::npos; at = text.find(of_an_inch, at + 1))
    if (at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9') text.replace(at, of_an_inch.size(), " inch");
  return text;
}

}  // namespace

std::string with_digits(std::string_view said) {
  std::string text(said);
  std::string written;
  std::size_t copied = 0;
  const auto words = words_between_spaces(text);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool is_class = words[i].begin > 1 && text[words[i].begin - 1] == '.';  // "10.9er"
    if (const auto size = german_size(words[i].folded); !size.empty() && !is_class) {
      written.append(text, copied, words[i].begin - copied);
      written.append(size).append("mm");
      copied = words[i].end;
      continue;
    }
    int number = number_of(words[i]);
    std::size_t last = i;
    if (const auto [year, count] = year_at(words, i); count > 0) {
      written.append(text, copied, words[i].begin - copied);
      written += std::to_string(year);
      i += count - 1;
      copied = words[i].end;
      continue;
    }
    if (const auto [fraction, count] = fraction_at(words, i); count > 0) {
      written.append(text, copied, words[i].begin - copied);
      written += fraction;
      i += count - 1;
      copied = words[i].end;
      continue;
    }
    const int ones = i + 1 < words.size() ? number_of(words[i + 1]) : 0;
    if (number >= 20 && ones > 0 && ones < 10) {
      number += ones;
      last = i + 1;
    }
    const bool is_thousand = last + 1 < words.size() && words[last + 1].folded == "thousand";
    if (is_thousand && number > 0 &&
        (number != 2 || is_unit(words, last + 2))) {  // "two thousand" alone may begin a year
      number *= 1000;
      ++last;
    }
    if (number == 0 || (number < 10 && !is_unit(words, i + 1))) continue;
    written.append(text, copied, words[i].begin - copied);
    written += std::to_string(number);
    copied = words[last].end;
    i = last;
  }
  return in_inches(written + text.substr(copied));
}

}  // namespace sheaf
