// SPDX-License-Identifier: GPL-2.0-or-later
// From folders of sheets to linked and checked ones: the steps that build, check and show share.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "compiler/check/check.h"
#include "compiler/check/findings.h"
#include "compiler/cli/sheet_parts.h"
#include "compiler/source/diagnostics.h"
#include "compiler/source/report.h"
#include "compiler/source/rule.h"

namespace sheafc {

struct Compilation {
  std::vector<SheetFile> places;   // of all files, as they were found
  std::vector<ReadFile> files;     // the same, as they were read
  std::vector<std::string> names;  // of the sheets, ascending
  Diagnostics diagnostics;         // sorted
  std::vector<Allowed> allowed;
  bool rules_ran = true;  // false while a table that they need cannot be read
};

class Progress;

struct CompileOptions {
  Progress* progress = nullptr;  // told how much there is to do; each_part says how much of it is done
  Findings* findings = nullptr;  // what the rules found, for running them again
  // Takes each part of the sheets, linked and checked by itself; `sound` is whether no error was found so
  // far. A Failure ends the compilation.
  std::function<std::optional<sheaf::Failure>(const Part& part, const std::vector<std::string>& names,
                                              bool sound)>
      each_part = {};
  std::size_t part_bytes = default_part_bytes;
};

// Reads, links and checks. A Failure is what the world refused; what is wrong with the sheets is in the
// diagnostics.
sheaf::Result<Compilation> compile(const CompileRequest& request, const CompileOptions& options = {});

// Today in UTC, by which allowances end; SOURCE_DATE_EPOCH, where it is set, stands for the clock.
Date today();

// The lines of files, for the reports; each file is read when the first of its lines is asked for.
LineSource lines_on_disk();

// The rules of every stage, in the order of the flow.
std::vector<RuleInfo> all_rules();

}  // namespace sheafc
