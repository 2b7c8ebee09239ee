// SPDX-License-Identifier: GPL-2.0-or-later
// The grammar of one figure, read where it stands in a longer text:
//
//   figure   = [ "min" | "max" | "about" ] number [unit] [tail] [unit] [ "min" | "max" ]
//   tail     = "±" number ( "%" | [unit] )  |  "+" number "-" number  |  ( ".." | "–" | "to" | "-" ) number
//            | "(" number ".." number [unit] ")"
//
// The longest spelling of a unit wins, in the dimension that is asked for if it has one.
#pragma once

#include <optional>
#include <vector>

#include "query/quantity/figure.h"
#include "query/quantity/scan.h"
#include "query/quantity/unit_lookup.h"

namespace sheaf {

class FigureScan {
 public:
  // `chosen` settles ambiguous units: of several readings, the one that is among them.
  FigureScan(Scanner& scanner, std::optional<Dimension> dimension, Input input,
             const std::vector<const Unit*>* chosen = nullptr)
      : scanner_(scanner), dimension_(dimension), input_(input), chosen_(chosen) {}

  // A further dimension that will do (an angle where a torque is asked for).
  void allow(Dimension also) { also_ = also; }

  Result<Figure> read();
  Result<Quantity> read_quantity();

  // The readings of the unit that was ambiguous, if that is why reading failed.
  const UnitChoices& ambiguous() const { return ambiguous_; }

 private:
  using Fault = std::optional<Failure>;

  std::optional<Form> take_qualifier();
  Fault read_tail(Figure& figure);
  Fault read_spread(Figure& figure);
  Fault read_range_end(Figure& figure);
  Fault read_after_hyphen(Figure& figure);
  bool at_uneven() const;
  Fault read_uneven(Figure& figure, bool plus_first);
  Result<Number> read_one_side();
  Fault read_band(Figure& figure);
  bool at_band() const;
  bool take_range_mark();

  Fault read_unit_if_any(Figure& figure);
  Fault read_unit(const Unit*& unit);
  Fault read_unit_again(const Unit& unit);
  std::optional<Failure> settle(const UnitChoices& choices, std::size_t from, const Unit*& unit);

  Fault set_range(Figure& figure, const Number& least, const Number& most);
  std::optional<Form> take_suffix();
  Fault qualify(Figure& figure, std::optional<Form> form);
  Fault check(const Figure& figure) const;
  Failure missing_unit() const;

  Scanner& scanner_;
  std::optional<Dimension> dimension_;
  std::optional<Dimension> also_;
  Input input_;
  const std::vector<const Unit*>* chosen_;
  UnitChoices ambiguous_;
  std::size_t start_ = 0;
};

// The units that the text at the scanner may begin with, longest spelling first, and how long it is; the
// scanner stays. Empty if no unit stands there.
struct UnitHit {
  UnitChoices choices;
  std::size_t length = 0;
};
UnitHit longest_unit(const Scanner& scanner, std::optional<Dimension> dimension);

// The bytes up to the next space, comma or bracket: what a message quotes.
std::size_t word_length(const Scanner& scanner);

}  // namespace sheaf
