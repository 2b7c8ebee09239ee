// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <array>
#include <unordered_map>

#include "compiler/cli/report.h"

namespace sheafc {
namespace {

constexpr std::string_view reset = "\033[0m";
constexpr std::string_view bold = "\033[1m";

struct Look {
  std::string_view word, colour;
};
Look look_of(Severity severity) {
  switch (severity) {
    case Severity::error: return {"error", "\033[1;31m"};
    case Severity::warning: return {"warning", "\033[1;33m"};
    case Severity::note: break;
  }
  return {"note", "\033[1;36m"};
}

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) == 0x80; }

// Characters, so that the caret stands under the one meant; a tab is kept as one.
std::string blanks_for(std::string_view text) {
  std::string blanks;
  for (const char byte : text) {
    if (!continues(byte)) blanks += byte == '\t' ? '\t' : ' ';
  }
  return blanks;
}

class Printer {
 public:
  Printer(const Workspace& workspace, bool coloured) : coloured_(coloured) {
    for (const auto& file : workspace.files) files_.emplace(file->name(), file.get());
  }

  void print(const Diagnostic& diagnostic) {
    headline(diagnostic);
    excerpt(diagnostic);
    for (const Diagnostic& note : diagnostic.notes) {
      headline(note, diagnostic.rule);
      excerpt(note);
    }
  }

  std::string text() && { return std::move(text_); }

 private:
  void headline(const Diagnostic& diagnostic, std::string_view parent_rule = {}) {
    const Span& where = diagnostic.where;
    const Look look = look_of(diagnostic.severity);
    paint(bold, std::string(where.file) + ":" + std::to_string(where.line) + ":" + std::to_string(where.column) + ": ");
    paint(look.colour, std::string(look.word) + ": ");
    text_ += printable(diagnostic.message);
    if (parent_rule.empty()) text_ += " [" + std::string(diagnostic.rule) + "]";
    text_ += '\n';
  }

  void excerpt(const Diagnostic& diagnostic) {
    const Span& where = diagnostic.where;
    const auto found = files_.find(where.file);
    if (found == files_.end() || where.line < 1) return;
    const std::string_view line = found->second->line(where.line);
    if (line.empty() || line.size() > longest_shown) return;
    const auto start = std::min(static_cast<std::size_t>(std::max(where.column, 1) - 1), line.size());
    const std::string_view marked = line.substr(start, static_cast<std::size_t>(std::max(where.length, 1)));
    const std::string number = std::to_string(where.line);
    const std::string margin(number.size() < 5 ? 5 - number.size() : 0, ' ');
    text_ += margin + number + " | " + shown(line) + '\n';
    text_ += std::string(margin.size() + number.size(), ' ') + " | " + blanks_for(line.substr(0, start));
    paint(look_of(diagnostic.severity).colour, "^" + std::string(std::max<std::size_t>(blanks_for(marked).size(), 1) - 1, '~'));
    text_ += '\n';
  }

  static std::string shown(std::string_view line) {
    std::string safe;
    for (std::size_t start = 0; start <= line.size();) {
      const std::size_t tab = std::min(line.find('\t', start), line.size());
      safe += printable(line.substr(start, tab - start));
      if (tab < line.size()) safe += '\t';
      start = tab + 1;
    }
    return safe;
  }

  void paint(std::string_view colour, std::string_view text) {
    if (coloured_) text_ += colour;
    text_ += text;
    if (coloured_) text_ += reset;
  }

  static constexpr std::size_t longest_shown = 400;
  bool coloured_;
  std::unordered_map<std::string_view, const SourceFile*> files_;
  std::string text_;
};

std::string counted(std::size_t count, std::string_view what) {
  return std::to_string(count) + " " + std::string(what) + (count == 1 ? "" : "s");
}

std::size_t count(const Diagnostics& diagnostics, Severity severity) {
  return static_cast<std::size_t>(std::ranges::count(diagnostics.all(), severity, &Diagnostic::severity));
}

}  // namespace

std::string report_text(const Diagnostics& diagnostics, const Workspace& workspace, bool coloured, std::size_t cap) {
  constexpr std::array severities = {Severity::error, Severity::warning, Severity::note};
  std::array<std::size_t, 3> room{};
  std::array<std::size_t, 3> hidden{};
  std::size_t left = cap ? cap : diagnostics.all().size();
  for (std::size_t i = 0; i < severities.size(); ++i) {
    const std::size_t reported = count(diagnostics, severities[i]);
    room[i] = std::min(reported, left);
    hidden[i] = reported - room[i];
    left -= room[i];
  }
  Printer printer(workspace, coloured);
  for (const Diagnostic& diagnostic : diagnostics.all()) {
    const auto i = static_cast<std::size_t>(std::ranges::find(severities, diagnostic.severity) - severities.begin());
    if (room[i] == 0) continue;
    --room[i];
    printer.print(diagnostic);
  }
  std::string text = std::move(printer).text();
  if (hidden[0] + hidden[1] + hidden[2] > 0) {
    text += "not shown: " + counted(hidden[0], "error") + ", " + counted(hidden[1], "warning") + ", " + counted(hidden[2], "note") + "; --all shows them\n";
  }
  return text;
}

std::string tally(const Diagnostics& diagnostics) {
  return counted(static_cast<std::size_t>(diagnostics.errors()), "error") + ", " +
         counted(static_cast<std::size_t>(diagnostics.warnings()), "warning");
}

}  // namespace sheafc
