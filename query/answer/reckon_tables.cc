// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/reckon_tables.h"

#include <algorithm>

#include "query/answer/answer.h"
#include "query/answer/fields.h"
#include "query/answer/reckon_given.h"
#include "query/library/fold.h"
#include "query/search/of_kind.h"

namespace sheaf {
namespace {

constexpr std::size_t most_rows = 5000;  // of one kind: the largest published table has a tenth of it

// The first library that has rows of the kind decides, as everywhere.
Result<std::vector<EntryRecord>> rows_of(const Libraries& libraries, std::string_view kind) {
  for (Library* library : libraries) {
    auto rows = entries_of_kind(*library, kind, most_rows);
    if (!rows || !rows->empty()) return rows;
  }
  return Failure{"no library asked has a table of kind " + std::string(kind) +
                 "; the sheets of specs-yaml/standards hold one"};
}

// A plain number, or a figure in the unit; none where the cell is empty.
std::optional<double> number_in(const EntryRecord& row, std::string_view column) {
  const std::string* text = text_of(row.fields, column);
  if (!text) return std::nullopt;
  const auto number = parse_number(*text, Input::sheet);
  return number ? std::optional(approximate(*number)) : std::nullopt;
}

std::optional<double> figure_in(const EntryRecord& row, std::string_view column, const Unit& unit) {
  const std::string* text = text_of(row.fields, column);
  if (!text) return std::nullopt;
  const auto figure = parse_figure(*text, std::nullopt, Input::sheet);
  if (!figure || !figure->unit) return std::nullopt;
  return in_unit(*figure, unit).least;
}

const Unit& mm() { return unit_named("mm"); }

std::string source_of(const EntryRecord& row) {
  std::string text = row.source.title;
  if (row.source.year > 0) text += " (" + std::to_string(row.source.year) + ")";
  if (!row.source.page.empty()) text += ", " + row.source.page;
  return text;
}

PropertyClass class_from(const EntryRecord& row) {
  const Unit& mpa = unit_named("MPa");
  PropertyClass result;
  result.name = text_or_none(row.fields, "class");
  result.over_mm = figure_in(row, "from", mm()).value_or(0);
  result.up_to_mm = figure_in(row, "to", mm()).value_or(1000);
  result.proof = figure_in(row, "proof-stress", mpa);
  result.yield = figure_in(row, "yield", mpa).value_or(0);
  result.tensile = figure_in(row, "tensile", mpa).value_or(0);
  return result;
}

bool is_same_row(const PropertyClass& left, const PropertyClass& right) {
  return left.name == right.name && left.over_mm == right.over_mm && left.up_to_mm == right.up_to_mm;
}

std::string choices_of(const std::vector<EntryRecord>& rows, std::string_view column) {
  std::vector<std::string> each;
  for (const auto& row : rows) {
    const std::string text = text_or_none(row.fields, column);
    if (!text.empty() && std::ranges::find(each, text) == each.end()) each.push_back(text);
  }
  std::string all;
  for (const auto& text : each) all += (all.empty() ? "" : ", ") + text;
  return all;
}

// low and high, or the one nominal, of every row of that state that has both its ends.
Result<PublishedRange> range_for(const Libraries& libraries, std::string_view kind, std::string_view state,
                                 std::string_view what) {
  const auto rows = rows_of(libraries, kind);
  if (!rows) return rows.failure();
  std::optional<Band> band;
  int used = 0;
  for (const auto& row : *rows) {
    if (text_or_none(row.fields, "state") != state) continue;
    const auto nominal = number_in(row, "nominal");
    const auto low = nominal ? nominal : number_in(row, "low"),
               high = nominal ? nominal : number_in(row, "high");
    if (!low || !high) continue;
    band = band ? Band{std::min(band->least, *low), std::max(band->most, *high)} : Band{*low, *high};
    ++used;
  }
  if (!band)
    return Failure{"no published " + std::string(what) + " for the state '" + std::string(state) +
                   "'; there are some for " + choices_of(*rows, "state")};
  return PublishedRange{band->least, band->most,
                        std::string(what) + " " + brief(band->least) + "–" + brief(band->most) + " of " +
                            std::to_string(used) + " published " + (used == 1 ? "row" : "rows") + " for '" +
                            std::string(state) + "', " + source_of(rows->front())};
}

}  // namespace

Result<std::vector<ThreadRow>> thread_rows(const Libraries& libraries) {
  const auto rows = rows_of(libraries, "thread-size");
  if (!rows) return rows.failure();
  std::vector<ThreadRow> threads;
  for (const auto& row : *rows) {
    auto thread = parse_thread(text_or_none(row.fields, "thread"), Input::sheet);
    if (thread) threads.push_back({std::move(thread).value(), text_or_none(row.fields, "series")});
  }
  return threads;
}

Result<ClassFound> find_class(const Libraries& libraries, std::string_view name, double diameter_mm) {
  const auto rows = rows_of(libraries, "property-class");
  if (!rows) return rows.failure();
  std::vector<PropertyClass> classes;
  for (const auto& row : *rows) classes.push_back(class_from(row));
  const std::string known = class_name(name);
  auto found = class_for(known.empty() ? name : known, diameter_mm, classes);
  if (!found) return found.failure();
  const auto at = std::ranges::find_if(classes, [&](const auto& each) { return is_same_row(each, *found); });
  const EntryRecord& row = (*rows)[static_cast<std::size_t>(at - classes.begin())];
  const std::string stress = found->proof ? "proof stress " + brief(*found->proof) + " MPa"
                                          : "stress at 0.2 % strain " + brief(found->yield) + " MPa";
  return ClassFound{*found, found->name + ": " + stress + ", " + source_of(row)};
}

Result<PublishedRange> nut_factors(const Libraries& libraries, std::string_view state) {
  return range_for(libraries, "nut-factor", state, "nut factor");
}

Result<PublishedRange> friction(const Libraries& libraries, std::string_view state) {
  return range_for(libraries, "friction-range", state, "friction");
}

Result<std::vector<GradeRow>> grade_rows(const Libraries& libraries, std::string_view kind) {
  const auto rows = rows_of(libraries, kind);
  if (!rows) return rows.failure();
  const Unit& unit = unit_named("mm²/s");
  const bool iso = kind == "viscosity-grade";
  std::vector<GradeRow> grades;
  for (const auto& row : *rows) {
    const std::string name = text_or_none(row.fields, "grade");
    const auto least = figure_in(row, iso ? "least" : "hot-least", unit);
    if (!least || name.ends_with('W')) continue;  // a winter grade is told by cold, not by this viscosity
    const auto most = figure_in(row, iso ? "most" : "hot-below", unit);
    grades.push_back({name, *least, most, !iso});
  }
  return grades;
}

Result<std::vector<IndexRow>> index_rows(const Libraries& libraries) {
  const auto rows = rows_of(libraries, "viscosity-index");
  if (!rows) return rows.failure();
  const Unit& unit = unit_named("mm²/s");
  std::vector<IndexRow> result;
  for (const auto& row : *rows) {
    const auto y = figure_in(row, "viscosity-100", unit), l = figure_in(row, "l", unit),
               h = figure_in(row, "h", unit);
    if (y && l && h) result.push_back({*y, *l, *h});
  }
  std::ranges::sort(result, {}, &IndexRow::viscosity_100);
  return result;
}

Result<Modulus> shear_modulus(const Libraries& libraries, std::string_view material) {
  const auto rows = rows_of(libraries, "spring-material");
  if (!rows) return rows.failure();
  const EntryRecord* found = nullptr;
  for (const auto& row : *rows) {
    if (fold(text_or_none(row.fields, "material")).find(fold(material)) == std::string::npos) continue;
    if (found)
      return Failure{"'" + std::string(material) + "' may be " + text_or_none(found->fields, "material") +
                     " or " + text_or_none(row.fields, "material")};
    found = &row;
  }
  if (!found)
    return Failure{"no wire '" + std::string(material) + "' in the table; it has " +
                   choices_of(*rows, "material")};
  const auto mpa = figure_in(*found, "shear-modulus", unit_named("MPa"));
  if (!mpa)
    return Failure{"the table states no shear modulus for " + text_or_none(found->fields, "material")};
  const bool from_memory = says(found->fields, "how", "memory");
  return Modulus{*mpa, text_or_none(found->fields, "material") + ": shear modulus " + brief(*mpa) + " MPa, " +
                           source_of(*found) + (from_memory ? " (row from memory)" : "")};
}

Result<FitRows> fit_rows(const Libraries& libraries) {
  const auto widths = rows_of(libraries, "tolerance-grade");
  if (!widths) return widths.failure();
  const auto deviations = rows_of(libraries, "limit-deviation");
  if (!deviations) return deviations.failure();
  const Unit& um = unit_named("µm");
  const auto whole = [](const EntryRecord& row, std::string_view column, int otherwise) {
    return static_cast<int>(number_in(row, column).value_or(otherwise));
  };
  FitRows result;
  for (const auto& row : *widths)
    result.tolerances.push_back({whole(row, "grade", 0), figure_in(row, "over", mm()).value_or(0),
                                 figure_in(row, "up-to", mm()).value_or(0),
                                 figure_in(row, "width", um).value_or(0)});
  for (const auto& row : *deviations)
    result.deviations.push_back({text_or_none(row.fields, "letter"), whole(row, "grade-from", 1),
                                 whole(row, "grade-to", 18), figure_in(row, "over", mm()).value_or(0),
                                 figure_in(row, "up-to", mm()).value_or(0),
                                 figure_in(row, "deviation", um).value_or(0)});
  return result;
}

}  // namespace sheaf
