// SPDX-License-Identifier: GPL-2.0-or-later
// The small types of the sheet language that are neither quantities nor designations: dates, model
// years, frame numbers, counts, intervals, addresses, tightening patterns. Each is read from a text
// and has one canonical spelling. A Failure marks the bytes at fault.
#pragma once

#include <compare>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/figure.h"
#include "query/quantity/result.h"

namespace sheafc {

// "2026-10-02": a day that the calendar has.
struct Date {
  int year = 0, month = 0, day = 0;
  friend auto operator<=>(const Date&, const Date&) = default;
};
sheaf::Result<Date> parse_date(std::string_view text);
std::string to_text(const Date& date);

// "2013", "2011..2015", "2016..", "..2010": both ends belong to it; 0 is an open end.
struct Years {
  int from = 0, to = 0;
  friend bool operator==(const Years&, const Years&) = default;
};
sheaf::Result<Years> parse_years(std::string_view text);
std::string to_text(const Years& years);

// "HK4-000100..HK4-004999", "..HK4-004999", "HK4-005000..": an empty end is open. The ends share the
// letters before their last digits, so that they can be put in order.
struct Frames {
  std::string from, to;
  friend bool operator==(const Frames&, const Frames&) = default;
};
sheaf::Result<Frames> parse_frames(std::string_view text);
std::string to_text(const Frames& frames);

// A frame number taken apart: "HK4-004999" is {"HK4-", 4999}.
struct FrameNumber {
  std::string_view series;
  long long number = 0;
};
FrameNumber take_apart(std::string_view frame);

// "2", "1 per leg".
struct Count {
  int number = 0;
  std::string per;  // empty if it is the whole
};
sheaf::Result<Count> parse_count(std::string_view text);
std::string to_text(const Count& count);

// "10 000 km or 12 months": whichever comes first.
struct Interval {
  std::vector<sheaf::Figure> alternatives;
};
sheaf::Result<Interval> parse_interval(std::string_view text);
std::string to_text(const Interval& interval);

// "sorvane-41-rod/top-plug", or "top-plug" for an entry of the same sheet.
struct Address {
  std::string sheet, entry;
};
sheaf::Result<Address> parse_address(std::string_view text);
std::string to_text(const Address& address);

// "1-4-2-3": the order in which a group is tightened. That it names each once is a rule's matter.
struct Pattern {
  std::vector<int> order;
};
sheaf::Result<Pattern> parse_pattern(std::string_view text);
std::string to_text(const Pattern& pattern);

// A whole number from 0 to 999 999 999, in digits alone.
sheaf::Result<int> parse_integer(std::string_view text);

// Names of sheets, entries, words and cautions: lower-case letters, digits and single hyphens, beginning
// with a letter or digit. Fails with the kebab-case spelling that would do.
sheaf::Result<std::string> parse_name(std::string_view text);
bool is_name(std::string_view text);
// "M8x1.25" -> "m8x1.25", "Fork cap" -> "fork-cap": letters and digits kept, a point between digits kept,
// everything else a hyphen.
std::string kebab_case(std::string_view text);

}  // namespace sheafc
