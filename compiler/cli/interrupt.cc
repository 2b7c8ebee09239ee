// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/interrupt.h"

#include <csignal>

namespace sheafc {
namespace {

std::atomic<bool> interrupted{false};
std::atomic<int> by{0};
static_assert(std::atomic<bool>::is_always_lock_free &&
              std::atomic<int>::is_always_lock_free);  // used in a handler

void note(int signal) {
  by = signal;
  interrupted = true;
}

}  // namespace

const std::atomic<bool>& watch_for_interrupt() {
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) std::signal(signal, note);
  return interrupted;
}

void end_if_interrupted() {
  const int signal = by;
  if (signal == 0) return;
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

}  // namespace sheafc
