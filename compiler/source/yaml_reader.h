// SPDX-License-Identifier: GPL-2.0-or-later
// One sheet's bytes into a tree, with the parsers of yaml_parsers.h: the quick one, and where anything is
// wrong, the one whose faults can be explained.
#pragma once

#include <memory_resource>
#include <optional>
#include <string_view>
#include <vector>

#include "compiler/source/node.h"
#include "compiler/source/syntax_fault.h"

namespace sheafc {

inline constexpr std::string_view yaml_trailer = "\n...\n";  // shows up a quote that is never closed

struct YamlInput {
  std::string_view file;
  std::string_view bytes;  // with the trailer at their end
  std::size_t text_size;   // without it
};

struct YamlOutput {
  std::optional<SyntaxFault> fault;            // what ended the reading; then there is no tree
  const Node* root = nullptr;                  // in `arena`; points into the input's bytes
  std::vector<std::size_t> doubtful_comments;  // that start like "#10-32", right after a value
};

// Duplicate keys go to `sink`, and the first of them stays in the tree.
YamlOutput read_yaml(const YamlInput& input, std::pmr::memory_resource& arena, Diagnostics& sink);

}  // namespace sheafc
