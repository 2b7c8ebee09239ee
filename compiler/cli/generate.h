// SPDX-License-Identifier: GPL-2.0-or-later
#pragma once

#include <string>

namespace CLI {
class App;
}

namespace sheafc {

// The text of `sheafc --generate WHAT`: man, complete-bash, complete-zsh, complete-fish. Empty for anything
// else.
std::string generate(const CLI::App& program, const std::string& what);

}  // namespace sheafc
