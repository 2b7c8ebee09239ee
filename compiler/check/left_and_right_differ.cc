// SPDX-License-Identifier: GPL-2.0-or-later
#include <map>

#include "compiler/check/likeness.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr std::string_view compared[] = {"thread", "drive", "torque", "size", "volume", "standard"};

std::string side_of(const LinkedEntry& entry) {
  for (const Value& side : entry.values("side")) {
    if (side.text == "left" || side.text == "right") return side.text;
  }
  return {};
}

std::string role(const LinkedEntry& entry) {
  std::string text = std::string(entry.kind) + "|" + role_of(entry.name) + "|" + entry.variant;
  for (const Value& side : entry.values("side")) {
    if (side.text != "left" && side.text != "right") text += "|" + side.text;
  }
  return text;
}

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  std::map<std::string, const LinkedEntry*> left;
  for (const LinkedEntry& entry : sheet.entries) {
    if (side_of(entry) == "left") left.emplace(role(entry), &entry);
  }
  for (const LinkedEntry& entry : sheet.entries) {
    const auto found = side_of(entry) == "right" ? left.find(role(entry)) : left.end();
    if (found == left.end()) continue;
    for (const std::string_view key : compared) {
      if (!entry.has(key) || !found->second->has(key) || entry.text(key) == found->second->text(key))
        continue;
      report(entry, entry.place(key),
             "right is " + std::string(entry.text(key)) + ", left is " +
                 std::string(found->second->text(key)) + "; so on purpose?",
             {other_place(found->second->place(key), "the left one stands here")});
    }
  }
}

}  // namespace

const Rule left_and_right_differ = {
    {.name = "left-and-right-differ",
     .severity = Severity::note,
     .summary = "left and right of one part with different figures",
     .why =
         "Left and right mostly match; where one value differs, one side was changed and the other forgotten. Some "
         "machines do differ, so this is a note.",
     .wrong = R"(fasteners:
  peg-left: { name: footpeg bolt, side: left, thread: M8x1.25, torque: 22 N·m, state: dry }
  peg-right: { name: footpeg bolt, side: right, thread: M8x1.25, torque: 26 N·m, state: dry }
)",
     .right = R"(fasteners:
  peg-left: { name: footpeg bolt, side: left, thread: M8x1.25, torque: 22 N·m, state: dry }
  peg-right: { name: footpeg bolt, side: right, thread: M8x1.25, torque: 22 N·m, state: dry }
)"},
    {.sheet = examine}};

}  // namespace sheafc
