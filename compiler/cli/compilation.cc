// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/compilation.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <unordered_map>

#include "compiler/cli/progress.h"
#include "compiler/link/addresses.h"
#include "compiler/link/link_rules.h"
#include "compiler/sheet/sheet_rules.h"

namespace sheafc {
namespace {

using sheaf::Failure;
using sheaf::Result;

class Compiling {
 public:
  Compiling(SheetParts parts, const CompileOptions& options)
      : parts_(std::move(parts)), options_(options), rules_(parts_.names().size(), {.today = today()}) {}

  Result<Compilation> compile() {
    if (options_.progress) options_.progress->stage("compiling", parts_.names().size());
    for (std::size_t i = 0; i < parts_.count(); ++i) {
      const auto part = parts_.read(i);
      if (!part) return part.failure();
      if (auto failure = take(*part)) return *failure;
    }
    Compilation& out = compilation_;
    addresses_.report_taken(out.diagnostics);
    if (out.rules_ran) {
      if (auto failure = judge_the_rest()) return *failure;
      out.allowed = rules_.end(out.diagnostics, options_.findings);
    }
    out.diagnostics.sort();
    out.places = parts_.places();
    out.files = parts_.files();
    out.names = parts_.names();
    return std::move(out);
  }

 private:
  std::optional<Failure> take(const Part& part) {
    Diagnostics& found = compilation_.diagnostics;
    found.take(part.faults);
    if (part.lacks_a_table) compilation_.rules_ran = false;
    if (compilation_.rules_ran) errors_of_rules_ += rules_.examine(part.linked, part.own);
    for (const NumberedSheet& sheet : part.own) addresses_.add(*sheet.sheet);
    for (const LinkedSheet& sheet : part.linked.borrowed()) addresses_.add(sheet);
    // With one part all sheets are at hand; with several the judgement waits for the last.
    if (parts_.count() == 1 && compilation_.rules_ran) wanted_ = rules_.judge(part.own);
    if (options_.each_part) {
      const bool sound = found.errors() == 0 && errors_of_rules_ == 0;
      if (auto failure = options_.each_part(part, parts_.names(), sound)) return failure;
    }
    return std::nullopt;
  }

  std::optional<Failure> judge_the_rest() {
    if (parts_.count() > 1) wanted_ = rules_.judge({});
    while (!wanted_.empty()) {
      const auto some = parts_.read_some(wanted_);
      if (!some) return some.failure();
      wanted_ = rules_.judge(some->own);
    }
    return std::nullopt;
  }

  SheetParts parts_;
  const CompileOptions& options_;
  RuleRun rules_;
  Addresses addresses_;
  std::vector<std::uint32_t> wanted_;
  int errors_of_rules_ = 0;
  Compilation compilation_;
};

}  // namespace

Result<Compilation> compile(const CompileRequest& request, const CompileOptions& options) {
  auto parts = SheetParts::of(request, options.part_bytes);
  if (!parts) return parts.failure();
  return Compiling(std::move(parts).value(), options).compile();
}

Date today() {
  std::time_t seconds = std::time(nullptr);
  if (const char* epoch = std::getenv("SOURCE_DATE_EPOCH")) {
    long long stated = 0;
    const char* end = epoch + std::strlen(epoch);
    if (std::from_chars(epoch, end, stated).ptr == end && *epoch) seconds = static_cast<std::time_t>(stated);
  }
  std::tm parts{};
  ::gmtime_r(&seconds, &parts);
  return {parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday};
}

LineSource lines_on_disk() {
  auto files = std::make_shared<std::unordered_map<std::string, std::optional<SourceFile>>>();
  return [files](std::string_view file, int line) -> std::string_view {
    const auto [known, is_new] = files->try_emplace(std::string(file));
    if (is_new) {
      auto source = read_source(known->first, known->first);
      if (source) known->second = std::move(source).value();
    }
    return known->second ? known->second->line(line) : std::string_view{};
  };
}

std::vector<RuleInfo> all_rules() {
  std::vector<RuleInfo> rules;
  for (const auto table : {source_rules(), sheet_rules(), link_rules(), check_rules()})
    rules.insert(rules.end(), table.begin(), table.end());
  return rules;
}

}  // namespace sheafc
