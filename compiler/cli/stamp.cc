// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/stamp.h"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <iterator>

#include "compiler/cli/build_cache.h"
#include "compiler/emit/shard.h"
#include "compiler/sheet/parallel.h"
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

bool is_same_content(const StampedFile& before, const FileState& now) {
  if (surely_unchanged(before.state, now)) return true;
  return now.bytes == before.state.bytes && hash_of_file(before.path) == before.hash;
}

// A library is larger than any sheet, and is replaced and never changed: its times alone decide, and its
// inode.
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
  for (std::size_t i = 0; i < compilation.files.size(); ++i) {
    const ReadFile& file = compilation.files[i];
    stamp.inputs.push_back({compilation.places[i].opened, file.state, file.hash});
  }
  for (const std::string& path : request.libraries) {
    const auto state = state_of(path);
    if (!state) return std::nullopt;
    stamp.inputs.push_back({path, *state, 0});
  }
  stamp.found = compilation.diagnostics;
  if (!set_library(stamp, receipt)) return std::nullopt;
  return stamp;
}

bool set_library(Stamp& stamp, const Receipt& receipt) {
  const auto state = state_of(receipt.path);
  if (!state) return false;
  stamp.library = {receipt.path, *state, 0};
  stamp.digest = receipt.digest;
  stamp.entries = receipt.entries;
  stamp.sheets = receipt.sheets;
  return true;
}

std::string identity_of(const Stamp& stamp) {
  std::string all = stamp.circumstances + '\n' + stamp.digest;
  for (const StampedFile& input : stamp.inputs)
    all += '\n' + input.path + ' ' + sheaf::to_hexadecimal(input.hash);
  return sheaf::to_hexadecimal(sheaf::hash_of(all));
}

std::optional<SecondLook> look_again(const Stamp& stamp, const CompileRequest& request,
                                     const std::string& library, const std::function<void()>& when_changed) {
  if (stamp.circumstances != circumstances_of(request, library)) return std::nullopt;
  if (stamp.library.path != library || !is_same_library(stamp.library, library)) return std::nullopt;
  SecondLook look;
  for (const std::string& folder : request.folders) {
    auto found = find_sheets(folder);
    if (!found) return std::nullopt;
    std::ranges::move(std::move(found).value(), std::back_inserter(look.files));
  }
  if (look.files.size() + request.libraries.size() != stamp.inputs.size()) return std::nullopt;
  look.states.resize(look.files.size());
  std::vector<std::uint8_t> is_changed(look.files.size());
  std::atomic<bool> is_gone = false, any_changed = false;
  for_all(look.files.size(), [&](std::size_t i) {
    const auto state = state_of(look.files[i].opened);
    if (!state || look.files[i].opened != stamp.inputs[i].path) {
      is_gone = true;
      return;
    }
    look.states[i] = *state;
    if (is_same_content(stamp.inputs[i], *state)) return;
    is_changed[i] = 1;
    if (!any_changed.exchange(true)) when_changed();
  });
  if (is_gone) return std::nullopt;
  for (std::size_t i = 0; i < is_changed.size(); ++i) {
    if (is_changed[i]) look.changed.push_back(i);
  }
  for (std::size_t i = 0; i < request.libraries.size(); ++i) {
    const StampedFile& before = stamp.inputs[look.files.size() + i];
    if (before.path != request.libraries[i] || !is_same_library(before, before.path)) return std::nullopt;
  }
  return look;
}

}  // namespace sheafc
