// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/meets.h"

#include <algorithm>
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

// "HK4" of "HK4-000200", where the number is written so.
std::string series_of(const std::string& frame) { return squeeze(frame.substr(0, frame.rfind('-') + 1)); }

bool is_frame(const FitRecord& fit, const QuestionReading& reading) {
  if (reading.frame.empty() || (fit.frame_from.empty() && fit.frame_to.empty())) return true;
  const std::string asked = series_of(reading.frame);
  const std::string stated = series_of(fit.frame_from.empty() ? fit.frame_to : fit.frame_from);
  if (!asked.empty() && !stated.empty() && asked != stated) return false;
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

// "M8x30" is not the screw of 40 mm.
bool has_length(const Thread& asked, const std::string& stated) {
  if (!asked.length) return true;
  const auto statement = parse_statement(stated, Dimension::length, Input::sheet);
  if (!statement || !statement->figure().nominal) return true;
  const double mm = base_band(statement->figure()).least * 1000;
  return std::abs(mm - approximate(*asked.length)) < 0.5;
}

}  // namespace

bool states_frame(const FitRecord& fit, const QuestionReading& reading) {
  const bool has_frame = !fit.frame_from.empty() || !fit.frame_to.empty();
  return has_frame && !reading.frame.empty() && is_frame(fit, reading);
}

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
  const auto read = parse_thread(*text, Input::sheet);
  if (!read) return true;
  Thread stated = *read;
  if (const std::string* hand = text_of(entry, "hand")) stated.left_hand |= *hand == "left";
  const std::string* length = text_of(entry, "length");
  const bool is_row = entry.fits.empty();  // of a table: a thread of any length
  return std::ranges::any_of(reading.threads, [&](const Thread& asked) {
    const bool has_it = length ? has_length(asked, *length) : is_row || !asked.length;
    return same_thread(asked, stated) && has_it;
  });
}

}  // namespace sheaf
