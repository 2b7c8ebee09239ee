// SPDX-License-Identifier: GPL-2.0-or-later
// Which libraries are asked: those named by flags, else by SHEAF_LIBRARY (several parted by ":"), else
// every *.sheaf beside the program, else in sheaf/ of the data home, of what was installed with the program,
// or of the data folders. The first place that holds any decides.
#pragma once

#include <string>
#include <vector>

#include "query/library/library.h"

namespace sheaf {

struct OpenLibraries {
  std::vector<Library> all;
  std::string found_by;  // "--library", "SHEAF_LIBRARY", or the folder

  std::vector<Library*> pointers();
};

// A Failure with the places looked at, or with what is wrong with the one that was found.
Result<OpenLibraries> open_libraries(const std::vector<std::string>& named);

}  // namespace sheaf
