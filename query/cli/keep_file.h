// SPDX-License-Identifier: GPL-2.0-or-later
// A small file that is whole or as it was, whatever happens while it is written.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

// Written beside the file, synced, renamed into place, and the folder synced; with the mode of the file that
// was there. A link is followed.
std::optional<Failure> keep_file(const std::string& path, std::string_view text);

// The whole file, up to so many bytes; none if there is no such file.
Result<std::optional<std::string>> read_file(const std::string& path, std::size_t most);

}  // namespace sheaf
