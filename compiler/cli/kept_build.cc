// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/kept_build.h"

#include <algorithm>
#include <unordered_map>

#include "compiler/cli/kept_bytes.h"
#include "compiler/cli/kept_facts.h"
#include "compiler/link/references.h"
#include "compiler/sheet/common_sheets.h"
#include "query/library/hash.h"

namespace sheafc {
namespace {

constexpr const char* build_file = "/build";
constexpr const char* facts_file = "/facts";
constexpr std::size_t most_told_again = 500;  // sheets; reading more takes longer than writing all anew

std::optional<std::uint32_t> place_of(const std::vector<std::string>& names, std::string_view name) {
  const auto at = std::ranges::lower_bound(names, name);
  if (at == names.end() || *at != name) return std::nullopt;
  return static_cast<std::uint32_t>(at - names.begin());
}

bool numbers_of(const std::vector<std::string>& those, const std::vector<std::string>& names,
                std::vector<std::uint32_t>& numbers) {
  numbers.clear();
  for (const std::string& name : those) {
    const auto number = place_of(names, name);
    if (!number) return false;
    numbers.push_back(*number);
  }
  return true;
}

void write(const KeptSheet& sheet, KeptWriter& writer) {
  writer.number(std::uint64_t{sheet.file});
  writer.number(std::uint64_t{sheet.is_common});
  writer.number(sheet.offers);
  writer.values(sheet.bases);
  writer.values(sheet.references);
  writer.diagnostics(sheet.faults);
}

KeptSheet read_sheet(KeptReader& reader) {
  KeptSheet sheet;
  sheet.file = static_cast<std::uint32_t>(reader.number());
  sheet.is_common = reader.number() == 1;
  sheet.offers = static_cast<std::uint64_t>(reader.number());
  sheet.bases = reader.values<std::uint32_t>();
  sheet.references = reader.values<std::uint32_t>();
  sheet.faults = reader.diagnostics();
  return sheet;
}

}  // namespace

std::optional<std::uint32_t> KeptBuild::number_of(std::string_view name) const {
  return place_of(names, name);
}

bool describe_references(const Sheet& sheet, const std::vector<std::string>& names, KeptSheet& kept) {
  const References references = references_of(sheet);
  return numbers_of(references.bases, names, kept.bases) &&
         numbers_of(references.all, names, kept.references);
}

std::uint64_t offers_of(const LinkedSheet& sheet) {
  std::string all;
  for (const LinkedEntry& entry : sheet.entries) {
    all += '\n' + entry.address;
    for (const std::string& former : entry.formerly) all += ' ' + former;
  }
  return sheaf::hash_of(all);
}

void KeptSheets::add(const Part& part, const std::vector<std::string>& names) {
  if (!part.borrowed.empty()) speaks_of_others_ = true;
  for (const NumberedSheet& own : part.own) {
    const Sheet& sheet = *own.sheet->sheet;
    KeptSheet& kept = sheets_.emplace_back();
    files_.push_back(sheet.file->name());
    kept.is_common = is_common(sheet);
    kept.offers = offers_of(*own.sheet);
    if (!describe_references(sheet, names, kept)) speaks_of_others_ = true;
  }
}

std::optional<KeptBuild> KeptSheets::with(const Compilation& compilation, Findings findings,
                                          const Receipt& receipt) {
  const std::size_t count = sheets_.size();
  if (speaks_of_others_ || compilation.files.size() != count || receipt.hashes.size() != count)
    return std::nullopt;
  std::unordered_map<std::string_view, std::uint32_t> places;
  for (const SheetFile& place : compilation.places)
    places.emplace(place.opened, static_cast<std::uint32_t>(places.size()));
  for (std::size_t i = 0; i < count; ++i) {
    sheets_[i].file = places.at(files_[i]);
    sheets_[i].faults = compilation.files[sheets_[i].file].faults;
  }
  KeptBuild build;
  build.library = {receipt.rows_hash, receipt.hashes};
  build.findings = std::move(findings);
  build.names = compilation.names;
  build.sheets = std::move(sheets_);
  return build;
}

std::optional<KeptWriter> draft_of(const KeptBuild& build, const std::string& folder) {
  const ToldFacts& told = build.findings.told;
  const bool are_in_file = build.facts && told.again().size() <= most_told_again;
  const auto facts = are_in_file ? build.facts : keep_facts(folder + facts_file, told.all());
  if (!facts) return std::nullopt;
  KeptWriter writer;
  writer.number(std::uint64_t{build.names.size()});
  for (std::size_t i = 0; i < build.names.size(); ++i) {
    writer.text(build.names[i]);
    write(build.sheets[i], writer);
    const SheetFindings& found = build.findings.sheets[i];
    writer.diagnostics(found.reports);
    writer.number(std::uint64_t{found.allows});
  }
  writer.number(*facts);
  const ToldFacts::Again again = are_in_file ? told.again() : ToldFacts::Again();
  writer.number(std::uint64_t{again.size()});
  for (const auto& [sheet, now] : again) {
    writer.number(std::uint64_t{sheet});
    writer.values(now.facts);
    writer.values(now.statements);
  }
  writer.number(std::uint64_t{build.findings.groups.size()});
  for (const GroupFindings& group : build.findings.groups) {
    writer.number(std::uint64_t{group.alike});
    writer.values(group.looked_at);
    writer.diagnostics(group.reports);
  }
  return writer;
}

void keep_build(const std::string& folder, KeptWriter draft, const EarlierLibrary& library,
                const std::string& identity) {
  draft.number(library.rows_hash);
  for (const HashedSheet& sheet : library.sheets) {
    draft.number(sheet.entries);
    draft.number(sheet.hash);
  }
  draft.text(identity);
  keep_bytes(folder + build_file, draft.bytes());
}

std::optional<KeptBuild> read_kept_build(const std::string& folder) {
  const auto bytes = kept_bytes(folder + build_file);
  if (!bytes) return std::nullopt;
  KeptBuild build;
  KeptReader reader(*bytes, build.texts);
  const std::uint64_t sheets = reader.count();
  build.names.reserve(sheets);
  build.sheets.reserve(sheets);
  build.findings.sheets.reserve(sheets);
  build.library.sheets.reserve(sheets);
  for (std::uint64_t left = sheets; left > 0 && !reader.failed(); --left) {
    build.names.push_back(reader.text());
    build.sheets.push_back(read_sheet(reader));
    SheetFindings& found = build.findings.sheets.emplace_back();
    found.reports = reader.diagnostics();
    found.allows = reader.number() == 1;
  }
  build.facts = static_cast<std::uint64_t>(reader.number());
  ToldFacts::Again again;
  for (std::uint64_t left = reader.count(); left > 0 && !reader.failed(); --left) {
    SheetFacts& now = again[static_cast<std::uint32_t>(reader.number())];
    now.facts = reader.values<Fact>();
    now.statements = reader.values<std::uint32_t>();
  }
  for (std::uint64_t left = reader.count(); left > 0 && !reader.failed(); --left) {
    GroupFindings& group = build.findings.groups.emplace_back();
    group.alike = static_cast<Likeness>(reader.number());
    group.looked_at = reader.values<std::uint32_t>();
    group.reports = reader.diagnostics();
  }
  build.library.rows_hash = static_cast<std::uint64_t>(reader.number());
  for (const std::string& name : build.names) {
    const auto entries = static_cast<std::uint64_t>(reader.number()),
               hash = static_cast<std::uint64_t>(reader.number());
    build.library.sheets.push_back({name, entries, hash});
  }
  build.identity = reader.text();
  if (!reader.at_end()) return std::nullopt;
  auto facts = kept_facts(folder + facts_file, *build.facts);
  if (!facts) return std::nullopt;
  build.findings.told = ToldFacts(std::move(facts), std::move(again));
  return build;
}

}  // namespace sheafc
