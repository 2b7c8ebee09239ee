// SPDX-License-Identifier: GPL-2.0-or-later
// From folders of sheets to linked and checked ones: the steps that build, check and show share.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "compiler/check/check.h"
#include "compiler/check/findings.h"
#include "compiler/link/linked_sheets.h"
#include "compiler/sheet/workspace.h"
#include "compiler/source/diagnostics.h"
#include "compiler/source/report.h"
#include "compiler/source/rule.h"

namespace sheafc {

struct Compilation {
  Workspace workspace;
  std::vector<std::unique_ptr<Sheet>> borrowed;
  LinkedSheets linked;      // points into the two
  Diagnostics diagnostics;  // sorted
  std::vector<Allowed> allowed;
  bool rules_ran = true;  // false while a table that they need cannot be read
};

struct CompileRequest {
  std::vector<std::string> folders;
  std::vector<std::string> libraries;  // that the sheets build against: --with
};

class Progress;

struct CompileOptions {
  Progress* progress = nullptr;  // told how far it is
  Findings* findings = nullptr;  // what the rules found, for running them again
};

// Reads, links and checks. A Failure is what the world refused; what is wrong with the sheets is in the
// diagnostics.
sheaf::Result<std::unique_ptr<Compilation>> compile(const CompileRequest& request, CompileOptions options = {});

// Today in UTC, by which allowances end; SOURCE_DATE_EPOCH, where it is set, stands for the clock.
Date today();

// The lines of the workspace's files, for the reports. The workspace must outlive it.
LineSource lines_of(const Workspace& workspace);
// The same from files that are not in memory; each is read when the first of its lines is asked for.
LineSource lines_on_disk();

// The rules of every stage, in the order of the flow.
std::vector<RuleInfo> all_rules();

}  // namespace sheafc
