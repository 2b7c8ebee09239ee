// SPDX-License-Identifier: GPL-2.0-or-later
// A library under construction: its rows and its index, in a folder beside its place. Internal to emit.
#pragma once

#include <atomic>
#include <functional>
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
  EmitOptions options;
  IndexBuilder index;
  std::optional<RowWriter> rows = {};  // none: they are had otherwise
  std::string last_sheet = {};

  sheaf::Failure cannot_write(const sheaf::Failure& why) const;
  std::optional<sheaf::Failure> stopped() const;
  // When all sheets are there.
  sheaf::Result<Receipt> put_together();
  // With rows that somebody else writes into the file, beside the index being merged; told of them by the
  // facts.
  using WriteRows =
      std::function<sheaf::Result<RowsSealed>(const std::string& file, sheaf::LibraryFacts& facts)>;
  sheaf::Result<Receipt> put_together(const WriteRows& write_rows);
};

// The index of a library in that folder.
IndexBuilder index_in(const BuildFolder& folder, const std::vector<sheaf::WordRecord>& words,
                      const EmitOptions& options, IndexBuilder::Recall recall = {});

}  // namespace sheafc
