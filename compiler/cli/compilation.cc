// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/compilation.h"

#include <unordered_map>

#include "compiler/check/check.h"
#include "compiler/link/link_rules.h"
#include "compiler/sheet/sheet_rules.h"

namespace sheafc {

sheaf::Result<std::unique_ptr<Compilation>> compile(const std::vector<std::string>& folders) {
  auto compilation = std::make_unique<Compilation>();
  Diagnostics& sink = compilation->diagnostics;
  auto workspace = read_workspace(folders, sink);
  if (!workspace) return workspace.failure();
  compilation->workspace = std::move(workspace).value();
  if (compilation->workspace.files.empty()) return sheaf::Failure{"there is no sheet (*.yaml) in " + folders.front()};
  compilation->linked = link_sheets(compilation->workspace.sheets, {}, sink, compilation->workspace.unread);
  compilation->allowed = run_rules(compilation->linked, {}, sink);
  sink.sort();
  return compilation;
}

LineSource lines_of(const Workspace& workspace) {
  auto files = std::make_shared<std::unordered_map<std::string_view, const SourceFile*>>();
  for (const auto& file : workspace.files) files->emplace(file->name(), file.get());
  return [files](std::string_view file, int line) -> std::string_view {
    const auto found = files->find(file);
    return found == files->end() ? std::string_view{} : found->second->line(line);
  };
}

std::vector<RuleInfo> all_rules() {
  std::vector<RuleInfo> rules;
  for (const auto table : {source_rules(), sheet_rules(), link_rules(), check_rules()}) rules.insert(rules.end(), table.begin(), table.end());
  return rules;
}

}  // namespace sheafc
