// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/request.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "query/quantity/saybolt.h"
#include "query/quantity/understand.h"

namespace sheaf {
namespace {

bool convertible(const Unit& from, const Unit& to) {
  return from.dimension == to.dimension || is_saybolt_pair(from, to);
}

const Unit& unit_of(const Statement& statement) {
  for (const Stage& stage : statement.stages) {
    if (stage.figure.unit != nullptr) return *stage.figure.unit;
  }
  return all_units().front();  // hand tight: a torque without a figure
}

// The statement with its units taken for another dimension: "1 mi to ft" is a length, not a distance.
Statement recast(Statement statement, Dimension dimension) {
  for (Stage& stage : statement.stages) {
    if (stage.figure.unit == nullptr) continue;
    for (const Unit& other : units_of(dimension)) {
      if (other.symbol == stage.figure.unit->symbol) stage.figure.unit = &other;
    }
  }
  return statement;
}

std::optional<DerivedFigure> derive(const Statement& source, const Unit& unit,
                                    const std::optional<Number>& step) {
  auto converted = convert(source, unit);
  if (!converted) return std::nullopt;
  DerivedFigure derived{std::move(converted->statement), converted->exact, {}, {}};
  if (is_saybolt_pair(unit_of(source), unit)) derived.basis = "by ASTM D2161";
  if (step && source.stages.size() == 1 && unit_of(source).dimension == unit.dimension) {
    if (auto setting = set_on_scale(source.figure(), unit, *step)) derived.setting = *setting;
  }
  return derived;
}

// Without a temperature a Saybolt second is told for the two temperatures at which oils are measured.
void derive_without_temperature(const Statement& source, const Unit& unit,
                                std::vector<DerivedFigure>& derived) {
  static constexpr std::array<std::int64_t, 2> usual{100, 210};
  for (const std::int64_t fahrenheit : usual) {
    Statement at = source;
    at.at = Quantity{{fahrenheit, 0, 1}, *unit_from("°F", Dimension::temperature)};
    if (auto figure = derive(at, unit, std::nullopt)) {
      figure->basis += " at " + to_text(*at.at) + "; no temperature was given";
      derived.push_back(std::move(*figure));
    }
  }
}

// Figures that no one could set or read: a bare question leaves them out if it has better ones.
bool unhandy(const DerivedFigure& derived) {
  const Figure& figure = derived.statement.figure();
  const std::optional<Number>& number = figure.nominal ? figure.nominal
                                        : figure.most  ? figure.most
                                                       : figure.least;
  if (!number) return false;
  const double size = std::abs(approximate(*number));
  return size >= 1e5 || (size > 0 && size < 0.01);
}

void leave_out_unhandy(std::vector<DerivedFigure>& derived) {
  if (std::all_of(derived.begin(), derived.end(), unhandy)) return;
  std::erase_if(derived, unhandy);
}

void derive_all(Reading& reading, const Units& units, const std::optional<Number>& step) {
  for (const Unit* unit : units) {
    const bool saybolt = is_saybolt_pair(unit_of(reading.source), *unit);
    if (saybolt && !reading.source.at) {
      derive_without_temperature(reading.source, *unit, reading.derived);
    } else if (auto derived = derive(reading.source, *unit, step)) {
      reading.derived.push_back(std::move(*derived));
    }
  }
}

Units useful_for(const Statement& statement) {
  Units units = useful_units(unit_of(statement));
  if (unit_of(statement).dimension == Dimension::kinematic_viscosity && statement.at) {
    units.push_back(&units_of(Dimension::saybolt_viscosity).front());
  }
  if (unit_of(statement).dimension == Dimension::saybolt_viscosity) {
    units.push_back(&units_of(Dimension::kinematic_viscosity).front());
  }
  return units;
}

std::string converts_to(const Unit& unit) {
  std::string list;
  for (const Unit* other : useful_units(unit))
    list += (list.empty() ? "" : ", ") + std::string(other->symbol);
  return list.empty() ? "" : "; " + std::string(unit.symbol) + " converts to " + list;
}

Failure different_dimensions(const Statement& source, const Unit& to) {
  const Unit& from = unit_of(source);
  return {std::string(from.symbol) + " is " + with_article(from.dimension) + " and " +
          std::string(to.symbol) + " is " + with_article(to.dimension) +
          ", and one does not convert to the other" + converts_to(from)};
}

Units convertible_among(const Statement& source, const Units& units) {
  Units found;
  std::copy_if(units.begin(), units.end(), std::back_inserter(found),
               [&](const Unit* unit) { return convertible(unit_of(source), *unit); });
  return found;
}

// The source with the units that it converts to: as it stands, and only if there are none, recast.
void add_readings(const Statement& source, const Units& units, const std::optional<Number>& step,
                  std::vector<Reading>& readings) {
  Reading reading{source, {}};
  Units possible = convertible_among(source, units);
  for (auto unit = units.begin(); possible.empty() && unit != units.end(); ++unit) {
    reading.source = recast(source, (*unit)->dimension);
    possible = convertible_among(reading.source, units);
  }
  derive_all(reading, possible, step);
  if (!reading.derived.empty()) readings.push_back(std::move(reading));
}

Result<std::vector<Reading>> pair_up(const std::vector<Statement>& sources, const Units& units,
                                     const std::optional<Number>& step) {
  std::vector<Reading> readings;
  for (const Statement& source : sources) add_readings(source, units, step, readings);
  if (!readings.empty()) return readings;
  for (const Statement& source : sources) {
    const Units possible = convertible_among(source, units);
    if (possible.empty()) continue;
    Statement at = source;
    if (!at.at) at.at = Quantity{{100, 0, 1}, *unit_from("°F", Dimension::temperature)};
    return convert(at, *possible.front()).failure();
  }
  return different_dimensions(sources.front(), *units.front());
}

Result<std::vector<Reading>> useful_readings(const std::vector<Statement>& sources,
                                             const std::optional<Number>& step) {
  std::vector<Reading> readings;
  for (const Statement& source : sources) {
    Reading reading{source, {}};
    derive_all(reading, useful_for(source), step);
    leave_out_unhandy(reading.derived);
    if (!reading.derived.empty()) readings.push_back(std::move(reading));
  }
  if (readings.empty()) {
    const Unit& unit = unit_of(sources.front());
    return Failure{std::string(unit.symbol) + " has no other unit in the workshop; name the one you want"};
  }
  return readings;
}

bool has_figure(const Statement& statement) {
  return std::any_of(statement.stages.begin(), statement.stages.end(),
                     [](const Stage& stage) { return stage.figure.unit != nullptr; });
}

}  // namespace

Result<std::vector<Reading>> answer_request(const ConversionRequest& request) {
  auto understood = understand(request.text, request.dimension);
  if (!understood) return understood.failure();
  if (!has_figure(understood->sources.front())) return Failure{"hand tight has no figure to convert"};
  if (understood->units.empty()) return useful_readings(understood->sources, request.step);
  return pair_up(understood->sources, understood->units, request.step);
}

Result<ConversionTable> answer_table(std::string_view text, const Number& every) {
  auto readings = answer_request({text, {}, {}});
  if (!readings) return readings.failure();
  const Reading& reading = readings->front();
  if (readings->size() > 1 || reading.derived.size() != 1 || reading.source.stages.size() != 1) {
    return Failure{"a table is made of one range and one unit, as in \"10..60 N·m lbf·ft\""};
  }
  return tabulate(reading.source.figure(), unit_of(reading.derived.front().statement), every);
}

}  // namespace sheaf
