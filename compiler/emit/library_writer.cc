// SPDX-License-Identifier: GPL-2.0-or-later
// Rows and shards while sheets come; the rest in library_parts.cc.
#include "compiler/emit/library_writer.h"

#include <algorithm>
#include <cassert>

#include "compiler/emit/file_limit.h"
#include "compiler/emit/library_parts.h"

namespace sheafc {

using namespace sheaf;

LibraryWriter::LibraryWriter(std::unique_ptr<LibraryParts> parts) : parts_(std::move(parts)) {}
LibraryWriter::LibraryWriter(LibraryWriter&&) noexcept = default;
LibraryWriter& LibraryWriter::operator=(LibraryWriter&&) noexcept = default;
LibraryWriter::~LibraryWriter() = default;

Result<LibraryWriter> LibraryWriter::begin(const std::string& path, const std::string& name,
                                           std::vector<WordRecord> words, EmitOptions options) {
  const FileLimitGuard guard;
  auto folder = BuildFolder::beside(path);
  if (!folder) return folder.failure();
  auto rows = RowWriter::create(folder->file("rows"));
  if (!rows) return Failure{"cannot write " + path + ": " + rows.failure().message};
  IndexBuilder index = index_in(*folder, words, options);
  return LibraryWriter(std::make_unique<LibraryParts>(
      LibraryParts{std::move(folder).value(), path, name, std::move(words), std::move(options),
                   std::move(index), std::move(rows).value()}));
}

std::optional<Failure> LibraryWriter::add(SheetRecord sheet) {
  assert(parts_->last_sheet.empty() || parts_->last_sheet < sheet.name);
  const FileLimitGuard guard;
  if (auto stopped = parts_->stopped()) return stopped;
  parts_->last_sheet = sheet.name;
  const SheetBodies bodies = bodies_of(sheet);
  auto fault = parts_->rows->add(sheet, bodies);
  const std::uint64_t hash = hash_of(sheet, bodies);
  if (!fault) fault = parts_->index.add(std::move(sheet), hash);
  if (fault) return parts_->cannot_write(*fault);
  return std::nullopt;
}

Result<Receipt> LibraryWriter::finish() {
  const FileLimitGuard guard;
  return parts_->put_together();
}

Result<Receipt> write_library(const LibraryContent& content, const std::string& path, EmitOptions options) {
  auto begun = LibraryWriter::begin(path, content.name, content.words, options);
  if (!begun) return begun.failure();
  LibraryWriter writer = std::move(begun).value();
  std::vector<const SheetRecord*> sheets;
  for (const SheetRecord& sheet : content.sheets) sheets.push_back(&sheet);
  std::ranges::sort(sheets, {}, &SheetRecord::name);
  for (const SheetRecord* sheet : sheets) {
    if (auto fault = writer.add(*sheet)) return *fault;
  }
  return writer.finish();
}

}  // namespace sheafc
