// SPDX-License-Identifier: GPL-2.0-or-later
// Figures as plain numbers in one unit, for rules that compute. Nothing computed here is ever shown as
// a figure; messages quote the sheet's own text.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/sheet/value.h"
#include "query/trade/band.h"

namespace sheafc {

// The band of a figure in that unit; a nominal without tolerance is a band of no width. Absent ends are
// infinite. None if the figure has no number, or measures something else.
std::optional<sheaf::Band> band_in(const sheaf::Figure& figure, std::string_view unit);

// One number for the figure: its nominal, else the middle of its band, else its only end.
std::optional<double> middle_in(const sheaf::Figure& figure, std::string_view unit);
std::optional<double> middle_in(const sheaf::Statement* statement, std::string_view unit);

// The torque stages of a tightening, N·m, as written; hand tight and angles left out.
std::vector<double> torques_nm(const sheaf::Statement& torque);
// The largest of them.
std::optional<double> greatest_torque_nm(const sheaf::Statement& torque);
// All turning on after the last torque, in degrees.
double turned_further_degrees(const sheaf::Statement& torque);

// "28 N·m": a computed value with two significant digits, or so many, for "about ..." in a message.
std::string about(double value, std::string_view unit, int digits = 2);

}  // namespace sheafc
