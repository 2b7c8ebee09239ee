// SPDX-License-Identifier: GPL-2.0-or-later
// What the engineering rules cost beside the parsing of the sheets that they judge, on one thread.
//
//   rules_bench ROUNDS FOLDER...
//
// Parsing is bytes to trees with all that compiler/source refuses, and nothing of the sheet language.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "compiler/check/check.h"
#include "compiler/sheet/workspace.h"

using namespace sheafc;

namespace {

double seconds_of(const std::function<void()>& work) {
  const auto begun = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
}

double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

// The same bytes again, without what the first reading kept of them.
std::vector<SourceFile> unparsed(const Workspace& workspace) {
  std::vector<SourceFile> files;
  for (const auto& file : workspace.files) files.emplace_back(std::string(file->name()), std::string(file->bytes()));
  return files;
}

void measure(const Workspace& workspace, const LinkedSheets& linked, int rounds) {
  std::vector<double> parsing, rules, ratio;
  std::size_t reports = 0;
  for (int round = 0; round < rounds; ++round) {
    std::vector<SourceFile> files = unparsed(workspace);
    Diagnostics unwanted, sink;
    parsing.push_back(seconds_of([&] { for (SourceFile& file : files) file.parse(unwanted); }));
    rules.push_back(seconds_of([&] { run_rules(linked, {.today = {}, .threads = 1}, sink); }));
    ratio.push_back(rules.back() / parsing.back());
    reports = sink.all().size();
  }
  std::size_t entries = 0;
  for (const LinkedSheet& sheet : linked.own()) entries += sheet.entries.size();
  std::printf("%zu files, %zu entries: parsing %.2f s, rules %.2f s, ratio %.2f; %zu reports\n", workspace.files.size(),
              entries, median(parsing), median(rules), median(ratio), reports);
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
