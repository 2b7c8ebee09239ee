// SPDX-License-Identifier: GPL-2.0-or-later
// Which number to order today: the chain of those that replaced each other, followed only as far as each
// replaces the last in every respect.
#pragma once

#include <string>
#include <vector>

#include "query/library/library.h"

namespace sheaf {

struct NumberChain {
  std::vector<std::string> numbers;   // the sheet's own first, the one to order last; none if it has none
  std::vector<std::string> replaces;  // older numbers that the sheet's own replaces
  std::vector<std::string> others;    // "Ormskell OF-415411": the same part elsewhere
  std::string caveat;                 // "43-2239-K has replaced it, but does not fit in every respect: …"
  std::vector<std::string> notes;     // what changed on the way

  const std::string& order() const { return numbers.back(); }
};

// The further links of the chain are looked up in the libraries. Fails on a damaged library.
Result<NumberChain> number_chain(const EntryRecord& entry, const std::vector<Library*>& libraries);

}  // namespace sheaf
