// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/index_builder.h"

#include <condition_variable>
#include <cstdlib>
#include <deque>
#include <map>
#include <mutex>
#include <set>
#include <thread>

#include "compiler/emit/shard.h"
#include "compiler/emit/shard_cache.h"
#include "query/library/hash.h"
#include "query/library/index_terms.h"
#include "query/library/word_groups.h"

namespace sheafc {
namespace {

using namespace sheaf;

// A shard ends after about 6 000 entries, for which Xapian's buffers fit into memory well; where, the name
// of its last sheet decides, so that a sheet more or less moves only the ends near it. Part of the format:
// other bounds give other bytes.
constexpr std::size_t least_entries = 4000;
constexpr std::size_t most_entries = 16000;
constexpr std::uint64_t one_name_in = 64;

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
  std::vector<SheetRecord> sheets;
  std::size_t entries = 0;
  bool is_first = false;  // and so holds the spelling of the glossary
};

}  // namespace

struct IndexBuilder::State {
  State(Means given, const std::vector<WordRecord>& words)
      : means(std::move(given)),
        glossary(words),
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
    gathering = Shard{shards, {}, 0, shards == 0};
    ++shards;
  }
  std::optional<Failure> hand_over();
  std::optional<Failure> wait_for_all();
  void work(const std::stop_token& stop);
  std::optional<Failure> write(const Shard& shard, std::string& file);

  const Means means;
  const std::vector<WordRecord> glossary;
  const WordGroups groups;
  const std::vector<std::string> spelling;
  ShardCache cache;

  Shard gathering;
  std::size_t shards = 0;  // begun

  std::mutex mutex;  // guards what follows
  std::condition_variable_any changed;
  std::deque<Shard> waiting;
  std::map<std::size_t, std::string> files;  // of the shards that are done, by their numbers
  std::size_t at_work = 0;
  std::optional<Failure> fault;  // the first
  std::vector<std::jthread> workers;
};

std::optional<Failure> IndexBuilder::State::hand_over() {
  std::unique_lock lock(mutex);
  changed.wait(lock, [&] { return waiting.size() < means.threads || fault; });
  if (fault) return fault;
  waiting.push_back(std::move(gathering));
  changed.notify_all();
  return std::nullopt;
}

std::optional<Failure> IndexBuilder::State::wait_for_all() {
  std::unique_lock lock(mutex);
  changed.wait(lock, [&] { return (waiting.empty() && at_work == 0) || fault; });
  return fault;
}

// Only a shard that the cache does not have is indexed.
std::optional<Failure> IndexBuilder::State::write(const Shard& shard, std::string& file) {
  std::string key;
  if (!means.cache.empty()) {
    key = ShardCache::key_of(means.maker, glossary, shard.is_first, shard.sheets);
    if (auto known = cache.find(key)) {
      file = std::move(*known);
      return std::nullopt;
    }
  }
  file = means.folder + "/shard-" + std::to_string(shard.number);
  auto failed =
      write_shard(file, shard.sheets, groups, shard.is_first ? spelling : std::vector<std::string>{});
  if (!failed && !key.empty()) cache.keep(key, file);
  return failed;
}

void IndexBuilder::State::work(const std::stop_token& stop) {
  std::unique_lock lock(mutex);
  while (changed.wait(lock, stop, [&] { return !waiting.empty(); })) {
    const Shard shard = std::move(waiting.front());
    waiting.pop_front();
    ++at_work;
    changed.notify_all();
    lock.unlock();
    std::string file;
    auto failed = write(shard, file);
    lock.lock();
    --at_work;
    files[shard.number] = std::move(file);
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

std::optional<Failure> IndexBuilder::add(SheetRecord sheet) {
  Shard& shard = state_->gathering;
  shard.entries += sheet.entries.size();
  shard.sheets.push_back(std::move(sheet));
  if (!ends_shard(shard.sheets.back().name, shard.entries)) return std::nullopt;
  auto fault = state_->hand_over();
  state_->begin_shard();
  return fault;
}

std::optional<Failure> IndexBuilder::finish(const std::string& file, std::uint64_t offset) {
  if (auto fault = state_->hand_over()) return fault;
  if (auto fault = state_->wait_for_all()) return fault;
  std::vector<std::string> in_order;
  for (auto& [_, shard] : state_->files) in_order.push_back(std::move(shard));
  if (auto fault = merge_shards(std::move(in_order), file, offset)) return fault;
  state_->cache.forget_others();
  return std::nullopt;
}

}  // namespace sheafc
