// SPDX-License-Identifier: GPL-2.0-or-later
// Shards of the index from earlier builds, each under a name made of all that decides its bytes. Only ever
// a cache: what is missing, cut, foreign or of another version is indexed anew, and what cannot be kept is
// not.
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "query/library/record.h"

namespace sheafc {

class ShardCache {
 public:
  explicit ShardCache(std::string folder);  // empty: finds and keeps nothing

  // Names the words that terms depend on.
  static std::string key_of_words(const std::vector<sheaf::WordRecord>& glossary);

  // The name of what a shard of the sheets with these hashes will be. `maker` names all else that decides on
  // it: the glossary, the program and the versions of libraries that write it.
  static std::string key_of(const std::string& maker, bool holds_spelling,
                            const std::vector<std::uint64_t>& sheets);

  // The name of what shards of these names are together.
  static std::string key_of_bundle(const std::vector<std::string>& keys);

  // The file of that shard, tested whole; none if there is none. For several threads at once.
  std::optional<std::string> find(const std::string& key);
  void keep(const std::string& key, const std::string& file);
  // What is part of something found, and wanted again when another part of that changes.
  void keep_also(const std::string& key);

  // Removes the shards that nobody asked for or kept since the cache was opened.
  void forget_others();

 private:
  std::string folder_;
  std::mutex mutex_;
  std::map<std::string, std::string> names_;  // key -> file in the folder
  std::set<std::string> used_;
};

}  // namespace sheafc
