// SPDX-License-Identifier: GPL-2.0-or-later
// Which value of a sheet a line is about, told from its indentation alone: "fasteners/top-plug/torque".
// A report that names it stays the same report when lines above it come and go.
#pragma once

#include <string>
#include <string_view>

#include "compiler/source/report.h"

namespace sheafc {

std::string key_path(std::string_view file, int line, const LineSource& line_of);

}  // namespace sheafc
