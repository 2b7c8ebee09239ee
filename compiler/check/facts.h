// SPDX-License-Identifier: GPL-2.0-or-later
// What a sheet tells the rules that compare sheets with each other: numbers alone, gathered sheet by sheet,
// so that the facts of a large folder fit into memory when its sheets do not, and can be kept from build to
// build.
#pragma once

#include <bit>
#include <cstdint>
#include <limits>
#include <vector>

#include "compiler/check/likeness.h"
#include "compiler/link/linked_sheets.h"

namespace sheafc {

// Open ends of a Fact's years.
inline constexpr std::int16_t first_of_all_years = std::numeric_limits<std::int16_t>::min();
inline constexpr std::int16_t last_of_all_years = std::numeric_limits<std::int16_t>::max();

// What one place says in one respect. It is written to files as it lies in memory (compiler/cli).
struct Fact {
  Likeness alike = 0;       // in which respect: facts with the same are judged as one group
  std::uint64_t says = 0;   // a number's bits, or the hash of a text
  std::uint32_t sheet = 0;  // its place among the run's own sheets
  std::uint32_t entry = 0;  // its place on the sheet; of a fact about the sheet, what the rule makes of it
  std::int16_t from = first_of_all_years, to = last_of_all_years;
  std::uint16_t variant : 15 = 0;   // its place among the variants of its address
  std::uint16_t inherited : 1 = 0;  // its sheet says nothing of it that its base did not
  std::uint8_t part = 0;            // a field's or value's place, where a rule needs it
  std::uint8_t rule = 0;            // its place among all rules

  double number() const { return std::bit_cast<double>(says); }
  bool same_address(const Fact& other) const {
    return sheet == other.sheet && entry - variant == other.entry - other.variant;
  }
  bool years_meet(const Fact& other) const { return from <= other.to && other.from <= to; }
  friend bool operator==(const Fact&, const Fact&) = default;
};
static_assert(sizeof(Fact) == 32);

// All that one sheet tells. `statements` is what twin-sheets compares: hashes, ascending.
struct SheetFacts {
  std::vector<Fact> facts;
  std::vector<std::uint32_t> statements;
};

// Takes the facts of one rule about one sheet.
class Facts {
 public:
  Facts(std::uint8_t rule, std::uint32_t sheet, SheetFacts& out) : rule_(rule), sheet_(sheet), out_(out) {}

  Fact& add(const LinkedEntry& entry, Likeness alike, std::uint64_t says);
  Fact& add(const LinkedEntry& entry, Likeness alike, double says) {
    return add(entry, alike, std::bit_cast<std::uint64_t>(says));
  }
  Fact& add(Likeness alike, std::uint64_t says);  // about the sheet
  void set_statements(std::vector<std::uint32_t> statements) { out_.statements = std::move(statements); }

 private:
  std::uint8_t rule_;
  std::uint32_t sheet_;
  SheetFacts& out_;
};

void set_years(Fact& fact, const Years& years);

}  // namespace sheafc
