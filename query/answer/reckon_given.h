// SPDX-License-Identifier: GPL-2.0-or-later
// What a reckoning is given: names and values in any order, "wire 4.5 mm outside 32 mm coils 22". What stands
// before the first name belongs to the topic's first name. Internal to the reckoning.
#pragma once

#include <map>
#include <optional>

#include "query/answer/reckon.h"
#include "query/trade/band.h"

namespace sheaf {

// The one unit with that symbol; our own tables name no other.
const Unit& unit_named(std::string_view symbol);
const Unit& unit_named(std::string_view symbol, Dimension dimension);

// The first thing that is wrong is kept, and asked for once all has been read; until then what could not be
// read is 0 or absent.
class Given {
 public:
  Given(const std::vector<std::string>& words, std::span<const GivenName> names);

  bool has(std::string_view name) const { return texts_.contains(std::string(name)); }
  std::string text(std::string_view name);  // required
  std::optional<std::string> text_if(std::string_view name);

  // In that unit. A bare number is taken to be in it.
  double amount(std::string_view name, const Unit& unit);
  std::optional<double> amount_if(std::string_view name, const Unit& unit);
  std::optional<Band> band_if(std::string_view name, const Unit& unit);
  std::optional<Figure> figure_if(std::string_view name, const Unit& unit);
  // A number without a unit, or a band of them: "0.12", "0.08..0.16".
  std::optional<Band> numbers_if(std::string_view name);
  std::optional<double> number_if(std::string_view name);
  // With its temperature: "32 mm²/s at 40 °C".
  std::optional<Statement> statement_if(std::string_view name, Dimension dimension);
  std::vector<Figure> list(std::string_view name, const Unit& unit);  // "500 mL, 1 L"

  void refuse(std::string message);
  const std::optional<Failure>& fault() const { return fault_; }
  // What was read, as it was understood, in order of reading.
  std::vector<Labelled> understood() const { return understood_; }

 private:
  std::optional<Figure> read(const std::string& name, const std::string& text, const Unit& unit);
  void note(std::string_view name, std::string text);

  std::map<std::string, std::string> texts_;
  std::vector<Labelled> understood_;
  std::optional<Failure> fault_;
};

// A figure in a unit of its dimension, for the formulae: its least and most; of a nominal, itself twice.
Band in_unit(const Figure& figure, const Unit& unit);

}  // namespace sheaf
