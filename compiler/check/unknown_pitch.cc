// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

std::string known_threads(const std::vector<sheaf::Thread>& known) {
  std::string text;
  for (const sheaf::Thread& thread : known) text += (text.empty() ? "" : ", ") + sheaf::to_text(thread);
  return text;
}

// Large plugs and caps have pitches of 1, 1.5 and 2 mm of their own (common practice, no source).
bool may_be_special(const LinkedEntry& fastener) {
  const std::string_view joint = fastener.choice("joint");
  return joint == "cap" || joint == "stem" || joint == "plug" || joint == "pivot";
}

void examine(const LinkedEntry& fastener, const Shelf& shelf, Report& report) {
  const sheaf::Thread* thread = fastener.thread("thread");
  if (!thread || thread->system == sheaf::Thread::System::pipe || shelf.threads().empty()) return;
  if ((!thread->pitch && !thread->per_inch) || shelf.lists_thread_of(fastener)) return;
  const std::vector<sheaf::Thread> known = sheaf::threads_of_diameter(*thread, shelf.threads());
  if (known.empty()) return;
  const double pitch = sheaf::pitch_mm(*thread).value_or(0);
  const auto coarsest =
      std::ranges::max(known, {}, [](const sheaf::Thread& t) { return sheaf::pitch_mm(t).value_or(0); });
  const bool impossible = pitch > sheaf::pitch_mm(coarsest).value_or(0) * 1.01;
  if (!impossible && may_be_special(fastener)) return;
  report(
      fastener, fastener.place("thread"),
      "there is no thread " + sheaf::to_text(*thread) + " on the shelf; known are " + known_threads(known));
}

}  // namespace

const Rule unknown_pitch = {
    {.name = "unknown-pitch",
     .severity = Severity::error,
     .summary = "a pitch that no standard thread of that diameter has",
     .why =
         "ISO 261 and ASME B1.1 list the pitches of each diameter; a thread with another one cannot be bought, so it "
         "is a slip of a digit. Caps, stems, plugs and pivots may have a finer pitch of their own.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x2.5, torque: 22 N·m, state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m, state: dry }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
