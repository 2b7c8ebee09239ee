// SPDX-License-Identifier: GPL-2.0-or-later
// The files of this folder that a browser gets, built into the program.
#pragma once

#include <span>
#include <string_view>

namespace sheaf {

struct Asset {
  std::string_view path;  // "/page.css"
  std::string_view type;
  std::string_view content;
};

std::span<const Asset> all_assets();

}  // namespace sheaf
