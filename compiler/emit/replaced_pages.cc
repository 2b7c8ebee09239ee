// SPDX-License-Identifier: GPL-2.0-or-later
// SQLite writes the new rows into a small file, and from there they are taken as they lie.
#include "compiler/emit/replaced_pages.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <set>

#include "compiler/emit/row_pages.h"
#include "compiler/emit/row_writer.h"

namespace sheafc {
namespace {

using namespace sheaf;

std::set<std::string> formerly(const EntryRecord& entry) {
  return {entry.formerly.begin(), entry.formerly.end()};
}

// Else the lists by which rows are found would change.
bool keeps_its_addresses(const ReplacedSheet& sheet) {
  return std::ranges::equal(sheet.before.entries, sheet.now.entries,
                            [](const EntryRecord& one, const EntryRecord& other) {
                              return one.address == other.address && formerly(one) == formerly(other);
                            });
}

std::string newest_date(const SheetRecord& sheet) {
  std::string newest = sheet.checked.on;
  for (const EntryRecord& entry : sheet.entries) newest = std::max(newest, entry.checked.on);
  return newest;
}

// False if the newest date may have gone, for then all sheets would have to be asked.
bool bring_date_up(const std::vector<ReplacedSheet>& sheets, std::string& date) {
  std::string before, now;
  for (const ReplacedSheet& sheet : sheets) {
    before = std::max(before, newest_date(sheet.before));
    now = std::max(now, newest_date(sheet.now));
  }
  if (before == date && now < date) return false;
  date = std::max(date, now);
  return true;
}

std::optional<Failure> write_few(const SqlDatabase& library, const std::vector<ReplacedSheet>& sheets,
                                 const LibraryFacts& facts, const std::string& file) {
  auto created = RowWriter::create(file);
  if (!created) return created.failure();
  RowWriter rows = std::move(created).value();
  SqlQuery place(library.handle(), "SELECT id, first_entry FROM sheet WHERE name = ?");
  for (const ReplacedSheet& sheet : sheets) {
    if (!place.begin().bind(1, sheet.now.name).next()) return Failure{"there is no sheet " + sheet.now.name};
    const auto first_entry = static_cast<EntryId>(place.integer(1));
    if (auto fault = rows.add_at(place.integer(0), first_entry, sheet.now, sheet.bodies)) return fault;
  }
  return rows.save(facts);
}

std::uint32_t root_of(const SqlDatabase& database, std::string_view table) {
  SqlQuery root(database.handle(), "SELECT rootpage FROM sqlite_schema WHERE name = ?");
  return root.bind(1, table).next() ? static_cast<std::uint32_t>(root.integer(0)) : 0;
}

// Removes it in the end.
class ScratchFile {
 public:
  explicit ScratchFile(const std::string& path) : path_(path) {}
  ScratchFile(const ScratchFile&) = delete;
  ScratchFile& operator=(const ScratchFile&) = delete;
  ~ScratchFile() { ::unlink(path_.c_str()); }

 private:
  const std::string& path_;
};

}  // namespace

std::optional<std::map<std::uint32_t, std::string>> replaced_pages(const std::string& library,
                                                                   const std::vector<ReplacedSheet>& sheets,
                                                                   const std::string& scratch,
                                                                   LibraryFacts& facts) {
  if (!std::ranges::all_of(sheets, keeps_its_addresses) || !bring_date_up(sheets, facts.data_date))
    return std::nullopt;
  const auto all = SqlDatabase::open_immutable(library);
  const ScratchFile made(scratch);
  if (!all || write_few(*all, sheets, facts, scratch)) return std::nullopt;
  const auto few = SqlDatabase::open_immutable(scratch);
  const FileDescriptor all_file(::open(library.c_str(), O_RDONLY | O_CLOEXEC)),
      few_file(::open(scratch.c_str(), O_RDONLY | O_CLOEXEC));
  if (!few || all_file.number() < 0 || few_file.number() < 0) return std::nullopt;
  RowPages pages(all_file), few_pages(few_file);
  for (const char* table : {"library", "sheet", "entry"}) {
    const auto rows = few_pages.rows_of(root_of(*few, table));
    if (!rows || !pages.replace(root_of(*all, table), *rows)) return std::nullopt;
  }
  return pages.changed();
}

}  // namespace sheafc
