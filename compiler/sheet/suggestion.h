// SPDX-License-Identifier: GPL-2.0-or-later
// The word that was probably meant. A guess is offered only when it is close: a wrong hint is worse
// than none.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sheafc {

// "; did you mean 'torque'?" or nothing.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates);

// "a, b or c"
std::string any_of(std::span<const std::string_view> words);

}  // namespace sheafc
