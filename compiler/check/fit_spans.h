// SPDX-License-Identifier: GPL-2.0-or-later
// The years of a machine for which sheets of one assembly speak.
#pragma once

#include <initializer_list>
#include <string_view>

#include "compiler/check/facts.h"

namespace sheafc {

// A fact for each machine and its years that a sheet of an assembly speaks of; alike are those of one
// assembly of one machine that share what `besides` names as well. `entry` is the fit's place.
void add_claims(const LinkedSheet& sheet, std::initializer_list<std::string_view> besides, Facts& facts);

int first_year(const Years& years);  // an open end is far away
int last_year(const Years& years);

// Whether both could be asked for one machine: years meet, markets and frame numbers do not part them.
bool meet(const Fit& left, const Fit& right);

}  // namespace sheafc
