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

// A shard ends after about 800 entries: larger ones cost more to index, for Xapian sorts each in memory, and
// more of them to merge. Where it ends, the name of its last sheet decides, so that a sheet more or less
// moves only the ends near it. Part of the format: other bounds give other bytes.
constexpr std::size_t least_entries = 500;
constexpr std::size_t most_entries = 2000;
constexpr std::uint64_t one_name_in = 16;

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
  std::vector<SheetRecord> sheets;  // alongside, unless `file` is known
  std::size_t entries = 0;
  bool is_first = false;  // and so holds the spelling of the glossary
  std::string key;        // in the cache; empty: not known
  std::string file;       // empty: still to be written
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
    gathering = Shard{};
    gathering.number = shards;
    gathering.is_first = shards == 0;
    ++shards;
  }
  std::optional<Failure> end_if_full();
  std::optional<Failure> recall_sheets();
  void look_up(Shard& shard);
  std::optional<Failure> hand_over();
  std::optional<Failure> wait_for_all();
  void work(const std::stop_token& stop);
  std::optional<Failure> write(Shard& shard);

  const Means means;
  const std::vector<WordRecord> glossary;
  const WordGroups groups;
  const std::vector<std::string> spelling;
  ShardCache cache;

  Shard gathering;
  Recall recall;           // for sheets whose records are not at hand
  std::size_t shards = 0;  // begun

  std::mutex mutex;  // guards what follows
  std::condition_variable_any changed;
  std::deque<Shard> waiting;
  struct Done {
    std::string file;
    std::vector<HashedSheet> hashes;
  };
  std::map<std::size_t, Done> done;  // by their numbers
  std::size_t at_work = 0;
  std::optional<Failure> fault;  // the first
  std::vector<std::jthread> workers;
};

// Sheets without records are asked for only where their shard must be written: here, in the caller's thread.
std::optional<Failure> IndexBuilder::State::recall_sheets() {
  if (!recall) return std::nullopt;
  look_up(gathering);
  if (!gathering.file.empty()) return std::nullopt;
  for (std::size_t i = 0; i < gathering.sheets.size(); ++i) {
    if (!gathering.sheets[i].name.empty()) continue;
    auto sheet = recall(gathering.hashes[i].name);
    if (!sheet) return sheet.failure();
    gathering.sheets[i] = std::move(sheet).value();
  }
  return std::nullopt;
}

std::optional<Failure> IndexBuilder::State::hand_over() {
  if (auto failed = recall_sheets()) return failed;
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

void IndexBuilder::State::look_up(Shard& shard) {
  if (means.cache.empty() || !shard.key.empty()) return;
  std::vector<std::uint64_t> hashes;
  for (const HashedSheet& sheet : shard.hashes) hashes.push_back(sheet.hash);
  shard.key = ShardCache::key_of(means.maker, glossary, shard.is_first, hashes);
  shard.file = cache.find(shard.key).value_or(std::string());
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
    --at_work;
    done[shard.number] = {std::move(shard.file), std::move(shard.hashes)};
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
  auto failed = hand_over();
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

std::optional<Failure> IndexBuilder::add(HashedSheet sheet, const Recall& recall) {
  Shard& shard = state_->gathering;
  state_->recall = recall;
  shard.entries += sheet.entries;
  shard.hashes.push_back(std::move(sheet));
  shard.sheets.emplace_back();
  return state_->end_if_full();
}

std::vector<HashedSheet> IndexBuilder::hashes() const {
  std::vector<HashedSheet> all;
  for (const auto& [_, shard] : state_->done) all.insert(all.end(), shard.hashes.begin(), shard.hashes.end());
  return all;
}

std::optional<Failure> IndexBuilder::finish(const std::string& file) {
  if (auto fault = state_->hand_over()) return fault;
  if (auto fault = state_->wait_for_all()) return fault;
  std::vector<std::string> in_order;
  for (const auto& [_, shard] : state_->done) in_order.push_back(shard.file);
  if (auto fault = merge_shards(std::move(in_order), file)) return fault;
  state_->cache.forget_others();
  return std::nullopt;
}

}  // namespace sheafc
