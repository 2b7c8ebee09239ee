// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/bench/measured.h"

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>

namespace sheaf::bench {
namespace {

double processor_seconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

}  // namespace

double seconds_of(const std::function<void()>& work) {
  const auto begun = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
}

double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

Measured measured(const std::function<void()>& work) {
  const double before = processor_seconds();
  const double seconds = seconds_of(work);
  return {seconds, processor_seconds() - before, 0};
}

Measured in_a_process(const std::function<Measured()>& measure) {
  int ends[2];
  if (pipe(ends) != 0) std::exit(1);
  std::fflush(stdout);
  if (fork() == 0) {
    Measured result = measure();
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    result.memory_mb = static_cast<double>(usage.ru_maxrss) / 1024;
    _exit(write(ends[1], &result, sizeof result) == sizeof result ? 0 : 1);
  }
  close(ends[1]);
  Measured result;
  const bool whole = read(ends[0], &result, sizeof result) == sizeof result;
  close(ends[0]);
  int status = 0;
  wait(&status);
  if (!whole || status != 0) std::exit(1);
  return result;
}

}  // namespace sheaf::bench
