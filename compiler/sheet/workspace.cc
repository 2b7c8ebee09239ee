// SPDX-License-Identifier: GPL-2.0-or-later
// One sink a file; they are merged in the files' order, so that no run differs from another.
#include "compiler/sheet/workspace.h"

#include <algorithm>
#include <filesystem>
#include <mutex>
#include <optional>
#include <unordered_map>

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
  std::unique_ptr<Sheet> sheet;
  Diagnostics faults;
  FileState state;
  std::optional<Failure> failure;
};

// The files of an earlier reading, by the paths they were opened by.
class Earlier {
 public:
  explicit Earlier(Workspace workspace) {
    std::unordered_map<const SourceFile*, std::unique_ptr<Sheet>> sheets;
    for (auto& sheet : workspace.sheets) sheets.emplace(sheet->file.get(), std::move(sheet));
    for (std::size_t i = 0; i < workspace.files.size(); ++i) {
      const auto& file = workspace.files[i];
      ReadFile read{{}, file, nullptr, std::move(workspace.faults[i]), workspace.states[i], {}};
      if (const auto sheet = sheets.find(file.get()); sheet != sheets.end()) read.sheet = std::move(sheet->second);
      files_.emplace(file->name(), std::move(read));
    }
  }

  // What was read of the file, if it is the same sheet still. A file that is named twice is read anew.
  bool take_over(const SheetFile& place, ReadFile& read) {
    const std::lock_guard lock(mutex_);
    const auto found = files_.find(place.opened);
    if (found == files_.end() || !found->second.file) return false;
    if (!surely_unchanged(found->second.state, read.state)) return false;
    const Sheet* sheet = found->second.sheet.get();
    if (sheet && sheet->path != place.path) return false;
    read = std::move(found->second);
    read.path = place.path;
    return true;
  }

 private:
  std::mutex mutex_;
  std::unordered_map<std::string, ReadFile> files_;
};

void read_sheet_of(std::shared_ptr<SourceFile> file, const std::string& path, ReadFile& read) {
  read.path = path;
  read.file = file;
  if (file->parse(read.faults)) read.sheet = read_sheet(std::move(file), path, read.faults);
}

void read_one(const SheetFile& place, Earlier& earlier, ReadFile& read) {
  read.state = state_of(place.opened).value_or(FileState{});
  if (earlier.take_over(place, read)) return;
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
  const fs::path root(folder_or_file);
  const bool is_file = listed->size() == 1 && fs::path(listed->front()) == root;
  std::vector<SheetFile> found;
  for (const std::string& opened : *listed) {
    const fs::path path = is_file ? root.filename() : fs::path(opened).lexically_relative(root);
    found.push_back({opened, path.generic_string()});
  }
  return found;
}

Result<Workspace> read_workspace(std::span<const std::string> folders, Diagnostics& sink,
                                 ReadOptions options) {
  std::vector<SheetFile> places;
  for (const std::string& folder : folders) {
    auto found = find_sheets(folder);
    if (!found) return found.failure();
    std::ranges::move(std::move(found).value(), std::back_inserter(places));
  }
  std::vector<ReadFile> read(places.size());
  Earlier earlier(std::move(options.earlier));
  for_all(places.size(), [&](std::size_t i) {
    read_one(places[i], earlier, read[i]);
    if (options.done) ++*options.done;
  });
  for (const ReadFile& file : read) {
    if (file.failure) return *file.failure;
  }
  return gather(std::move(read), sink);
}

Workspace read_texts(std::span<const SheetText> texts, Diagnostics& sink) {
  std::vector<ReadFile> read(texts.size());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    read_sheet_of(std::make_shared<SourceFile>(texts[i].path, texts[i].text), texts[i].path, read[i]);
  }
  return gather(std::move(read), sink);
}

}  // namespace sheafc
