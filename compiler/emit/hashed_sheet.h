// SPDX-License-Identifier: GPL-2.0-or-later
// A sheet's content as a number, by which the next build knows it again without its records.
#pragma once

#include <cstdint>
#include <string>

namespace sheafc {

struct HashedSheet {
  std::string name;
  std::uint64_t entries = 0;  // how many
  std::uint64_t hash = 0;     // hash_of its bodies: all that the library says of it but its entries' numbers
};

}  // namespace sheafc
