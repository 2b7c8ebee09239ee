// SPDX-License-Identifier: GPL-2.0-or-later
// The first keys of a sheet, without reading the rest of it.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace sheafc {

// Asks `is_meant` of each key of the sheet's own mapping, and whether a mapping stands under it, until it is
// the one. That key; empty if there is none, or the sheet is no YAML as far as it was read.
std::string first_key(std::string_view bytes,
                      const std::function<bool(std::string_view key, bool is_mapping)>& is_meant);

}  // namespace sheafc
