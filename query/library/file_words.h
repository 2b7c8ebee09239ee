// SPDX-License-Identifier: GPL-2.0-or-later
// What the operating system says of a file, in words that do not depend on a locale.
#pragma once

#include <sys/types.h>

#include <string>

namespace sheaf {

std::string words_for_errno(int error);   // "no such file or folder"
std::string words_for_kind(mode_t mode);  // "a folder", "a named pipe"

}  // namespace sheaf
