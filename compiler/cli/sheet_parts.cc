// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/sheet_parts.h"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <map>
#include <unordered_map>

#include "compiler/link/borrow.h"
#include "compiler/link/link_rules.h"
#include "compiler/link/references.h"
#include "compiler/sheet/common_sheets.h"
#include "compiler/sheet/parallel.h"
#include "query/library/hash.h"

namespace sheafc {
namespace {

using sheaf::Failure;
using sheaf::Result;

std::string sheet_name(const SheetFile& place) { return std::filesystem::path(place.path).stem().string(); }

std::optional<std::uint32_t> number_of(const std::vector<std::string>& names, std::string_view name) {
  const auto at = std::ranges::lower_bound(names, name);
  if (at == names.end() || *at != name) return std::nullopt;
  return static_cast<std::uint32_t>(at - names.begin());
}

// Rules compare figures with published tables: while a table cannot be read, they would call every figure
// that it proves a fault.
bool ought_to_be_a_table(const SourceFile& file) {
  return file.bytes().find("\ntable:") != std::string_view::npos;
}

bool is_read(const Workspace& workspace, const SourceFile& file) {
  return std::ranges::any_of(workspace.sheets, [&](const auto& sheet) { return sheet->file.get() == &file; });
}

}  // namespace

// What a part's sheets need, found by reading it.
class SheetParts::Gathering {
 public:
  explicit Gathering(SheetParts& parts)
      : parts_(parts), workspace_(parts.common_sheets_), read_(parts.common_) {}

  // `own` is the part; it and its bases must have all that they speak of, what others speak of only its own
  // bases.
  std::optional<Failure> gather(std::span<const std::uint32_t> own) {
    for (const std::uint32_t number : parts_.common_) need(number, Need::content);
    for (const std::uint32_t number : own) need(number, Need::all_it_names);
    if (parts_.count() == 1) return read_waiting();  // whatever they name is among them
    index_sheets(0);
    while (!waiting_.empty()) {
      if (auto failure = read_waiting()) return failure;
      for (const std::uint32_t number : std::exchange(waiting_, {})) need_what_it_names(number);
    }
    return std::nullopt;
  }

  Workspace take_workspace() {
    std::ranges::stable_sort(workspace_.sheets, {}, &Sheet::name);
    return std::move(workspace_);
  }
  // Whether all that a sheet of the file speaks of is there, so that what it lacks is a fault.
  bool is_complete(std::uint32_t number) const {
    const auto found = needs_.find(number);
    return found != needs_.end() && found->second == Need::all_it_names;
  }
  const Numbers& read() const { return read_; }

 private:
  enum class Need { content, all_it_names };

  void need(std::uint32_t number, Need how) {
    const auto [known, is_new] = needs_.emplace(number, how);
    if (!is_new && known->second >= how) return;
    known->second = how;
    waiting_.insert(number);
  }

  void need(const std::vector<std::string>& names, Need how) {
    for (const std::string& name : names) {
      if (const auto number = number_of(parts_.names_, name)) need(*number, how);
    }
  }

  void need_what_it_names(std::uint32_t number) {
    const Need how = needs_.at(number);
    const auto [first, last] = sheets_.equal_range(number);
    for (auto sheet = first; sheet != last; ++sheet) {
      const References references = references_of(*sheet->second);
      need(references.bases, how);
      if (how == Need::all_it_names) need(references.all, Need::content);
    }
  }

  std::optional<Failure> read_waiting() {
    std::vector<std::uint32_t> files;
    for (const std::uint32_t number : waiting_) {
      if (!read_.insert(number).second) continue;
      const auto& more = parts_.files_of_[number];
      files.insert(files.end(), more.begin(), more.end());
    }
    const std::size_t before = workspace_.sheets.size();
    auto more = parts_.read_files(files);
    if (!more) return more.failure();
    std::ranges::move(more->files, std::back_inserter(workspace_.files));
    std::ranges::move(more->sheets, std::back_inserter(workspace_.sheets));
    std::ranges::move(more->unread, std::back_inserter(workspace_.unread));
    index_sheets(before);
    return std::nullopt;
  }

  void index_sheets(std::size_t from) {
    for (std::size_t i = from; i < workspace_.sheets.size(); ++i) {
      if (const auto number = number_of(parts_.names_, workspace_.sheets[i]->name))
        sheets_.emplace(*number, workspace_.sheets[i].get());
    }
  }

