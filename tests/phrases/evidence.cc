// SPDX-License-Identifier: GPL-2.0-or-later
// Prints the evidence of every entry that is weighed for the questions of the phrase files, and of there
// being no answer: what fit_weights.py finds the weights from.
//
//   evidence LIBRARY FILE... >evidence.txt
//
//   question FILE KIND WORDS       KIND: one, which, none
//   none COUNT...                  of the doubt
//   entry WANTED ADDRESS COUNT...  WANTED: 1, 0
#include <bit>
#include <filesystem>
#include <iostream>

#include "query/library/library.h"
#include "query/search/read.h"
#include "query/search/weigh.h"
#include "tests/phrases/phrase.h"

namespace {

template <typename Counts>
void print_counts(const Counts& counts) {
  for (const double count : std::bit_cast<std::array<double, sizeof(Counts) / sizeof(double)>>(counts))
    std::cout << ' ' << count;
  std::cout << '\n';
}

void print(const phrases::Phrase& phrase, const sheaf::Weighing& weighing) {
  const bool none = phrase.nothing || phrase.near;
  std::cout << "question " << std::filesystem::path(phrase.file).stem().string() << ' '
            << (none           ? "none"
                : phrase.which ? "which"
                               : "one")
            << ' ' << phrase.question << "\nnone";
  print_counts(weighing.doubt);
  for (const auto& each : weighing.entries) {
    const std::string& address = each.hit.entry->address;
    std::cout << "entry " << (!none && phrases::matches_any(address, phrase.wanted) ? 1 : 0) << ' '
              << address;
    print_counts(each.evidence);
  }
}

}  // namespace

int main(int count, char** words) {
  auto opened = sheaf::open_library(count > 1 ? words[1] : "");
  if (!opened) {
    std::cerr << "evidence: " << opened.failure().message << '\n';
    return 2;
  }
  sheaf::Library library = std::move(opened).value();
  for (const auto& phrase : phrases::read_phrases({words + 2, words + count})) {
    if (!phrase.converts.empty()) continue;
    sheaf::Lexicon lexicon({&library});
    const auto found = sheaf::find({.words = phrase.question}, lexicon);
    if (!found || !found->weighed) continue;
    sheaf::Searcher searcher(lexicon, 100, 20);
    print(phrase, sheaf::weigh(sheaf::read_question(phrase.question, lexicon), searcher, lexicon));
  }
}
