// SPDX-License-Identifier: GPL-2.0-or-later
// Words to what answers them, of a library of a few entries. Beyond not crashing: a machine that was named is a
// filter, and no answer is another machine's.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "query/search/find.h"
#include "tests/query/search/small_library.h"

namespace {

bool is_of_a_machine_named(const sheaf::Hit& hit, const sheaf::QuestionReading& reading) {
  if (reading.machines.empty() || hit.entry->fits.empty()) return true;
  return std::ranges::any_of(hit.entry->fits, [&](const sheaf::FitRecord& fit) {
    return std::ranges::any_of(reading.machines, [&](const sheaf::Machine& machine) {
      return machine.make == fit.make && machine.model == fit.model;
    });
  });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static sheaf::test::SmallLibrary small;
  sheaf::Lexicon lexicon({&small.library()});
  const auto found = sheaf::find({.words = std::string(reinterpret_cast<const char*>(data), size)}, lexicon);
  if (!found) return 0;
  for (const auto& hit : found->answers)
    if (!is_of_a_machine_named(hit, found->reading)) std::abort();
  return 0;
}
