// SPDX-License-Identifier: GPL-2.0-or-later
// The names of files that reports point at. A report may outlive the sheet that it is about: a large folder
// is read and let go of in parts.
#pragma once

#include <string_view>

namespace sheafc {

// The same name, kept for as long as the program runs. For several threads at once.
std::string_view kept_file_name(std::string_view name);

}  // namespace sheafc