  SheetParts& parts_;
  Workspace workspace_;
  Numbers read_;
  Numbers waiting_;
  std::map<std::uint32_t, Need> needs_;
  std::multimap<std::uint32_t, const Sheet*> sheets_;
};

Result<SheetParts> SheetParts::of(const CompileRequest& request, std::size_t part_bytes) {
  SheetParts parts;
  parts.request_ = request;
  for (const std::string& folder : request.folders) {
    auto found = find_sheets(folder);
    if (!found) return found.failure();
    std::ranges::move(std::move(found).value(), std::back_inserter(parts.places_));
  }
  if (parts.places_.empty()) return Failure{"there is no sheet (*.yaml) in " + request.folders.front()};
  parts.files_.resize(parts.places_.size());
  parts.part_by_name(part_bytes);
  if (parts.parts_.size() > 1) {
    if (auto failure = parts.find_common()) return *failure;
  }
  return parts;
}

void SheetParts::part_by_name(std::size_t part_bytes) {
  std::map<std::string, std::vector<std::uint32_t>> files;
  for (std::uint32_t i = 0; i < places_.size(); ++i) files[sheet_name(places_[i])].push_back(i);
  std::size_t bytes = part_bytes;
  for (auto& [name, places] : files) {
    if (bytes >= part_bytes) {
      parts_.emplace_back();
      bytes = 0;
    }
    parts_.back().push_back(static_cast<std::uint32_t>(names_.size()));
    for (const std::uint32_t file : places) {
      const auto state = state_of(places_[file].opened);
      bytes += state ? state->bytes : 0;
    }
    names_.push_back(name);
    files_of_.push_back(std::move(places));
  }
}

std::optional<Failure> SheetParts::find_common() {
  std::vector<char> may_be(places_.size());
  for_all(places_.size(), [&](std::size_t i) {
    const auto source = read_source(places_[i].opened, places_[i].opened);
    may_be[i] = !source || may_be_common(source->bytes());
  });
  std::vector<std::uint32_t> files;
  for (std::uint32_t number = 0; number < names_.size(); ++number) {
    if (std::ranges::none_of(files_of_[number], [&](std::uint32_t file) { return may_be[file] != 0; }))
      continue;
    common_.insert(number);
    files.insert(files.end(), files_of_[number].begin(), files_of_[number].end());
  }
  auto read = read_files(files);
  if (!read) return read.failure();
  common_sheets_ = std::move(read).value();
  return std::nullopt;
}

Result<Workspace> SheetParts::read_files(std::span<const std::uint32_t> files) {
  std::vector<SheetFile> places;
  for (const std::uint32_t file : files) places.push_back(places_[file]);
  Diagnostics all;  // those of each file are taken one by one
  auto read = read_sheets(places, all);
  if (!read) return read;
  for (std::size_t i = 0; i < files.size(); ++i) {
    ReadFile& file = files_[files[i]];
    const std::uint64_t hash = sheaf::hash_of(read->files[i]->bytes());
    if (file.is_read && file.hash != hash)
      return Failure{places[i].opened + " was changed while the sheets were being read; start again"};
    if (!file.is_read) file = {true, read->states[i], hash, std::move(read->faults[i])};
  }
  return read;
}

Result<Part> SheetParts::gather(std::span<const std::uint32_t> numbers) {
  Gathering gathering(*this);
  if (auto failure = gathering.gather(numbers)) return *failure;
  Part part;
  part.workspace = gathering.take_workspace();
  auto borrowed = borrow_sheets(request_.libraries, part.workspace.sheets);
  if (!borrowed) return borrowed.failure();
  part.borrowed = std::move(borrowed).value();
  Diagnostics faults;
  part.linked = link_sheets(part.workspace.sheets, part.borrowed, faults, part.workspace.unread, names_);
  std::set<std::string_view> incomplete;
  for (const std::uint32_t number : gathering.read()) {
    if (gathering.is_complete(number)) continue;
    for (const std::uint32_t file : files_of_[number]) incomplete.insert(places_[file].opened);
  }
  for (const Diagnostic& fault : faults.all()) {
    if (!incomplete.contains(fault.where.file)) part.faults.report(fault);
  }
  for (const std::uint32_t number : numbers) {
    if (const LinkedSheet* sheet = part.linked.sheet_named(names_[number]); sheet && !sheet->borrowed)
      part.own.push_back({number, sheet});
  }
  return part;
}

Result<Part> SheetParts::read(std::size_t number) {
  auto gathered = gather(parts_[number]);
  if (!gathered) return gathered.failure();
  Part part = std::move(gathered).value();
  for (const std::uint32_t sheet : parts_[number]) {
    for (const std::uint32_t file : files_of_[sheet]) part.faults.take(files_[file].faults);
  }
  part.lacks_a_table = std::ranges::any_of(part.workspace.files, [&](const auto& file) {
    return ought_to_be_a_table(*file) && !is_read(part.workspace, *file);
  });
  return part;
}

Result<Part> SheetParts::read_some(std::span<const std::uint32_t> numbers) { return gather(numbers); }

}  // namespace sheafc
