// SPDX-License-Identifier: GPL-2.0-or-later
// The Xapian part of a library. Sheets are gathered into shards, which are indexed on all cores, and the
// shards are merged in their order. Where a shard ends is decided by the sheets in it alone, so threads
// change no byte of the result.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "compiler/emit/hashed_sheet.h"
#include "query/library/record.h"
#include "query/quantity/result.h"

namespace sheafc {

class IndexBuilder {
 public:
  struct Means {
    std::string folder;  // to work in
    unsigned threads = 1;
    std::string cache;  // a folder of shards of earlier builds; empty: none
    std::string maker;  // what decides their bytes besides the sheets
  };
  // `words` is the glossary.
  IndexBuilder(Means means, const std::vector<sheaf::WordRecord>& words);
  ~IndexBuilder();  // stops what is under way
  IndexBuilder(IndexBuilder&&) noexcept;
  IndexBuilder& operator=(IndexBuilder&&) noexcept;

  // Waits while as many shards are full as there are threads: memory stays bounded.
  std::optional<sheaf::Failure> add(sheaf::SheetRecord sheet, std::uint64_t hash);
  // A sheet of which only the hash is at hand: `recall` is asked for it, before this or a later call returns, if its
  // shard is not in the cache.
  using Recall = std::function<sheaf::Result<sheaf::SheetRecord>(const std::string& name)>;
  std::optional<sheaf::Failure> add(HashedSheet sheet, const Recall& recall);

  // Writes the whole index into one file. Afterwards nothing may be added.
  std::optional<sheaf::Failure> finish(const std::string& file);
  // Afterwards: all sheets, in order.
  std::vector<HashedSheet> hashes() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace sheafc
