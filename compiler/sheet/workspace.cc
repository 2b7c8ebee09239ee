// SPDX-License-Identifier: GPL-2.0-or-later
// One sink a file; they are merged in the files' order, so that no run differs from another.
#include "compiler/sheet/workspace.h"

#include <algorithm>
#include <filesystem>
#include <optional>

#include "compiler/sheet/parallel.h"
#include "compiler/sheet/read_sheet.h"
#include "compiler/source/sheet_files.h"

namespace sheafc {
namespace {

namespace fs = std::filesystem;
using sheaf::Failure;
using sheaf::Result;

struct ReadFile {
  std::shared_ptr<const SourceFile> file;
  std::unique_ptr<Sheet> sheet;
  Diagnostics faults;
  std::optional<Failure> failure;
};

void read_one(const SheetFile& place, ReadFile& read) {
  auto source = read_source(place.opened, place.opened);
  if (!source) {
    read.failure = source.failure();
    return;
  }
  auto file = std::make_shared<SourceFile>(std::move(source).value());
  read.file = file;
  if (file->parse(read.faults)) read.sheet = read_sheet(file, place.path, read.faults);
}

}  // namespace

Result<std::vector<SheetFile>> find_sheets(const std::string& folder_or_file) {
  const auto listed = list_sheets(folder_or_file);
  if (!listed) return listed.failure();
  const fs::path root(folder_or_file);
  const bool is_file = listed->size() == 1 && fs::path(listed->front()) == root;
  std::vector<SheetFile> found;
  for (const std::string& opened : *listed) {
    const fs::path path = is_file ? root.filename() : fs::path(opened).lexically_relative(root);
    found.push_back({opened, path.generic_string()});
  }
  return found;
}

Result<Workspace> read_workspace(std::span<const std::string> folders, Diagnostics& sink) {
  std::vector<SheetFile> places;
  for (const std::string& folder : folders) {
    auto found = find_sheets(folder);
    if (!found) return found.failure();
    std::ranges::move(std::move(found).value(), std::back_inserter(places));
  }
  std::vector<ReadFile> read(places.size());
  for_all(places.size(), [&](std::size_t i) { read_one(places[i], read[i]); });

  Workspace workspace;
  for (std::size_t i = 0; i < read.size(); ++i) {
    if (read[i].failure) return *read[i].failure;
    sink.take(std::move(read[i].faults));
    workspace.files.push_back(std::move(read[i].file));
    if (read[i].sheet) workspace.sheets.push_back(std::move(read[i].sheet));
    else workspace.unread.push_back(fs::path(places[i].path).stem().string());
  }
  std::ranges::stable_sort(workspace.sheets, {}, &Sheet::name);
  sink.sort();
  return workspace;
}

Workspace read_text(std::string name, std::string text, Diagnostics& sink) {
  Workspace workspace;
  auto file = std::make_shared<SourceFile>(name, std::move(text));
  workspace.files.push_back(file);
  if (!file->parse(sink)) return workspace;
  if (auto sheet = read_sheet(file, std::move(name), sink)) workspace.sheets.push_back(std::move(sheet));
  return workspace;
}

const SourceFile* Workspace::file_named(std::string_view shown_name) const {
  const auto found = std::ranges::find(files, shown_name, [](const auto& file) { return file->name(); });
  return found == files.end() ? nullptr : found->get();
}

}  // namespace sheafc
