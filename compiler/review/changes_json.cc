// SPDX-License-Identifier: GPL-2.0-or-later
#include <nlohmann/json.hpp>

#include "compiler/review/changes.h"

namespace sheafc {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kinds[] = {"withdrawn", "changed", "removed", "renamed", "added"};

Json field_json(const FieldChange& field) {
  Json json = {
      {"key", field.key}, {"before", field.before}, {"after", field.after}, {"figure", field.figure}};
  if (field.percent) json["percent"] = *field.percent;
  return json;
}

Json fit_json(const sheaf::FitRecord& fit) {
  return {{"make", fit.make}, {"model", fit.model}, {"year-from", fit.year_from}, {"year-to", fit.year_to}};
}

Json change_json(const Change& change) {
  Json json = {{"change", kinds[static_cast<std::size_t>(change.kind)]},
               {"of", change.sheet ? "sheet" : "entry"},
               {"address", change.address},
               {"variant", change.variant},
               {"name", change.name},
               {"critical", change.critical}};
  if (!change.before_address.empty()) json["formerly"] = change.before_address;
  if (!change.reason.empty()) json["reason"] = change.reason;
  json["changes-figure"] = change.changes_figure();
  json["source-changed"] = change.source_changed;
  json["fields"] = Json::array();
  for (const FieldChange& field : change.fields) json["fields"].push_back(field_json(field));
  json["fits"] = Json::array();
  for (const sheaf::FitRecord& fit : change.fits) json["fits"].push_back(fit_json(fit));
  json["place"] = {{"file", change.place.file}, {"line", change.place.line}};
  return json;
}

}  // namespace

std::string changes_json(std::span<const Change> changes) {
  Json json = {{"schema", 1}, {"changes", Json::array()}};
  for (const Change& change : changes) json["changes"].push_back(change_json(change));
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sheafc
