// SPDX-License-Identifier: GPL-2.0-or-later
// The Xapian part of a library. Sheets are gathered into shards, which are indexed on all cores, and the
// shards are merged in their order, a few neighbours first. Where a shard ends is decided by the sheets in it
// alone, so threads change no byte of the result.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "compiler/emit/hashed_sheet.h"
#include "query/library/file_descriptor.h"
#include "query/library/record.h"
#include "query/quantity/result.h"

namespace sheafc {

class IndexBuilder {
 public:
  using Recall = std::function<sheaf::Result<sheaf::SheetRecord>(const std::string& name)>;
  struct Means {
    std::string folder;  // to work in
    unsigned threads = 1;
    std::string cache;  // a folder of shards of earlier builds; empty: none
    std::string maker;  // what decides their bytes besides the sheets and the glossary
    // Asked for sheets whose hash was added, where their shard is not in the cache, before a later call
    // returns.
    Recall recall = {};
  };
  // `words` is the glossary.
  IndexBuilder(Means means, const std::vector<sheaf::WordRecord>& words);
  ~IndexBuilder();  // stops what is under way
  IndexBuilder(IndexBuilder&&) noexcept;
  IndexBuilder& operator=(IndexBuilder&&) noexcept;

  // Waits while as many shards are full as there are threads: memory stays bounded.
  std::optional<sheaf::Failure> add(sheaf::SheetRecord sheet, std::uint64_t hash);
  // A sheet of which only the hash is at hand; for builders with `recall`.
  std::optional<sheaf::Failure> add(HashedSheet sheet);

  // The whole index in one file without a name. Afterwards nothing may be added.
  sheaf::Result<sheaf::FileDescriptor> finish();
  // Afterwards: all sheets, in order.
  std::vector<HashedSheet> hashes() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace sheafc
