// SPDX-License-Identifier: GPL-2.0-or-later
#pragma once

#include <string>

namespace sheaf {

// The text of `sheaf --generate WHAT`: man, complete-bash, complete-zsh, complete-fish. Empty for anything
// else.
std::string generate(const std::string& what);

}  // namespace sheaf
