// SPDX-License-Identifier: GPL-2.0-or-later
// A library made from the one before it, when few of its sheets changed: rows and parts of the index that no
// change reaches are taken over. The bytes are those that write_library makes of all sheets.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/emit/library_writer.h"

namespace sheafc {

// What the receipt of the library that stands there said.
struct EarlierLibrary {
  std::uint64_t rows_hash = 0;
  std::vector<HashedSheet> sheets;
};

// Replaces the library by one in which `changed` stand for the sheets of their names; its words stay. None,
// and the library is as it was, if that cannot be done: it is not the earlier one, or a sheet now has more or
// fewer entries, or other machines. It must not be written to meanwhile.
sheaf::Result<std::optional<Receipt>> revise_library(const std::string& path, const EarlierLibrary& earlier,
                                                     std::vector<sheaf::SheetRecord> changed,
                                                     EmitOptions options);

}  // namespace sheafc
