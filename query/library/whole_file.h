// SPDX-License-Identifier: GPL-2.0-or-later
// Small files, whole or not at all: both programs read and write theirs here. Libraries are written
// otherwise.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

// Writes beside the file, syncs, renames into place, and syncs the folder; with the mode of the file that was
// there. A link is followed.
std::optional<Failure> replace_file(const std::string& path, std::string_view text);

// As replace_file, but refuses where something stands already.
std::optional<Failure> create_file(const std::string& path, std::string_view text);

// The whole of a plain file, up to so many bytes; none if there is no such file.
Result<std::optional<std::string>> read_file(const std::string& path, std::size_t most);

}  // namespace sheaf
