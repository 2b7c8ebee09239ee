// SPDX-License-Identifier: GPL-2.0-or-later
// One sink a file; they are merged in the files' order, so that no run differs from another.
#include "compiler/sheet/workspace.h"

#include <algorithm>
#include <filesystem>
#include <optional>

#include "compiler/sheet/parallel.h"
#include "compiler/sheet/read_sheet.h"
#include "compiler/sheet/sheet_rules.h"

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

bool is_hidden(const fs::path& path) { return path.filename().string().starts_with('.'); }

void take_file(const fs::path& file, const fs::path& folder, std::vector<SheetFile>& found) {
  const std::string extension = file.extension().string();
  if (extension == ".yaml" || extension == ".yml") {
    found.push_back({file.generic_string(), file.lexically_relative(folder).generic_string()});
  }
}

Failure cannot_read(const std::string& path, const std::error_code& error) {
  return Failure{"cannot read " + path + ": " + error.message()};
}

std::optional<Failure> walk(const std::string& folder, std::vector<SheetFile>& found) {
  std::error_code error;
  fs::recursive_directory_iterator at(folder, error), end;
  while (!error && at != end) {
    const fs::directory_entry entry = *at;
    std::error_code unknown;  // a link to nowhere is no folder: opening it says what is wrong
    if (is_hidden(entry.path())) {
      if (entry.is_directory(unknown)) at.disable_recursion_pending();
    } else if (!entry.is_directory(unknown)) {
      take_file(entry.path(), folder, found);
    }
    at.increment(error);
  }
  if (error) return cannot_read(folder, error);
  return {};
}

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

// Spans name a file by its SourceFile; a file that is no sheet by its name alone has one too.
void report_ending(const ReadFile& read, const SheetFile& place, Diagnostics& sink) {
  if (place.path.ends_with(".yml")) sink.error(rule::file_name, {read.file->name(), 1, 1, 1}, "a sheet's file ends in .yaml, not .yml");
}

}  // namespace

Result<std::vector<SheetFile>> find_sheets(const std::string& folder_or_file) {
  std::error_code error;
  std::vector<SheetFile> found;
  const fs::path path(folder_or_file);
  const auto status = fs::status(path, error);
  if (!fs::exists(status)) return Failure{"there is no file or folder " + folder_or_file};
  if (!fs::is_directory(status)) {
    found.push_back({path.generic_string(), path.filename().generic_string()});
    return found;
  }
  if (auto failure = walk(folder_or_file, found)) return *failure;
  std::ranges::sort(found, {}, &SheetFile::path);
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
    report_ending(read[i], places[i], sink);
    sink.take(std::move(read[i].faults));
    workspace.files.push_back(std::move(read[i].file));
    if (read[i].sheet) workspace.sheets.push_back(std::move(read[i].sheet));
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
