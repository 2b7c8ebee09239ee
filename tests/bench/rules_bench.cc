// SPDX-License-Identifier: GPL-2.0-or-later
// What the engineering rules cost beside the parsing of the sheets that they judge, on one thread.
//
//   rules_bench ROUNDS FOLDER...
//
// The bare parse is the events of the same files by yaml-cpp; parsing is bytes to trees with all that
// compiler/source refuses, and nothing of the sheet language; reading is parsing and typing, what a run does
// before it links.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

#include "compiler/check/check.h"
#include "compiler/sheet/workspace.h"
#include "tests/bench/bare_parse.h"

using namespace sheafc;

namespace {

// Of the processor, so that a busy machine counts less.
double seconds_of(const std::function<void()>& work) {
  const std::clock_t begun = std::clock();
  work();
  return static_cast<double>(std::clock() - begun) / CLOCKS_PER_SEC;
}

// What other work on the machine adds is in every round but the least.
double least(const std::vector<double>& values) { return std::ranges::min(values); }

// The same bytes again, without what the first reading kept of them.
std::vector<SourceFile> unparsed(const Workspace& workspace) {
  std::vector<SourceFile> files;
  for (const auto& file : workspace.files)
    files.emplace_back(std::string(file->name()), std::string(file->bytes()));
  return files;
}

void measure(const Workspace& workspace, const LinkedSheets& linked, int rounds) {
  std::vector<double> bare, parsing, reading, rules;
  std::size_t reports = 0;
  std::vector<SheetText> texts;
  std::vector<std::string> paths;
  for (const auto& file : workspace.files) {
    paths.emplace_back(file->name());
    texts.push_back({paths.back(), std::string(file->bytes())});
  }
  for (int round = 0; round < rounds; ++round) {
    std::vector<SourceFile> files = unparsed(workspace);
    Diagnostics unwanted, sink;
    bare.push_back(seconds_of([&] { sheaf::bench::parse_bare(paths, 1); }));
    parsing.push_back(seconds_of([&] {
      for (SourceFile& file : files) file.parse(unwanted);
    }));
    reading.push_back(seconds_of([&] { read_texts(texts, unwanted); }));
    rules.push_back(seconds_of([&] { run_rules(linked, {.today = {}, .threads = 1}, sink); }));
    reports = sink.all().size();
  }
  std::size_t entries = 0;
  for (const LinkedSheet& sheet : linked.own()) entries += sheet.entries.size();
  const double cost = least(rules);
  std::printf(
      "%zu files, %zu entries: bare parse %.2f s, parsing %.2f s, reading %.2f s, rules %.2f s (%.2f, %.2f, %.2f of "
      "them); %zu reports\n",
      workspace.files.size(), entries, least(bare), least(parsing), least(reading), cost, cost / least(bare),
      cost / least(parsing), cost / least(reading), reports);
}

}  // namespace

int main(int count, char** words) {
  const int rounds = count > 2 ? std::atoi(words[1]) : 0;
  if (count < 3 || rounds < 1) {
    std::fputs("usage: rules_bench ROUNDS FOLDER...\n", stderr);
    return 2;
  }
  Diagnostics sink;
  const std::vector<std::string> folders(words + 2, words + count);
  auto read = read_workspace(folders, sink);
  if (!read) {
    std::fprintf(stderr, "rules_bench: error: %s\n", read.failure().message.c_str());
    return 2;
  }
  const Workspace workspace = std::move(read).value();
  const LinkedSheets linked = link_sheets(workspace.sheets, {}, sink, workspace.unread);
  measure(workspace, linked, rounds);
}
