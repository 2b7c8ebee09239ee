// SPDX-License-Identifier: GPL-2.0-or-later
// The machine that a question names, by any words of its make and model, by their beginnings, or by its
// number.
#include <algorithm>

#include "query/library/fold.h"
#include "query/search/draft.h"

namespace sheaf {
namespace {

using Machines = std::vector<Machine>;

bool is_same(const Machine& left, const Machine& right) {
  return left.make == right.make && left.model == right.model;
}

Machines in_both(const Machines& left, const Machines& right) {
  Machines both;
  for (const auto& machine : left)
    if (std::ranges::any_of(right, [&](const Machine& other) { return is_same(machine, other); }))
      both.push_back(machine);
  return both;
}

Machines in_either(Machines left, const Machines& right) {
  for (const auto& machine : right)
    if (std::ranges::none_of(left, [&](const Machine& other) { return is_same(machine, other); }))
      left.push_back(machine);
  return left;
}

// The machines that one token names.
Machines machines_named(Draft& draft, std::size_t i) {
  const auto& words = draft.token(i).words;
  if (words.size() != 1 || is_noise(words.front())) return {};
  auto machines = draft.lexicon.machines_with(words.front());
  if (machines.empty() && words.front().size() > shortest_beginning && words.front().ends_with('s'))
    machines = draft.lexicon.machines_with(words.front().substr(0, words.front().size() - 1));
  const bool may_be_short = machines.empty() && !has_digit(words.front()) && !is_known(draft, words.front());
  if (may_be_short && words.front().size() >= shortest_beginning)
    machines = draft.lexicon.machines_beginning(words.front());
  return machines;
}

// "muleback380", "mule380": the letters and the digits of one token.
void part_letters_from_digits(Draft& draft, std::size_t i) {
  Token& token = draft.question.tokens[i];
  if (token.words.size() != 1 || is_digits(token.words.front()) || !token.has_digit) return;
  const std::string word = token.words.front();
  const std::size_t at = word.find_first_of("0123456789");
  if (at < shortest_beginning || !is_digits(word.substr(at))) return;
  const Machines numbered = draft.lexicon.machines_with(word.substr(at));
  const bool is_whole = !in_both(draft.lexicon.machines_with(word.substr(0, at)), numbered).empty();
  if (!is_whole && in_both(draft.lexicon.machines_beginning(word.substr(0, at)), numbered).empty()) return;
  token.words = {word.substr(0, at), word.substr(at)};
}

Machines machines_of_parts(Draft& draft, const Token& token) {
  Machines machines = draft.lexicon.machines_with(token.words.front());
  if (machines.empty()) machines = draft.lexicon.machines_beginning(token.words.front());
  for (std::size_t i = 1; i < token.words.size(); ++i)
    machines = in_both(machines, draft.lexicon.machines_with(token.words[i]));
  return machines;
}

// What was found so far of the machine that the question names.
struct Search {
  Machines machines;
  std::vector<std::string> words;
  bool found = false;
  bool by_word = false;  // not by its number alone

  void narrow(const Machines& named) {
    const Machines both = found ? in_both(machines, named) : named;
    machines = both.empty() ? in_either(machines, named) : both;
    found = true;
  }
};

void name_machine(QuestionReading& reading, const Search& search) {
  reading.machines = search.machines;
  reading.machine_is_guess = !search.by_word;
  const bool one_make = std::ranges::all_of(
      search.machines, [&](const Machine& machine) { return machine.make == search.machines.front().make; });
  const bool only_make =
      one_make && search.words.size() == 1 && words_of(fold(search.machines.front().make)) == search.words;
  if (only_make) {
    reading.machine = search.machines.front().make;
    return;
  }
  for (const auto& machine : search.machines) {
    if (!reading.machine.empty()) reading.machine += " or ";
    reading.machine += machine.make + " " + machine.model;
  }
}

void take_machine(Draft& draft, std::size_t i, const Machines& named, Search& search) {
  const auto& words = draft.token(i).words;
  search.narrow(named);
  search.words.insert(search.words.end(), words.begin(), words.end());
  draft.take(i, 1);
}

// "pack 125": the beginning of the name of the machine whose number follows, though it is a word as well.
Machines machines_begun(Draft& draft, std::size_t i) {
  const auto& words = draft.token(i).words;
  const bool is_followed = draft.is_free(i, 2) && draft.token(i + 1).words.size() == 1 &&
                           is_digits(draft.token(i + 1).words.front());
  if (!is_followed || words.size() != 1 || words.front().size() < shortest_beginning ||
      has_digit(words.front()) || is_noise(words.front()))
    return {};
  const Machines numbered = draft.lexicon.machines_with(draft.token(i + 1).words.front());
  return numbered.empty() ? Machines{} : in_both(draft.lexicon.machines_beginning(words.front()), numbered);
}

void read_machine_word(Draft& draft, std::size_t i, Search& search) {
  if (draft.taken[i]) return;
  if (const Machines begun = machines_begun(draft, i); !begun.empty()) {
    take_machine(draft, i, begun, search);
    search.by_word = true;
    return;
  }
  part_letters_from_digits(draft, i);
  const auto& token = draft.token(i);
  const bool parted = token.words.size() == 2 && token.has_digit && is_digits(token.words.back());
  if (token.has_digit && !parted) return;
  const Machines named = parted ? machines_of_parts(draft, token) : machines_named(draft, i);
  if (named.empty()) return;
  take_machine(draft, i, named, search);
  search.by_word = true;
}

// "380" is the Muleback's beside its name; alone it is a machine only if no size could be meant: three
// digits or more, and no other number beside it.
void read_machine_number(Draft& draft, std::size_t i, Search& search) {
  if (draft.taken[i] || draft.token(i).words.size() != 1 || !is_digits(draft.token(i).words.front())) return;
  const auto is_number = [&](std::size_t at) {
    return at < draft.size() && !draft.taken[at] && draft.token(at).has_digit &&
           is_digits(draft.token(at).typed.substr(0, 1)) &&  // "o2" is none
           !year_in(draft.token(at).typed);
  };
  const std::string& word = draft.token(i).words.front();
  const bool is_before_size = is_number(i + 1) && is_number(i + 2) && is_number(i + 3);  // "380 30 40 7"
  const bool is_among = i > 0 && is_number(i - 1) && is_number(i + 1);
  constexpr std::size_t digits_of_size = 2;  // and a seal of 125 mm may be
  const bool is_no_size = names_fastener(draft) || (word.size() > digits_of_size && word.front() > '2');
  const bool is_beside_figure = is_no_size && !is_among;  // "stem nut 98 380"
  const bool could_be_size =
      word.size() < 3 ||
      (!is_beside_figure && ((is_number(i + 1) && !is_before_size) || (i > 0 && is_number(i - 1))));
  if (!search.found && could_be_size) return;
  const Machines named = machines_named(draft, i);
  if (named.empty() || (search.found && in_both(search.machines, named).empty())) return;
  take_machine(draft, i, named, search);
}

}  // namespace

void read_machines(Draft& draft) {
  Search search;
  for (std::size_t i = 0; i < draft.size(); ++i) read_machine_word(draft, i, search);
  for (std::size_t i = 0; i < draft.size(); ++i) read_machine_number(draft, i, search);
  if (search.found) name_machine(draft.reading, search);
}

}  // namespace sheaf
