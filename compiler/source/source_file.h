// SPDX-License-Identifier: GPL-2.0-or-later
// One sheet's bytes and the tree read from them.
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "compiler/source/node.h"
#include "query/quantity/result.h"

namespace sheafc {

// Limits, stated to the writer when they are met.
inline constexpr std::size_t max_file_bytes = 1u << 20;
inline constexpr int max_depth = 64;

// Owns the bytes and the nodes; every string_view of the tree points into it, but for its name. Movable, not
// copyable.
class SourceFile {
 public:
  SourceFile(std::string_view name, std::string bytes);
  ~SourceFile();
  SourceFile(SourceFile&&) noexcept;
  SourceFile& operator=(SourceFile&&) noexcept;

  std::string_view name() const;  // as diagnostics show it, with forward slashes
  std::string_view bytes() const;
  std::string_view line(int number) const;  // without its end; empty if there is no such line
  const Node* root() const;                 // null but between parse() and drop_tree(), or if this is no YAML

  // Checks encoding, parses, refuses what YAML would guess or drop: see source_rules.cc.
  // Every fault goes to the sink; false if there is no tree to go on with. Call once.
  bool parse(Diagnostics& sink);
  // Lets go of the tree, which takes more memory than the bytes: what is read from it must not point to it.
  // Texts that stand in the bytes as they are stay.
  void drop_tree();

  // What to report of a Node of kind empty, which parse() leaves to the reader of the sheet: nothing,
  // `null` or `~` was written, or a # made a comment of the value.
  Diagnostic empty_value(const Node& empty) const;

  // The place of bytes [at, at+length) of a plain or quoted scalar's text, as far as they stand on one line,
  // for a fault inside it; the whole scalar where its text differs from the bytes (escapes, folding), or for
  // a length of 0.
  Span within(const Node& scalar, int at, int length) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// Reads a file from disk: a Failure for what cannot be opened or is no regular file; a file larger
// than the limit is read only as far as the limit and reported by parse().
sheaf::Result<SourceFile> read_source(const std::string& path, std::string shown_name);

}  // namespace sheafc
