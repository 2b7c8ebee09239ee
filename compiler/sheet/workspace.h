// SPDX-License-Identifier: GPL-2.0-or-later
// All the sheets of a run: found on disk, read on all cores, and kept for as long as anything points
// into them.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "compiler/sheet/sheet.h"
#include "compiler/source/diagnostics.h"
#include "compiler/source/file_state.h"
#include "query/quantity/result.h"

namespace sheafc {

// A file that ought to be a sheet.
struct SheetFile {
  std::string opened;  // the path to open it by, and to show in messages
  std::string path;    // under the folder it was found in, forward slashes
};

// Every sheet below a folder, or the one file named, in the order of list_sheets (compiler/source).
sheaf::Result<std::vector<SheetFile>> find_sheets(const std::string& folder_or_file);

struct Workspace {
  std::vector<std::shared_ptr<const SourceFile>> files;  // every file read, sheets or not
  std::vector<std::shared_ptr<Sheet>>
      sheets;                       // sorted by name; one name may stand twice, which linking reports
  std::vector<std::string> unread;  // names of the files that could not be read as sheets

  // Of each file, as it was just before it was read; and what reading it reported.
  std::vector<FileState> states;
  std::vector<Diagnostics> faults;

  void take(Workspace other);  // which has no file of this one
};

// Reads and types sheets. A file that cannot be opened is a Failure; all that is wrong with the sheets is in
// the sink, sorted.
sheaf::Result<Workspace> read_sheets(std::span<const SheetFile> places, Diagnostics& sink);
// The same of all sheets in several folders.
sheaf::Result<Workspace> read_workspace(std::span<const std::string> folders, Diagnostics& sink);

// The same for texts that are no files: for tests, and for sheets that were just made.
struct SheetText {
  std::string path;
  std::string text;
};
Workspace read_texts(std::span<const SheetText> texts, Diagnostics& sink);

}  // namespace sheafc
