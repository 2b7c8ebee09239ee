// SPDX-License-Identifier: GPL-2.0-or-later
// The order of work: rows and shards while sheets come, then the index behind the rows, then the trailer.
#include "compiler/emit/library_writer.h"

#include <algorithm>
#include <cassert>
#include <thread>

#include "compiler/emit/build_folder.h"
#include "compiler/emit/file_limit.h"
#include "compiler/emit/index_builder.h"
#include "compiler/emit/row_writer.h"
#include "compiler/emit/seal.h"
#include "compiler/emit/shard.h"

namespace sheafc {

using namespace sheaf;

struct LibraryWriter::State {
  BuildFolder folder;
  std::string path;  // as the caller named it
  std::string name;
  std::vector<WordRecord> words;
  const std::atomic<bool>* interrupted;
  RowWriter rows;
  IndexBuilder index;
  std::string last_sheet;

  Failure cannot_write(const Failure& why) const {
    return Failure{"cannot write " + path + ": " + why.message};
  }
  std::optional<Failure> stopped() const {
    if (interrupted && *interrupted) return Failure{"stopped; " + path + " is as it was"};
    return std::nullopt;
  }
  Result<Trailer> put_together(LibraryFacts& facts);
};

LibraryWriter::LibraryWriter(std::unique_ptr<State> state) : state_(std::move(state)) {}
LibraryWriter::LibraryWriter(LibraryWriter&&) noexcept = default;
LibraryWriter& LibraryWriter::operator=(LibraryWriter&&) noexcept = default;
LibraryWriter::~LibraryWriter() = default;

Result<LibraryWriter> LibraryWriter::begin(const std::string& path, const std::string& name,
                                           std::vector<WordRecord> words, EmitOptions options) {
  const FileLimitGuard guard;
  auto folder = BuildFolder::beside(path);
  if (!folder) return folder.failure();
  auto rows = RowWriter::create(folder->file("library"));
  if (!rows) return Failure{"cannot write " + path + ": " + rows.failure().message};
  const unsigned threads =
      options.threads != 0 ? options.threads : std::max(1u, std::thread::hardware_concurrency());
  const std::string maker = options.program + ' ' + std::to_string(library_format) + ' ' + xapian_version();
  IndexBuilder index({folder->path(), threads, options.cache, maker}, words);
  return LibraryWriter(std::make_unique<State>(State{std::move(folder).value(),
                                                     path,
                                                     name,
                                                     std::move(words),
                                                     options.interrupted,
                                                     std::move(rows).value(),
                                                     std::move(index),
                                                     {}}));
}

std::optional<Failure> LibraryWriter::add(SheetRecord sheet) {
  assert(state_->last_sheet.empty() || state_->last_sheet < sheet.name);
  const FileLimitGuard guard;
  if (auto stopped = state_->stopped()) return stopped;
  state_->last_sheet = sheet.name;
  auto fault = state_->rows.add(sheet);
  if (!fault) fault = state_->index.add(std::move(sheet));
  if (fault) return state_->cannot_write(*fault);
  return std::nullopt;
}

Result<Trailer> LibraryWriter::State::put_together(LibraryFacts& facts) {
  const std::string file = folder.file("library");
  if (auto fault = rows.finish(words, facts)) return *fault;
  const auto rows_sealed = seal_rows(file);
  if (!rows_sealed) return rows_sealed.failure();
  if (auto fault = index.finish(file, rows_sealed->index_offset)) return *fault;
  return seal_library(file, *rows_sealed);
}

Result<Receipt> LibraryWriter::finish() {
  const FileLimitGuard guard;
  LibraryFacts facts;
  facts.name = state_->name;
  facts.sqlite_version = sqlite_version();
  facts.xapian_version = xapian_version();
  const auto trailer = state_->put_together(facts);
  if (!trailer) return state_->cannot_write(trailer.failure());
  if (auto stopped = state_->stopped()) return *stopped;
  if (auto fault = put_in_place(state_->folder.file("library"), state_->folder.target())) {
    return state_->cannot_write(*fault);
  }
  return Receipt{state_->path,
                 to_hexadecimal(trailer->digest),
                 static_cast<std::int64_t>(trailer->file_bytes),
                 facts.sheets,
                 facts.entries,
                 facts.words};
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
