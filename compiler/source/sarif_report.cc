// SPDX-License-Identifier: GPL-2.0-or-later
// SARIF 2.1.0 (OASIS, 27 March 2020).
#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "compiler/source/key_path.h"
#include "compiler/source/report.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

using Json = nlohmann::ordered_json;

// RFC 3986: everything but the unreserved characters and the slash is escaped.
std::string uri_of(std::string_view path) {
  std::string uri = path.starts_with('/') ? "file://" : "";
  for (const char c : path) {
    const bool kept = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                      std::string_view("-._~/").find(c) != std::string_view::npos;
    constexpr char hex[] = "0123456789ABCDEF";
    const auto byte = static_cast<unsigned char>(c);
    uri += kept ? std::string(1, c) : std::string{'%', hex[byte >> 4], hex[byte & 15]};
  }
  return uri;
}

class SarifWriter {
 public:
  SarifWriter(const LineSource& line_of, std::span<const RuleInfo> rules)
      : line_of_(line_of), rules_(rules) {}

  Json log(const Diagnostics& sorted, std::string_view version) {
    Json results = Json::array();
    for (const Diagnostic& d : sorted.all()) results.push_back(result(d));
    const Json driver = {{"name", "sheafc"}, {"version", version}, {"rules", rules()}};
    Json run = {{"tool", {{"driver", driver}}}, {"columnKind", "unicodeCodePoints"}, {"results", results}};
    return {{"$schema", "https://json.schemastore.org/sarif-2.1.0.json"},
            {"version", "2.1.0"},
            {"runs", Json::array({std::move(run)})}};
  }

 private:
  Json rules() const {
    Json list = Json::array();
    for (const RuleInfo& rule : rules_) {
      list.push_back({{"id", rule.name},
                      {"shortDescription", {{"text", rule.summary}}},
                      {"fullDescription", {{"text", rule.why}}},
                      {"defaultConfiguration", {{"level", name_of(rule.severity)}}}});
    }
    return list;
  }

  Json result(const Diagnostic& d) {
    Json result = {{"ruleId", d.rule}};
    const auto rule =
        std::find_if(rules_.begin(), rules_.end(), [&](const RuleInfo& r) { return r.name == d.rule; });
    if (rule != rules_.end()) result["ruleIndex"] = rule - rules_.begin();
    result["level"] = name_of(d.severity);
    result["message"] = {{"text", d.message}};
    result["locations"] = Json::array({location(d.where)});
    result["partialFingerprints"] = {{"sheafValue/v1", fingerprint(d)}};
    for (std::size_t i = 0; i < d.notes.size(); ++i) {
      Json related = location(d.notes[i].where);
      related["id"] = i;
      related["message"] = {{"text", d.notes[i].message}};
      result["relatedLocations"].push_back(std::move(related));
    }
    return result;
  }

  Json location(const Span& where) const {
    const std::string_view line = line_of_(where.file, where.line);
    const auto characters = [&](int column) {
      const auto bytes = static_cast<std::size_t>(std::max(column - 1, 0));
      return bytes > line.size() ? column : sheaf::count_characters(line.substr(0, bytes)) + 1;
    };
    const Json region = {{"startLine", std::max(where.line, 1)},
                         {"startColumn", characters(where.column)},
                         {"endColumn", characters(where.column + std::max(where.length, 1))}};
    return {{"physicalLocation", {{"artifactLocation", {{"uri", uri_of(where.file)}}}, {"region", region}}}};
  }

  // Equal ones are told apart by a running number, so that none is taken for another's double.
  std::string fingerprint(const Diagnostic& d) {
    std::string print = std::string(d.rule) + " " + std::string(d.where.file) + " " +
                        key_path(d.where.file, d.where.line, line_of_);
    const int before = seen_[print]++;
    return before == 0 ? print : print + " " + std::to_string(before + 1);
  }

  const LineSource& line_of_;
  std::span<const RuleInfo> rules_;
  std::map<std::string, int> seen_;
};

}  // namespace

std::string sarif_report(const Diagnostics& sorted, const LineSource& line_of,
                         std::span<const RuleInfo> rules, std::string_view version) {
  return SarifWriter(line_of, rules)
             .log(sorted, version)
             .dump(2, ' ', false, Json::error_handler_t::replace) +
         "\n";
}

}  // namespace sheafc
