// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/measure.h"

#include <algorithm>
#include <cmath>

namespace sheafc {
namespace {

double ratio(const sheaf::Rational& rational) {
  return static_cast<double>(rational.numerator) / static_cast<double>(rational.denominator);
}

// Base units of `from` to the unit named: only units without offset are asked for here.
std::optional<double> per_base(const sheaf::Unit& from, std::string_view unit) {
  if (unit == sheaf::base_of(from.dimension)) return 1;
  const auto wanted = sheaf::unit_from(unit, from.dimension);
  if (!wanted) return {};
  return 1 / ratio((*wanted)->factor);
}

double middle_of(const sheaf::Figure& figure, const sheaf::BaseBand& band) {
  if (figure.nominal)
    return sheaf::approximate(*figure.nominal) * ratio(figure.unit->factor) + ratio(figure.unit->offset);
  if (std::isinf(band.least)) return band.most;
  if (std::isinf(band.most)) return band.least;
  return (band.least + band.most) / 2;
}

bool tightens(const sheaf::Stage& stage) { return stage.act == sheaf::Act::tighten && !stage.hand_tight; }

}  // namespace

std::optional<sheaf::Band> band_in(const sheaf::Figure& figure, std::string_view unit) {
  if (!figure.unit) return {};
  const auto factor = per_base(*figure.unit, unit);
  if (!factor) return {};
  const sheaf::BaseBand band = sheaf::base_band(figure);
  return sheaf::Band{band.least * *factor, band.most * *factor};
}

std::optional<double> middle_in(const sheaf::Figure& figure, std::string_view unit) {
  if (!figure.unit) return {};
  const auto factor = per_base(*figure.unit, unit);
  if (!factor) return {};
  const double middle = middle_of(figure, sheaf::base_band(figure)) * *factor;
  return std::isfinite(middle) ? std::optional(middle) : std::nullopt;
}

std::optional<double> middle_in(const sheaf::Statement* statement, std::string_view unit) {
  if (!statement || statement->stages.empty()) return {};
  return middle_in(statement->figure(), unit);
}

std::vector<double> torques_nm(const sheaf::Statement& torque) {
  std::vector<double> all;
  for (const sheaf::Stage& stage : torque.stages) {
    if (!tightens(stage)) continue;
    if (const auto value = middle_in(stage.figure, "N·m")) all.push_back(*value);
  }
  return all;
}

std::optional<double> greatest_torque_nm(const sheaf::Statement& torque) {
  std::optional<double> greatest;
  for (const sheaf::Stage& stage : torque.stages) {
    const auto value = tightens(stage) ? middle_in(stage.figure, "N·m") : std::nullopt;
    if (value && (!greatest || *value > *greatest)) greatest = value;
  }
  return greatest;
}

double turned_further_degrees(const sheaf::Statement& torque) {
  double degrees = 0;
  for (const sheaf::Stage& stage : torque.stages) {
    if (stage.act == sheaf::Act::tighten || stage.act == sheaf::Act::loosen_fully) degrees = 0;
    if (stage.act == sheaf::Act::turn_further) degrees += middle_in(stage.figure, "°").value_or(0);
  }
  return degrees;
}

std::string about(double value, std::string_view unit, int digits) {
  const double magnitude = std::pow(10, std::floor(std::log10(std::abs(value))) - (digits - 1));
  const double rounded = value == 0 ? 0 : std::round(value / magnitude) * magnitude;
  return sheaf::brief(rounded) + (unit.empty() ? "" : " ") + std::string(unit);
}

}  // namespace sheafc
