// SPDX-License-Identifier: GPL-2.0-or-later
// The sheets of a run in parts of a size that fits into memory, by name: each part read and linked with what
// its sheets need of the others, whatever part those are in. A folder of ordinary size is one part.
//
//   auto parts = SheetParts::of(request, default_part_bytes);
//   for (std::size_t i = 0; i < parts->count(); ++i) { auto part = parts->read(i); ... }
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "compiler/check/check.h"
#include "compiler/link/linked_sheets.h"
#include "compiler/sheet/workspace.h"
#include "compiler/source/diagnostics.h"
#include "query/quantity/result.h"

namespace sheafc {

struct CompileRequest {
  std::vector<std::string> folders;
  std::vector<std::string> libraries;  // that the sheets build against: --with
};

// Of YAML. Read and linked, it takes some twenty times as much.
inline constexpr std::size_t default_part_bytes = 8'000'000;

struct Part {
  Workspace workspace;  // its sheets, those that any may need, and those that these are based on or speak of
  std::vector<std::shared_ptr<Sheet>> borrowed;
  LinkedSheets linked;             // points into the two
  std::vector<NumberedSheet> own;  // the part's sheets, by name; numbers are places among the names of all
  Diagnostics faults;              // of reading and linking its sheets
  bool lacks_a_table = false;      // one of its files ought to be a table, and cannot be read
};

// A file as it was read for the first time; it may be read again for other parts.
struct ReadFile {
  bool is_read = false;
  FileState state;         // just before
  std::uint64_t hash = 0;  // of its bytes
  Diagnostics faults;      // of reading it
};

class SheetParts {
 public:
  // Finds all sheets and reads those that any other may need. A Failure is what the world refused, or no
  // sheet at all.
  static sheaf::Result<SheetParts> of(const CompileRequest& request, std::size_t part_bytes);

  std::size_t count() const { return parts_.size(); }
  const std::vector<std::string>& names() const { return names_; }  // of all sheets, ascending, each once
  const std::vector<SheetFile>& places() const { return places_; }  // of all files, as they were found
  const std::vector<ReadFile>& files() const { return files_; }     // the same, once their parts were read

  sheaf::Result<Part> read(std::size_t part);
  // Some sheets out of order, by their numbers. What they lack was reported with their parts.
  sheaf::Result<Part> read_some(std::span<const std::uint32_t> numbers);

 private:
  using Numbers = std::set<std::uint32_t>;
  class Gathering;

  std::optional<sheaf::Failure> find_common();
  void part_by_name(std::size_t part_bytes);
  sheaf::Result<Part> gather(std::span<const std::uint32_t> numbers);
  sheaf::Result<Workspace> read_files(std::span<const std::uint32_t> files);

  CompileRequest request_;
  std::vector<SheetFile> places_;
  std::vector<ReadFile> files_;
  std::vector<std::string> names_;
  std::vector<std::vector<std::uint32_t>> files_of_;  // by number; more than one where a name stands twice
  std::vector<std::vector<std::uint32_t>> parts_;     // numbers
  Numbers common_;
  Workspace common_sheets_;
};

}  // namespace sheafc
