// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/file_limit.h"

#include <ctime>

namespace sheafc {
namespace {

sigset_t only_file_limit() {
  sigset_t signals;
  sigemptyset(&signals);
  sigaddset(&signals, SIGXFSZ);
  return signals;
}

}  // namespace

FileLimitGuard::FileLimitGuard() {
  const sigset_t signals = only_file_limit();
  pthread_sigmask(SIG_BLOCK, &signals, &before_);
}

FileLimitGuard::~FileLimitGuard() {
  if (sigismember(&before_, SIGXFSZ) == 0) {  // what was held back must not strike when it is let through
    const sigset_t signals = only_file_limit();
    const timespec at_once{};
    while (sigtimedwait(&signals, nullptr, &at_once) > 0) continue;
  }
  pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

}  // namespace sheafc
