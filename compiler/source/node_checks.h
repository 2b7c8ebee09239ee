// SPDX-License-Identifier: GPL-2.0-or-later
// What the parser lets through, or reads otherwise than YAML 1.2 does, is refused here, node by node. All
// throw SyntaxFault. `at` is where the node starts, `indent` the column (from 0) of the block collection
// around it, -1 at the root.
#pragma once

#include <cstddef>
#include <string_view>

#include "compiler/source/layout.h"
#include "compiler/source/node.h"
#include "compiler/source/scalar_source.h"

namespace sheafc {

struct YamlInput;

// ~, null, Null or NULL
bool spells_null(std::string_view text);

// No anchor, alias or tag: the marks & * ! before a node.
void check_no_property(const YamlInput& input, std::size_t at);

// Sets the node's style, finds where the scalar ends, and makes sure that `value`, as the parser read it,
// is what the bytes say.
ScalarSource check_scalar(const YamlInput& input, const Layout& layout, std::size_t at, int indent,
                          std::string_view value, Node& node);

// One word or phrase with its colon on the same line. The layout stands at its end.
void check_key(const YamlInput& input, const Layout& layout, std::size_t at, const Node& key);

// No value on a line of its own that is not indented: the parser lets it stand where the next key should.
void check_value_indent(const Layout& layout, std::size_t at, int column, int indent);

[[noreturn]] void refuse_collection_as_key(std::size_t at);

}  // namespace sheafc
