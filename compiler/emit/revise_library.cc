// SPDX-License-Identifier: GPL-2.0-or-later
// The index goes first: what of it must be made anew keeps the other cores busy while the rows are replaced.
#include "compiler/emit/revise_library.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "compiler/emit/file_limit.h"
#include "compiler/emit/library_parts.h"
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
bool takes_the_place(Library& library, const SheetRecord& sheet) {
  const auto before = sheet_of(library, sheet.name);
  return before && before->entries.size() == sheet.entries.size() &&
         machines_of(*before) == machines_of(sheet);
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
  if (!words) return not_this_way;
  std::map<std::string, SheetRecord> by_name;
  for (SheetRecord& sheet : changed) {
    if (!takes_the_place(library, sheet)) return not_this_way;
    by_name.emplace(sheet.name, std::move(sheet));
  }
  auto folder = BuildFolder::beside(path);
  if (!folder) return folder.failure();
  const std::string scratch = folder->file("rows");
  if (unseal_rows(path, earlier.rows_hash, scratch)) return not_this_way;
  auto rows = RowWriter::reopen(scratch);
  if (!rows) return not_this_way;
  IndexBuilder index = index_in(*folder, *words, options);
  LibraryParts parts{std::move(folder).value(), path,
                     library.facts().name,      std::move(words).value(),
                     options.interrupted,       std::move(rows).value(),
                     std::move(index)};
  const auto recall = [&](const std::string& name) { return sheet_of(library, name); };
  for (const HashedSheet& sheet : earlier.sheets) {
    const auto found = by_name.find(sheet.name);
    const auto fault = found == by_name.end()
                           ? parts.index.add(sheet, recall)
                           : parts.index.add(found->second, hash_of(found->second, bodies_of(found->second)));
    if (fault) return parts.cannot_write(*fault);
  }
  for (const auto& [_, sheet] : by_name) {
    if (auto fault = parts.rows.replace(sheet, bodies_of(sheet))) return parts.cannot_write(*fault);
  }
  if (auto stop = parts.stopped()) return *stop;
  auto receipt = parts.put_together();
  if (!receipt) return receipt.failure();
  return std::optional(std::move(receipt).value());
}

}  // namespace sheafc
