// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/index_builder.h"

#include <condition_variable>
#include <cstdlib>
#include <deque>
#include <mutex>
#include <set>
#include <thread>
#include <utility>

#include "compiler/emit/shard.h"
#include "compiler/emit/shard_cache.h"
#include "query/library/hash.h"
#include "query/library/index_terms.h"
#include "query/library/word_groups.h"

namespace sheafc {
namespace {

using namespace sheaf;

// A shard ends after about 800 entries: larger ones cost more to index, for Xapian sorts each in memory, and
// more of them to merge. Where it ends, the name of its last sheet decides, so that a sheet more or less
// moves only the ends near it. Part of the format: other bounds give other bytes.
constexpr std::size_t least_entries = 500;
constexpr std::size_t most_entries = 2000;
constexpr std::uint64_t one_name_in = 16;
// Neighbouring shards are merged before all are, in a bundle: beside what indexes other shards; and after a
// change of one sheet there are few parts to merge. With a million entries 80 bundles are merged at once.
constexpr std::size_t shards_in_bundle = 16;

bool ends_shard(const std::string& last_sheet, std::size_t entries) {
  return entries >= most_entries || (entries >= least_entries && hash_of(last_sheet) % one_name_in == 0);
}

std::vector<std::string> all_spelling_of(const std::vector<WordRecord>& words) {
  std::set<std::string> spelling;
  for (const WordRecord& word : words) {
    for (std::string& part : spelling_of(word)) spelling.insert(std::move(part));
  }
  return {spelling.begin(), spelling.end()};
}

struct Shard {
  std::size_t number = 0;
  std::vector<HashedSheet> hashes;  // of its sheets
  std::vector<SheetRecord>
      sheets;  // the same, unless `file` is known; without those that are still to be recalled
  std::size_t entries = 0;
  bool is_first = false;  // and so holds the spelling of the glossary
  std::string key;        // in the cache; empty: not known
  std::string file;       // empty: still to be written
};

struct Bundle {
  std::vector<Shard> shards;  // those that are handed over come back without their sheets
  std::size_t to_write = 0;   // of its shards
  bool has_all_shards = false;
  std::string key;   // in the cache; empty: not known
  std::string file;  // empty: still to be merged
};

}  // namespace

struct IndexBuilder::State {
  State(Means given, const std::vector<WordRecord>& words)
      : means(std::move(given)),
        maker(means.maker + ' ' + ShardCache::key_of_words(words)),
        groups(words),
        spelling(all_spelling_of(words)),
        cache(means.cache) {
    begin_shard();
    for (unsigned i = 0; i < means.threads; ++i) {
      workers.emplace_back([this](const std::stop_token& stop) { work(stop); });
    }
  }
  ~State() {
    for (std::jthread& worker : workers) worker.request_stop();
    // The workers are joined before anything that they use goes away.
    workers.clear();
  }

  void begin_shard() {
    gathering = Shard{};
    gathering.number = shards;
    gathering.is_first = shards == 0;
    ++shards;
  }
  std::optional<Failure> end_if_full();
  std::optional<Failure> end_shard(bool is_last);
  std::optional<Failure> end_bundle();
  std::optional<Failure> recall_sheets(Shard& shard);
  std::string key_of(const Shard& shard) const;
  void look_up(Shard& shard);
  bool look_up(Bundle& bundle);
  std::optional<Failure> hand_over(Shard shard);
  std::optional<Failure> wait_for_all();
  void work(const std::stop_token& stop);
  std::optional<Failure> write(Shard& shard);
  std::optional<Failure> merge(Bundle& bundle);
  Bundle& bundle_of(const Shard& shard) { return bundles[shard.number / shards_in_bundle]; }

  const Means means;
  const std::string maker;
  const WordGroups groups;
  const std::vector<std::string> spelling;
  ShardCache cache;

  Shard gathering;
  std::size_t shards = 0;  // begun

