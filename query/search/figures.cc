// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/figures.h"

#include <algorithm>
#include <array>

namespace sheaf {
namespace {

constexpr std::array<std::string_view, 13> measures = {
    "quantity",    "volume", "level",  "gap",      "clearance", "limit",    "length",
    "free-length", "height", "weight", "pressure", "viscosity", "thickness"};

}  // namespace

bool may_be_its_value(std::string_view figure) {
  return std::ranges::find(measures, figure) != measures.end();
}

std::vector<std::string_view> fields_of_figure(std::string_view figure) {
  if (figure == "volume") return {"volume", "dry-fill", "after-drain", "with-filter"};
  if (figure == "quantity") return {"volume", "dry-fill", "after-drain", "with-filter", "count"};
  if (figure == "with-filter") return {"with-filter", "volume"};
  if (figure == "after-drain") return {"after-drain", "volume"};
  if (figure == "links") return {"size"};
  if (figure == "tool") return {"drive"};  // "front axle, what tool"
  if (figure == "stage" || figure == "angle") return {"torque"};
  if (figure == "size") return {"size", "drive", "thread"};  // of a fastener, its tool's first
  if (figure == "grade") return {"grade", "viscosity"};
  if (figure == "viscosity") return {"viscosity", "grade"};
  if (figure == "pattern" || figure == "order") return {"pattern", "order"};
  if (figure == "part-number")
    return {"part-number", "supersedes", "superseded-by", "other-numbers", "designation"};
  if (figure == "change-every") return {"change-every", "check-every"};
  return {figure};
}

std::optional<Dimension> dimension_of_figure(std::string_view figure) {
  if (figure == "pressure") return Dimension::pressure;
  return std::nullopt;  // "weight" asks of oils how thick they are, too
}

}  // namespace sheaf
