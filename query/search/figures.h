// SPDX-License-Identifier: GPL-2.0-or-later
// What a question can ask of an entry, by the names that the glossary gives its groups (kind-torque,
// kind-volume), and the fields that answer it.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "query/quantity/unit.h"

namespace sheaf {

// "volume" is answered by any of the volumes, "stage" by a torque; most by the field of the same name.
std::vector<std::string_view> fields_of_figure(std::string_view figure);

// Whether it is a measure that may be all that an entry states ("chain slack", "lever play"), by whatever
// name; not so a torque, a thread or a number.
bool may_be_its_value(std::string_view figure);

// What such a figure is always stated in, whatever states it: a pressure is no length. None where it may be
// several.
std::optional<Dimension> dimension_of_figure(std::string_view figure);

}  // namespace sheaf
