// SPDX-License-Identifier: GPL-2.0-or-later
// How a text is written as a YAML scalar: plain where nobody can misread it, else in double quotes.
#pragma once

#include <string>
#include <string_view>

namespace sheafc {

// Inside [ ] or { } commas and brackets want quotes too.
bool needs_quotes(std::string_view text, bool in_flow);
std::string as_scalar(std::string_view text, bool in_flow);

}  // namespace sheafc
