// SPDX-License-Identifier: GPL-2.0-or-later
#include <array>

#include "compiler/check/measure.h"
#include "compiler/check/rules.h"

namespace sheafc {
namespace {

struct Pair {
  std::string_view kind, lesser, greater;
};
constexpr std::array<Pair, 3> pairs = {{{"bushing", "inside", "outside"},
                                        {"spring", "installed-length", "free-length"},
                                        {"spring", "wire", "outside"}}};

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  for (const Pair& pair : pairs) {
    if (entry.kind != pair.kind) continue;
    const auto lesser = middle_in(entry.figure(pair.lesser), "mm");
    const auto greater = middle_in(entry.figure(pair.greater), "mm");
    if (!lesser || !greater || *lesser < *greater) continue;
    report(entry, entry.place(pair.lesser),
           std::string(pair.lesser) + " " + entry.values(pair.lesser).front().text + " must be less than " +
               std::string(pair.greater) + " " + entry.values(pair.greater).front().text +
               "; are the two swapped?",
           {other_place(entry.place(pair.greater), std::string(pair.greater) + " stands here")});
  }
}

}  // namespace

const Rule lengths_out_of_order = {
    {.name = "lengths-out-of-order",
     .severity = Severity::error,
     .summary = "an inside larger than its outside, or a spring longer fitted than free",
     .why = "These pairs can stand only one way round; the other is a swapped row.",
     .wrong = R"(bushings:
  slide: { name: slide bushing, inside: 43 mm, outside: 41 mm }
)",
     .right = R"(bushings:
  slide: { name: slide bushing, inside: 41 mm, outside: 43 mm }
)"},
    {.entry = examine}};

}  // namespace sheafc
