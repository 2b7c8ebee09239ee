// SPDX-License-Identifier: GPL-2.0-or-later
// Runs the YAML parser over one sheet's bytes and builds the located tree from its events. The only file
// that knows which parser that is.
#pragma once

#include <memory_resource>
#include <optional>
#include <string_view>

#include "compiler/source/node.h"
#include "compiler/source/syntax_fault.h"

namespace sheafc {

// `bytes` must end in the trailer, `text_size` is how many of them stand before it. The tree lives in
// `arena` and points into `bytes`. Duplicate keys go to `sink`, the first of them stays in the tree;
// any other fault ends the reading and is returned.
inline constexpr std::string_view yaml_trailer = "\n...\n";  // shows up a quote that is never closed
struct YamlInput {
  std::string_view file;
  std::string_view bytes;
  std::size_t text_size;
};
std::optional<SyntaxFault> read_yaml(const YamlInput& input, std::pmr::memory_resource& arena,
                                     const Node*& root, Diagnostics& sink);

}  // namespace sheafc
