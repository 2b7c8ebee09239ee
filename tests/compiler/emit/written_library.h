// SPDX-License-Identifier: GPL-2.0-or-later
// Libraries for tests: written into a folder of their own, and opened.
#pragma once

#include <string>

#include "compiler/emit/library_writer.h"
#include "query/library/library.h"
#include "tests/content/temporary_folder.h"

namespace sheaf::test {

// Both end the test with the Failure's message if there is one.
sheafc::Receipt write(const LibraryContent& content, const std::string& path,
                      sheafc::EmitOptions options = {});
Library open(const std::string& path);

// Why the file is not opened; empty if it is.
std::string refusal(const std::string& path);

// What a damaged file did, when everything in it was asked for.
struct Answers {
  bool opened = false;
  int refused = 0;  // records that failed, with a message
  int missed = 0;   // records that were not found any more
  int wrong = 0;    // records that came back other than they were written
};
Answers ask_for_everything(const std::string& path, const LibraryContent& content);

// Runs the work in a process of its own, as another user if `user` is not 0. True if it returned true.
template <typename Work>
bool in_another_process(Work work, unsigned user = 0);

}  // namespace sheaf::test

#include <sys/wait.h>
#include <unistd.h>

template <typename Work>
bool sheaf::test::in_another_process(Work work, unsigned user) {
  const pid_t child = fork();
  if (child == 0) {
    if (user != 0 && (setgid(user) != 0 || setuid(user) != 0)) _exit(2);
    _exit(work() ? 0 : 1);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}
