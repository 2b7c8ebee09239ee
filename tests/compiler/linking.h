// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets given as text, read and linked, for tests that need no files.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/link/linked_sheets.h"
#include "compiler/sheet/workspace.h"

namespace sheafc {

// Parts a text at its lines "# file: NAME.yaml"; what stands before the first is example.yaml. A sheet
// without a title is a piece: what every sheet needs is added at its end, so that its lines keep their
// numbers.
std::vector<SheetText> sheets_in(std::string_view text);

// The entry with that address (its first variant), or one that had it before; null if there is none.
const LinkedEntry* entry_at(const LinkedSheets& sheets, std::string_view address);
std::vector<const LinkedEntry*> variants_at(const LinkedSheets& sheets, std::string_view address);

struct Linking {
  explicit Linking(std::string_view text);

  Diagnostics sink;
  Workspace workspace;
  LinkedSheets linked;

  // "4:13 unreadable-figure, 9:3 unknown-key"; "none". A fault in another file than the first has its name
  // before.
  std::string faults() const;
};

}  // namespace sheafc
