// SPDX-License-Identifier: GPL-2.0-or-later
// Bytes to the record of a card. Beyond not crashing: what was read must be kept and read back the same.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "query/answer/card_record.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto record = sheaf::parse_record({reinterpret_cast<const char*>(data), size});
  if (!record) return 0;
  const std::string kept = sheaf::to_json(*record);
  if (kept.size() > sheaf::longest_record) return 0;
  const auto again = sheaf::parse_record(kept);
  if (!again || sheaf::to_json(*again) != kept) std::abort();
  return 0;
}
