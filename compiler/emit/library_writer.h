// SPDX-License-Identifier: GPL-2.0-or-later
// Writes a library file (query/library/FORMAT.md) from linked and checked sheets, whole or not at all.
//
//   auto receipt = write_library(content, "orrindale.sheaf", {});
//   if (!receipt) return receipt.failure();
//
// The same content gives the same bytes on any machine, with any number of threads, in any folder and
// locale, as long as SQLite and Xapian are of the same version. The library is put together in a folder
// of its own beside the target, synced, and renamed into place: until then the old one stays, and after a
// failure or a kill it stays for good. What a killed build left behind, the next one to the same target
// removes. Fails when the disk is full, the folder cannot be written to, or the target is no regular file.
#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "compiler/emit/hashed_sheet.h"
#include "query/library/record.h"
#include "query/quantity/result.h"

namespace sheafc {

struct Receipt;

struct EmitOptions {
  unsigned threads = 0;                            // for the index; 0: as many as the machine has
  const std::atomic<bool>* interrupted = nullptr;  // set from outside to stop: nothing is written then
  // A folder in which parts of the index are kept for the next build, and the name of the program that
  // keeps them: another's are not taken. Empty: none. No byte of the library depends on it.
  std::string cache = {}, program = {};
  // Told of the library when it is whole, while it is synced to the disk and before it is in its place; in
  // another thread.
  std::function<void(const Receipt&)> when_sealed = {};
};

struct Receipt {
  std::string path;
  std::string digest;  // SHA-256, hexadecimal
  std::int64_t bytes = 0;
  std::int64_t sheets = 0, entries = 0, words = 0;
  // What revise_library takes: a hash of the rows and those of the sheets, in order.
  std::uint64_t rows_hash = 0;
  std::vector<HashedSheet> hashes = {};
};

struct LibraryParts;

// For content that does not fit into memory at once. Memory stays bounded, whatever the number of sheets.
class LibraryWriter {
 public:
  static sheaf::Result<LibraryWriter> begin(const std::string& path, const std::string& name,
                                            std::vector<sheaf::WordRecord> words, EmitOptions options);
  LibraryWriter(LibraryWriter&&) noexcept;
  LibraryWriter& operator=(LibraryWriter&&) noexcept;
  ~LibraryWriter();  // without finish(), nothing is left but the old library

  // Sheets come in ascending order of their names.
  std::optional<sheaf::Failure> add(sheaf::SheetRecord sheet);
  sheaf::Result<Receipt> finish();

 private:
  explicit LibraryWriter(std::unique_ptr<LibraryParts> parts);
  std::unique_ptr<LibraryParts> parts_;
};

// Sheets may stand in any order.
sheaf::Result<Receipt> write_library(const sheaf::LibraryContent& content, const std::string& path,
                                     EmitOptions options);

}  // namespace sheafc
