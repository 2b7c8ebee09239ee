// SPDX-License-Identifier: GPL-2.0-or-later
// What speaks for an entry where nothing holds all that was asked, and what speaks for there being no answer.
// Each is a count; weights.h has the weight of each. Internal to search.
#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "query/search/searcher.h"

namespace sheaf {

// What a word of the question is: of a part's name, of what is said of very many ("bolt"), another word of
// some name, said around what is sought, or one that no name here holds.
enum class Said { part, kind, free, around, unknown };

// Where an entry has it: in its name or by what means the same there, as a short form of a word there, in
// what it stands under (its assembly, its sheet's title), in its fields or in another name on its sheet, or
// nowhere.
enum class Held { name, brief, place, told, nowhere };

// What a word of the entry's name is that the question does not ask for.
enum class Unasked { measure, side, place, fastener, context, fluid, other, figure };

struct Evidence {
  std::array<std::array<double, 5>, 5> words{};  // by Said and Held
  std::array<double, 8> unasked{};               // by Unasked
  std::array<double, 4> figures{};         // stated; itself such a measure; absent, but said loosely; absent
  std::array<double, 2> sides{};           // its own; left open
  std::array<double, 4> measures{};        // met; nearly; said in some field; none of these
  std::array<double, 2> designations{};    // thread, drive, size, bearing, code: it has them all; not
  std::array<double, 2> units{};           // it states something in the unit asked for; not
  std::array<double, 2> whose{};           // words behind "of" that its name lacks: found around it; nowhere
  std::array<double, 2> first{};           // the same of what is named first
  std::array<double, 4> kind{};            // step; tool; part; other, where no figure was asked for
  std::array<double, 4> kind_of_figure{};  // the same where one was
  std::array<double, 1> row{};             // of a published table
};

struct Doubt {
  std::array<double, 1> always{};
  std::array<double, 1> open{};        // no machine was named
  std::array<double, 1> designated{};  // kinds of designation and measure that were asked for
  std::array<double, 5> words{};       // by Said
  std::array<double, 1> spoken{};      // a sentence: not all that it says is of what is sought
};

// A thread, a drive, a size, a bearing or a code.
bool has_designation_but_length(const QuestionReading& reading);

// The evidence of each of some entries that hold words of a question.
class Witness {
 public:
  // `having` has the entries with all threads, drives, sizes, bearings and codes that were asked for.
  Witness(const QuestionReading& reading, Lexicon& lexicon, const std::vector<Hit>& entries,
          std::set<std::pair<std::size_t, EntryId>> having);

  Evidence of(const Hit& hit);
  Doubt doubt() const;
  // It is of the other side than one that was asked for.
  bool is_opposite(const Hit& hit);
  // Its names hold that word of the question.
  bool names(const Hit& hit, const std::string& word);
  // What of the question the entry has nowhere, is left aside; its short forms are read as the entry's words.
  void tell_reading(const Hit& hit, QuestionReading& into);

 private:
  struct Asked {
    Said said;
    std::string word, stem;
    std::vector<std::string> groups;  // that it names by itself, or with the words beside it
    const PartAsked* part;            // none for a word that is not known
  };
  struct Terms {
    std::set<std::string> stems, groups;
    bool hold(const Asked& asked) const;
    void add(const std::string& text, Lexicon& lexicon);
  };
  struct About {  // an entry: what it is called, and what else is said of it
    Terms names, told;
  };

  void add_word(Said said, const std::string& word, std::size_t place, const PartAsked* part);
  const Terms& place_of(const SheetRecord& sheet);
  About about(const Hit& hit);
  Held where(const Asked& asked, const About& about, const Hit& hit);
  void add_words(const Hit& hit, const About& about, Evidence& into);
  void add_unasked(const Hit& hit, Evidence& into);
  bool states_figure(const Hit& hit, const About& about, const std::string& figure) const;
  void add_figures(const Hit& hit, const About& about, Evidence& into);
  int side(const Hit& hit, const std::string& asked);

  const QuestionReading& reading_;
  Lexicon& lexicon_;
  std::set<std::pair<std::size_t, EntryId>> having_;
  std::vector<Asked> asked_;
  std::set<std::string> stems_, groups_;          // of all that was asked
  std::map<std::string, Terms> names_of_sheets_;  // of the entries that hold words of the question
  std::map<std::string, Terms> places_;           // what they stand under, by assembly and title
  std::size_t first_phrase_ = 0;                  // that names a thing
};

}  // namespace sheaf
