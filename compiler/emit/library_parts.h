// SPDX-License-Identifier: GPL-2.0-or-later
// A library under construction: its rows and its index, in a folder beside its place. Internal to emit.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "compiler/emit/build_folder.h"
#include "compiler/emit/index_builder.h"
#include "compiler/emit/library_writer.h"
#include "compiler/emit/row_writer.h"
#include "compiler/emit/seal.h"

namespace sheafc {

struct LibraryParts {
  BuildFolder folder;
  std::string path;  // as the caller named it
  std::string name;
  std::vector<sheaf::WordRecord> words;
  const std::atomic<bool>* interrupted;
  RowWriter rows;
  IndexBuilder index;
  std::string last_sheet = {};

  sheaf::Failure cannot_write(const sheaf::Failure& why) const;
  std::optional<sheaf::Failure> stopped() const;
  // When all sheets are there.
  sheaf::Result<Receipt> put_together();
};

// The index of a library in that folder.
IndexBuilder index_in(const BuildFolder& folder, const std::vector<sheaf::WordRecord>& words, const EmitOptions& options);

}  // namespace sheafc
