// SPDX-License-Identifier: GPL-2.0-or-later
// How sheafc ends. Scripts rely on it; it is documented in the help and the manual page.
#pragma once

namespace sheafc {

enum class ExitStatus : int {
  done = 0,   // compiled; or the check passed, warnings allowed
  fault = 1,  // sheets have errors, and the old library is untouched; format --check: something would change
  trouble = 2,  // wrong usage, or the world failed: unreadable, unwritable, full
  interrupted = 130,
};

}  // namespace sheafc
