// SPDX-License-Identifier: GPL-2.0-or-later
// Compiling folders of sheets, without and with writing a library, beside a bare parse of the same files.
//
//   compile_bench ROUNDS FOLDER...       the folders of synthetic_sheets
//
// The floor under all before emitting is the bare parse on the same cores; that under emitting is measured by
// library_bench. Each round measures both once, in processes of their own.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <thread>
#include <vector>

#include "compiler/cli/compilation.h"
#include "compiler/emit/library_writer.h"
#include "tests/bench/bare_parse.h"
#include "tests/bench/measured.h"
#include "tests/content/temporary_folder.h"

using namespace sheafc;
using namespace sheaf::bench;

namespace {

const unsigned threads = std::max(1u, std::thread::hardware_concurrency());

void require(bool held, const std::string& what) {
  if (held) return;
  std::fprintf(stderr, "compile_bench: error: %s\n", what.c_str());
  std::exit(1);
}

std::vector<std::string> paths_in(const std::string& folder) {
  const auto found = find_sheets(folder);
  require(static_cast<bool>(found), "cannot list " + folder);
  std::vector<std::string> paths;
  for (const SheetFile& file : *found) paths.push_back(file.opened);
  return paths;
}

Measured compile_alone(const std::string& folder) {
  return measured([&] {
    const auto compiled = compile({.folders = {folder}, .libraries = {}});
    require(compiled && compiled->diagnostics.errors() == 0, "the sheets cannot be compiled, or have errors");
  });
}

Measured build(const std::string& folder, const std::string& path) {
  return measured([&] {
    std::optional<LibraryWriter> library;
    const auto write = [&](const Part& part, const std::vector<std::string>&,
                           bool) -> std::optional<sheaf::Failure> {
      if (!library) {
        auto begun = LibraryWriter::begin(path, "bench", words_of(part.linked), {});
        require(static_cast<bool>(begun), "cannot write");
        library = std::move(begun).value();
      }
      for (const NumberedSheet& sheet : part.own)
        require(!library->add(record_of(part.linked, *sheet.sheet)), "cannot write");
      return std::nullopt;
    };
    require(static_cast<bool>(compile({.folders = {folder}, .libraries = {}}, {.each_part = write})),
            "cannot compile " + folder);
    require(static_cast<bool>(library->finish()), "cannot write");
  });
}

void measure(const std::string& folder, int rounds) {
  const std::vector<std::string> paths = paths_in(folder);
  const sheaf::test::TemporaryFolder scratch;
  std::vector<double> bare, compiled, rate, built;
  double memory = 0;
  for (int round = 0; round < rounds; ++round) {
    const Measured floor = in_a_process([&] { return measured([&] { parse_bare(paths, threads); }); });
    const Measured stages = in_a_process([&] { return compile_alone(folder); });
    const Measured whole = in_a_process([&] { return build(folder, scratch / "made.sheaf"); });
    bare.push_back(floor.seconds);
    compiled.push_back(stages.seconds);
    rate.push_back(floor.seconds / stages.seconds);
    built.push_back(whole.seconds);
    memory = std::max(memory, whole.memory_mb);
  }
  std::printf(
      "%6zu files  bare parse %.2f s  read, linked and checked %.2f s  rate %.2f  built %.2f s  memory %.0f MB\n",
      paths.size(), median(bare), median(compiled), median(rate), median(built), memory);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fputs("usage: compile_bench ROUNDS FOLDER...\n", stderr);
    return 2;
  }
  const int rounds = std::max(1, std::atoi(argv[1]));
  for (int i = 2; i < argc; ++i) measure(argv[i], rounds);
}
