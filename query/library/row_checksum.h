// SPDX-License-Identifier: GPL-2.0-or-later
// The checksum that each row with something to say carries, in its last column: over all its other columns,
// so that a row that was changed or taken for another shows.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string_view>

namespace sheaf {

// XXH3 of the numbers, each in eight bytes, little end first, and then of the texts, each after its length,
// written as such a number. As SQLite keeps integers: signed.
std::int64_t row_checksum(std::initializer_list<std::int64_t> numbers,
                          std::initializer_list<std::string_view> texts);

}  // namespace sheaf
