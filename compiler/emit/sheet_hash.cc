// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/sheet_hash.h"

#include <vector>

#include "query/library/hash.h"
#include "query/library/record_checksum.h"

namespace sheafc {

using namespace sheaf;

std::uint64_t hash_of_sheet(const SheetRecord& sheet) {
  std::vector<std::int64_t> checksums = {
      checksum_of(EntryId{0}, static_cast<std::int64_t>(sheet.entries.size()), sheet)};
  for (const EntryRecord& entry : sheet.entries) checksums.push_back(checksum_of(EntryId{0}, entry));
  return hash_of({reinterpret_cast<const char*>(checksums.data()), checksums.size() * sizeof(std::int64_t)});
}

}  // namespace sheafc
