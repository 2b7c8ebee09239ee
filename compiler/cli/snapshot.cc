// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/snapshot.h"

#include "compiler/cli/console.h"
#include "compiler/cli/git_archive.h"
#include "compiler/link/addresses.h"
#include "compiler/link/borrow.h"
#include "query/library/library.h"

namespace sheafc {
namespace {

using Sheets = sheaf::Result<std::vector<sheaf::SheetRecord>>;

Sheets sheets_of_library(const std::string& path) {
  auto opened = sheaf::open_library(path);
  if (!opened) return opened.failure();
  sheaf::Library library = std::move(opened).value();
  const auto listed = library.sheets();
  if (!listed) return listed.failure();
  std::vector<sheaf::SheetRecord> sheets;
  for (const sheaf::SheetRecord& head : *listed) {
    auto whole = library.sheet(head.name);
    if (!whole) return whole.failure();
    sheets.push_back(std::move(whole).value().front());
  }
  return sheets;
}

Sheets sheets_of(const Workspace& workspace, Diagnostics& sink, const std::vector<std::string>& libraries,
                 const std::string& where) {
  const auto borrowed = borrow_sheets(libraries, workspace.sheets);
  if (!borrowed) return borrowed.failure();
  const LinkedSheets linked = link_sheets(workspace.sheets, *borrowed, sink, workspace.unread);
  report_taken_addresses(linked, sink);
  if (sink.errors() > 0) {
    return sheaf::Failure{"the sheets in " + where + " have " +
                          counted(static_cast<std::size_t>(sink.errors()), "error", "errors") +
                          "; see sheafc check"};
  }
  return content_of(linked, {}).sheets;
}

}  // namespace

Sheets snapshot_of(const std::string& place, const std::vector<std::string>& libraries) {
  if (place.ends_with(".sheaf")) return sheets_of_library(place);
  Diagnostics sink;
  const std::vector<std::string> folders = {place};
  const auto workspace = read_workspace(folders, sink);
  if (!workspace) return workspace.failure();
  return sheets_of(*workspace, sink, libraries, place);
}

Sheets snapshot_of_revision(const std::string& revision, const std::string& folder,
                            const std::vector<std::string>& libraries) {
  const auto texts = sheets_in_revision(revision, folder);
  if (!texts) return texts.failure();
  Diagnostics sink;
  const Workspace workspace = read_texts(*texts, sink);
  return sheets_of(workspace, sink, libraries, revision);
}

}  // namespace sheafc
