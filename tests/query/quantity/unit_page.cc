// SPDX-License-Identifier: GPL-2.0-or-later
// Prints the page of units, for query/quantity/UNITS.md.
#include "query/quantity/unit_page.h"

#include <iostream>

int main() { std::cout << sheaf::units_as_markdown(); }
