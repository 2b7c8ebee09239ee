// SPDX-License-Identifier: GPL-2.0-or-later
// What is on the shelf: whole sheets, where a question names no part of a machine but only the machine, an
// assembly, or nothing at all.
#pragma once

#include <optional>
#include <vector>

#include "query/search/find.h"

namespace sheaf {

// Whether the reading asks for sheets rather than entries: "muleback", "fork 2013", "?".
bool asks_for_sheets(const QuestionReading& reading);

// Of assemblies that fit, by assembly and name; and of tables where no machine is named. Words and cribs
// are not shown. A Failure if a library is damaged.
std::optional<Failure> fill_shelf(Findings& findings, Lexicon& lexicon);

}  // namespace sheaf
