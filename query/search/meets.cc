// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/meets.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "query/library/fold.h"

namespace sheaf {
namespace {

bool is_machine(const FitRecord& fit, const QuestionReading& reading) {
  if (reading.machines.empty()) return true;
  const auto is_same = [&](const Machine& machine) {
    return machine.make == fit.make && machine.model == fit.model;
  };
  return std::ranges::any_of(reading.machines, is_same);
}

bool is_year(const FitRecord& fit, const QuestionReading& reading) {
  if (reading.year == 0) return true;
  return (fit.year_to == 0 || reading.year <= fit.year_to) &&
         (fit.year_from == 0 || reading.year_to >= fit.year_from);
}

bool is_market(const FitRecord& fit, const QuestionReading& reading) {
  return reading.market.empty() || fit.market.empty() || fold(fit.market) == fold(reading.market);
}

// Frame numbers are compared only where letters and length are the same: others are another series.
bool is_within(const std::string& frame, const std::string& from, const std::string& to) {
  const auto is_series = [&](const std::string& end) { return end.empty() || end.size() == frame.size(); };
  const auto letters = [](const std::string& text) {
    return text.substr(0, text.find_last_not_of("0123456789") + 1);
  };
  const std::string& end = from.empty() ? to : from;
  if (!is_series(from) || !is_series(to) || letters(end) != letters(frame)) return false;
  return (from.empty() || from <= frame) && (to.empty() || frame <= to);
}

bool is_frame(const FitRecord& fit, const QuestionReading& reading) {
  if (reading.frame.empty() || (fit.frame_from.empty() && fit.frame_to.empty())) return true;
  return is_within(squeeze(reading.frame), squeeze(fit.frame_from), squeeze(fit.frame_to));
}

const std::string* text_of(const EntryRecord& entry, std::string_view key) {
  const auto found = std::ranges::find(entry.fields, key, &FieldRecord::key);
  return found == entry.fields.end() ? nullptr : &found->text;
}

bool same_thread(const Thread& asked, const Thread& stated) {
  if (asked.system != stated.system || asked.diameter != stated.diameter) return false;
  if (!asked.series.empty() && !stated.series.empty() && asked.series != stated.series) return false;
  if (asked.left_hand && !stated.left_hand) return false;
  const auto pitch_asked = pitch_mm(asked), pitch_stated = pitch_mm(stated);
  return !pitch_asked || !pitch_stated || std::abs(*pitch_asked - *pitch_stated) < 1e-6;
}

// A difference in mm with its sign and at most two decimals: "+2 mm", "−0.5 mm".
std::string signed_mm(double difference) {
  std::array<char, 32> buffer{};
  const double rounded = std::round(std::abs(difference) * 100) / 100;
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded);
  return (difference < 0 ? "−" : "+") + std::string(buffer.data(), end.ptr) + " mm";
}

constexpr double same_mm = 0.0005;
constexpr std::array<std::string_view, 4> dimension_names = {"inside", "outside", "height", "fourth"};

std::string difference_of(const Size& stated, const Size& asked) {
  std::string text;
  for (int i = 0; i < std::min(stated.count, asked.count); ++i) {
    const double difference = dimension_mm(stated, i) - dimension_mm(asked, i);
    if (std::abs(difference) < same_mm) continue;
    if (!text.empty()) text += ", ";
    text += std::string(dimension_names[static_cast<std::size_t>(i)]) + " " + signed_mm(difference);
  }
  return text;
}

std::string nearest_dimension(const Size& stated, const LengthAsked& asked) {
  int nearest = 0;
  for (int i = 1; i < stated.count; ++i)
    if (std::abs(dimension_mm(stated, i) - asked.mm) < std::abs(dimension_mm(stated, nearest) - asked.mm))
      nearest = i;
  const double difference = dimension_mm(stated, nearest) - asked.mm;
  if (std::abs(difference) < same_mm) return {};
  return std::string(dimension_names[static_cast<std::size_t>(nearest)]) + " " + signed_mm(difference);
}

}  // namespace

bool fits_machine(const EntryRecord& entry, const QuestionReading& reading, bool with_year) {
  if (entry.fits.empty()) return reading.has_designation() || (reading.machines.empty() && reading.year == 0);
  return std::ranges::any_of(entry.fits, [&](const FitRecord& fit) {
    return is_machine(fit, reading) && (!with_year || is_year(fit, reading)) && is_market(fit, reading) &&
           is_frame(fit, reading);
  });
}

bool has_threads_asked(const EntryRecord& entry, const QuestionReading& reading) {
  if (reading.threads.empty()) return true;
  const std::string* text = text_of(entry, "thread");
  if (!text) return true;
  const auto stated = parse_thread(*text, Input::sheet);
  if (!stated) return true;
  return std::ranges::any_of(reading.threads,
                             [&](const Thread& asked) { return same_thread(asked, *stated); });
}

std::string size_difference(const EntryRecord& entry, const QuestionReading& reading) {
  const std::string* text = text_of(entry, "size");
  if (!text) return {};
  const auto stated = parse_size(*text, Input::sheet);
  if (!stated) return {};
  if (!reading.sizes.empty()) return difference_of(*stated, reading.sizes.front());
  if (!reading.lengths.empty()) return nearest_dimension(*stated, reading.lengths.front());
  return {};
}

}  // namespace sheaf
