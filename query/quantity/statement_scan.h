// SPDX-License-Identifier: GPL-2.0-or-later
// The grammar of a statement, around its figures:
//
//   statement = stages { "per" words | "at" quantity | "(" figure ")" | [","] words }
//   stages    = figure | first { ("," | "then" | "+") stage }       more than one for a torque only
//   first     = figure | "hand tight"
//   stage     = torque | [ "+" | "turn" | "further" ] angle | "loosen" angle | "loosen fully" | "hand tight"
#pragma once

#include "query/quantity/figure_scan.h"

namespace sheaf {

class StatementScan {
 public:
  StatementScan(std::string_view text, std::optional<Dimension> dimension, Input input,
                const std::vector<const Unit*>* chosen = nullptr)
      : scanner_{text}, dimension_(dimension), input_(input), chosen_(chosen) {}

  // The whole text.
  Result<Statement> read();

  // Only the figure, its stages and an "at", and stops before whatever follows: `sheaf convert` looks
  // for a unit there.
  Result<Statement> read_head();
  std::string_view rest() const { return scanner_.rest(); }
  std::size_t position() const { return scanner_.at; }

  const UnitChoices& ambiguous() const { return ambiguous_; }

 private:
  using Fault = std::optional<Failure>;

  Fault read_stages();
  Fault read_first_stage();
  // Reads one more stage if there is one, and says whether there was.
  Fault read_next_stage(bool& found);
  Fault read_torque_or_angle();
  Fault read_loosening();
  Fault read_turn();
  bool take_stage_mark();

  Fault read_rest();
  Fault read_item(bool separated);
  Fault read_per(std::size_t start);
  Fault read_at();
  Fault read_brackets(char closing);
  Fault read_printed(std::size_t from);
  bool take_equals();
  Fault read_condition(bool attached);
  Fault add_condition(std::string_view phrase, std::size_t from);
  Fault check_attached(std::size_t from) const;
  bool phrase_ends(bool at_ends_it) const;

  Result<Figure> read_figure(std::optional<Dimension> dimension, std::optional<Dimension> also = {});

  Scanner scanner_;
  std::optional<Dimension> dimension_;
  Input input_;
  const std::vector<const Unit*>* chosen_;
  UnitChoices ambiguous_;
  Statement statement_;
};

// The words with which a stage tightens by hand, loosens, or turns further; the scanner steps over them.
bool take_hand_tight(Scanner& scanner);
bool take_loosening(Scanner& scanner);
bool take_turning(Scanner& scanner);

}  // namespace sheaf
