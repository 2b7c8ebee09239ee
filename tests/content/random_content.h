// SPDX-License-Identifier: GPL-2.0-or-later
// Records filled at random, with every odd text that a sheet may hold: for round trips and for damage.
#pragma once

#include "query/library/record.h"

namespace sheaf::test {

// The same content for the same seed, everywhere. Sheets are in ascending order of their names.
LibraryContent random_content(unsigned seed, int sheets);

}  // namespace sheaf::test
