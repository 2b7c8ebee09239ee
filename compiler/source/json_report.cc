// SPDX-License-Identifier: GPL-2.0-or-later
#include <nlohmann/json.hpp>

#include "compiler/source/report.h"

namespace sheafc {
namespace {

using Json = nlohmann::ordered_json;

Json place(const Span& where) {
  return {{"file", where.file}, {"line", where.line}, {"column", where.column}, {"length", where.length}};
}

}  // namespace

std::string json_lines_report(const Diagnostics& sorted) {
  std::string out;
  for (const Diagnostic& d : sorted.all()) {
    Json object = place(d.where);
    object["severity"] = name_of(d.severity);
    object["rule"] = d.rule;
    object["message"] = d.message;
    object["notes"] = Json::array();
    for (const Diagnostic& note : d.notes) {
      Json inner = place(note.where);
      inner["message"] = note.message;
      object["notes"].push_back(std::move(inner));
    }
    out += object.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
  }
  return out;
}

}  // namespace sheafc
