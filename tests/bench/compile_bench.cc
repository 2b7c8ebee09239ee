// SPDX-License-Identifier: GPL-2.0-or-later
// Compiling folders of sheets, stage by stage, beside a bare parse of the same files.
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

// Seconds of each stage in one run, printed by the child that ran it.
Measured compile_in_stages(const std::string& folder, bool print) {
  Diagnostics sink;
  Workspace workspace;
  LinkedSheets linked;
  double reading = 0, linking = 0, checking = 0;
  const Measured all = measured([&] {
    reading = seconds_of([&] {
      const std::vector<std::string> folders = {folder};
      auto read = read_workspace(folders, sink);
      require(static_cast<bool>(read), "cannot read " + folder);
      workspace = std::move(read).value();
    });
    linking = seconds_of([&] { linked = link_sheets(workspace.sheets, {}, sink, workspace.unread); });
    checking = seconds_of([&] { run_rules(linked, {.today = today()}, sink); });
  });
  require(sink.errors() == 0, "the sheets have errors");
  if (print) std::printf("  reading %.2f s, linking %.2f s, checking %.2f s\n", reading, linking, checking);
  std::fflush(stdout);
  return all;
}

Measured build(const std::string& folder, const std::string& path) {
  return measured([&] {
    const auto compiled = compile({.folders = {folder}, .libraries = {}});
    require(static_cast<bool>(compiled), "cannot compile " + folder);
    const LinkedSheets& linked = (*compiled)->linked;
    auto begun = LibraryWriter::begin(path, "bench", words_of(linked), {});
    require(static_cast<bool>(begun), "cannot write");
    LibraryWriter writer = std::move(begun).value();
    for (const LinkedSheet& sheet : linked.own()) require(!writer.add(record_of(linked, sheet)), "cannot write");
    require(static_cast<bool>(writer.finish()), "cannot write");
  });
}

void measure(const std::string& folder, int rounds) {
  const std::vector<std::string> paths = paths_in(folder);
  const sheaf::test::TemporaryFolder scratch;
  std::vector<double> bare, compiled, rate, built;
  double memory = 0;
  for (int round = 0; round < rounds; ++round) {
    const Measured floor = in_a_process([&] { return measured([&] { parse_bare(paths, threads); }); });
    const Measured stages = in_a_process([&] { return compile_in_stages(folder, round == 0); });
    const Measured whole = in_a_process([&] { return build(folder, scratch / "made.sheaf"); });
    bare.push_back(floor.seconds);
    compiled.push_back(stages.seconds);
    rate.push_back(floor.seconds / stages.seconds);
    built.push_back(whole.seconds);
    memory = std::max(memory, whole.memory_mb);
  }
  std::printf("%6zu files  bare parse %.2f s  read, linked and checked %.2f s  rate %.2f  built %.2f s  memory %.0f MB\n",
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
