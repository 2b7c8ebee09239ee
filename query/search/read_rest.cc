// SPDX-License-Identifier: GPL-2.0-or-later
// What the other readers left: units that no number stands before, names of fields, free words, and those
// that say nothing.
#include <algorithm>
#include <utility>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/clauses.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"

namespace sheaf {
namespace {

// Where what follows only describes what was named: behind "with", "that", "if", or a comma.
bool begins_description(const Draft& draft, std::size_t i) {
  constexpr std::string_view begins[] = {"with",    "that",  "which", "who", "using", "while", "if",
                                         "because", "since", "so",    "mit", "avec",  "con"};
  return draft.has_any(i, begins) || begins_clause(draft, i);
}

void read_descriptions(Draft& draft) {
  const auto names_before = [&](std::size_t i) {
    return std::ranges::any_of(draft.reading.parts,
                               [&](const PartAsked& part) { return part.token < i && !part.groups.empty(); });
  };
  for (std::size_t i = 1; i < draft.size(); ++i) {
    if (!names_before(i) || !begins_description(draft, i)) continue;
    for (auto& part : draft.reading.parts) part.describes = part.describes || part.token >= i;
  }
}

bool is_bare_number(std::string_view word) {
  return word.find_first_not_of("0123456789.") == std::string_view::npos;
}

constexpr std::size_t shortest_name = 4;  // letters from which on a unit in names is more likely a name

// A unit that no number stands before: "in ft lbs", "psi".
bool read_units(Draft& draft, std::size_t i) {
  for (std::size_t count = 3; count > 0; --count) {
    if (!draft.is_free(i, count)) continue;
    const std::string typed = draft.question.typed(i, count);
    if (typed.size() < 2 || readings(typed).empty()) continue;
    if (count == 1 && is_aspect(fold(typed))) continue;  // "min" is least, and no minute
    const bool is_plural = typed.ends_with('s');         // "inches", though the wrench is a "half-inch" one
    if (count == 1 && typed.size() >= shortest_name &&
        (is_plural ? draft.lexicon.has_term(Prefix::word, fold(typed))
                   : draft.lexicon.names_with(fold(typed))))
      continue;  // "second ring"
    add_unit(draft.reading, typed);
    draft.take(i, count);
    return true;
  }
  return false;
}

// "draining the gearbox side": where it is; "which side" asks for it.
bool is_place(const Draft& draft, std::size_t i, std::string_view word) {
  return word == "side" && draft.reading.asks("volume") &&
         (i == 0 || !draft.has_any(i - 1, {"which", "what"}));
}

// Fields of what the machines have; those of the crib ask for nothing here.
bool is_field(std::string_view word) {
  const auto of_crib = [](const KindDeclaration& kind) {
    return kind.name == "wrench" || kind.name == "adapter";
  };
  if (is_aspect(word) || word == "checked") return false;  // of a play, by the one who asks
  return std::ranges::any_of(all_kinds(), [&](const KindDeclaration& kind) {
    return !of_crib(kind) && field_of(kind, word) != nullptr;
  });
}

// "10.9 yield": a column of some table, that nothing is called.
bool is_column(Draft& draft, const std::string& word) {
  return draft.reading.machines.empty() && !draft.lexicon.names_with(word) &&
         draft.lexicon.has_term(Prefix::field, word);
}

// "grade 8 bolt proof": its proof stress.
bool begins_column(Draft& draft, const std::string& word) {
  return draft.reading.machines.empty() && !draft.reading.codes.empty() && !draft.lexicon.names_with(word) &&
         draft.lexicon.has_term(Prefix::field, word + "-stress");
}

// "17 mm adapter offset": the one figure of the crib that is asked for by its plain name.
bool is_offset_of_adapter(const Draft& draft, std::string_view word) {
  const auto is_adapter = [](const Token& token) {
    return std::ranges::any_of(token.words, [](const std::string& each) {
      return each == "adapter" || each == "adaptor" || each.starts_with("crowfoot");
    });
  };
  return word == "offset" && std::ranges::any_of(draft.question.tokens, is_adapter);
}

bool tells_nothing(Draft& draft, std::size_t i) {
  return std::ranges::none_of(draft.token(i).words, [&](const std::string& word) {
    return !is_noise(word) && draft.lexicon.names_with(word);
  });
}

// "knock sensor": what stands before a part's name, as it is, tells it from others.
bool tells_apart(Draft& draft, std::size_t i) {
  constexpr std::string_view counts[] = {"two",   "three", "four", "five", "six",
                                         "seven", "eight", "nine", "ten"};  // "seven-step collar"
  if (i + 1 == draft.size() || draft.token(i + 1).words.size() != 1) return false;
  if (std::ranges::any_of(counts, [&](std::string_view count) { return draft.has_word(i, count); }))
    return false;
  const std::string& next = draft.token(i + 1).words.front();
  if (draft.token(i + 1).has_digit || is_aspect(next) || is_ordinary(next))
    return false;  // "an odd M8 bolt", "I heard both"
  return !is_noise(next) && draft.lexicon.names_with(next);
}

// "turbo oil pipe", "horn bracket": an everyday thing before a name makes it the name of another.
void read_unknown(Draft& draft, std::size_t i, const std::string& word) {
  const bool begins_name = i == 0 || tells_nothing(draft, i - 1);
  if (is_everyday(word) && !is_ordinary(word) && begins_name && tells_apart(draft, i))
    draft.reading.names_another = true;
  draft.reading.unread.push_back(word);
}

// Need not be held by what is sought.
bool is_said_around(Draft& draft, std::size_t i, const std::string& word) {
  return is_aspect(word) ||
         (is_ordinary(word) && !draft.lexicon.has_term(Prefix::word, word) && !tells_apart(draft, i));
}

PartAsked free_word(Draft& draft, std::size_t i, const std::string& word) {
  PartAsked part = part_of(draft, word);
  part.token = i;
  part.is_aspect = is_said_around(draft, i, word);
  return part;
}

// "S50", "AS568": letters and digits that stand on some sheet, in its notes or its source.
bool is_mark(Draft& draft, const std::string& word) {
  constexpr std::size_t shortest = 3;
  constexpr std::string_view digits = "0123456789";
  const bool has_both =
      word.find_first_of(digits) != std::string::npos && word.find_first_not_of(digits) != std::string::npos;
  return has_both && word.size() >= shortest && draft.lexicon.has_term(Prefix::other_stem, stem_of(word));
}

// "IT7", which rows are called.
bool is_called_so(Draft& draft, const std::string& word) {
  return !is_bare_number(word) && draft.lexicon.has_term(Prefix::word, word);
}

// "PM2-27", stamped on a caliper: all of it stands on some sheet.
bool is_part_of_mark(Draft& draft, std::size_t i) {
  const auto& words = draft.token(i).words;
  if (words.size() != 2 || std::ranges::all_of(words, is_bare_number)) return false;
  return std::ranges::all_of(words, [&](const std::string& word) {
    return draft.lexicon.has_term(Prefix::other_stem, stem_of(word));
  });
}

// "service letter 17-3": its number.
bool is_of_letter(Draft& draft, std::size_t i, const std::string& word) {
  constexpr std::string_view papers[] = {"letter", "bulletin", "memo", "circular"};
  const auto is_paper = [&](std::string_view paper) { return draft.has_word(i - 1, paper); };
  return i > 0 && draft.token(i).words.size() > 1 && std::ranges::any_of(papers, is_paper) &&
         draft.lexicon.has_term(Prefix::other_stem, stem_of(word));
}

// "hook spanner 45-50", which is called so.
bool is_end_of_range(Draft& draft, std::size_t i, const std::string& word) {
  return draft.token(i).words.size() == 2 && is_bare_number(word) &&
         std::ranges::all_of(draft.token(i).words, is_bare_number) &&
         draft.lexicon.has_term(Prefix::word, word);
}

// "south", "southern": one of those that some sheet tells apart; empty if it is none.
std::string market_of(Draft& draft, const std::string& word) {
  constexpr std::string_view ending = "ern";
  for (std::string market :
       {word, word.ends_with(ending) ? word.substr(0, word.size() - ending.size()) : std::string()})
    if (!market.empty() && draft.lexicon.has_term(Prefix::choice, "market=" + market)) return market;
  return {};
}

// "60+60": stages of an angle, that name no model.
bool is_sum(std::string_view typed) {
  const std::size_t sign = typed.find('+');
  return sign != std::string_view::npos && sign > 0 &&
         typed.find_first_not_of("0123456789+") == std::string_view::npos;
}

// "x3", "4x": how many of them there are.
bool is_count(std::string_view typed) {
  constexpr std::size_t most_digits = 2;
  if (typed.size() < 2 || typed.size() > most_digits + 1) return false;
  const bool is_before = typed.front() == 'x' || typed.front() == 'X';
  if (!is_before && typed.back() != 'x' && typed.back() != 'X') return false;
  typed = is_before ? typed.substr(1) : typed.substr(0, typed.size() - 1);
  return is_digits(typed);
}

}  // namespace

void read_rest(Draft& draft) {
  std::vector<PartAsked> fields;  // "tube", "load": words that name a figure, and things too
  for (std::size_t i = 0; i < draft.size(); ++i) {
    if (draft.taken[i] || read_units(draft, i)) continue;
    if (draft.token(i).typed == "+" || is_count(draft.token(i).typed) || is_sum(draft.token(i).typed))
      continue;
    if (is_tyre_size(draft.token(i).typed)) {
      draft.reading.parts.push_back(part_of(draft, draft.token(i).typed));
      draft.reading.parts.back().token = i;
      continue;
    }
    for (const auto& word : draft.token(i).words) {
      if (word == "letter" && i + 1 < draft.size() && draft.token(i + 1).has_digit &&
          draft.token(i + 1).words.size() > 1) {
        draft.reading.parts.push_back(free_word(draft, i, word));  // "service letter 17-3"
      } else if (word == "tube" && std::ranges::any_of(draft.reading.lengths, is_of_wheel)) {
        draft.reading.parts.push_back(free_word(draft, i, word));
      } else if (is_place(draft, i, word)) {
        continue;
      } else if (is_field(word) || is_offset_of_adapter(draft, word) || is_column(draft, word)) {
        add_new(draft.reading.figures, word);  // "order", "grade"
        if (draft.lexicon.names_with(word)) fields.push_back(free_word(draft, i, word));
      } else if (begins_column(draft, word)) {
        add_new(draft.reading.figures, word + "-stress");
      } else if (auto market = market_of(draft, word); !market.empty()) {
        draft.reading.market = std::move(market);
      } else if (is_mark(draft, word) || (draft.token(i).has_digit && is_called_so(draft, word)) ||
                 (draft.token(i).has_digit && is_part_of_mark(draft, i)) || is_of_letter(draft, i, word) ||
                 is_end_of_range(draft, i, word)) {
        draft.reading.parts.push_back(free_word(draft, i, word));
      } else if (is_said_around(draft, i, word) && !draft.lexicon.knows(word))
        continue;  // "dia", where no name has it
      else if (is_bare_number(word) || draft.token(i).has_digit || !draft.lexicon.knows(word))
        read_unknown(draft, i, word);
      else
        draft.reading.parts.push_back(free_word(draft, i, word));
    }
  }
  const bool names_none = std::ranges::all_of(draft.reading.parts, &PartAsked::is_aspect);
  if (names_none && draft.reading.unread.empty() && fields.size() == 1 &&
      !draft.reading.has_designation()) {  // "front tube, part no", "max bore"
    std::erase(draft.reading.figures, fields.front().typed);
    draft.reading.parts.push_back(std::move(fields.front()));
  }
  if (draft.reading.asks("part-number"))  // "new pads, what number do I order"
    std::erase_if(draft.reading.figures,
                  [](const std::string& figure) { return figure == "order" || figure == "new"; });
  read_descriptions(draft);
  read_contexts(draft);
}

}  // namespace sheaf
