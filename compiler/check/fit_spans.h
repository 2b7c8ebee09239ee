// SPDX-License-Identifier: GPL-2.0-or-later
// The years of a machine for which sheets of one assembly speak.
#pragma once

#include <string>
#include <vector>

#include "compiler/link/linked_sheets.h"

namespace sheafc {

// "front-brake|Haldrek|Muleback 380|north": what two sheets must share to answer the same question.
std::string question_of(const LinkedSheet& sheet, const Fit& fit);

int first_year(const Years& years);  // an open end is far away
int last_year(const Years& years);

// Whether both could be asked for one machine: years meet, markets and frame numbers do not part them.
bool meet(const Fit& left, const Fit& right);

}  // namespace sheafc
