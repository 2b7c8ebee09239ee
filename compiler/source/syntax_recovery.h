// SPDX-License-Identifier: GPL-2.0-or-later
// The YAML parser stops at its first fault; a writer wants to hear of all. So the entry that holds the
// fault is blanked out, and the rest of the sheet is read again.
#pragma once

#include <cstddef>
#include <string>

namespace sheafc {

// Overwrites with spaces the block of lines that holds [from, to]: from the nearest line at or above
// `from` that starts a section or an entry (indented by at most two) down to the next one at its depth or
// above. Line breaks stay, so that every other place keeps its line and column. False if there was
// nothing left to blank.
bool blank_block_around(std::string& bytes, std::size_t from, std::size_t to);

}  // namespace sheafc
