// SPDX-License-Identifier: GPL-2.0-or-later
// Any bytes, parted at "\n---8<---\n" into the files of one folder, read, typed and linked. Nothing may crash
// or hang, every report must lie inside its file, and a sheet that reads without a fault must be formatted
// without loss, to a text that stays as it is. What is linked becomes records.
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/link/linked_sheets.h"
#include "compiler/sheet/format.h"
#include "compiler/sheet/workspace.h"

namespace {

using namespace sheafc;

void require(bool truth) {
  if (!truth) std::abort();
}

std::vector<SheetText> files_in(std::string_view bytes) {
  constexpr std::string_view mark = "\n---8<---\n";
  std::vector<SheetText> files;
  while (!bytes.empty() && files.size() < 20) {
    const std::size_t end = std::min(bytes.find(mark), bytes.size());
    files.push_back(
        {std::string("s") + std::to_string(files.size()) + ".yaml", std::string(bytes.substr(0, end))});
    bytes.remove_prefix(std::min(end + mark.size(), bytes.size()));
  }
  return files;
}

void check_places(const Diagnostics& faults, const Workspace& workspace) {
  for (const Diagnostic& fault : faults.all()) {
    require(!fault.message.empty() && !fault.rule.empty());
    require(fault.where.line >= 1 && fault.where.column >= 1 && fault.where.length >= 0);
    bool known = false;
    for (const auto& file : workspace.files) known = known || file->name() == fault.where.file;
    require(known);
  }
}

void check_format(const SheetText& file) {
  Diagnostics faults;
  const std::vector<SheetText> one = {file};
  const Workspace alone = read_texts(one, faults);
  if (faults.errors() > 0 || alone.sheets.empty()) return;
  const auto once = format_sheet(*alone.sheets.front());
  if (!once) return;  // refused on purpose
  const std::vector<SheetText> formatted = {{file.path, *once}};
  const Workspace again = read_texts(formatted, faults);
  require(faults.errors() == 0 && again.sheets.size() == 1);
  const auto twice = format_sheet(*again.sheets.front());
  require(twice && *twice == *once);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto files = files_in({reinterpret_cast<const char*>(data), size});
  Diagnostics faults;
  const Workspace workspace = read_texts(files, faults);
  const LinkedSheets linked = link_sheets(workspace.sheets, {}, faults, workspace.unread);
  faults.sort();
  check_places(faults, workspace);
  content_of(linked, "fuzz");
  for (const SheetText& file : files) check_format(file);
  return 0;
}
