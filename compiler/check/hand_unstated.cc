// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <string>
#include <vector>

#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

using Words = std::vector<std::string>;

// Folding is dear, and few texts say anything of a hand.
bool may_speak_of_hand(std::string_view text) {
  const auto lower = [&](std::size_t at) { return at < text.size() ? text[at] | 0x20 : 0; };
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (lower(at) != 'h') continue;
    if (at > 0 && lower(at - 1) == 'l') return true;
    if (lower(at + 1) == 'a' && lower(at + 2) == 'n' && lower(at + 3) == 'd') return true;
  }
  return false;
}

Words words_in(std::string_view text) {
  return may_speak_of_hand(text) ? sheaf::words_of(sheaf::fold(text)) : Words();
}

bool says(const Words& words, std::string_view first, std::string_view second) {
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (words[i] == first && words[i + 1] == second) return true;
  }
  return false;
}

bool speaks_of_left_hand(const Words& words) {
  return says(words, "left", "hand") || says(words, "lh", "thread");
}

void examine(const LinkedEntry& fastener, const Shelf&, Report& report) {
  if (fastener.has("hand")) return;
  const sheaf::Thread* thread = fastener.thread("thread");
  const bool thread_says = thread && thread->left_hand;
  const bool name_says = speaks_of_left_hand(words_in(fastener.name));
  const Value* speaking = nullptr;
  for (const Value& note : fastener.values("notes")) {
    const Words words = words_in(note.text);
    if (says(words, "hand", "thread") && speaks_of_left_hand(words)) speaking = &note;
  }
  const bool caution_says = std::ranges::any_of(
      fastener.cautions, [](const Caution* caution) { return speaks_of_left_hand(words_in(caution->text)); });
  if (!thread_says && !name_says && !speaking && !caution_says) return;
  report(
      fastener,
      speaking ? speaking->where
               : fastener.place(thread_says    ? "thread"
                                : caution_says ? "cautions"
                                               : "name"),
      "the words speak of a left-hand thread, but `hand` does not say so; only `hand: left` shows beside the figure");
}

}  // namespace

const Rule hand_unstated = {
    {.name = "hand-unstated",
     .severity = Severity::warning,
     .summary = "a left-hand thread that only the words tell",
     .why =
         "A left-hand thread turned the usual way is overtightened until it breaks. What stands in a name or a note is "
         "read too late; `hand: left` is shown on the first line of the answer.",
     .wrong = R"(fasteners:
  hub-nut: { name: clutch hub nut, thread: M18x1.5, torque: 90 N·m, state: dry, notes: [This is a left-hand thread.] }
)",
     .right = R"(fasteners:
  hub-nut: { name: clutch hub nut, thread: M18x1.5, torque: 90 N·m, state: dry, hand: left, notes: [This is a left-hand thread.] }
)"},
    {.kind = "fastener", .entry = examine}};

}  // namespace sheafc
