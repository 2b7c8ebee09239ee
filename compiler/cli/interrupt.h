// SPDX-License-Identifier: GPL-2.0-or-later
// Ctrl-C and a polite kill while a library is being written: the writer is asked to stop and clean up,
// then the program ends as the signal would have ended it.
#pragma once

#include <atomic>

namespace sheafc {

// From now on SIGINT, SIGTERM and SIGHUP only set the flag.
const std::atomic<bool>& watch_for_interrupt();

// If a signal came: ends the program by it, so that a shell sees why. Else does nothing.
void end_if_interrupted();

}  // namespace sheafc
