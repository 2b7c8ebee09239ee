// SPDX-License-Identifier: GPL-2.0-or-later
// What a library was made of, and what was said while it was made: kept in the cache, so that the next build
// sees by looking at the files alone that it would make the same again.
#pragma once

#include <deque>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "compiler/cli/compilation.h"
#include "compiler/emit/library_writer.h"
#include "compiler/source/diagnostics.h"
#include "compiler/source/file_state.h"

namespace sheafc {

struct StampedFile {
  std::string path;  // as it is opened
  FileState state;
  std::uint64_t hash = 0;  // of its bytes
};

struct Stamp {
  std::string circumstances;        // all that decides the result besides the files
  std::vector<StampedFile> inputs;  // the sheets in their order, then the libraries built against
  StampedFile library;              // its hash is not used: it is large, and nobody writes to it
  std::string digest;               // of the library
  std::int64_t entries = 0, sheets = 0;
  Diagnostics found;
  std::deque<std::string> texts;  // what the diagnostics point into
};

// Tells a build from every other: all that went in and came out.
std::string identity_of(const Stamp& stamp);

// Of a build that has just written its library.
std::optional<Stamp> stamp_of(const CompileRequest& request, const Compilation& compilation,
                              const Receipt& receipt);
// Puts in what is to be said of the library. False if it is gone again.
bool set_library(Stamp& stamp, const Receipt& receipt);

// The sheets as they are now; `changed` are the places of those that are not what they were, ascending.
struct SecondLook {
  std::vector<SheetFile> files;
  std::vector<FileState> states;  // as they were just before they were looked into
  std::vector<std::size_t> changed;
};

// None if more than the content of sheets is other than it was: which sheets there are, the library, the
// circumstances. A file whose times tell nothing sure is read and compared. If no sheet changed, a build with
// this request to this library would make what is there already. `when_changed` is called at the first sheet
// that did, before the others are looked at.
std::optional<SecondLook> look_again(const Stamp& stamp, const CompileRequest& request,
                                     const std::string& library, const std::function<void()>& when_changed);

// In a file of the cache; one that is damaged is none.
void keep_stamp(const std::string& file, const Stamp& stamp);
std::optional<Stamp> kept_stamp(const std::string& file);

}  // namespace sheafc