  std::mutex mutex;  // guards what follows
  std::condition_variable_any changed;
  std::deque<Shard> waiting;
  std::deque<Bundle> bundles;
  std::size_t at_work = 0;
  std::optional<Failure> fault;  // the first
  std::vector<std::jthread> workers;
};

// Sheets without records are asked for only where their shard must be written: here, in the caller's thread.
std::optional<Failure> IndexBuilder::State::recall_sheets(Shard& shard) {
  look_up(shard);
  if (!shard.file.empty()) return std::nullopt;
  std::vector<SheetRecord> given = std::exchange(shard.sheets, {});
  auto next = given.begin();
  for (const HashedSheet& hashed : shard.hashes) {
    if (next != given.end() && next->name == hashed.name) {
      shard.sheets.push_back(std::move(*next++));
      continue;
    }
    auto sheet = means.recall(hashed.name);
    if (!sheet) return sheet.failure();
    shard.sheets.push_back(std::move(sheet).value());
  }
  return std::nullopt;
}

std::optional<Failure> IndexBuilder::State::hand_over(Shard shard) {
  std::unique_lock lock(mutex);
  changed.wait(lock, [&] { return waiting.size() < means.threads || fault; });
  if (fault) return fault;
  waiting.push_back(std::move(shard));
  changed.notify_all();
  return std::nullopt;
}

std::optional<Failure> IndexBuilder::State::end_shard(bool is_last) {
  const std::size_t place = gathering.number % shards_in_bundle;
  const bool ends_bundle = is_last || place + 1 == shards_in_bundle;
  {
    const std::lock_guard lock(mutex);
    if (place == 0) bundles.emplace_back();
    Bundle& bundle = bundles.back();
    bundle.shards.emplace_back();
    ++bundle.to_write;
    bundle.has_all_shards = ends_bundle;
    if (means.recall) bundle.shards.back() = std::move(gathering);
  }
  if (!means.recall) return hand_over(std::move(gathering));
  return ends_bundle ? end_bundle() : std::nullopt;
}

// Nobody works at it yet, for its shards were held back.
std::optional<Failure> IndexBuilder::State::end_bundle() {
  Bundle& bundle = bundles.back();
  if (look_up(bundle)) return std::nullopt;
  for (Shard& shard : bundle.shards) {
    auto failed = recall_sheets(shard);
    if (!failed) failed = hand_over(std::move(shard));
    if (failed) return failed;
  }
  return std::nullopt;
}

std::optional<Failure> IndexBuilder::State::wait_for_all() {
  std::unique_lock lock(mutex);
  changed.wait(lock, [&] { return (waiting.empty() && at_work == 0) || fault; });
  return fault;
}

std::string IndexBuilder::State::key_of(const Shard& shard) const {
  std::vector<std::uint64_t> hashes;
  for (const HashedSheet& sheet : shard.hashes) hashes.push_back(sheet.hash);
  return ShardCache::key_of(maker, shard.is_first, hashes);
}

void IndexBuilder::State::look_up(Shard& shard) {
  if (means.cache.empty() || !shard.file.empty()) return;
  if (shard.key.empty()) shard.key = key_of(shard);
  shard.file = cache.find(shard.key).value_or(std::string());
}

bool IndexBuilder::State::look_up(Bundle& bundle) {
  if (means.cache.empty() || bundle.shards.size() == 1) return false;
  std::vector<std::string> keys;
  for (Shard& shard : bundle.shards) {
    if (shard.key.empty()) shard.key = key_of(shard);
    keys.push_back(shard.key);
  }
  bundle.key = ShardCache::key_of_bundle(keys);
  bundle.file = cache.find(bundle.key).value_or(std::string());
  if (bundle.file.empty()) return false;
  for (const std::string& key : keys) cache.keep_also(key);
  return true;
}

// Only a shard that the cache does not have is indexed.
std::optional<Failure> IndexBuilder::State::write(Shard& shard) {
  look_up(shard);
  if (!shard.file.empty()) return std::nullopt;
  shard.file = means.folder + "/shard-" + std::to_string(shard.number);
  auto failed =
      write_shard(shard.file, shard.sheets, groups, shard.is_first ? spelling : std::vector<std::string>{});
  if (!failed && !shard.key.empty()) cache.keep(shard.key, shard.file);
  return failed;
}

// All its shards are written.
std::optional<Failure> IndexBuilder::State::merge(Bundle& bundle) {
  if (bundle.shards.size() == 1) {
    bundle.file = bundle.shards.front().file;
    return std::nullopt;
  }
  if (bundle.key.empty() && look_up(bundle)) return std::nullopt;
  std::vector<std::string> files;
  for (const Shard& shard : bundle.shards) files.push_back(shard.file);
  bundle.file = means.folder + "/bundle-" + std::to_string(bundle.shards.front().number);
  auto failed = merge_shards(files, bundle.file);
  if (!failed && !bundle.key.empty()) cache.keep(bundle.key, bundle.file);
  return failed;
}

void IndexBuilder::State::work(const std::stop_token& stop) {
  std::unique_lock lock(mutex);
  while (changed.wait(lock, stop, [&] { return !waiting.empty(); })) {
    Shard shard = std::move(waiting.front());
    waiting.pop_front();
    ++at_work;
    changed.notify_all();
    lock.unlock();
    auto failed = write(shard);
    shard.sheets = {};
    lock.lock();
    Bundle& bundle = bundle_of(shard);
    bundle.shards[shard.number % shards_in_bundle] = std::move(shard);
    const bool is_complete = --bundle.to_write == 0 && bundle.has_all_shards;
    if (is_complete && !failed && !fault) {
      lock.unlock();
      failed = merge(bundle);
      lock.lock();
    }
    --at_work;
    if (failed && !fault) fault = std::move(failed);
    changed.notify_all();
    if (stop.stop_requested()) return;
  }
}

IndexBuilder::IndexBuilder(Means means, const std::vector<WordRecord>& words) {
  // The batches in which postings are written show in the bytes, so nobody else may set their size.
  ::unsetenv("XAPIAN_FLUSH_THRESHOLD");
  state_ = std::make_unique<State>(std::move(means), words);
}

IndexBuilder::IndexBuilder(IndexBuilder&&) noexcept = default;
IndexBuilder& IndexBuilder::operator=(IndexBuilder&&) noexcept = default;
IndexBuilder::~IndexBuilder() = default;

std::optional<Failure> IndexBuilder::State::end_if_full() {
  if (!ends_shard(gathering.hashes.back().name, gathering.entries)) return std::nullopt;
  auto failed = end_shard(false);
  begin_shard();
  return failed;
}

std::optional<Failure> IndexBuilder::add(SheetRecord sheet, std::uint64_t hash) {
  Shard& shard = state_->gathering;
  shard.entries += sheet.entries.size();
  shard.hashes.push_back({sheet.name, sheet.entries.size(), hash});
  shard.sheets.push_back(std::move(sheet));
  return state_->end_if_full();
}

std::optional<Failure> IndexBuilder::add(HashedSheet sheet) {
  Shard& shard = state_->gathering;
  shard.entries += sheet.entries;
  shard.hashes.push_back(std::move(sheet));
  return state_->end_if_full();
}

std::vector<HashedSheet> IndexBuilder::hashes() const {
  std::vector<HashedSheet> all;
  for (const Bundle& bundle : state_->bundles) {
    for (const Shard& shard : bundle.shards) all.insert(all.end(), shard.hashes.begin(), shard.hashes.end());
  }
  return all;
}

Result<FileDescriptor> IndexBuilder::finish() {
  if (auto fault = state_->end_shard(true)) return *fault;
  if (auto fault = state_->wait_for_all()) return *fault;
  std::vector<std::string> files;
  for (const Bundle& bundle : state_->bundles) files.push_back(bundle.file);
  auto index = merge_shards_in(state_->means.folder, files);
  if (index) state_->cache.forget_others();
  return index;
}

}  // namespace sheafc
