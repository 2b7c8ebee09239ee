// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/console/completion_words.h"

namespace sheaf {

bool wants_file(const std::string& value) {
  for (const char* word : {"FILE", "FOLDER", ".sheaf"}) {
    if (value.find(word) != std::string::npos) return true;
  }
  return false;
}

const std::vector<std::string>& values_of(const ProgramPage& program, const FlagPage& flag) {
  static const std::vector<std::string> none;
  if (!flag.choices.empty()) return flag.choices;
  const auto found = program.values.find(flag.value);
  return found == program.values.end() ? none : found->second;
}

std::vector<std::string> words_of(const ProgramPage& program, const CommandPage& command) {
  std::vector<std::string> words;
  for (const auto& [kind, values] : program.values) {
    if (command.words.find(kind) != std::string::npos)
      words.insert(words.end(), values.begin(), values.end());
  }
  return words;
}

std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char sign : text) out += sign == '\'' ? std::string("'\\''") : std::string(1, sign);
  return out + "'";
}

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : between) + word;
  return all;
}

}  // namespace sheaf
