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
  std::string path;
  std::shared_ptr<const SourceFile> file;
  std::shared_ptr<Sheet> sheet;
  Diagnostics faults;
  FileState state;
  std::optional<Failure> failure;
};

void read_sheet_of(std::shared_ptr<SourceFile> file, const std::string& path, ReadFile& read) {
  read.path = path;
  read.file = file;
  if (file->parse(read.faults)) read.sheet = read_sheet(file, path, read.faults);
  file->drop_tree();
}

void read_one(const SheetFile& place, ReadFile& read) {
  read.state = state_of(place.opened).value_or(FileState{});
  auto source = read_source(place.opened, place.opened);
  if (source)
    read_sheet_of(std::make_shared<SourceFile>(std::move(source).value()), place.path, read);
  else
    read.failure = source.failure();
}

Workspace gather(std::vector<ReadFile> read, Diagnostics& sink) {
  Workspace workspace;
  for (ReadFile& file : read) {
    sink.take(file.faults);
    workspace.faults.push_back(std::move(file.faults));
    workspace.states.push_back(file.state);
    workspace.files.push_back(std::move(file.file));
    if (file.sheet)
      workspace.sheets.push_back(std::move(file.sheet));
    else
      workspace.unread.push_back(fs::path(file.path).stem().string());
  }
  std::ranges::stable_sort(workspace.sheets, {}, &Sheet::name);
  sink.sort();
  return workspace;
}

}  // namespace

Result<std::vector<SheetFile>> find_sheets(const std::string& folder_or_file) {
  const auto listed = list_sheets(folder_or_file);
  if (!listed) return listed.failure();
  if (listed->size() == 1 && listed->front() == folder_or_file)
    return std::vector<SheetFile>{{folder_or_file, fs::path(folder_or_file).filename().generic_string()}};
  std::vector<SheetFile> found;
  const std::size_t beginning = folder_or_file.size() + (folder_or_file.ends_with('/') ? 0 : 1);
  for (const std::string& opened : *listed) found.push_back({opened, opened.substr(beginning)});
  return found;
}

void Workspace::take(Workspace other) {
  const auto append = [](auto& to, auto& from) { std::ranges::move(from, std::back_inserter(to)); };
  append(files, other.files);
  append(sheets, other.sheets);
  append(unread, other.unread);
  append(states, other.states);
  append(faults, other.faults);
  std::ranges::stable_sort(sheets, {}, &Sheet::name);
}

Result<Workspace> read_sheets(std::span<const SheetFile> places, Diagnostics& sink) {
  std::vector<ReadFile> read(places.size());
  for_all(places.size(), [&](std::size_t i) { read_one(places[i], read[i]); });
  for (const ReadFile& file : read) {
    if (file.failure) return *file.failure;
  }
  return gather(std::move(read), sink);
}

Result<Workspace> read_workspace(std::span<const std::string> folders, Diagnostics& sink) {
  std::vector<SheetFile> places;
  for (const std::string& folder : folders) {
    auto found = find_sheets(folder);
    if (!found) return found.failure();
    std::ranges::move(std::move(found).value(), std::back_inserter(places));
  }
  return read_sheets(places, sink);
}

Workspace read_texts(std::span<const SheetText> texts, Diagnostics& sink) {
  std::vector<ReadFile> read(texts.size());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    read_sheet_of(std::make_shared<SourceFile>(texts[i].path, texts[i].text), texts[i].path, read[i]);
  }
  return gather(std::move(read), sink);
}

}  // namespace sheafc
