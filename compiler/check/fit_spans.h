// SPDX-License-Identifier: GPL-2.0-or-later
// The years of a machine for which sheets of one assembly speak.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "compiler/link/linked_sheets.h"

namespace sheafc {

// What one sheet says of one machine.
struct Claim {
  const LinkedSheet* sheet = nullptr;
  const Fit* fit = nullptr;
};

// The claims of all own sheets of assemblies, by the question they answer: one assembly of one machine.
std::map<std::string, std::vector<Claim>> claims_by_question(const LinkedSheets& sheets);

int first_year(const Years& years);  // an open end is far away
int last_year(const Years& years);

// Whether both could be asked for one machine: years meet, markets and frame numbers do not part them.
bool meet(const Fit& left, const Fit& right);

}  // namespace sheafc
