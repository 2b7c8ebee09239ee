// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/crib.h"

#include <algorithm>

#include "query/answer/fields.h"
#include "query/search/of_kind.h"

namespace sheaf {
namespace {

constexpr std::size_t most_tools = 500;  // of each kind: a crib is a cupboard, not a warehouse

Failure unreadable(const EntryRecord& entry, std::string_view what) {
  return Failure{"the crib's " + entry.address + " cannot be used: " + std::string(what)};
}

std::optional<Quantity> quantity_of(const EntryRecord& entry, std::string_view key, Dimension dimension) {
  const auto statement = statement_of(entry.fields, key, dimension);
  if (!statement || !statement->figure().nominal) return std::nullopt;
  return Quantity{*statement->figure().nominal, statement->figure().unit};
}

// "4 %" and "± 4 %" say the same.
std::optional<Number> per_cent_in(const FieldRecords& fields, std::string_view key) {
  const auto statement = statement_of(fields, key, Dimension::ratio);
  if (!statement) return std::nullopt;
  const Figure& figure = statement->figure();
  if (figure.nominal) return figure.nominal;
  return figure.spread;
}

// The step in the unit of the scale; the two must agree exactly.
std::optional<Number> step_of(const EntryRecord& entry, const Unit& unit) {
  const auto step = quantity_of(entry, "step", Dimension::torque);
  if (!step) return std::nullopt;
  Figure figure;
  figure.nominal = step->value;
  figure.unit = step->unit;
  const auto converted = convert(figure, unit);
  if (!converted || !converted->exact) return std::nullopt;
  return converted->figure.nominal;
}

Result<CribWrench> wrench_of(const EntryRecord& entry) {
  CribWrench wrench;
  wrench.address = entry.address;
  wrench.name = entry.name;
  const auto range = statement_of(entry.fields, "range", Dimension::torque);
  if (!range || !range->figure().least || !range->figure().most)
    return unreadable(entry, "its range is no range of torque");
  const Figure& figure = range->figure();
  const auto step = step_of(entry, *figure.unit);
  if (!step) return unreadable(entry, "its step is not in the unit of its range");
  const auto accuracy = per_cent_in(entry.fields, "accuracy");
  if (!accuracy) return unreadable(entry, "its accuracy is no percentage");
  wrench.scale = {*figure.least, *figure.most, *step, figure.unit, approximate(*accuracy)};
  wrench.length = quantity_of(entry, "length", Dimension::length);
  wrench.drive = text_or_none(entry.fields, "drive");
  wrench.calibration_due = text_or_none(entry.fields, "calibration-due");
  wrench.shows = says(entry.fields, "type", "indicating");
  return wrench;
}

Result<CribAdapter> adapter_of(const EntryRecord& entry) {
  const auto offset = quantity_of(entry, "offset", Dimension::length);
  if (!offset) return unreadable(entry, "its offset is no length");
  return CribAdapter{entry.address, entry.name, text_or_none(entry.fields, "drive"), *offset};
}

void read_head(const SheetRecord& sheet, Crib& crib) {
  crib.sheet = sheet.name;
  crib.shop = text_or_none(sheet.fields, "crib.shop");
  crib.tolerance = per_cent_in(sheet.fields, "crib.tolerance");
  for (const auto& [key, dimension] :
       {std::pair{"crib.torque", Dimension::torque}, std::pair{"crib.pressure", Dimension::pressure},
        std::pair{"crib.volume", Dimension::volume}}) {
    const auto* text = text_of(sheet.fields, key);
    if (!text) continue;
    if (const auto unit = unit_from(*text, dimension)) crib.units.push_back(*unit);
  }
}

template <typename Tool, typename Read>
std::optional<Failure> read_tools(Library& library, std::string_view kind, Read read,
                                  std::vector<Tool>& tools) {
  const auto entries = entries_of_kind(library, kind, most_tools);
  if (!entries) return entries.failure();
  for (const auto& entry : *entries) {
    if (!entry.withdrawn.empty()) continue;
    auto tool = read(entry);
    if (!tool) return tool.failure();
    tools.push_back(std::move(tool).value());
  }
  return std::nullopt;
}

Result<std::optional<Crib>> crib_in(Library& library) {
  Crib crib;
  if (auto fault = read_tools(library, "wrench", wrench_of, crib.wrenches)) return *fault;
  if (auto fault = read_tools(library, "adapter", adapter_of, crib.adapters)) return *fault;
  if (crib.wrenches.empty()) return std::optional<Crib>();
  const auto sheet = library.sheet_without_entries(sheet_part(crib.wrenches.front().address));
  if (!sheet) return sheet.failure();
  if (!sheet->empty()) read_head(sheet->front(), crib);
  crib.library = library.facts().name;
  return std::optional(std::move(crib));
}

}  // namespace

const CribAdapter* Crib::adapter_named(std::string_view name) const {
  const auto found = std::ranges::find_if(adapters, [&](const CribAdapter& adapter) {
    return adapter.address == name || entry_part(adapter.address) == name;
  });
  return found == adapters.end() ? nullptr : &*found;
}

Result<std::optional<Crib>> read_crib(const std::vector<Library*>& libraries) {
  for (Library* library : libraries) {
    auto crib = crib_in(*library);
    if (!crib || *crib) return crib;
  }
  return std::optional<Crib>();
}

double millimetres(const Quantity& length) {
  constexpr double millimetres_in_a_metre = 1000;
  return approximate(length.value) * static_cast<double>(length.unit->factor.numerator) /
         static_cast<double>(length.unit->factor.denominator) * millimetres_in_a_metre;
}

}  // namespace sheaf
