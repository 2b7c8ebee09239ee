// SPDX-License-Identifier: GPL-2.0-or-later
// A sheet read from text in a test, and what came of it in short words.
#pragma once

#include <string>
#include <utility>

#include "compiler/source/report.h"
#include "compiler/source/source_file.h"

namespace sheafc {

struct Reading {
  explicit Reading(std::string text) : file("t.yaml", std::move(text)), read(file.parse(sink)) {
    if (read) collect_empty_values(*file.root());
    sink.sort();
  }

  // What reads a sheet reports the empty values; here the test does.
  void collect_empty_values(const Node& node) {
    if (node.kind == Node::Kind::empty) sink.report(file.empty_value(node));
    for (const Node* item : node.items) collect_empty_values(*item);
    for (const Pair& pair : node.pairs) collect_empty_values(*pair.value);
  }

  // "2:3 duplicate-key; 4:1 bad-key", or "none".
  std::string faults() const {
    std::string words;
    for (const Diagnostic& d : sink.all()) {
      if (!words.empty()) words += "; ";
      words +=
          std::to_string(d.where.line) + ":" + std::to_string(d.where.column) + " " + std::string(d.rule);
    }
    return words.empty() ? "none" : words;
  }

  LineSource lines() const {
    return [this](std::string_view, int line) { return file.line(line); };
  }

  std::string report() const { return text_report(sink, lines(), {}); }

  const Node& at(std::string_view key) const { return *file.root()->find(key); }

  SourceFile file;
  Diagnostics sink;
  bool read;
};

// "t.yaml:3:5+4"
inline std::string in_words(const Span& span) {
  return std::string(span.file) + ":" + std::to_string(span.line) + ":" + std::to_string(span.column) + "+" +
         std::to_string(span.length);
}

}  // namespace sheafc
