// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>
#include <vector>

#include "compiler/check/joint.h"
#include "compiler/check/likeness.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

constexpr double equal_share = 0.02;

// The name without the stems of words that tell the two states apart.
std::string role(const LinkedEntry& fastener) {
  std::string text = role_of(fastener.name);
  for (const std::string_view word : {"dri", "oil", "greas"}) {
    if (const auto at = text.find(word); at != std::string::npos) text.erase(at, word.size());
  }
  std::erase(text, ' ');
  return text + "|" + std::string(fastener.text("thread"));
}

struct Tightened {
  const LinkedEntry* fastener;
  double nm;
};

bool is_slippery(std::string_view state) {
  return state == "oiled" || state == "greased" || state == "anti-seize";
}

void examine(const LinkedSheet& sheet, const Shelf&, Report& report) {
  std::vector<Tightened> dry_ones, slippery_ones;
  for (const LinkedEntry& entry : sheet.entries) {
    const std::string_view state = entry.kind == "fastener" ? entry.text("state") : "";
    if (state != "dry" && !is_slippery(state)) continue;
    const auto torque = torque_of_one_nm(entry);
    if (torque) (state == "dry" ? dry_ones : slippery_ones).push_back({&entry, *torque});
  }
  for (const Tightened& dry : dry_ones) {
    for (const Tightened& slippery : slippery_ones) {
      if (std::abs(slippery.nm / dry.nm - 1) > equal_share || role(*slippery.fastener) != role(*dry.fastener))
        continue;
      report(*slippery.fastener, slippery.fastener->place("torque"),
             "is the same on a slippery thread as on the dry one; the slippery one then pulls far harder",
             {other_place(dry.fastener->place("torque"), "the dry figure stands here")});
    }
  }
}

}  // namespace

const Rule dry_equals_oiled = {
    {.name = "dry-equals-oiled",
     .severity = Severity::note,
     .summary = "one fastener's torque dry and lubricated, and both the same",
     .why =
         "Oil or grease lowers the nut factor by a quarter to a half, so a source that gives both figures gives two. Equal "
         "ones were mostly copied from one to the other.",
     .wrong = R"(fasteners:
  guard-bolt-dry: { name: "chain guard bolt, dry", thread: M8x1.25, torque: 22 N·m, state: dry }
  guard-bolt-oiled: { name: "chain guard bolt, oiled", thread: M8x1.25, torque: 22 N·m, state: oiled }
)",
     .right = R"(fasteners:
  guard-bolt-dry: { name: "chain guard bolt, dry", thread: M8x1.25, torque: 22 N·m, state: dry }
  guard-bolt-oiled: { name: "chain guard bolt, oiled", thread: M8x1.25, torque: 16 N·m, state: oiled }
)"},
    {.sheet = examine}};

}  // namespace sheafc
