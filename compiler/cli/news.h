// SPDX-License-Identifier: GPL-2.0-or-later
// What one build says that the build before it did not.
#pragma once

#include <map>
#include <string>

#include "compiler/source/diagnostics.h"

namespace sheafc {

class News {
 public:
  // The reports that were not there last time, in their order; the first time, all. One that has only moved
  // to another line is not new.
  Diagnostics of(const Diagnostics& found);

 private:
  std::map<std::string, int> last_;  // how often each was reported
};

}  // namespace sheafc
