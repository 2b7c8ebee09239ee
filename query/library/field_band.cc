// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/field_band.h"

#include <algorithm>

#include "query/library/vocabulary.h"
#include "query/quantity/figure.h"

namespace sheaf {
namespace {

// A column of a table has no declared type: what reads as a figure is one.
bool may_hold_figures(std::string_view kind, const FieldRecord& field, std::optional<Dimension>& dimension) {
  const KindDeclaration* declared_kind = kind_named(kind);
  if (!declared_kind) return true;
  const FieldDeclaration* declared = field_of(*declared_kind, field.key);
  if (!declared || (declared->type != ValueType::figure && declared->type != ValueType::torque)) return false;
  dimension = declared->dimension;
  return true;
}

}  // namespace

FieldFigures figures_of(std::string_view kind, const FieldRecord& field) {
  std::optional<Dimension> dimension;
  if (!may_hold_figures(kind, field, dimension)) return {};
  const auto statement = parse_statement(field.text, dimension, Input::sheet);
  if (!statement) return {};
  FieldFigures figures{{}, statement->conditions};
  auto& bands = figures.bands;
  for (const Stage& stage : statement->stages) {
    if (!stage.figure.unit) continue;  // by hand, or loosened fully
    const BaseBand band = base_band(stage.figure);
    const auto known = std::ranges::find(bands, stage.figure.unit->dimension, &FieldBand::dimension);
    if (known == bands.end()) {
      bands.push_back({stage.figure.unit->dimension, band.least, band.most});
    } else {
      known->least = std::min(known->least, band.least);
      known->most = std::max(known->most, band.most);
    }
  }
  return figures;
}

}  // namespace sheaf
