// SPDX-License-Identifier: GPL-2.0-or-later
// One part of the index: some sheets in a Xapian database of one file, with documents numbered from 1.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/library/file_descriptor.h"
#include "query/library/record.h"
#include "query/library/word_groups.h"
#include "query/quantity/result.h"

namespace sheafc {

// `file` becomes the shard; beside it a folder of its name is used and removed again.
std::optional<sheaf::Failure> write_shard(const std::string& file,
                                          const std::vector<sheaf::SheetRecord>& sheets,
                                          const sheaf::WordGroups& groups,
                                          const std::vector<std::string>& spelling);

// All documents of the shards, in that order, in one database. The bytes are the same when some neighbours
// among them were merged before. All are open at once.
std::optional<sheaf::Failure> merge_shards(const std::vector<std::string>& shards, const std::string& file);
// The same into a file without a name: in memory if it is small, else made in the folder.
sheaf::Result<sheaf::FileDescriptor> merge_shards_in(const std::string& folder,
                                                     const std::vector<std::string>& shards);

std::string xapian_version();

}  // namespace sheafc
