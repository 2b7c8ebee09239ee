// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/shelf.h"

#include <algorithm>

#include "compiler/check/measure.h"

namespace sheafc {
namespace {

std::optional<double> number(const LinkedEntry& row, std::string_view column) {
  const sheaf::Number* cell = row.number(column);
  return cell ? std::optional(sheaf::approximate(*cell)) : std::nullopt;
}

struct DriveColumn {
  std::string_view name;
  sheaf::Drive::Shape shape;
};
constexpr DriveColumn drive_columns[] = {{"hexagon", sheaf::Drive::Shape::hexagon},
                                         {"hexagon-former", sheaf::Drive::Shape::hexagon},
                                         {"hexagon-small", sheaf::Drive::Shape::hexagon},
                                         {"hexagon-flange", sheaf::Drive::Shape::hexagon},
                                         {"socket-key", sheaf::Drive::Shape::hex_socket}};

}  // namespace

Shelf::Shelf(const LinkedSheets& sheets) {
  for (const LinkedEntry* row : sheets.rows("thread-size")) take_thread(*row);
  for (const LinkedEntry* row : sheets.rows("property-class")) take_class(*row);
  for (const LinkedEntry* row : sheets.rows("nut-factor")) take_nut_factor(*row);
  for (const LinkedEntry* row : sheets.rows("bearing-size")) take_bearing(*row);
  for (const LinkedEntry* row : sheets.rows("o-ring-size")) o_rings_.emplace(row->text("code"), row);
  std::ranges::stable_sort(drives_, {}, &sheaf::DriveRow::diameter_mm);
}

void Shelf::take_thread(const LinkedEntry& row) {
  const sheaf::Thread* thread = row.thread("thread");
  const auto diameter = thread ? sheaf::diameter_mm(*thread) : std::nullopt;
  if (!diameter) return;
  threads_.push_back({*thread, std::string(row.text("series"))});
  thread_keys_.insert(sheaf::thread_key(*thread));
  if (const auto geometry = sheaf::geometry_of(*thread)) geometries_.emplace(row.text("thread"), *geometry);
  for (const DriveColumn& column : drive_columns) {
    const auto across = middle_in(row.figure(column.name), "mm");
    if (across) drives_.push_back({*diameter, column.shape, *across, std::string(column.name)});
  }
}

void Shelf::take_class(const LinkedEntry& row) {
  sheaf::PropertyClass taken;
  taken.name = row.text("class");
  if (const auto from = middle_in(row.figure("from"), "mm")) taken.over_mm = *from;
  if (const auto to = middle_in(row.figure("to"), "mm")) taken.up_to_mm = *to;
  taken.proof = middle_in(row.figure("proof-stress"), "MPa");
  taken.yield = middle_in(row.figure("yield"), "MPa").value_or(0);
  taken.tensile = middle_in(row.figure("tensile"), "MPa").value_or(0);
  classes_.push_back(std::move(taken));
}

void Shelf::take_nut_factor(const LinkedEntry& row) {
  for (const std::string_view column : {"low", "nominal", "high"}) {
    const auto factor = number(row, column);
    if (!factor) continue;
    if (!nut_factor_) nut_factor_ = sheaf::Band{*factor, *factor};
    nut_factor_ = sheaf::Band{std::min(nut_factor_->least, *factor), std::max(nut_factor_->most, *factor)};
  }
}

void Shelf::take_bearing(const LinkedEntry& row) {
  const sheaf::Bearing* designation = row.bearing("designation");
  const auto bore = middle_in(row.figure("bore"), "mm");
  const auto outside = middle_in(row.figure("outside"), "mm");
  const auto assembled = middle_in(row.figure("assembled"), "mm");
  const auto width = assembled ? assembled : middle_in(row.figure("width"), "mm");
  if (designation && bore && outside && width) bearings_[designation->basic] = {*bore, *outside, *width};
}

std::span<const sheaf::DriveRow> Shelf::drives_for(double diameter_mm) const {
  constexpr double about_mm = 0.1;  // more than inch threads are rounded by
  const auto first =
      std::ranges::lower_bound(drives_, diameter_mm - about_mm, {}, &sheaf::DriveRow::diameter_mm);
  const auto last =
      std::ranges::upper_bound(drives_, diameter_mm + about_mm, {}, &sheaf::DriveRow::diameter_mm);
  return {first, last};
}

const BearingRow* Shelf::bearing(std::string_view basic_designation) const {
  const auto found = bearings_.find(basic_designation);
  return found == bearings_.end() ? nullptr : &found->second;
}

const LinkedEntry* Shelf::o_ring(std::string_view code) const {
  const auto found = o_rings_.find(code);
  return found == o_rings_.end() ? nullptr : found->second;
}

bool Shelf::lists_thread_of(const LinkedEntry& fastener) const {
  if (geometries_.contains(fastener.text("thread"))) return true;
  const sheaf::Thread* thread = fastener.thread("thread");
  return thread && thread_keys_.contains(sheaf::thread_key(*thread));
}

std::optional<sheaf::ThreadGeometry> Shelf::geometry_of(const LinkedEntry& fastener) const {
  const auto listed = geometries_.find(fastener.text("thread"));
  if (listed != geometries_.end()) return listed->second;
  const sheaf::Thread* thread = fastener.thread("thread");
  if (!thread) return {};
  const auto whole =
      sheaf::pitch_mm(*thread) ? sheaf::Result<sheaf::Thread>(*thread) : sheaf::completed(*thread, threads_);
  const auto geometry =
      whole ? sheaf::geometry_of(*whole) : sheaf::Result<sheaf::ThreadGeometry>(whole.failure());
  return geometry ? std::optional(*geometry) : std::nullopt;
}

}  // namespace sheafc
