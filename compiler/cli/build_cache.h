// SPDX-License-Identifier: GPL-2.0-or-later
// Where sheafc keeps what may shorten the next build of the same library: a folder for each library, in
// sheaf/ of the cache home. Removing it, or any part of it, costs time alone.
#pragma once

#include <string>

namespace sheafc {

// The folder for the library of that path, made if need be, for its owner alone. Empty where there is no
// cache home, or it cannot be written to. Folders of libraries that are no more are removed.
std::string cache_folder_for(const std::string& library);

// Names this very program: another build of it takes nothing from the cache that this one filled.
const std::string& program_identity();

}  // namespace sheafc
