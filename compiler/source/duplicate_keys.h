// SPDX-License-Identifier: GPL-2.0-or-later
// YAML parsers keep one of two equal keys in silence, or both. Here the second is a fault.
#pragma once

#include <span>

#include "compiler/source/node.h"

namespace sheafc {

// Of one sheet: reports each key that stands again in its mapping, with a note at the first.
class DuplicateKeys {
 public:
  explicit DuplicateKeys(Diagnostics& sink) : sink_(sink) {}
  void check(std::span<const Pair> pairs);

 private:
  void report(const Pair& first, const Pair& again);

  Diagnostics& sink_;
  int reported_ = 0;
};

}  // namespace sheafc
