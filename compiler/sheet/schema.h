// SPDX-License-Identifier: GPL-2.0-or-later
// The sheet language as a JSON Schema (draft-07, which editors' YAML servers handle best), made of the
// same declarations that the reader goes by.
#pragma once

#include <span>
#include <string>

#include "compiler/source/rule.h"

namespace sheafc {

// `allowable` are the rules that a sheet may set aside. Ends in a line feed. The schema catches shape; what
// a figure means stays the compiler's: a sheet that this schema accepts may still be refused, and none that
// the compiler accepts is refused by it, as long as it is read as YAML 1.2.
std::string json_schema(std::span<const RuleInfo> allowable);

}  // namespace sheafc
