// SPDX-License-Identifier: GPL-2.0-or-later
#include <cmath>
#include <utility>

#include "compiler/check/rules.h"

namespace sheafc {
namespace {

std::string swapped(sheaf::Size size) {
  std::swap(size.value[0], size.value[1]);
  return sheaf::to_text(size);
}

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  if (entry.kind != "seal" && entry.kind != "bearing") return;
  const sheaf::Size* size = entry.size("size");
  if (!size || size->count < 2) return;
  if (sheaf::compare(size->value[0], size->value[1]) < 0) return;
  report(entry, entry.place("size"),
         "the inside, written first, must be smaller than the outside; is " + swapped(*size) + " meant?");
}

}  // namespace

const Rule seal_inside_out = {
    {.name = "seal-inside-out",
     .severity = Severity::error,
     .summary = "an inside diameter that is not smaller than the outside",
     .why =
         "Sizes are written inside × outside × height (or width). Owners' lists and packets use other orders, and a "
         "copied row turns round easily.",
     .wrong = R"(seals:
  oil-seal: { name: fork oil seal, size: 54x41x11, use: fork-oil }
)",
     .right = R"(seals:
  oil-seal: { name: fork oil seal, size: 41x54x11, use: fork-oil }
)"},
    {.entry = examine}};

}  // namespace sheafc
