// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/yaml_reader.h"

#include <algorithm>
#include <optional>

#include "compiler/source/tree_builder.h"
#include "compiler/source/yaml_parsers.h"

namespace sheafc {
namespace {

// What must go before the rest can be read again.
SyntaxFault with_extent(SyntaxFault fault, const Layout& layout) {
  fault.entry_start = std::min(fault.at, layout.in_flow() ? layout.flow_start() : layout.at());
  fault.stopped_at = std::max(fault.at, fault.stopped_at);
  return fault;
}

YamlOutput output_of(TreeBuilder& builder) {
  builder.end();
  YamlOutput output;
  output.root = builder.root();
  output.doubtful_comments = builder.layout().doubtful_comments();
  if (!output.root || output.root->kind == Node::Kind::empty) {
    output.fault = SyntaxFault{0, 1, "empty-sheet", "the sheet is empty: nothing but space and comments"};
  }
  return output;
}

// None where anything is wrong.
std::optional<YamlOutput> read_sound(const YamlInput& input, std::pmr::memory_resource& arena,
                                     Diagnostics& sink) {
  Diagnostics duplicates;
  TreeBuilder builder(input, arena, duplicates);
  try {
    if (!parse_quickly(input, builder)) return std::nullopt;
    YamlOutput output = output_of(builder);
    sink.take(std::move(duplicates));
    return output;
  } catch (const SyntaxFault&) {
    return std::nullopt;
  }
}

}  // namespace

YamlOutput read_yaml(const YamlInput& input, std::pmr::memory_resource& arena, Diagnostics& sink) {
  if (auto output = read_sound(input, arena, sink)) return std::move(*output);
  TreeBuilder builder(input, arena, sink);
  try {
    parse_explaining(input, builder);
    return output_of(builder);
  } catch (const SyntaxFault& fault) {
    return {with_extent(fault, builder.layout()), nullptr, {}};
  }
}

}  // namespace sheafc
