// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/convert.h"
#include "query/quantity/saybolt.h"

namespace sheaf {
namespace {

Result<Converted> convert_figure(const Statement& statement, const Figure& figure, const Unit& unit) {
  if (!is_saybolt_pair(*figure.unit, unit)) return convert(figure, unit);
  if (!statement.at) {
    return Failure{"Saybolt seconds depend on the temperature: say it, as in \"at 40 °C\""};
  }
  return convert_saybolt(figure, unit, *statement.at);
}

// A stage that turns or loosens by an angle stays as it is beside torques.
bool keeps_its_unit(const Statement& statement, const Stage& stage, const Unit& unit) {
  if (stage.figure.unit == nullptr) return true;
  const bool staged = statement.stages.size() > 1;
  return staged && stage.figure.unit->dimension == Dimension::angle && unit.dimension == Dimension::torque;
}

}  // namespace

Result<ConvertedStatement> convert(const Statement& statement, const Unit& unit) {
  ConvertedStatement result{statement, true};
  result.statement.printed.reset();
  for (Stage& stage : result.statement.stages) {
    if (keeps_its_unit(statement, stage, unit)) continue;
    auto converted = convert_figure(statement, stage.figure, unit);
    if (!converted) return converted.failure();
    stage.figure = converted->figure;
    result.exact = result.exact && converted->exact;
  }
  return result;
}

}  // namespace sheaf
