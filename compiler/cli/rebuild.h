// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets compiled again after few of them changed, from what the last build knew of the others. What this
// finds and records is what a compilation of all sheets would; where that is not sure, there is no answer.
#pragma once

#include <optional>
#include <vector>

#include "compiler/cli/kept_build.h"
#include "compiler/cli/stamp.h"
#include "query/library/record.h"

namespace sheafc {

struct Rebuilt {
  Diagnostics found;                        // sorted; if errors are among them, the library stays as it is
  std::vector<sheaf::SheetRecord> changed;  // what the library says otherwise than before
  Workspace workspace;                      // what was read, which all this points into
};

// Reads the changed sheets, those based on them or with allowances, and what these speak of or are compared
// with. Brings `build` and the inputs of `stamp` up to date, but for what they say of the library; with no
// answer they are of no more use, nor are they with errors. No answer: a sheet cannot be read without errors,
// is common to all, has other entries than before, was written to meanwhile, or is compared with others over
// and over.
std::optional<Rebuilt> compile_again(const SecondLook& look, Stamp& stamp, KeptBuild& build);

}  // namespace sheafc
