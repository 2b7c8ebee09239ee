// SPDX-License-Identifier: GPL-2.0-or-later
// The measures and figures that an entry states, one by one, and how they meet those of a question. The
// index knows only their outermost ends; here each is looked at by itself. Internal to search.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"
#include "query/search/reading.h"

namespace sheaf {

// How one entry meets a question's lengths and quantities.
struct Meeting {
  bool meets = true;    // all of them are stated
  bool is_near = true;  // all of them are stated, or nearly
  double cost = 0;      // a measure of another sense than it was likely meant in costs a little
  double distance = 0;  // how far off the furthest is, as a share of what is near enough
  std::string differs;  // "outside −0.3 mm", "−8 mL"; empty if nothing does
};

Meeting meet_measures(const EntryRecord& entry, const QuestionReading& reading);

// Whether entries of that kind state one measure, whatever it is called: limits, clearances, settings,
// pressures.
bool is_measure(std::string_view kind);

// Whether the number stands in its name or its description.
bool is_described(const LengthAsked& asked, const EntryRecord& entry);

// Whether its name has that folded word.
bool is_called(const EntryRecord& entry, const std::string& word);

// Whether it is a limit of something else, where that of an axle is asked for: "run-out of the rear axle".
bool measures_beside_axle(const EntryRecord& entry, const QuestionReading& reading);

// Whether its name has a number that stands alone: "chain length over 20 pitches".
bool is_numbered(const EntryRecord& entry);

// Whether it states a figure of that dimension.
bool states(const EntryRecord& entry, Dimension dimension);

// Whether its torque has all of these numbers among its stages: 60 and 60 of 15 N·m, 60°, 60°.
bool has_stages(const EntryRecord& entry, const std::vector<std::string>& numbers);

// Whether its thread is stated to be of that hand: "left".
bool has_hand(const EntryRecord& entry, const std::string& hand);

// Whether it is tightened in that order: "1-4-2-3".
bool has_pattern(const EntryRecord& entry, const std::string& pattern);

// "300" of "300 g"; empty if it does not begin with a digit.
std::string number_typed(const QuantityAsked& asked);

// Whether it states a figure in some of the units, or in others of the same.
bool states_some(const EntryRecord& entry, const std::vector<const Unit*>& units);

// Whether its description speaks of some of them: "long-fibre wool, 300 g".
bool describes_in(const EntryRecord& entry, const std::vector<const Unit*>& units);

// Units in which an answer is wanted and that tell what is asked; in what unit a torque or a length is wanted
// tells nothing.
std::vector<const Unit*> units_that_tell(const QuestionReading& reading);

// A difference with its sign, in that unit, to at most three digits: "+2 mm", "−0.5 mm".
std::string signed_amount(double amount, std::string_view unit);

}  // namespace sheaf
