// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/unit_lookup.h"

#include <algorithm>
#include <cstdint>

#include "query/quantity/unit_table.h"

namespace sheaf {
namespace {

// Calls visit(spelling) for the symbol, the name and every further spelling of a unit.
template <typename Visit>
constexpr void each_spelling(const Unit& unit, Visit visit) {
  visit(unit.symbol);
  visit(unit.name);
  if (!unit.singular.empty()) visit(unit.singular);
  std::string_view rest = unit.spellings;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('|'), rest.size());
    visit(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
}

struct Entry {
  Folded spelling;
  std::uint8_t unit = 0;
};

constexpr bool before(const Entry& left, const Entry& right) {
  const int order = left.spelling.text().compare(right.spelling.text());
  return order != 0 ? order < 0 : left.unit < right.unit;
}

constexpr std::size_t entry_limit = [] {
  std::size_t count = 0;
  for (const Unit& unit : table::units) each_spelling(unit, [&](std::string_view) { ++count; });
  return count;
}();

constexpr std::uint32_t hash(std::string_view text) {
  std::uint32_t value = 2166136261U;  // FNV-1a
  for (const char c : text) value = (value ^ static_cast<unsigned char>(c)) * 16777619U;
  return value ^ (value >> 15);
}

// All folded spellings in order, and for each hash the first entry that has it.
struct Index {
  static constexpr std::size_t slot_count = 2048;
  static constexpr std::uint16_t vacant = 0xFFFF;

  std::array<Entry, entry_limit> entries{};
  std::size_t size = 0;
  std::array<std::uint16_t, slot_count> slots{};

  constexpr Index() {
    for (std::size_t i = 0; i < table::unit_count; ++i) {
      each_spelling(table::units[i], [&](std::string_view spelling) {
        if (const auto folded = fold(spelling)) add({*folded, static_cast<std::uint8_t>(i)});
      });
    }
    std::sort(entries.begin(), entries.begin() + static_cast<std::ptrdiff_t>(size), before);
    slots.fill(vacant);
    for (std::size_t i = 0; i < size; ++i) {
      const std::string_view text = entries[i].spelling.text();
      if (i > 0 && entries[i - 1].spelling.text() == text) continue;
      std::size_t slot = hash(text) % slot_count;
      while (slots[slot] != vacant) slot = (slot + 1) % slot_count;
      slots[slot] = static_cast<std::uint16_t>(i);
    }
  }

  // Two spellings of one unit that fold alike are one entry, joined wherever either is.
  constexpr void add(const Entry& entry) {
    for (std::size_t i = size; i > 0 && entries[i - 1].unit == entry.unit; --i) {
      if (entries[i - 1].spelling.text() != entry.spelling.text()) continue;
      return entries[i - 1].spelling.allow_joints(entry.spelling.joints());
    }
    entries[size++] = entry;
  }

  // The first entry of this spelling, or size.
  std::size_t find(std::string_view text) const {
    for (std::size_t slot = hash(text) % slot_count; slots[slot] != vacant; slot = (slot + 1) % slot_count) {
      if (entries[slots[slot]].spelling.text() == text) return slots[slot];
    }
    return size;
  }
};

constexpr Index spelling_index;
static_assert(spelling_index.size * 2 < Index::slot_count);
static_assert(table::unit_count < 256);

// Where each dimension's rows begin and end.
struct Rows {
  std::size_t first = 0, end = 0;
};
constexpr auto rows_of_dimension = [] {
  std::array<Rows, table::dimension_count> rows{};
  for (std::size_t i = 0; i < table::unit_count; ++i) {
    Rows& own = rows[static_cast<std::size_t>(table::units[i].dimension)];
    if (own.end == 0) own.first = i;
    own.end = i + 1;
  }
  return rows;
}();
static_assert(
    [] {
      std::size_t rows = 0;
      for (const Rows& own : rows_of_dimension) rows += own.end - own.first;
      return rows == table::unit_count;
    }(),
    "rows of one dimension stand together");

struct FalseFriend {
  std::string_view spelling, message;
};
// Case matters in these: SI prefixes that folding would mix up, and a label that is no unit.
constexpr std::array<FalseFriend, 9> false_friends{{
    {"mPa", "mPa is the millipascal; the megapascal is written MPa"},
    {"MPa·s", "MPa·s is the megapascal second; the millipascal second is written mPa·s"},
    {"MPas", "MPa·s is the megapascal second; the millipascal second is written mPa·s"},
    {"Mg", "Mg is the megagram, a tonne; the milligram is written mg"},
    {"Mbar", "Mbar is a million bar; the millibar is written mbar"},
    {"MV", "MV is a million volts; the millivolt is written mV"},
    {"MA", "MA is a million amperes; the milliampere is written mA"},
    {"wt", "the weight of an oil is a label, not a viscosity; write mm²/s at 40 °C"},
    {"weight", "the weight of an oil is a label, not a viscosity; write mm²/s at 40 °C"},
}};

std::string quoted(std::string_view text) {
  std::string quoted = "\"";
  quoted += text;
  return quoted += '"';
}

// "a", "a or b", "a, b or c"
template <typename Units>
std::string listed(const Units& units) {
  std::string list;
  std::size_t left = units.size();
  for (const Unit* unit : units) {
    if (!list.empty()) list += left == 1 ? " or " : ", ";
    list += unit->symbol;
    --left;
  }
  return list;
}

// "US gal or imp gal"; where the dimensions differ too, "US fl oz (volume) or oz (mass)".
std::string listed_choices(const UnitChoices& choices) {
  const bool one_dimension = std::all_of(choices.begin(), choices.end(), [&](const Unit* unit) {
    return unit->dimension == choices[0]->dimension;
  });
  if (one_dimension) return listed(choices);
  std::string list;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    if (i > 0) list += i + 1 == choices.size() ? " or " : ", ";
    list += std::string(choices[i]->symbol) + " (" + std::string(name_of(choices[i]->dimension)) + ")";
  }
  return list;
}

// "a volume or a mass"
std::string dimensions_of(const UnitChoices& choices) {
  std::string text;
  for (const Unit* unit : choices) {
    const std::string dimension = with_article(unit->dimension);
    if (text.find(dimension) != std::string::npos) continue;
    text += (text.empty() ? "" : " or ") + dimension;
  }
  return text;
}

}  // namespace

