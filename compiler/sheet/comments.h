// SPDX-License-Identifier: GPL-2.0-or-later
// The remarks of a sheet, which the tree does not hold, and where its blank lines are.
#pragma once

#include <string_view>
#include <vector>

#include "compiler/source/source_file.h"

namespace sheafc {

struct Comment {
  int line = 0;
  int column = 0;         // in bytes, from 1
  std::string_view text;  // from the # on, without spaces at its end
  bool alone = false;     // nothing else stands on its line
};

// In the order of the file, which has its tree.
std::vector<Comment> comments_of(const SourceFile& file);

}  // namespace sheafc
