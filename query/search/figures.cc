// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/figures.h"

namespace sheaf {

std::vector<std::string_view> fields_of_figure(std::string_view figure) {
  if (figure == "volume") return {"volume", "dry-fill", "after-drain", "with-filter"};
  if (figure == "stage" || figure == "angle") return {"torque"};
  if (figure == "grade") return {"grade", "viscosity"};
  if (figure == "viscosity") return {"viscosity", "grade"};
  if (figure == "pattern" || figure == "order") return {"pattern", "order"};
  if (figure == "part-number") return {"part-number", "supersedes", "superseded-by", "other-numbers"};
  if (figure == "change-every") return {"change-every", "check-every"};
  return {figure};
}

}  // namespace sheaf
