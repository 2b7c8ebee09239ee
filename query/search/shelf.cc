// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/shelf.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "query/library/vocabulary.h"
#include "query/search/meets.h"
#include "query/search/of_size.h"

namespace sheaf {
namespace {

bool is_assembly(std::string_view name) {
  const auto names = all_assemblies();
  return std::ranges::find(names, name) != names.end();
}

// "front wheel" as sides and a part; "fork" by any of its names. Empty if they name no assembly.
std::string assembly_named(const QuestionReading& reading) {
  if (reading.parts.size() != 1) return {};
  std::string name;
  for (const auto& side : reading.sides) name += side + "-";
  const PartAsked& part = reading.parts.front();
  for (const auto& word : part.words) name += word + (&word == &part.words.back() ? "" : "-");
  if (is_assembly(name)) return name;
  for (const auto& group : part.groups) {
    std::string of_side;
    for (const auto& side : reading.sides) of_side += side + "-";
    if (is_assembly(of_side + group)) return of_side + group;
  }
  return {};
}

constexpr std::size_t most_machines = 8;     // beyond, looking through all sheets is as good
constexpr std::size_t most_entries = 20000;  // of one machine

// The sheets that could be of the machines asked for, by name; all where none was named.
Result<std::vector<SheetRecord>> candidates(Library& library, const QuestionReading& reading) {
  if (reading.machines.empty() || reading.machines.size() > most_machines) return library.sheets();
  std::set<std::string> names;
  for (const auto& machine : reading.machines) {
    const auto entries = entries_with(
        library, {term(Prefix::machine, machine_body(machine.make, machine.model))}, most_entries);
    if (!entries) return entries.failure();
    for (const auto& entry : entries.value().entries)
      names.insert(entry.address.substr(0, entry.address.find('/')));
  }
  std::vector<SheetRecord> all;
  for (const auto& name : names) {
    auto sheets = library.sheet_without_entries(name);
    if (!sheets) return sheets.failure();
    for (auto& sheet : std::move(sheets).value()) all.push_back(std::move(sheet));
  }
  return all;
}

bool is_shown(const SheetRecord& sheet, const QuestionReading& reading, const std::string& assembly) {
  if (!assembly.empty() && sheet.assembly != assembly) return false;
  const bool for_any = reading.machines.empty() && reading.year == 0;
  if (sheet.form == "table") return for_any && assembly.empty();
  if (sheet.form != "assembly") return false;
  EntryRecord whole;
  whole.fits = sheet.fits;
  return for_any || fits_machine(whole, reading, true);
}

}  // namespace

bool asks_for_sheets(const QuestionReading& reading) {
  const bool asks_more = !reading.figures.empty() || !reading.choices.empty() ||
                         !reading.quantities.empty() || !reading.kinds.empty() || !reading.unread.empty() ||
                         reading.has_designation() || !reading.stages.empty();
  if (asks_more) return false;
  if (reading.parts.empty()) return reading.sides.empty();
  return !assembly_named(reading).empty();
}

std::optional<Failure> fill_shelf(Findings& findings, Lexicon& lexicon) {
  const std::string assembly = findings.reading.assemblies.empty() ? assembly_named(findings.reading)
                                                                   : findings.reading.assemblies.front();
  for (std::size_t i = 0; i < lexicon.libraries().size(); ++i) {
    auto sheets = candidates(*lexicon.libraries()[i], findings.reading);
    if (!sheets) return sheets.failure();
    for (auto& sheet : std::move(sheets).value())
      if (is_shown(sheet, findings.reading, assembly)) findings.shelf.push_back({i, std::move(sheet)});
  }
  std::ranges::stable_sort(findings.shelf, [](const ShelfSheet& left, const ShelfSheet& right) {
    return std::tie(left.sheet.form, left.sheet.assembly) < std::tie(right.sheet.form, right.sheet.assembly);
  });
  return std::nullopt;
}

}  // namespace sheaf
