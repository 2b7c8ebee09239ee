// SPDX-License-Identifier: GPL-2.0-or-later
// JSON lines: a program may read them as they come, and a file of them is searched with any tool.
#include <nlohmann/json.hpp>

#include "compiler/cli/report.h"

namespace sheafc {
namespace {

using Json = nlohmann::ordered_json;

std::string_view word_of(Severity severity) {
  return severity == Severity::error ? "error" : severity == Severity::warning ? "warning" : "note";
}

Json place_of(const Diagnostic& diagnostic) {
  return {{"file", diagnostic.where.file}, {"line", diagnostic.where.line}, {"column", diagnostic.where.column},
          {"length", diagnostic.where.length}};
}

}  // namespace

std::string report_json(const Diagnostics& diagnostics) {
  std::string lines;
  for (const Diagnostic& diagnostic : diagnostics.all()) {
    Json object = place_of(diagnostic);
    object["severity"] = word_of(diagnostic.severity);
    object["rule"] = diagnostic.rule;
    object["message"] = diagnostic.message;
    object["notes"] = Json::array();
    for (const Diagnostic& note : diagnostic.notes) {
      Json place = place_of(note);
      place["message"] = note.message;
      object["notes"].push_back(std::move(place));
    }
    // A message may quote bytes that are no UTF-8.
    lines += object.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
  }
  return lines;
}

}  // namespace sheafc
