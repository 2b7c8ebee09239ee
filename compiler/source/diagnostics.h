// SPDX-License-Identifier: GPL-2.0-or-later
// What is wrong with the sheets: collected, never thrown, each at its own line and column.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheafc {

enum class Severity { note, warning, error };

std::string_view name_of(Severity severity);  // "note", "warning", "error"

// A place in a file. Line and column count from 1; column and length count bytes.
struct Span {
  std::string_view file;  // a kept_file_name
  int line = 0;
  int column = 0;
  int length = 1;
};

// `rule` is a name from the table of rules ("torque-over-proof-load"). The message starts in lower
// case, has no final period, names what was found and what is allowed.
struct Diagnostic {
  Severity severity = Severity::error;
  std::string_view rule;
  Span where;
  std::string message;
  std::vector<Diagnostic> notes = {};  // other places: severity note, no notes of their own
};

// The sink. One per task; sinks are merged and sorted at the end, so that the order of work shows in
// no output.
class Diagnostics {
 public:
  void report(Diagnostic diagnostic) { all_.push_back(std::move(diagnostic)); }
  void error(std::string_view rule, Span where, std::string message) {
    report({Severity::error, rule, where, std::move(message)});
  }
  void warning(std::string_view rule, Span where, std::string message) {
    report({Severity::warning, rule, where, std::move(message)});
  }
  void note(std::string_view rule, Span where, std::string message) {
    report({Severity::note, rule, where, std::move(message)});
  }
  void take(Diagnostics other);  // moves all of the other's reports here
  void sort();                   // by file, line, column, rule; drops exact doubles
  int errors() const;
  int warnings() const;
  const std::vector<Diagnostic>& all() const { return all_; }

 private:
  std::vector<Diagnostic> all_;
};

}  // namespace sheafc
