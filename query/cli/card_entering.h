// SPDX-License-Identifier: GPL-2.0-or-later
// Filling in a card from the command line: by flags, or item by item at a prompt. Every answer is on disk
// before the next is asked for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/answer/card_record.h"
#include "query/cli/console.h"

namespace sheaf {

class Flags;

struct Entering {
  std::vector<std::string> done, undo;            // items, or entries for all of their boxes
  std::vector<std::string> found, measured, set;  // ENTRY[/PLACE]=VALUE
  std::vector<std::string> job;                   // FIELD=VALUE
  bool ask = false;

  bool is_empty() const;
};
void declare_entering(Flags& flags, Entering& entering);

struct EnteringStyle {
  std::string today;  // the date of the record, where none is entered
  bool json = false;
  Colour colour = Colour::automatic;
};

// The record in the file, a new one where there is no file. None of it is kept if any flag is at fault.
// Done when nothing is open or wrong, nothing (1) when something is.
ExitStatus enter_and_check(const Card& card, const std::string& file, const Entering& entering,
                           const EnteringStyle& style);

// None if there is no such file.
Result<std::optional<CardRecord>> read_record(const std::string& file);

}  // namespace sheaf
