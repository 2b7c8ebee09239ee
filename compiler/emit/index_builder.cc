// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/index_builder.h"

#include <condition_variable>
#include <cstdlib>
#include <deque>
#include <mutex>
#include <set>
#include <thread>

#include "compiler/emit/shard.h"
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
  std::string file;
  std::vector<SheetRecord> sheets;
  std::size_t entries = 0;
  bool is_first = false;  // and so holds the spelling of the glossary
};

}  // namespace

struct IndexBuilder::State {
  State(std::string where, const std::vector<WordRecord>& words, unsigned threads)
      : folder(std::move(where)), groups(words), spelling(all_spelling_of(words)), most_waiting(threads) {
    begin_shard();
    for (unsigned i = 0; i < threads; ++i) {
      workers.emplace_back([this](const std::stop_token& stop) { work(stop); });
    }
  }
  ~State() {
    for (std::jthread& worker : workers) worker.request_stop();
    // The workers are joined before anything that they use goes away.
    workers.clear();
  }

  void begin_shard() {
    files.push_back(folder + "/shard-" + std::to_string(files.size()));
    gathering = Shard{files.back(), {}, 0, files.size() == 1};
  }
  std::optional<Failure> hand_over();
  std::optional<Failure> wait_for_all();
  void work(const std::stop_token& stop);

  const std::string folder;
  const WordGroups groups;
  const std::vector<std::string> spelling;
  const std::size_t most_waiting;

  Shard gathering;
  std::vector<std::string> files;  // of all shards, in order

  std::mutex mutex;  // guards what follows
  std::condition_variable_any changed;
  std::deque<Shard> waiting;
  std::size_t at_work = 0;
  std::optional<Failure> fault;  // the first
  std::vector<std::jthread> workers;
};

std::optional<Failure> IndexBuilder::State::hand_over() {
  std::unique_lock lock(mutex);
  changed.wait(lock, [&] { return waiting.size() < most_waiting || fault; });
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

void IndexBuilder::State::work(const std::stop_token& stop) {
  std::unique_lock lock(mutex);
  while (changed.wait(lock, stop, [&] { return !waiting.empty(); })) {
    const Shard shard = std::move(waiting.front());
    waiting.pop_front();
    ++at_work;
    changed.notify_all();
    lock.unlock();
    auto failed =
        write_shard(shard.file, shard.sheets, groups, shard.is_first ? spelling : std::vector<std::string>{});
    lock.lock();
    --at_work;
    if (failed && !fault) fault = std::move(failed);
    changed.notify_all();
    if (stop.stop_requested()) return;
  }
}

IndexBuilder::IndexBuilder(std::string folder, const std::vector<WordRecord>& words, unsigned threads) {
  // The batches in which postings are written show in the bytes, so nobody else may set their size.
  ::unsetenv("XAPIAN_FLUSH_THRESHOLD");
  state_ = std::make_unique<State>(std::move(folder), words, threads);
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
  return merge_shards(state_->files, file, offset);
}

}  // namespace sheafc
