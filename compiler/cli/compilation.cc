// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/compilation.h"

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
  compilation->linked = link_sheets(compilation->workspace.sheets, {}, sink);
  sink.sort();
  return compilation;
}

std::vector<RuleInfo> all_rules() {
  std::vector<RuleInfo> rules;
  for (const auto table : {source_rules(), sheet_rules(), link_rules()}) rules.insert(rules.end(), table.begin(), table.end());
  return rules;
}

}  // namespace sheafc
