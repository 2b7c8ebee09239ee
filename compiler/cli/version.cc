// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/version.h"

namespace sheafc {

std::string versions() { return "sheafc " SHEAF_VERSION; }

}  // namespace sheafc
