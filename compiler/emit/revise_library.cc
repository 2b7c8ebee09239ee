// SPDX-License-Identifier: GPL-2.0-or-later
// The index goes first: what of it must be made anew keeps the other cores busy while the rows are replaced.
#include "compiler/emit/revise_library.h"

#include <algorithm>
#include <future>
#include <map>
#include <string_view>
#include <tuple>

#include "compiler/emit/file_limit.h"
#include "compiler/emit/library_parts.h"
#include "compiler/emit/replaced_pages.h"
#include "query/library/library.h"

namespace sheafc {
namespace {

using namespace sheaf;

Result<SheetRecord> sheet_of(Library& library, const std::string& name) {
  auto found = library.sheet(name);
  if (!found) return found.failure();
  if (found->size() != 1) return Failure{"there is no sheet " + name};
  return std::move(found->front());
}

auto machines_of(const SheetRecord& sheet) {
  std::vector<std::tuple<std::string, std::string, int, int>> machines;
  for (const EntryRecord& entry : sheet.entries) {
    for (const FitRecord& fit : entry.fits) {
      machines.emplace_back(fit.make, fit.model, fit.year_from, fit.year_to);
    }
  }
  std::ranges::sort(machines);
  return machines;
}

// Without a change to any other row: those of other sheets, and of machines.
bool takes_the_place(const SheetRecord& before, const SheetRecord& now) {
  return before.entries.size() == now.entries.size() && machines_of(before) == machines_of(now);
}

std::optional<std::vector<ReplacedSheet>> replaced_by(std::vector<SheetRecord> changed, Library& library) {
  std::vector<ReplacedSheet> replaced;
  for (SheetRecord& now : changed) {
    auto before = sheet_of(library, now.name);
    if (!before || !takes_the_place(*before, now)) return std::nullopt;
    SheetBodies bodies = bodies_of(now);
    replaced.push_back({std::move(before).value(), std::move(now), std::move(bodies)});
  }
  return replaced;
}

std::optional<Failure> add_to_index(const EarlierLibrary& earlier, const std::vector<ReplacedSheet>& replaced,
                                    IndexBuilder& index) {
  std::map<std::string_view, const ReplacedSheet*> by_name;
  for (const ReplacedSheet& sheet : replaced) by_name.emplace(sheet.now.name, &sheet);
  for (const HashedSheet& sheet : earlier.sheets) {
    const auto found = by_name.find(sheet.name);
    auto fault = found == by_name.end()
                     ? index.add(sheet)
                     : index.add(found->second->now, hash_of(found->second->now, found->second->bodies));
    if (fault) return fault;
  }
  return std::nullopt;
}

}  // namespace

Result<std::optional<Receipt>> revise_library(const std::string& path, const EarlierLibrary& earlier,
                                              std::vector<SheetRecord> changed, EmitOptions options) {
  const std::optional<Receipt> not_this_way;
  const FileLimitGuard guard;
  auto opened = open_library(path);
  if (!opened) return not_this_way;
  Library library = std::move(opened).value();
  auto words = library.words();
  const auto replaced = replaced_by(std::move(changed), library);
  if (!words || !replaced) return not_this_way;
  auto folder = BuildFolder::beside(path);
  if (!folder) return folder.failure();
  IndexBuilder index =
      index_in(*folder, *words, options, [&](const std::string& name) { return sheet_of(library, name); });
  LibraryParts parts{std::move(folder).value(), path,
                     library.facts().name,      std::move(words).value(),
                     std::move(options),        std::move(index)};
  if (auto fault = add_to_index(earlier, *replaced, parts.index)) return parts.cannot_write(*fault);
  bool is_another = false;
  const auto in_order = [&](const std::string& file, LibraryFacts& facts) -> Result<RowsSealed> {
    const std::string scratch = parts.folder.file("rows");
    is_another = unseal_rows(path, earlier.rows_hash, scratch).has_value();
    if (is_another) return Failure{"it is another library"};
    auto reopened = RowWriter::reopen(scratch);
    if (!reopened) return reopened.failure();
    RowWriter rows = std::move(reopened).value();
    for (const ReplacedSheet& sheet : *replaced) {
      if (auto fault = rows.replace(sheet.now, sheet.bodies)) return *fault;
    }
    if (auto fault = rows.finish(parts.words, facts, file)) return *fault;
    return seal_rows(file);
  };
  const auto page_by_page = [&](const std::string& file, LibraryFacts& facts) -> Result<RowsSealed> {
    LibraryFacts now = library.facts();
    const auto pages = replaced_pages(path, *replaced, parts.folder.file("few"), now);
    if (!pages) return in_order(file, facts);
    facts = now;
    auto rows = copy_rows(path, *pages, file);
    is_another = rows && rows->hash_before != earlier.rows_hash;
    if (is_another) return Failure{"it is another library"};
    return rows;
  };
  if (auto stop = parts.stopped()) return *stop;
  auto receipt = parts.put_together(page_by_page);
  if (is_another) return not_this_way;
  if (!receipt) return receipt.failure();
  // Of the earlier file: the disk is waited for while its place is freed. The next build waits for that, or
  // the end of the program.
  static std::future<void> closing;
  closing = std::async(std::launch::async,
                       [last = std::move(library)]() mutable { const Library closed = std::move(last); });
  return std::optional(std::move(receipt).value());
}

}  // namespace sheafc
