// SPDX-License-Identifier: GPL-2.0-or-later
// What a question needs of memory, asked for at once. A program that is started for one question spends much of its
// time on pages that it touches for the first time, one interruption of it each.
#pragma once

namespace sheaf {

// Before anything else is done; where the system cannot do so, nothing is lost.
void prepare_memory();

}  // namespace sheaf
