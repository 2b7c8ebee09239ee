// SPDX-License-Identifier: GPL-2.0-or-later
// The day on which a calibration is judged due: a flag, else SHEAF_TODAY, else the clock.
#pragma once

#include <string>

#include "query/quantity/result.h"

namespace sheaf {

class Flags;

void declare_today(Flags& flags, std::string& today);  // --today DATE

// "2026-11-25". Fails on what is no date of that form.
Result<std::string> today_from(const std::string& flag);

}  // namespace sheaf
