// SPDX-License-Identifier: GPL-2.0-or-later
// Exact sums of numbers as written: 28.0 - 0.5 is 27.5, 1/2 + 1/16 is 9/16.
#pragma once

#include <optional>

#include "query/quantity/number.h"

namespace sheaf {

// nullopt if the digits do not fit, or a fraction meets decimals ("1/2 + 0.1").
std::optional<Number> add(const Number& left, const Number& right);
std::optional<Number> subtract(const Number& left, const Number& right);

// The number more or less by so many per cent, with no more places than it needs.
std::optional<Number> more_by_per_cent(const Number& number, const Number& per_cent);
std::optional<Number> less_by_per_cent(const Number& number, const Number& per_cent);

}  // namespace sheaf
