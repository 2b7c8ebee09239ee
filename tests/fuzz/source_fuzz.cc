// SPDX-License-Identifier: GPL-2.0-or-later
// Bytes to located tree, and every report of what was wrong with them. Beyond not crashing: every place must
// lie in the sheet, no tree may come of a sheet with errors that damage it, and equal keys must be reported.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "compiler/source/report.h"
#include "compiler/source/source_file.h"

namespace {

using namespace sheafc;

void require(bool condition) {
  if (!condition) std::abort();
}

void check_place(const SourceFile& file, const Span& span) {
  require(span.file == "fuzz.yaml" && span.line >= 1 && span.column >= 1 && span.length >= 0);
  const auto length = static_cast<int>(file.line(span.line).size());
  // An end of line, a byte order mark or the end of the sheet may be meant: one place beyond.
  require(span.column <= length + 2 && span.column + span.length <= length + 4);
}

void check_tree(const SourceFile& file, const Node& node, int depth) {
  require(depth <= max_depth + 1);
  check_place(file, node.span);
  check_place(file, file.within(node, 0, static_cast<int>(node.text.size())));
  if (node.kind == Node::Kind::empty) check_place(file, file.empty_value(node).where);
  for (const Node* item : node.items) check_tree(file, *item, depth + 1);
  for (const Pair& pair : node.pairs) {
    check_place(file, pair.key_span);
    check_tree(file, *pair.value, depth + 1);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  SourceFile file("fuzz.yaml", std::string(reinterpret_cast<const char*>(data), size));
  Diagnostics sink;
  const bool read = file.parse(sink);
  require(read == (file.root() != nullptr));
  require(read || sink.errors() > 0);
  if (read) check_tree(file, *file.root(), 1);
  for (const Diagnostic& d : sink.all()) {
    check_place(file, d.where);
    for (const Diagnostic& note : d.notes) check_place(file, note.where);
  }
  sink.sort();
  const LineSource lines = [&](std::string_view, int line) { return file.line(line); };
  text_report(sink, lines, {true, 60, 5});
  json_lines_report(sink);
  sarif_report(sink, lines, {}, "0");
  annotation_report(sink, lines);
  return 0;
}
