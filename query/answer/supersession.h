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

// "41-2240-A, was 41-2237-B": the number to order, and the sheet's own where it is another. Empty without
// one.
std::string number_words(const NumberChain& chain);

// What one entry itself says replaced its number, as a sentence: "41-2240-A, which fits in every respect.
// Softer lip." Empty where nothing did.
std::string successor_words(const EntryRecord& entry);
// "Ormskell OF-415411": the same part's numbers elsewhere, in the order of the sheet.
std::vector<std::string> numbers_elsewhere(const EntryRecord& entry);

// The further links of the chain are looked up in the libraries. Fails on a damaged library.
Result<NumberChain> number_chain(const EntryRecord& entry, const std::vector<Library*>& libraries);

}  // namespace sheaf
