// SPDX-License-Identifier: GPL-2.0-or-later
// Diagnostics written out, for people and for programs. Pure functions: they print nothing and look at
// no terminal. All want the diagnostics sorted.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>

#include "compiler/source/diagnostics.h"
#include "compiler/source/rule.h"

namespace sheafc {

// A line of a sheet without its end; empty if there is no such sheet or line.
using LineSource = std::function<std::string_view(std::string_view file, int line)>;

struct TextStyle {
  bool colour = false;
  int width = 120;  // columns; longer source lines are cut around the caret
  int most = 0;     // reports and notes to show; 0: all. Notes give way first, then warnings, errors last
};

// file:line:column: error: message [rule], the source line, a caret under the very characters.
std::string text_report(const Diagnostics& sorted, const LineSource& line_of, const TextStyle& style);

// "2 errors, 1 warning"; "no faults" if there is none.
std::string fault_counts(const Diagnostics& diagnostics);

// One object a line: {"file","line","column","length","severity","rule","message","notes":[{"file","line",
// "column","length","message"}]}. Lines and columns count from 1; columns and lengths count bytes. Never cut.
std::string json_lines_report(const Diagnostics& sorted);

// One SARIF 2.1.0 log. Columns count characters, as it declares. `rules` describes the rules, `version` is
// the compiler's. Each result's fingerprint is made of its rule, file and key path, not of its line.
std::string sarif_report(const Diagnostics& sorted, const LineSource& line_of,
                         std::span<const RuleInfo> rules, std::string_view version);

// Workflow commands that a CI service turns into annotations: ::error file=…,line=…,col=…::message. Such
// services show ten errors and ten warnings of a step and drop the rest in silence, so the tenth says how
// many more there are.
std::string annotation_report(const Diagnostics& sorted, const LineSource& line_of);

}  // namespace sheafc
