// SPDX-License-Identifier: GPL-2.0-or-later
// Asks for each word of the glossary by every slip that a published list of misspellings has for it: it must
// be read as the word itself is, or as nothing known, or as another that is as near to what was typed ("frok"
// is "fork" here, whatever the list says). A word with a digit stays as typed.
//
//   misspellings LIBRARY LIST      lines of LIST: wrong->right, or wrong->right, other,
//
// Ends with status 1 where one is misread, or fewer than 96 % are read rightly.
#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <set>

#include "query/library/fold.h"
#include "query/library/near_word.h"
#include "query/search/find.h"
#include "query/search/read.h"

namespace {

using Words = std::set<std::string>;

struct Slip {
  std::string wrong, right;
};

bool is_plain(const std::string& word) {
  return word.size() >= 4 && word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos;
}

Words words_of_glossary(sheaf::Library& library) {
  Words words;
  const auto records = library.words();
  if (records)
    for (const auto& record : *records)
      for (const auto& word : sheaf::words_of(sheaf::fold(record.word))) words.insert(word);
  return words;
}

// Slips of which the list knows one right word only, and the glossary that very word.
std::vector<Slip> slips_of(const char* list, const Words& known, sheaf::Lexicon& lexicon) {
  std::vector<Slip> slips;
  std::ifstream lines(list);
  for (std::string line; std::getline(lines, line);) {
    const auto arrow = line.find("->");
    if (arrow == std::string::npos) continue;
    const Slip slip = {line.substr(0, arrow), line.substr(arrow + 2)};
    if (is_plain(slip.wrong) && is_plain(slip.right) && known.contains(slip.right) &&
        !lexicon.knows(slip.wrong))
      slips.push_back(slip);
  }
  return slips;
}

// What a reading makes of a word, however it was typed.
Words meaning_of(const sheaf::QuestionReading& reading) {
  Words meaning(reading.sides.begin(), reading.sides.end());
  for (const auto& part : reading.parts) {
    meaning.insert(part.groups.begin(), part.groups.end());
    if (part.groups.empty()) meaning.insert(sheaf::stem_of(part.words.front()));
  }
  for (const auto& figure : reading.figures) meaning.insert("asks " + figure);
  return meaning;
}

// The word that it was read as is no further from what was typed than the list's.
bool is_as_near(const Slip& slip, const sheaf::QuestionReading& reading) {
  const int allowed = sheaf::slips_between(slip.wrong, slip.right);
  return std::ranges::all_of(reading.corrections, [&](const sheaf::Correction& each) {
    return sheaf::slips_between(slip.wrong, each.read) <= allowed;
  });
}

bool keeps_digits(sheaf::Lexicon& lexicon, const std::string& word) {
  const std::string with_digit = word + "8";
  for (const auto& correction : sheaf::read_question(with_digit, lexicon).corrections)
    if (correction.typed == with_digit) return false;
  return true;
}

int run(sheaf::Library& library, const char* list) {
  sheaf::Lexicon lexicon({&library});
  const auto slips = slips_of(list, words_of_glossary(library), lexicon);
  std::size_t right = 0, unread = 0, wrong = 0;
  for (const auto& slip : slips) {
    const auto meant = meaning_of(sheaf::read_question(slip.right, lexicon));
    const auto reading = sheaf::read_question(slip.wrong, lexicon);
    const auto read = meaning_of(reading);
    const bool is_right = read == meant || (!read.empty() && is_as_near(slip, reading));
    right += is_right;
    unread += !is_right && read.empty();
    const bool is_misread = (!is_right && !read.empty()) || !keeps_digits(lexicon, slip.wrong);
    wrong += is_misread;
    if (is_misread)
      std::cout << "  misread: " << slip.wrong << " for " << slip.right << ", as " << sheaf::in_words(reading)
                << '\n';
    if (!is_right && read.empty()) std::cout << "  not read: " << slip.wrong << " for " << slip.right << '\n';
  }
  std::printf("%zu misspellings of words in the glossary: %zu read rightly, %zu not read, %zu misread\n",
              slips.size(), right, unread, wrong);
  const bool has_enough = slips.size() >= 100;  // otherwise the list was not what it should be
  return has_enough && wrong == 0 && right * 100 >= slips.size() * 96 ? 0 : 1;
}

}  // namespace

int main(int count, char** words) {
  if (count != 3) return std::fputs("usage: misspellings LIBRARY LIST\n", stderr), 2;
  auto library = sheaf::open_library(words[1]);
  if (!library) return std::cerr << library.failure().message << '\n', 2;
  sheaf::Library opened = std::move(library).value();
  return run(opened, words[2]);
}
