// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/compilation.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <unordered_map>

#include "compiler/check/check.h"
#include "compiler/cli/progress.h"
#include "compiler/link/borrow.h"
#include "compiler/link/link_rules.h"
#include "compiler/sheet/sheet_rules.h"

namespace sheafc {
namespace {

// Rules compare figures with published tables: while a table cannot be read, they would call every figure
// that it proves a fault.
bool lacks_a_table(const Workspace& workspace) {
  return std::ranges::any_of(workspace.files, [&](const auto& file) {
    const bool is_table = file->bytes().find("\ntable:") != std::string_view::npos;
    return is_table &&
           std::ranges::none_of(workspace.sheets, [&](const auto& sheet) { return sheet->file == file; });
  });
}

}  // namespace

sheaf::Result<std::unique_ptr<Compilation>> compile(const CompileRequest& request, CompileOptions options) {
  auto compilation = std::make_unique<Compilation>();
  Diagnostics& sink = compilation->diagnostics;
  const auto stage = [&](const char* name) {
    if (options.progress) options.progress->stage(name);
  };
  stage("reading");
  auto workspace = read_workspace(request.folders, sink, options.progress ? &options.progress->done() : nullptr);
  if (!workspace) return workspace.failure();
  compilation->workspace = std::move(workspace).value();
  if (compilation->workspace.files.empty())
    return sheaf::Failure{"there is no sheet (*.yaml) in " + request.folders.front()};
  auto borrowed = borrow_sheets(request.libraries, compilation->workspace.sheets);
  if (!borrowed) return borrowed.failure();
  compilation->borrowed = std::move(borrowed).value();
  stage("linking");
  compilation->linked =
      link_sheets(compilation->workspace.sheets, compilation->borrowed, sink, compilation->workspace.unread);
  if (lacks_a_table(compilation->workspace)) {
    compilation->rules_ran = false;
  } else {
    stage("checking");
    compilation->allowed = run_rules(compilation->linked, {.today = today()}, sink, options.findings);
  }
  sink.sort();
  return compilation;
}

Date today() {
  std::time_t seconds = std::time(nullptr);
  if (const char* epoch = std::getenv("SOURCE_DATE_EPOCH")) {
    long long stated = 0;
    const char* end = epoch + std::strlen(epoch);
    if (std::from_chars(epoch, end, stated).ptr == end && *epoch) seconds = static_cast<std::time_t>(stated);
  }
  std::tm parts{};
  ::gmtime_r(&seconds, &parts);
  return {parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday};
}

LineSource lines_of(const Workspace& workspace) {
  auto files = std::make_shared<std::unordered_map<std::string_view, const SourceFile*>>();
  for (const auto& file : workspace.files) files->emplace(file->name(), file.get());
  return [files](std::string_view file, int line) -> std::string_view {
    const auto found = files->find(file);
    return found == files->end() ? std::string_view{} : found->second->line(line);
  };
}

LineSource lines_on_disk() {
  auto files = std::make_shared<std::unordered_map<std::string, std::optional<SourceFile>>>();
  return [files](std::string_view file, int line) -> std::string_view {
    const auto [known, is_new] = files->try_emplace(std::string(file));
    if (is_new) {
      auto source = read_source(known->first, known->first);
      if (source) known->second = std::move(source).value();
    }
    return known->second ? known->second->line(line) : std::string_view{};
  };
}

std::vector<RuleInfo> all_rules() {
  std::vector<RuleInfo> rules;
  for (const auto table : {source_rules(), sheet_rules(), link_rules(), check_rules()})
    rules.insert(rules.end(), table.begin(), table.end());
  return rules;
}

}  // namespace sheafc
