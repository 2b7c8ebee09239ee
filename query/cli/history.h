// SPDX-License-Identifier: GPL-2.0-or-later
// Where the prompt keeps what was typed: sheaf/history in the user's state folder.
#pragma once

#include <string>

namespace sheaf {

// Makes the folder if need be, for its owner alone. Empty if there is no place for it.
std::string history_file();

}  // namespace sheaf
