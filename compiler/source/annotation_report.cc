// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <vector>

#include "compiler/source/report.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

constexpr std::size_t most_of_a_kind = 10;  // that the service shows of one step

std::string escaped(std::string_view text, bool is_property) {
  std::string out;
  for (const char c : text) {
    if (c == '%') {
      out += "%25";
    } else if (c == '\r') {
      out += "%0D";
    } else if (c == '\n') {
      out += "%0A";
    } else if (is_property && c == ':') {
      out += "%3A";
    } else if (is_property && c == ',') {
      out += "%2C";
    } else {
      out += c;
    }
  }
  return out;
}

std::string_view command(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "notice";
}

std::string place_in_words(const Span& where) {
  return std::string(where.file) + ":" + std::to_string(where.line) + ":" + std::to_string(where.column);
}

std::string annotation(const Diagnostic& d, const LineSource& line_of) {
  const std::string_view line = line_of(d.where.file, d.where.line);
  const auto before =
      line.substr(0, std::min(line.size(), static_cast<std::size_t>(std::max(d.where.column - 1, 0))));
  std::string message = d.message;
  for (const Diagnostic& note : d.notes) message += "\n" + place_in_words(note.where) + ": " + note.message;
  return "::" + std::string(command(d.severity)) + " file=" + escaped(d.where.file, true) +
         ",line=" + std::to_string(d.where.line) +
         ",col=" + std::to_string(sheaf::count_characters(before) + 1) + ",title=" + escaped(d.rule, true) +
         "::" + escaped(message, false) + "\n";
}

std::string rolled_up(const std::vector<const Diagnostic*>& rest) {
  const Severity severity = rest.front()->severity;
  const std::string name(name_of(severity));
  return "::" + std::string(command(severity)) + " title=" + std::to_string(rest.size()) +
         " more::" + std::to_string(rest.size()) + " more " + name +
         "s are not annotated; the first of them is at " +
         escaped(place_in_words(rest.front()->where), false) + "\n";
}

}  // namespace

std::string annotation_report(const Diagnostics& sorted, const LineSource& line_of) {
  std::string out;
  for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
    std::vector<const Diagnostic*> of_kind;
    for (const Diagnostic& d : sorted.all()) {
      if (d.severity == severity) of_kind.push_back(&d);
    }
    const std::size_t shown = of_kind.size() <= most_of_a_kind ? of_kind.size() : most_of_a_kind - 1;
    for (std::size_t i = 0; i < shown; ++i) out += annotation(*of_kind[i], line_of);
    if (shown < of_kind.size())
      out += rolled_up({of_kind.begin() + static_cast<std::ptrdiff_t>(shown), of_kind.end()});
  }
  return out;
}

}  // namespace sheafc
