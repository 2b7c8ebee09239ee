// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets of a library that a run builds against: their records become typed sheets again, so that bases,
// shared entries, tables and cautions resolve there as they do at home.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "compiler/sheet/sheet.h"
#include "query/quantity/result.h"

namespace sheafc {

// Those sheets of the libraries that `sheets` may need: what they name, every table, and the cautions. A name
// that two libraries have is the first one's. Places name the library: "orrindale:demo/sorvane-41-rod.yaml".
sheaf::Result<std::vector<std::shared_ptr<Sheet>>> borrow_sheets(
    std::span<const std::string> libraries, std::span<const std::shared_ptr<Sheet>> sheets);

}  // namespace sheafc
