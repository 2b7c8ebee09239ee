// SPDX-License-Identifier: GPL-2.0-or-later
// A library of a few entries on two machines, made for the tests of search.
#pragma once

#include <string>

#include "query/library/library.h"
#include "tests/content/temporary_folder.h"

namespace sheaf::test {

LibraryContent small_content();

// Written, and opened again. Ends the test program if that fails.
class SmallLibrary {
 public:
  explicit SmallLibrary(const LibraryContent& content = small_content(), const std::string& name = "small");
  Library& library() { return library_.front(); }

 private:
  TemporaryFolder folder_;
  std::vector<Library> library_;
};

}  // namespace sheaf::test
