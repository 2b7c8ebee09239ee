// SPDX-License-Identifier: GPL-2.0-or-later
// Reads YAML files as sheets are read and prints their faults as one SARIF log, for validation against the
// published schema (tests/outside/sarif.mjs).
#include <deque>
#include <iostream>

#include "compiler/source/report.h"
#include "compiler/source/source_file.h"

int main(int argc, char** argv) {
  std::deque<sheafc::SourceFile> files;
  sheafc::Diagnostics sink;
  for (int i = 1; i < argc; ++i) {
    auto file = sheafc::read_source(argv[i], argv[i]);
    if (!file) {
      std::cerr << file.failure().message << '\n';
      return 2;
    }
    files.push_back(std::move(file).value());
    files.back().parse(sink);
  }
  sink.sort();
  const auto line_of = [&](std::string_view name, int line) {
    for (const auto& file : files) {
      if (file.name() == name) return file.line(line);
    }
    return std::string_view();
  };
  std::cout << sheafc::sarif_report(sink, line_of, sheafc::source_rules(), "0.1.0");
}
