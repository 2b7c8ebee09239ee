// SPDX-License-Identifier: GPL-2.0-or-later
// What was read at the start of a longer text, and how many of its bytes that took.
#pragma once

namespace sheaf {

template <typename T>
struct Found {
  T value;
  int length = 0;
};

}  // namespace sheaf
