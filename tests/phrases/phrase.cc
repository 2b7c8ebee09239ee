// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/phrases/phrase.h"

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>

namespace phrases {
namespace {

[[noreturn]] void stop(const std::string& message) {
  std::cerr << "evaluate: " << message << '\n';
  std::exit(2);
}

std::string trimmed(std::string text) {
  while (text.ends_with(' ')) text.pop_back();
  return text;
}

bool is_number(const std::string& word) { return word.find_first_not_of("0123456789") == std::string::npos; }

void read_fit(Phrase& phrase, std::istringstream& words) {
  for (std::string word; words >> word;) {
    const bool is_year = is_number(word) && word.size() == 4;
    if (is_year)
      phrase.year = std::stoi(word);
    else
      phrase.model += (phrase.model.empty() ? "" : " ") + word;
  }
}

void read_wanted(Phrase& phrase, const std::string& text) {
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    if (word == "@") return read_fit(phrase, words);
    if (word == "nothing")
      phrase.nothing = true;
    else if (word == "near")
      phrase.near = true;
    else if (word == "which")
      phrase.which = true;
    else if (word == "converts") {
      std::getline(words >> std::ws, phrase.converts);
      return;
    } else if (word.starts_with('!'))
      phrase.unwanted.push_back(word.substr(1));
    else
      phrase.wanted.push_back(word);
  }
}

Phrase read_line(const std::string& file, int number, const std::string& line) {
  const auto arrow = line.rfind(" => ");
  if (arrow == std::string::npos) stop(file + ":" + std::to_string(number) + ": no ' => '");
  Phrase phrase;
  phrase.file = file;
  phrase.line = number;
  phrase.question = trimmed(line.substr(0, arrow));
  read_wanted(phrase, line.substr(arrow + 4));
  if (phrase.wanted.empty() && phrase.converts.empty() && !phrase.nothing)
    stop(file + ":" + std::to_string(number) + ": nothing is wanted");
  return phrase;
}

// The first misspelling of each right word that the list holds: right -> wrongs.
std::map<std::string, std::vector<std::string>> wrongs_by_right(const std::string& list) {
  std::ifstream file(list);
  if (!file) stop("cannot read " + list);
  std::map<std::string, std::vector<std::string>> wrongs;
  for (std::string line; std::getline(file, line);) {
    const auto arrow = line.find("->");
    if (arrow == std::string::npos) continue;
    const std::string right = line.substr(arrow + 2);
    const bool is_one_word = right.find_first_of(" ,") == std::string::npos;
    if (is_one_word) wrongs[right].push_back(line.substr(0, arrow));
  }
  return wrongs;
}

}  // namespace

std::vector<Phrase> read_phrases(const std::vector<std::string>& files) {
  std::vector<Phrase> all;
  for (const auto& name : files) {
    std::ifstream file(name);
    if (!file) stop("cannot read " + name);
    int number = 0;
    for (std::string line; std::getline(file, line);) {
      ++number;
      if (line.empty() || line.starts_with("# ")) continue;
      all.push_back(read_line(name, number, line));
    }
  }
  return all;
}

bool matches(std::string_view address, std::string_view pattern) {
  const auto star = pattern.find('*');
  if (star == std::string_view::npos) return address == pattern;
  if (address.substr(0, star) != pattern.substr(0, star)) return false;
  address.remove_prefix(star);
  pattern.remove_prefix(star + 1);
  for (std::size_t i = 0; i <= address.size(); ++i)
    if (matches(address.substr(i), pattern)) return true;
  return false;
}

bool matches_any(std::string_view address, const std::vector<std::string>& patterns) {
  for (const auto& pattern : patterns)
    if (matches(address, pattern) || address.starts_with(pattern + '/')) return true;
  return false;
}

std::vector<Phrase> misspelt(const std::vector<Phrase>& phrases, const std::string& list, std::size_t most) {
  const auto wrongs = wrongs_by_right(list);
  std::vector<Phrase> all;
  for (const auto& phrase : phrases) {
    std::istringstream words(phrase.question);
    for (std::string word; words >> word;) {
      const auto found = wrongs.find(word);
      if (found == wrongs.end() || phrase.nothing) continue;
      for (const auto& wrong : found->second) {
        Phrase slipped = phrase;
        slipped.question.replace(slipped.question.find(word), word.size(), wrong);
        all.push_back(std::move(slipped));
      }
    }
  }
  std::vector<Phrase> spread;
  const std::size_t step = all.size() > most ? all.size() / most + 1 : 1;
  for (std::size_t i = 0; i < all.size(); i += step) spread.push_back(all[i]);
  return spread;
}

}  // namespace phrases
