// SPDX-License-Identifier: GPL-2.0-or-later
// The three parts of an open library: the file, its rows and its index.
#include "query/library/library.h"

#include <algorithm>
#include <chrono>
#include <thread>
#include <utility>

#include "query/library/index.h"
#include "query/library/index_guard.h"
#include "query/library/library_state.h"

namespace sheaf {
namespace {

// How long a file that is replaced again and again is tried, and how long it is left alone between two tries:
// tries without a pause can keep step with the replacing, and fail one like the other.
constexpr std::chrono::seconds patience(5);
constexpr std::chrono::milliseconds pause(1);

Failure damaged(const std::string& path, const std::string& how) {
  return Failure{path + " is damaged: " + how + "; copy or build it again"};
}

}  // namespace

Failure Library::State::damage(const Failure& how) const { return damaged(file.path(), how.message); }

Result<Index> Library::State::open_index(const LibraryFile& file, FileDescriptor at_index) {
  auto guard = std::make_unique<IndexGuard>(at_index.number(), file.trailer());
  const Failure unsound = damaged(file.path(), "its index does not match its checks");
  if (!guard->first_block_holds()) return unsound;
  try {
    Xapian::Database database(at_index.release());  // which closes it, whatever happens
    if (!guard->has_seen_reads() && !guard->check_all()) return unsound;
    return Index(std::move(database), std::move(guard));
  } catch (const Xapian::Error& error) {
    return damaged(file.path(), "its index cannot be read (" + error.get_msg() + ')');
  } catch (const std::exception& error) {
    return damaged(file.path(), std::string("its index cannot be read (") + error.what() + ')');
  }
}

std::optional<Failure> Library::State::read_facts() {
  if (const auto fault = rows.check_schema()) return damage(*fault);
  auto read = rows.facts();
  if (!read) return damage(read.failure());
  facts = std::move(read).value();
  facts.path = file.path();
  facts.digest = to_hexadecimal(file.trailer().digest);
  facts.format = static_cast<int>(library_format);
  facts.bytes = static_cast<std::int64_t>(file.trailer().file_bytes);
  if (index.entry_count() != facts.entries) {
    return damage({"its rows and its index are not of the same entries"});
  }
  return std::nullopt;
}

Result<Library> open_library(const std::string& path) {
  const auto begun = std::chrono::steady_clock::now();
  for (; std::chrono::steady_clock::now() - begun < patience; std::this_thread::sleep_for(pause)) {
    auto file = LibraryFile::open(path);
    if (!file) return file.failure();
    auto rows = SqlDatabase::open_immutable(path);
    FileDescriptor at_index = file->reopen_at_index();
    if (!file->is_in_place() || at_index.number() < 0) continue;  // replaced just now: all three anew
    if (!rows) return damaged(path, rows.failure().message);
    auto index = Library::State::open_index(*file, std::move(at_index));
    if (!index) return index.failure();
    auto state = std::make_unique<Library::State>(Library::State{
        std::move(file).value(), RowReader(std::move(rows).value()), std::move(index).value(), {}});
    if (auto fault = state->read_facts()) return *fault;
    return Library(std::move(state));
  }
  return Failure{"cannot open " + path + ": it is being replaced all the time"};
}

Library::Library(std::unique_ptr<State> state) : state_(std::move(state)) {}
Library::Library(Library&&) noexcept = default;
Library& Library::operator=(Library&&) noexcept = default;
Library::~Library() = default;

const LibraryFacts& Library::facts() const { return state_->facts; }
const std::string& Library::label() const { return state_->label; }

void label_libraries(const std::vector<Library*>& together) {
  for (Library* library : together) {
    const auto has_its_name = [&](const Library* other) {
      return other->facts().name == library->facts().name;
    };
    const bool is_one_of_its_name = std::ranges::count_if(together, has_its_name) == 1;
    const LibraryFacts& facts = library->facts();
    library->state_->label = together.size() < 2 ? "" : is_one_of_its_name ? facts.name : facts.path;
    library->state_->rows.set_label(library->state_->label);
  }
}

Index& index_of(Library& library) { return library.state_->index; }

Result<EntryOnSheet> Library::entry_by_id(EntryId id) {
  return state_->naming_the_file(state_->rows.entry_on_sheet(id));
}

Result<std::vector<EntryRecord>> Library::entries_at(std::string_view address) {
  const auto ids = state_->rows.entries_at(address);
  if (!ids) return state_->damage(ids.failure());
  std::vector<EntryRecord> entries;
  for (const EntryId id : *ids) {
    auto entry = state_->rows.entry(id);
    if (!entry) return state_->damage({std::string(address) + ": " + entry.failure().message});
    const bool asked_for =
        entry->address == address || std::ranges::find(entry->formerly, address) != entry->formerly.end();
    if (!asked_for) {
      return state_->damage(
          {"its list of addresses leads from " + std::string(address) + " to another entry"});
    }
    entries.push_back(std::move(entry).value());
  }
  return entries;
}

Result<std::vector<SheetRecord>> Library::sheet_without_entries(std::string_view name) {
  auto heads = state_->rows.sheet_named(name);
  if (!heads) return state_->damage({std::string(name) + ": " + heads.failure().message});
  std::vector<SheetRecord> sheets;
  for (const SheetHeadPtr& head : *heads) sheets.push_back(head->sheet);
  return sheets;
}

Result<std::vector<SheetRecord>> Library::sheet(std::string_view name) {
  auto heads = state_->rows.sheet_named(name);
  if (!heads) return state_->damage({std::string(name) + ": " + heads.failure().message});
  std::vector<SheetRecord> sheets;
  for (const SheetHeadPtr& head : *heads) {
    auto entries = state_->rows.entries_of(*head);
    if (!entries) return state_->damage({std::string(name) + ": " + entries.failure().message});
    sheets.push_back(head->sheet);
    sheets.back().entries = std::move(entries).value();
  }
  return sheets;
}

Result<std::vector<SheetRecord>> Library::sheets() {
  std::vector<SheetRecord> sheets;
  const auto fault = state_->rows.for_each_sheet([&](const SheetHead& head) {
    sheets.push_back(head.sheet);
    return true;
  });
  if (fault) return state_->damage(*fault);
  return sheets;
}

std::optional<Failure> Library::for_each_entry(const Visit& visit) {
  std::optional<Failure> entry_fault;
  const auto fault = state_->rows.for_each_sheet([&](const SheetHead& head) {
    for (std::int64_t i = 0; i < head.entries; ++i) {
      const EntryId id = head.first_entry + static_cast<EntryId>(i);
      const auto entry = state_->rows.entry(id);
      if (!entry) entry_fault = entry.failure();
      if (!entry || !visit(id, *entry, head.sheet)) return false;
    }
    return true;
  });
  if (entry_fault) return state_->damage(*entry_fault);
  if (fault) return state_->damage(*fault);
  return std::nullopt;
}

Result<std::vector<Machine>> Library::machines() { return state_->naming_the_file(state_->rows.machines()); }

Result<std::vector<Machine>> Library::machines_with_word(std::string_view folded) {
  return state_->naming_the_file(state_->rows.machines_with_word(folded));
}

Result<std::vector<Machine>> Library::machines_beginning(std::string_view folded) {
  return state_->naming_the_file(state_->rows.machines_beginning(folded));
}

Result<std::vector<WordRecord>> Library::words() { return state_->naming_the_file(state_->rows.words()); }

Result<std::vector<WordRecord>> Library::words_of_group(std::string_view group) {
  return state_->naming_the_file(state_->rows.words_of_group(group));
}

Result<WordsBeginningPtr> Library::group_words(std::string_view first_stem) {
  return state_->naming_the_file(state_->rows.group_words(first_stem));
}

}  // namespace sheaf
