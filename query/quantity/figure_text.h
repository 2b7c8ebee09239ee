// SPDX-License-Identifier: GPL-2.0-or-later
// Writing of figures, shared by single figures and whole statements.
#pragma once

#include "query/quantity/figure.h"
#include "query/quantity/number_text.h"

namespace sheaf {

void write_figure(Writer& writer, const Figure& figure);
void write_quantity(Writer& writer, const Quantity& quantity);

}  // namespace sheaf
