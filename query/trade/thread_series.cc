// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/thread_series.h"

namespace sheaf {
namespace {

bool same_diameter(const Thread& left, const Thread& right) {
  return left.system == right.system && left.diameter == right.diameter;
}

bool in_series(const ThreadRow& row, const Thread& thread) {
  if (thread.system == Thread::System::metric) return row.series == "coarse";
  return !thread.series.empty() && row.series == thread.series;
}

}  // namespace

Result<Thread> completed(const Thread& thread, std::span<const ThreadRow> rows) {
  const bool has_pitch = thread.pitch || thread.per_inch;
  bool diameter_known = false;
  for (const ThreadRow& row : rows) {
    if (!same_diameter(row.thread, thread)) continue;
    diameter_known = true;
    const bool meant = has_pitch ? thread_key(row.thread) == thread_key(thread) : in_series(row, thread);
    if (!meant) continue;
    Thread whole = thread;
    whole.pitch = row.thread.pitch;
    whole.per_inch = row.thread.per_inch;
    if (whole.system == Thread::System::unified && whole.series.empty()) whole.series = row.series;
    return whole;
  }
  if (has_pitch) return thread;
  return Failure{diameter_known ? "no pitch of " + to_text(thread) + " is in the tables"
                                : "the tables have no thread of the diameter of " + to_text(thread)};
}

std::vector<Thread> threads_of_diameter(const Thread& thread, std::span<const ThreadRow> rows) {
  std::vector<Thread> known;
  for (const ThreadRow& row : rows) {
    if (same_diameter(row.thread, thread)) known.push_back(row.thread);
  }
  return known;
}

}  // namespace sheaf
