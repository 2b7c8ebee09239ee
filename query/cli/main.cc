// SPDX-License-Identifier: GPL-2.0-or-later
// The program sheaf: which command, and how it ends. Each command stands in its own file.
#include <unistd.h>

#include <csignal>
#include <cstdlib>

#include "query/cli/arguments.h"

int main(int count, char** arguments) {
  std::signal(SIGPIPE, SIG_IGN);  // a reader that has gone away is noticed when writing
  const sheaf::Words words(arguments + (count > 0 ? 1 : 0), arguments + count);
  const auto status = sheaf::finish_output(sheaf::run_arguments(words));
  ::_exit(static_cast<int>(status));  // nothing is left to tidy that the system does not
}
