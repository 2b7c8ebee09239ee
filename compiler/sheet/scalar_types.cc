// SPDX-License-Identifier: GPL-2.0-or-later
// Hand-written on purpose: each grammar is a line or two, and its failures must say what would do.
#include "compiler/sheet/scalar_types.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <limits>

namespace sheafc {
namespace {

using sheaf::Failure;
using sheaf::Result;
using Text = std::string_view;

constexpr int first_year = 1885;  // no motor vehicle is older
constexpr int last_year = 2100;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_lower(char c) { return c >= 'a' && c <= 'z'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool all_digits(Text text) { return !text.empty() && std::ranges::all_of(text, is_digit); }

Text trimmed(Text text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// The failure marks `part`, which must be a piece of `whole`.
Failure at_part(Text whole, Text part, std::string message) {
  return {std::move(message), static_cast<int>(part.data() - whole.data()), static_cast<int>(part.size())};
}

// Call only with a few digits.
int to_int(Text digits) {
  int value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

std::string padded(int value, int width) {
  std::string digits = std::to_string(value);
  if (static_cast<int>(digits.size()) < width)
    digits.insert(0, static_cast<std::size_t>(width) - digits.size(), '0');
  return digits;
}

int days_in(int year, int month) {
  constexpr std::array<int, 12> days = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
  return month == 2 && leap ? 29 : days[static_cast<std::size_t>(month - 1)];
}

Result<int> parse_year(Text whole, Text part) {
  if (part.size() != 4 || !all_digits(part)) {
    return at_part(whole, part, "'" + std::string(part) + "' is not a year of four digits");
  }
  const int year = to_int(part);
  if (year < first_year || year > last_year) {
    return at_part(whole, part, "a year lies between 1885 and 2100, not at " + std::string(part));
  }
  return year;
}

// "2011-2015", "2011–2015", "2011 to 2015": what people write for "2011..2015".
std::string years_as_range(Text text) {
  if (text.size() < 9 || text.size() > 13) return {};
  const Text from = text.substr(0, 4), to = text.substr(text.size() - 4);
  if (!all_digits(from) || !all_digits(to)) return {};
  const Text between = trimmed(text.substr(4, text.size() - 8));
  if (between != "-" && between != "–" && between != "—" && between != "to" && between != "…") return {};
  return std::string(from) + ".." + std::string(to);
}

bool is_frame(Text text) {
  const bool plain = std::ranges::all_of(
      text, [](char c) { return is_digit(c) || is_lower(lower(c)) || c == '-' || c == '/' || c == ' '; });
  return plain && !text.empty() && text.size() <= 40 && is_digit(text.back());
}

Result<std::string> parse_frame(Text whole, Text part) {
  if (!is_frame(part)) {
    return at_part(
        whole, part,
        "'" + std::string(part) + "' is not a frame number: letters, digits and hyphens, ending in a digit");
  }
  if (take_apart(part).number < 0) return at_part(whole, part, "at most 15 digits may end a frame number");
  return std::string(part);
}

}  // namespace

Result<Date> parse_date(Text text) {
  const bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                      all_digits(text.substr(0, 4)) && all_digits(text.substr(5, 2)) &&
                      all_digits(text.substr(8, 2));
  if (!shaped)
    return Failure{"'" + std::string(text) + "' is not a date; write year-month-day, as 2026-10-02"};
  const Date date{to_int(text.substr(0, 4)), to_int(text.substr(5, 2)), to_int(text.substr(8, 2))};
  if (date.year < first_year || date.year > last_year)
    return Failure{"a date's year lies between 1885 and 2100", 0, 4};
  if (date.month < 1 || date.month > 12)
    return Failure{"there is no month " + std::string(text.substr(5, 2)), 5, 2};
  if (date.day < 1 || date.day > days_in(date.year, date.month)) {
    return Failure{
        "there is no day " + std::string(text.substr(8, 2)) + " in " + std::string(text.substr(0, 7)), 8, 2};
  }
  return date;
}

std::string to_text(const Date& date) {
  return padded(date.year, 4) + "-" + padded(date.month, 2) + "-" + padded(date.day, 2);
}

Result<Years> parse_years(Text text) {
  const auto dots = text.find("..");
  if (dots == Text::npos) {
    if (const std::string range = years_as_range(text); !range.empty()) {
      return Failure{"a span of years is written with two points: " + range};
    }
    const auto year = parse_year(text, text);
    if (!year) return year.failure();
    return Years{*year, *year};
  }
  const Text from = trimmed(text.substr(0, dots)), to = trimmed(text.substr(dots + 2));
  if (from.empty() && to.empty())
    return Failure{"both ends of the years are open; leave the key out where every year fits"};
  Years years;
  if (!from.empty()) {
    const auto year = parse_year(text, from);
    if (!year) return year.failure();
    years.from = *year;
  }
  if (!to.empty()) {
    const auto year = parse_year(text, to);
    if (!year) return year.failure();
    years.to = *year;
  }
  if (years.to && years.from > years.to)
    return Failure{"the years run backwards: from " + std::string(from) + " to " + std::string(to)};
  return years;
}

std::string to_text(const Years& years) {
  if (years.from && years.from == years.to) return std::to_string(years.from);
  return (years.from ? std::to_string(years.from) : "") + ".." + (years.to ? std::to_string(years.to) : "");
}

FrameNumber take_apart(Text frame) {
  std::size_t digits = frame.size();
  while (digits > 0 && is_digit(frame[digits - 1])) --digits;
  const Text number = frame.substr(digits);
  FrameNumber parts{frame.substr(0, digits), -1};
  if (number.size() > 15) return parts;  // no frame number: says so by being negative
  std::from_chars(number.data(), number.data() + number.size(), parts.number);
  return parts;
}

Result<Frames> parse_frames(Text text) {
  const auto dots = text.find("..");
  if (dots == Text::npos) {
    const auto only = parse_frame(text, text);
    if (!only) return only.failure();
    return Frames{*only, *only};
  }
  const Text from = trimmed(text.substr(0, dots)), to = trimmed(text.substr(dots + 2));
  if (from.empty() && to.empty())
    return Failure{"both ends of the frame numbers are open; leave the key out where all of them fit"};
  for (const Text end : {from, to}) {
    if (end.empty()) continue;
    if (const auto frame = parse_frame(text, end); !frame) return frame.failure();
  }
  if (!from.empty() && !to.empty()) {
    const FrameNumber first = take_apart(from), last = take_apart(to);
    if (first.series != last.series) {
      return at_part(text, to,
                     "the ends are of two series of frame numbers, '" + std::string(first.series) +
                         "' and '" + std::string(last.series) + "'");
    }
    if (first.number > last.number) return Failure{"the frame numbers run backwards"};
  }
  return Frames{std::string(from), std::string(to)};
}

std::string to_text(const Frames& frames) {
  return frames.from == frames.to ? frames.from : frames.from + ".." + frames.to;
}

Result<int> parse_integer(Text text) {
  if (all_digits(text) && text.size() > 1 && text.front() == '0') {
    return Failure{"'" + std::string(text) +
                   "' begins with a zero, which some programs take for another base; leave the zero out"};
  }
  if (all_digits(text) && text.size() <= 9) return to_int(text);
  return Failure{"'" + std::string(text) + "' is not a whole number, 0 or more"};
}

Result<Count> parse_count(Text text) {
  const auto space = text.find(' ');
  const Text digits = text.substr(0, space);
  const auto number = parse_integer(digits);
  if (!number || digits.size() > 4)
    return Failure{"a count is a whole number, alone or per something: 2, or 1 per leg"};
  if (*number == 0)
    return Failure{"a count of 0 says that there is none; leave the entry out", 0,
                   static_cast<int>(digits.size())};
  if (space == Text::npos) return Count{*number, {}};
  const Text rest = trimmed(text.substr(space));
  const Text per = rest.starts_with("per ") ? trimmed(rest.substr(4)) : Text{};
  if (per.empty() || !std::ranges::all_of(per, [](char c) { return is_lower(c) || c == ' ' || c == '-'; })) {
    return at_part(text, rest,
                   "'" + std::string(rest) + "' does not belong to a count; write 2, or 1 per leg");
  }
  return Count{*number, std::string(per)};
}

std::string to_text(const Count& count) {
  return std::to_string(count.number) + (count.per.empty() ? "" : " per " + count.per);
}

Result<Interval> parse_interval(Text text) {
  Interval interval;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t found = text.find(" or ", start);
    const std::size_t end = found == Text::npos ? text.size() : found;
    auto statement = sheaf::parse_statement(text.substr(start, end - start), {}, sheaf::Input::sheet);
    if (!statement) {
      Failure failure = statement.failure();
      if (failure.length == 0) failure.length = static_cast<int>(end - start);
      failure.at += static_cast<int>(start);
      return failure;
    }
    const bool plain = statement->stages.size() == 1 && statement->per.empty() && !statement->at &&
                       statement->conditions.empty() && !statement->printed && statement->figure().unit;
    const auto dimension = plain ? statement->figure().unit->dimension : sheaf::Dimension::torque;
    if (dimension != sheaf::Dimension::distance && dimension != sheaf::Dimension::time) {
      return Failure{"an interval is a distance or a time, as 10 000 km or 12 months",
                     static_cast<int>(start), static_cast<int>(end - start)};
    }
    interval.alternatives.push_back(statement->figure());
    if (found == Text::npos) break;
    start = found + 4;
  }
  return interval;
}

std::string to_text(const Interval& interval) {
  std::string text;
  for (const sheaf::Figure& figure : interval.alternatives)
    text += (text.empty() ? "" : " or ") + sheaf::to_text(figure);
  return text;
}

Result<Address> parse_address(Text text) {
  const auto slash = text.find('/');
  const Text sheet = slash == Text::npos ? Text{} : text.substr(0, slash);
  const Text entry = slash == Text::npos ? text : text.substr(slash + 1);
  if (!is_name(entry) || (slash != Text::npos && !is_name(sheet))) {
    return Failure{"'" + std::string(text) +
                   "' is not an address; write sheet/entry, or entry for one of this sheet"};
  }
  return Address{std::string(sheet), std::string(entry)};
}

std::string to_text(const Address& address) {
  return address.sheet.empty() ? address.entry : address.sheet + "/" + address.entry;
}

Result<Pattern> parse_pattern(Text text) {
  Pattern pattern;
  for (std::size_t start = 0; start <= text.size();) {
    std::size_t end = std::min(text.find_first_of("-, ", start), text.size());
    const Text digits = text.substr(start, end - start);
    const auto number = parse_integer(digits);
    if (!number || digits.size() > 3) {
      return Failure{"a pattern is the fasteners' numbers in order, as 1-4-2-3", static_cast<int>(start),
                     static_cast<int>(digits.size())};
    }
    pattern.order.push_back(*number);
    while (end < text.size() && (text[end] == ' ' || text[end] == ',')) ++end;  // "1, 4, 2"
    if (end < text.size() && text[end] == '-')
      ++end;
    else if (end == text.size())
      break;
    start = end;
  }
  if (pattern.order.size() < 2) return Failure{"a pattern puts two fasteners or more in order, as 1-4-2-3"};
  return pattern;
}

std::string to_text(const Pattern& pattern) {
  std::string text;
  for (const int number : pattern.order) text += (text.empty() ? "" : "-") + std::to_string(number);
  return text;
}

bool is_name(Text text) {
  if (text.empty() || text.size() > 80) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool letter = is_lower(text[i]) || is_digit(text[i]);
    const bool inside = i > 0 && i + 1 < text.size();
    const bool hyphen = text[i] == '-' && inside && text[i - 1] != '-';
    const bool point = text[i] == '.' && inside && is_digit(text[i - 1]) && is_digit(text[i + 1]);
    if (!letter && !hyphen && !point) return false;
  }
  return true;
}

std::string kebab_case(Text text) {
  std::string name;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = lower(text[i]);
    const bool point =
        c == '.' && i > 0 && i + 1 < text.size() && is_digit(text[i - 1]) && is_digit(text[i + 1]);
    if (is_lower(c) || is_digit(c) || point)
      name += c;
    else if (!name.empty() && name.back() != '-')
      name += '-';
  }
  while (!name.empty() && name.back() == '-') name.pop_back();
  return name;
}

Result<std::string> parse_name(Text text) {
  if (is_name(text)) return std::string(text);
  if (text.size() > 80) return Failure{"a name has at most 80 characters"};
  const std::string better = kebab_case(text);
  return Failure{"'" + std::string(text) + "' is not a name: lower-case letters, digits and hyphens" +
                 (better.empty() ? "" : ", as " + better)};
}

}  // namespace sheafc
