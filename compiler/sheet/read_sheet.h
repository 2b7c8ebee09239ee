// SPDX-License-Identifier: GPL-2.0-or-later
// A parsed file becomes a typed sheet.
#pragma once

#include <memory>

#include "compiler/sheet/sheet.h"
#include "compiler/source/diagnostics.h"

namespace sheafc {

// `path` is where the file lies under the folder of sheets; its stem is the name that the sheet must
// state. Null if the file is no sheet at all (no tree, no form); every fault is in the sink.
std::unique_ptr<Sheet> read_sheet(std::shared_ptr<const SourceFile> file, std::string path,
                                  Diagnostics& sink);

}  // namespace sheafc
