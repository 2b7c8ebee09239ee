// SPDX-License-Identifier: GPL-2.0-or-later
// Bytes to what a row of a library says. Beyond not crashing: a sheet that was read is written and read back
// the same.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "query/library/row_body.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto end_of_sheet = std::min(text.find('\n'), text.size());  // then its entry
  const auto read = sheaf::sheet_from_body("sheet", text.substr(0, end_of_sheet));
  if (!read) return 0;
  sheaf::SheetRecord sheet = read->sheet;
  auto entry = sheaf::entry_from_body("sheet/entry", text.substr(std::min(end_of_sheet + 1, text.size())),
                                      read->shared);
  if (entry) sheet.entries.push_back(std::move(*entry));
  const auto bodies = sheaf::bodies_of(sheet);
  auto again = sheaf::sheet_from_body("sheet", bodies.sheet);
  if (!again) std::abort();
  for (const auto& body : bodies.entries) {
    auto same = sheaf::entry_from_body("sheet/entry", body, again->shared);
    if (!same) std::abort();
    again->sheet.entries.push_back(std::move(*same));
  }
  if (!(again->sheet == sheet)) std::abort();
  return 0;
}
