// SPDX-License-Identifier: GPL-2.0-or-later
// A file of its own, so that a new version number rebuilds nothing else.
#include "compiler/cli/version.h"

#include "compiler/emit/shard.h"
#include "query/library/sql.h"
#include "query/library/trailer.h"

namespace sheafc {

std::string versions() {
  return "sheafc " SHEAF_VERSION "\nlibrary format " + std::to_string(sheaf::library_format) + ", SQLite " +
         sheaf::sqlite_version() + ", Xapian " + xapian_version() +
         ", libyaml " LIBYAML_VERSION ", yaml-cpp " YAML_CPP_VERSION;
}

}  // namespace sheafc
