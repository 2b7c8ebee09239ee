// SPDX-License-Identifier: GPL-2.0-or-later
// What a build without errors knew of each sheet, kept in the cache beside its stamp: enough to build again
// after a change of few sheets without reading the others.
#pragma once

#include <cstdint>
#include <deque>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/check/findings.h"
#include "compiler/cli/compilation.h"
#include "compiler/cli/kept_bytes.h"
#include "compiler/emit/library_writer.h"
#include "compiler/emit/revise_library.h"

namespace sheafc {

// Sheets have the numbers of their places by name.
struct KeptSheet {
  std::uint32_t file = 0;    // its place among the inputs of the stamp
  bool is_common = false;    // any sheet may depend on it: a table, words, the crib
  std::uint64_t offers = 0;  // hash of the addresses, old and new, by which others may speak of its entries
  std::vector<std::uint32_t> bases, references;  // see References
  Diagnostics faults;                            // of reading it
};

struct KeptBuild {
  std::string identity;  // of the build: see identity_of
  std::optional<std::uint64_t>
      facts;  // identity of the file that has all but those told again; none: there is none
  EarlierLibrary library;
  std::vector<std::string> names;  // of the sheets, in order
  std::vector<KeptSheet> sheets;
  Findings findings;
  std::deque<std::string> texts;  // what diagnostics point into

  std::optional<std::uint32_t> number_of(std::string_view name) const;
};

// Gathers what a build without errors knows of its sheets, part by part.
class KeptSheets {
 public:
  void add(const Part& part, const std::vector<std::string>& names);
  // When the library has just been written; once. None if it says too little, as without a cache of the
  // index, or if sheets of other libraries have a say.
  std::optional<KeptBuild> with(const Compilation& compilation, Findings findings, const Receipt& receipt);

 private:
  std::vector<KeptSheet> sheets_;
  std::vector<std::string_view> files_;  // of each
  bool speaks_of_others_ = false;
};

// What the build knows of a sheet. The first is false if it speaks of one that is not among the names.
bool describe_references(const Sheet& sheet, const std::vector<std::string>& names, KeptSheet& kept);
std::uint64_t offers_of(const LinkedSheet& sheet);

// In a folder of the cache; one that is damaged is none.
//
// All but its library and its identity, for when these are not known yet. Facts that are not in their file,
// or were told again by many, are written there first. None if they cannot be.
std::optional<KeptWriter> draft_of(const KeptBuild& build, const std::string& folder);
void keep_build(const std::string& folder, KeptWriter draft, const EarlierLibrary& library,
                const std::string& identity);
std::optional<KeptBuild> read_kept_build(const std::string& folder);

}  // namespace sheafc
