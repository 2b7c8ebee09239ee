// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/syntax_fault.h"

namespace sheafc {

SyntaxFault explain(std::string_view, std::size_t at, std::string_view message) {
  return {at, 1, "bad-yaml", std::string(message)};
}

}  // namespace sheafc
