// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/review/coverage.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace sheafc {
namespace {

using Json = nlohmann::ordered_json;
using Machines = std::map<std::pair<std::string, std::string>, MachineCoverage>;

void count(AssemblyCoverage& assembly, const sheaf::SheetRecord& sheet, const sheaf::EntryRecord& entry,
           const std::string& old_before) {
  assembly.sheets.insert(sheet.name);
  ++assembly.entries[entry.kind];
  ++assembly.entries_in_all;
  const std::string& on = entry.checked.on;
  if (on.empty())
    ++assembly.unchecked;
  else if (on < old_before)
    ++assembly.old;
  if (!on.empty() && (assembly.oldest_check.empty() || on < assembly.oldest_check))
    assembly.oldest_check = on;
  if (entry.critical && entry.checked.second.empty()) ++assembly.one_reader;
  if (entry.status == "second-hand" || entry.status == "disputed") ++assembly.unsure;
}

void add_sheet(Machines& machines, const sheaf::SheetRecord& sheet, const std::string& old_before) {
  std::set<std::string> counted;  // machine and address
  for (const sheaf::EntryRecord& entry : sheet.entries) {
    for (const sheaf::FitRecord& fit : entry.fits) {
      if (fit.model.empty() || !counted.insert(fit.make + "\n" + fit.model + "\n" + entry.address).second)
        continue;
      MachineCoverage& machine = machines[{fit.make, fit.model}];
      machine.make = fit.make;
      machine.model = fit.model;
      count(machine.assemblies[sheet.assembly], sheet, entry, old_before);
    }
  }
}

// More than half of the others have it.
bool most_have(std::size_t having, std::size_t others) { return others > 0 && having * 2 > others; }

void find_missing_assemblies(Machines& machines) {
  std::map<std::string, std::size_t> having;
  for (const auto& [key, machine] : machines) {
    for (const auto& [assembly, what] : machine.assemblies) ++having[assembly];
  }
  for (auto& [key, machine] : machines) {
    for (const auto& [assembly, count] : having) {
      if (!machine.assemblies.contains(assembly) && most_have(count, machines.size() - 1))
        machine.missing.insert(assembly);
    }
  }
}

void find_missing_kinds(Machines& machines) {
  std::map<std::string, std::map<std::string, std::size_t>> having;  // assembly, kind
  std::map<std::string, std::size_t> recorded;
  for (const auto& [key, machine] : machines) {
    for (const auto& [assembly, what] : machine.assemblies) {
      ++recorded[assembly];
      for (const auto& [kind, entries] : what.entries) ++having[assembly][kind];
    }
  }
  for (auto& [key, machine] : machines) {
    for (auto& [assembly, what] : machine.assemblies) {
      for (const auto& [kind, count] : having[assembly]) {
        if (!what.entries.contains(kind) && most_have(count, recorded[assembly] - 1))
          what.missing_kinds.insert(kind);
      }
    }
  }
}

std::string joined(const std::set<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

std::string counted(int number, const char* what) {
  return number ? ", " + std::to_string(number) + " " + what : "";
}

std::string assembly_line(const std::string& name, const AssemblyCoverage& what) {
  std::string line = "  " + name + std::string(name.size() < 16 ? 16 - name.size() : 1, ' ') +
                     std::to_string(what.entries_in_all) + (what.entries_in_all == 1 ? " entry" : " entries");
  if (!what.oldest_check.empty()) line += ", checked since " + what.oldest_check;
  line += counted(what.unchecked, "unchecked") + counted(what.old, "checked long ago") +
          counted(what.one_reader, "critical without a second reader") +
          counted(what.unsure, "second-hand or disputed");
  if (!what.missing_kinds.empty()) line += "; no " + joined(what.missing_kinds) + ", which most others have";
  return line + "\n";
}

}  // namespace

std::vector<MachineCoverage> coverage(std::span<const sheaf::SheetRecord> sheets,
                                      const std::string& old_before) {
  Machines machines;
  for (const sheaf::SheetRecord& sheet : sheets) {
    if (sheet.form == "assembly") add_sheet(machines, sheet, old_before);
  }
  find_missing_assemblies(machines);
  find_missing_kinds(machines);
  std::vector<MachineCoverage> list;
  for (auto& [key, machine] : machines) list.push_back(std::move(machine));
  return list;
}

std::string coverage_text(std::span<const MachineCoverage> machines) {
  std::string text;
  for (const MachineCoverage& machine : machines) {
    text += (text.empty() ? "" : "\n") + machine.make + " " + machine.model + "\n";
    for (const auto& [name, what] : machine.assemblies) text += assembly_line(name, what);
    if (!machine.missing.empty())
      text += "  not recorded, and most others have it: " + joined(machine.missing) + "\n";
  }
  return text;
}

std::string coverage_json(std::span<const MachineCoverage> machines) {
  Json json = {{"schema", 1}, {"machines", Json::array()}};
  for (const MachineCoverage& machine : machines) {
    Json assemblies = Json::array();
    for (const auto& [name, what] : machine.assemblies) {
      assemblies.push_back({{"assembly", name},
                            {"sheets", what.sheets},
                            {"entries", what.entries},
                            {"missing-kinds", what.missing_kinds},
                            {"oldest-check", what.oldest_check},
                            {"unchecked", what.unchecked},
                            {"old", what.old},
                            {"one-reader", what.one_reader},
                            {"unsure", what.unsure}});
    }
    json["machines"].push_back({{"make", machine.make},
                                {"model", machine.model},
                                {"assemblies", std::move(assemblies)},
                                {"missing", machine.missing}});
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace sheafc
