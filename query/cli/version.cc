// SPDX-License-Identifier: GPL-2.0-or-later
// A file of its own, so that a new version number rebuilds nothing else.
#include "query/cli/help.h"
#include "query/library/sql.h"
#include "query/library/trailer.h"
#include "query/search/find.h"

namespace sheaf {

std::string versions() {
  return "sheaf " SHEAF_VERSION "\nlibrary format " + std::to_string(library_format) + ", SQLite " +
         sqlite_version() + ", Xapian " + xapian_version() + "\n";
}

}  // namespace sheaf