void UnitChoices::add(const Unit& unit) {
  const bool known =
      std::any_of(begin(), end(), [&](const Unit* other) { return other->symbol == unit.symbol; });
  if (!known && size_ < units_.size()) units_[size_++] = &unit;
}

UnitChoices find_units(const Folded& spelling, std::optional<Dimension> dimension) {
  UnitChoices choices;
  const std::size_t first = spelling_index.find(spelling.text());
  for (std::size_t i = first; i < spelling_index.size; ++i) {
    const Entry& entry = spelling_index.entries[i];
    if (entry.spelling.text() != spelling.text()) break;
    if ((spelling.joints() & ~entry.spelling.joints()) != 0) continue;
    const Unit& unit = table::units[entry.unit];
    if (!dimension || unit.dimension == *dimension) choices.add(unit);
  }
  return choices;
}

std::span<const Unit> all_units() { return table::units; }

std::span<const Unit> units_of(Dimension dimension) {
  const Rows rows = rows_of_dimension[static_cast<std::size_t>(dimension)];
  return all_units().subspan(rows.first, rows.end - rows.first);
}

std::vector<std::string_view> spellings_of(const Unit& unit) {
  std::vector<std::string_view> spellings;
  each_spelling(unit, [&](std::string_view spelling) {
    const bool known = std::find(spellings.begin(), spellings.end(), spelling) != spellings.end();
    if (!known && fold(spelling)) spellings.push_back(spelling);
  });
  return spellings;
}

std::vector<const Unit*> readings(std::string_view spelling, std::optional<Dimension> dimension) {
  const auto folded = fold(spelling);
  if (!folded || !false_friend(spelling).empty()) return {};
  const UnitChoices choices = find_units(*folded, dimension);
  return {choices.begin(), choices.end()};
}

Result<const Unit*> unit_from(std::string_view spelling, std::optional<Dimension> dimension) {
  const auto folded = fold(spelling);
  if (folded && false_friend(spelling).empty()) {
    const UnitChoices choices = find_units(*folded, dimension);
    if (choices.size() == 1) return choices[0];
  }
  return Failure{unit_fault(spelling, dimension)};
}

std::string_view false_friend(std::string_view spelling) {
  for (const FalseFriend& entry : false_friends) {
    if (entry.spelling == spelling) return entry.message;
  }
  return {};
}

std::string workshop_units(Dimension dimension) {
  std::vector<const Unit*> units;
  for (const Unit& unit : units_of(dimension)) {
    if (unit.workshop) units.push_back(&unit);
  }
  return listed(units);
}

std::string unit_fault(std::string_view spelling, std::optional<Dimension> dimension) {
  if (const std::string_view message = false_friend(spelling); !message.empty()) return std::string(message);
  const auto folded = fold(spelling);
  if (folded) {
    const UnitChoices meant = find_units(*folded, dimension);
    if (meant.size() > 1) return quoted(spelling) + " may be " + listed_choices(meant) + ": write which";
    const UnitChoices other = find_units(*folded, std::nullopt);
    if (!other.empty() && dimension) {
      return quoted(spelling) + " is " + dimensions_of(other) + "; " + with_article(*dimension) +
             " is meant: " + workshop_units(*dimension);
    }
  }
  std::string message = "no unit is written " + quoted(spelling);
  if (dimension) message += "; " + with_article(*dimension) + " is in " + workshop_units(*dimension);
  return message;
}

}  // namespace sheaf
