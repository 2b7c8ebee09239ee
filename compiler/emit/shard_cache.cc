// SPDX-License-Identifier: GPL-2.0-or-later
// A file is named KEY-HASH.shard: the hash of its bytes stands in its name, so there is nothing to keep in
// step.
#include "compiler/emit/shard_cache.h"

#include <fcntl.h>
#include <unistd.h>

#include <filesystem>
#include <system_error>

#include "query/library/file_descriptor.h"
#include "query/library/hash.h"
#include "query/library/row_checksum.h"

namespace sheafc {
namespace {

namespace fs = std::filesystem;
using namespace sheaf;

constexpr std::string_view ending = ".shard";
constexpr std::size_t key_length = 64, hash_length = 16;

// A shard is read once, whatever its size, and never held in memory.
std::optional<std::string> hash_of_file(const std::string& path) {
  const FileDescriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  std::error_code error;
  const auto bytes = fs::file_size(path, error);
  if (file.number() < 0 || error) return std::nullopt;
  HashOfPieces hash;
  const auto fault =
      read_range(file.number(), 0, bytes, hashed_piece, [&](std::string_view piece) { hash.add(piece); });
  if (fault) return std::nullopt;
  return to_hexadecimal(hash.finish());
}

void add(DigestOfBytes& digest, std::uint64_t number) { digest.add(to_hexadecimal(number)); }
bool is_shard_name(const std::string& name) {
  return name.size() == key_length + 1 + hash_length + ending.size() && name[key_length] == '-' &&
         name.ends_with(ending);
}

}  // namespace

ShardCache::ShardCache(std::string folder) : folder_(std::move(folder)) {
  if (folder_.empty()) return;
  std::error_code error;
  for (fs::directory_iterator entry(folder_, error), end; !error && entry != end; entry.increment(error)) {
    const std::string name = entry->path().filename().string();
    if (is_shard_name(name)) names_[name.substr(0, key_length)] = name;
  }
}

std::string ShardCache::key_of_words(const std::vector<WordRecord>& glossary) {
  DigestOfBytes digest;
  add(digest, glossary.size());
  for (const WordRecord& word : glossary) {
    add(digest, static_cast<std::uint64_t>(
                    row_checksum({word.main, word.never}, {word.group, word.word, word.language})));
  }
  return to_hexadecimal(digest.finish());
}

std::string ShardCache::key_of(const std::string& maker, bool holds_spelling,
                               const std::vector<std::uint64_t>& sheets) {
  DigestOfBytes digest;
  digest.add(maker);
  add(digest, std::uint64_t{holds_spelling});
  for (const std::uint64_t sheet : sheets) add(digest, sheet);
  return to_hexadecimal(digest.finish());
}

std::string ShardCache::key_of_bundle(const std::vector<std::string>& keys) {
  DigestOfBytes digest;
  digest.add("bundle");
  for (const std::string& key : keys) digest.add(key);
  return to_hexadecimal(digest.finish());
}

void ShardCache::keep_also(const std::string& key) {
  const std::lock_guard lock(mutex_);
  if (const auto found = names_.find(key); found != names_.end()) used_.insert(found->second);
}

std::optional<std::string> ShardCache::find(const std::string& key) {
  std::string path, hash;
  {
    const std::lock_guard lock(mutex_);
    const auto found = names_.find(key);
    if (found == names_.end()) return std::nullopt;
    path = folder_ + '/' + found->second;
    hash = found->second.substr(key_length + 1, hash_length);
    used_.insert(found->second);
  }
  if (hash_of_file(path) == hash) return path;
  std::error_code ignored;
  fs::remove(path, ignored);
  return std::nullopt;
}

// A second name for the same file where that can be, else a copy; under its last name only once it is whole.
void ShardCache::keep(const std::string& key, const std::string& file) {
  if (folder_.empty()) return;
  const auto hash = hash_of_file(file);
  if (!hash) return;
  const std::string name = key + '-' + *hash + std::string(ending);
  const std::string path = folder_ + '/' + name, draft = path + ".new-" + std::to_string(::getpid());
  std::error_code error;
  fs::create_hard_link(file, draft, error);
  if (error) fs::copy_file(file, draft, error);
  if (!error) fs::rename(draft, path, error);
  std::error_code ignored;
  fs::remove(draft, ignored);  // a link renamed onto itself stays
  if (error) return;
  const std::lock_guard lock(mutex_);
  used_.insert(name);
}

void ShardCache::forget_others() {
  if (folder_.empty()) return;
  std::error_code error;
  for (fs::directory_iterator entry(folder_, error), end; !error && entry != end; entry.increment(error)) {
    std::error_code ignored;
    const std::string name = entry->path().filename().string();
    if (name.find(ending) != std::string::npos && !used_.contains(name)) fs::remove(entry->path(), ignored);
  }
}

}  // namespace sheafc
