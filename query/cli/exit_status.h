// SPDX-License-Identifier: GPL-2.0-or-later
// How sheaf ends. Scripts rely on it; it is documented in the help and the manual page.
#pragma once

namespace sheaf {

enum class ExitStatus : int {
  done = 0,     // found, or done
  nothing = 1,  // nothing found: the right machine of the wrong year too
  trouble = 2,  // wrong usage, unreadable library, input or output that failed; bad lines of a batch
  interrupted = 130,
};

}  // namespace sheaf
