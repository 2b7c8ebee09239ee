// SPDX-License-Identifier: GPL-2.0-or-later
// Questions and what they want, read from the files of this folder (README.md has their form).
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace phrases {

struct Phrase {
  std::string file;
  int line = 0;
  std::string question;
  std::vector<std::string> wanted;    // patterns of addresses
  std::vector<std::string> unwanted;  // patterns that no answer may match
  std::string converts;               // a converted figure
  bool near = false;                  // wanted among what comes close, not as an answer
  bool nothing = false;
  bool which = false;  // several answers, all of them wanted: the reader is asked which
  std::string model;   // what every answer must fit; may be empty
  int year = 0;
};

// Ends the program with a message at the first line that cannot be read.
std::vector<Phrase> read_phrases(const std::vector<std::string>& files);

// "*" stands for any signs.
bool matches(std::string_view address, std::string_view pattern);
bool matches_any(std::string_view address, const std::vector<std::string>& patterns);

// The same questions with their words replaced by misspellings from a list of lines "wrong->right"; each
// misspelling once. Words with a digit stay. At most `most`, spread over the list.
std::vector<Phrase> misspelt(const std::vector<Phrase>& phrases, const std::string& list, std::size_t most);

}  // namespace phrases
