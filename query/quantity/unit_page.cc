// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/unit_page.h"

#include "query/quantity/unit.h"

namespace sheaf {
namespace {

constexpr std::string_view introduction =
    R"(<!-- Made from unit_table.h; to make it anew: build/debug/tests/unit_page > query/quantity/UNITS.md -->
# Units

Every unit that reads, by what it measures, with its size in the dimension's base unit. Case does not matter in a spelling,
nor do the marks between its parts (`ft lb`, `ft-lb`, `FT.LB` and `ftlb` are one), nor how a small 2, a µ or a degree sign is
typed. A unit marked *workshop* is among those that a bare `sheaf convert` answers with.

A spelling in several tables or rows is ambiguous unless the place where it stands says which dimension is meant: an error in a
sheet, every reading at a prompt. One unit that serves two dimensions (psi, km) is not ambiguous.
)";

std::string text_of(Rational value) {
  std::string text = std::to_string(value.numerator);
  return value.denominator == 1 ? text : text.append("/").append(std::to_string(value.denominator));
}

std::string size_of(const Unit& unit) {
  std::string size(unit.exact ? "" : "≈ ");
  size.append(text_of(unit.factor));
  return unit.offset.numerator == 0 ? size : size.append(", from ").append(text_of(unit.offset));
}

std::string also_written(const Unit& unit) {
  std::string list;
  for (const std::string_view spelling : spellings_of(unit)) {
    if (spelling == unit.symbol || spelling == unit.name) continue;
    list.append(list.empty() ? "" : ", ").append(spelling);
  }
  return list;
}

void add_row(std::string& page, const Unit& unit) {
  page.append("| **").append(unit.symbol).append(unit.workshop ? "** *workshop*" : "**");
  page.append(" | ").append(unit.name);
  page.append(" | ").append(size_of(unit));
  page.append(" | ").append(also_written(unit));
  page.append(" | ").append(unit.source).append(" |\n");
}

}  // namespace

std::string units_as_markdown() {
  std::string page(introduction);
  const Unit* before = nullptr;
  for (const Unit& unit : all_units()) {
    if (before == nullptr || before->dimension != unit.dimension) {
      page.append("\n## ").append(name_of(unit.dimension));
      page.append("\n\n| unit | name | in ").append(base_of(unit.dimension));
      page.append(" | also written | source |\n|---|---|---|---|---|\n");
    }
    add_row(page, unit);
    before = &unit;
  }
  return page;
}

}  // namespace sheaf
