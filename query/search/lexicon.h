// SPDX-License-Identifier: GPL-2.0-or-later
// What the opened libraries know of words: groups of synonyms, machines, spellings, codes. A question
// is read with it before anything is searched. It remembers what it looked up.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "query/library/index_terms.h"
#include "query/library/library.h"

namespace sheaf {

// A name is a thing and, behind a comma or a word such as "at", where or which it is.
struct NameRead {
  std::vector<std::string> words, stems;  // one stem a word
  std::size_t thing = 0;                  // words of the thing itself
  const std::vector<GroupMatch>& groups;  // that its words name; the lexicon's
};

class Lexicon {
 public:
  // The libraries outlive the lexicon.
  explicit Lexicon(std::vector<Library*> libraries) : libraries_(std::move(libraries)) {}

  const std::vector<Library*>& libraries() const { return libraries_; }

  const std::vector<GroupMatch>& groups_in(const std::vector<std::string>& words);

  // Many entries are called the same.
  const NameRead& read_name(const std::string& name);

  // Machines of which a word of make or model is this very word, or begins with it.
  const std::vector<Machine>& machines_with(const std::string& word) { return machines_matching(word, true); }
  const std::vector<Machine>& machines_beginning(const std::string& word) {
    return machines_matching(word, false);
  }

  bool has_term(Prefix prefix, std::string_view body);
  // Stands in a name, a note, the glossary or a machine's name.
  bool knows(const std::string& word);
  // Stands in the name of an entry.
  bool names_with(const std::string& word);

  // The known word that was probably meant, at most that many slips away; none if nothing is near enough
  // to say so. A letter left out comes before one exchanged, unless names have the other word far more often;
  // before what is two slips away comes the word whose vowels were left out. A word of four letters or
  // five may have lost vowels, too, but nothing else. Only for words of three letters
  // and more without a digit, and two slips only from six letters on; a word of three letters may only lack
  // one within it, or have its last two changed about; the first letter of a shorter word, or where there are
  // two slips, is taken as typed, unless it changed places with the second.
  std::optional<std::string> correction_of(const std::string& word, unsigned most_slips = 2);

  // Words of names that begin so, each with how many entries hold it; a bounded number of them.
  std::vector<std::pair<std::string, std::size_t>> words_beginning(const std::string& beginning);

  // Squeezed part numbers that match: '?' in the pattern stands for one unread sign. The most that are
  // given is `limit`.
  std::vector<std::string> numbers_like(std::string_view pattern, std::size_t limit);
  std::vector<std::string> numbers_beginning(std::string_view beginning, std::size_t limit);

  // The first thing that went wrong in a library; answers after it may be incomplete.
  const std::optional<Failure>& failure() const { return failure_; }

 private:
  const std::vector<WordsBeginningPtr>& group_words(const std::string& stem);  // of each library that has any
  const std::vector<Machine>& machines_matching(const std::string& word, bool whole_word);
  std::vector<std::string> numbers(std::string_view beginning, std::string_view pattern, std::size_t limit);
  bool has_text_term(const std::string& text);
  bool is_spelling(const std::string& word);
  bool is_as_common(const std::string& word,
                    const std::string& other);  // in names, nearly; may throw Xapian::Error
  std::optional<std::string> with_letters_swapped(
      const std::string& word);  // two neighbours behind the first
  // The commonest word that it may stand for, having no vowel or one; with all of its consonants, if so
  // asked.
  std::optional<std::string> whole_of_consonants(const std::string& word, bool lacks_vowels_alone);
  std::optional<std::string> with_letter_left_out(const std::string& word);  // the commonest word that has it

  std::vector<Library*> libraries_;
  std::map<std::string, std::vector<WordsBeginningPtr>, std::less<>> group_words_;
  std::map<std::vector<std::string>, std::vector<GroupMatch>> groups_;
  std::map<std::string, NameRead> names_;
  std::map<std::pair<std::string, bool>, std::vector<Machine>> machines_;  // by word, whole or begun
  std::optional<Failure> failure_;
};

}  // namespace sheaf
