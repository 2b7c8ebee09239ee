// SPDX-License-Identifier: GPL-2.0-or-later
// What a piece of work costs, measured in a process of its own, so that nothing warms another's memory.
#pragma once

#include <functional>
#include <vector>

namespace sheaf::bench {

struct Measured {
  double seconds = 0;
  double processor = 0;  // seconds, on all cores together
  double memory_mb = 0;  // the most that the process held
};

double seconds_of(const std::function<void()>& work);
double median(std::vector<double> values);

// In this process; the memory is not known.
Measured measured(const std::function<void()>& work);
// In a forked one, with its memory. Ends the program if the work fails.
Measured in_a_process(const std::function<Measured()>& measure);

}  // namespace sheaf::bench
