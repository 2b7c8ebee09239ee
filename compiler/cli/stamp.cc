// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/stamp.h"

#include <filesystem>

#include "compiler/cli/build_cache.h"
#include "compiler/emit/shard.h"
#include "query/library/hash.h"
#include "query/library/sql.h"

namespace sheafc {
namespace {

// The day counts: allowances end, and readings grow old.
std::string circumstances_of(const CompileRequest& request, const std::string& library) {
  std::string all = program_identity() + '\n' + sheaf::sqlite_version() + '\n' + xapian_version() + '\n' +
                    to_text(today()) + '\n' + std::filesystem::path(library).stem().string();
  for (const auto* list : {&request.folders, &request.libraries}) {
    all += "\n--";
    for (const std::string& path : *list) all += '\n' + path;
  }
  return all;
}

std::optional<std::uint64_t> hash_of_file(const std::string& path) {
  const auto source = read_source(path, path);
  if (!source) return std::nullopt;
  return sheaf::hash_of(source->bytes());
}

bool is_same_file(const StampedFile& before, const std::string& path) {
  const auto now = state_of(path);
  if (path != before.path || !now) return false;
  if (surely_unchanged(before.state, *now)) return true;
  return now->bytes == before.state.bytes && hash_of_file(path) == before.hash;
}

// A library is larger than any sheet, and is replaced and never changed: its times alone decide, and its inode.
bool is_same_library(const StampedFile& before, const std::string& path) {
  FileState settled = before.state;
  settled.settled = true;
  const auto now = state_of(path);
  return now && surely_unchanged(settled, *now);
}

}  // namespace

std::optional<Stamp> stamp_of(const CompileRequest& request, const Compilation& compilation,
                              const Receipt& receipt) {
  Stamp stamp;
  stamp.circumstances = circumstances_of(request, receipt.path);
  const Workspace& workspace = compilation.workspace;
  for (std::size_t i = 0; i < workspace.files.size(); ++i) {
    const SourceFile& file = *workspace.files[i];
    stamp.inputs.push_back(
        {std::string(file.name()), workspace.states[i], sheaf::hash_of(file.bytes())});
  }
  for (const std::string& path : request.libraries) {
    const auto state = state_of(path);
    if (!state) return std::nullopt;
    stamp.inputs.push_back({path, *state, 0});
  }
  const auto state = state_of(receipt.path);
  if (!state) return std::nullopt;
  stamp.library = {receipt.path, *state, 0};
  stamp.entries = receipt.entries;
  stamp.sheets = receipt.sheets;
  stamp.found = compilation.diagnostics;
  return stamp;
}

bool still_holds(const Stamp& stamp, const CompileRequest& request, const std::string& library) {
  if (stamp.circumstances != circumstances_of(request, library)) return false;
  if (stamp.library.path != library || !is_same_library(stamp.library, library)) return false;
  std::size_t at = 0;
  for (const std::string& folder : request.folders) {
    const auto found = find_sheets(folder);
    if (!found) return false;
    for (const SheetFile& sheet : *found) {
      if (at == stamp.inputs.size() || !is_same_file(stamp.inputs[at++], sheet.opened)) return false;
    }
  }
  for (const std::string& path : request.libraries) {
    if (at == stamp.inputs.size() || stamp.inputs[at].path != path) return false;
    if (!is_same_library(stamp.inputs[at++], path)) return false;
  }
  return at == stamp.inputs.size();
}

}  // namespace sheafc
