// SPDX-License-Identifier: GPL-2.0-or-later
#pragma once

#include <string>

namespace sheafc {

// What `sheafc --version` prints: the program's own on the first line, then what a report of a fault
// needs to name.
std::string versions();

}  // namespace sheafc
