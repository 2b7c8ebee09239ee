// SPDX-License-Identifier: GPL-2.0-or-later
// A small file, whole or not at all.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheafc {

// Writes beside the file, syncs, and renames into place, with the mode of the file that was there. A link
// is followed.
std::optional<sheaf::Failure> replace_file(const std::string& path, std::string_view text);

// As replace_file, but refuses where something stands already.
std::optional<sheaf::Failure> create_file(const std::string& path, std::string_view text);

}  // namespace sheafc
