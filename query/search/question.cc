// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/question.h"

#include <algorithm>
#include <cctype>

#include "query/library/fold.h"

namespace sheaf {
namespace {

bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }

// Cuts whole UTF-8 signs off, so that no half of one is left.
std::string_view bounded(std::string_view text) {
  if (text.size() <= longest_question) return text;
  std::size_t end = longest_question;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end);
}

// Spaces that are not the plain one, and line breaks.
std::string with_plain_spaces(std::string_view text) {
  static constexpr std::string_view others[] = {"\u00A0", "\u2009", "\u202F", "\u2007", "\t",
                                                "\n",     "\r",     "\v",     "\f"};
  std::string plain(text);
  for (const auto space : others) {
    for (auto at = plain.find(space); at != std::string::npos; at = plain.find(space, at)) {
      plain.replace(at, space.size(), " ");
    }
  }
  std::erase(plain, '\0');
  return plain;
}

// "'13", a year without its century.
bool is_short_year(std::string_view token) {
  return token.size() == 3 && token[0] == '\'' && is_digit(token[1]) && is_digit(token[2]);
}

// An inch mark after a digit stays; so does the point of "9." only if more follows.
std::string_view without_signs_around(std::string_view token) {
  constexpr std::string_view opening = "([{<'\"`,;:!?*=&|";
  constexpr std::string_view closing = ")]}>'`,;:!?.*=&|";
  while (!token.empty() && !is_short_year(token) && opening.find(token.front()) != std::string_view::npos)
    token.remove_prefix(1);
  while (!token.empty()) {
    const bool inch_mark = token.back() == '"' && token.size() > 1 && is_digit(token[token.size() - 2]);
    if (token.back() == '"' ? inch_mark : closing.find(token.back()) == std::string_view::npos) break;
    token.remove_suffix(1);
  }
  return token;
}

bool is_letter(char sign) {
  return !is_digit(sign) && (std::isalpha(static_cast<unsigned char>(sign)) || sign < 0);
}

// "muleback,380,2016": a comma beside a letter parts words, and so do the others between the same spaces; all
// that stand between digits are decimal.
bool is_list(std::string_view run) {
  for (std::size_t i = 1; i + 1 < run.size(); ++i)
    if (run[i] == ',' && (is_letter(run[i - 1]) || is_letter(run[i + 1]))) return true;
  return false;
}

// "muleback's" is of the Muleback, "what's" asks what.
std::string_view without_possessive(std::string_view token) {
  constexpr std::size_t shortest = 2;
  for (const std::string_view ending : {"'s", "’s"})
    if (token.ends_with(ending) && token.size() >= ending.size() + shortest)
      token.remove_suffix(ending.size());
  return token;
}

Token token_of(const std::string& text, std::size_t begin, std::size_t end) {
  const std::string_view whole = std::string_view(text).substr(begin, end - begin);
  const std::string_view bare = without_possessive(without_signs_around(whole));
  Token token;
  token.typed = bare;
  token.words = words_of(fold(bare));
  token.begin = begin + static_cast<std::size_t>(bare.empty() ? 0 : bare.data() - whole.data());
  token.end = token.begin + bare.size();
  token.has_digit = std::ranges::any_of(bare, is_digit);
  return token;
}

// "oil + filter": no part of one name; "60 + 60" is a sum.
bool parts_words(std::string_view text, std::size_t begin, std::size_t end) {
  const std::string_view sign = text.substr(begin, end - begin);
  const std::size_t next = text.find_first_not_of(' ', end);
  return (sign == "+" || sign == "&") && next != std::string_view::npos && !is_digit(text[next]);
}

}  // namespace

std::string_view Question::from(std::size_t token) const {
  return std::string_view(text).substr(tokens[token].begin);
}

std::string Question::typed(std::size_t first, std::size_t count) const {
  std::string all;
  for (std::size_t i = first; i < first + count && i < tokens.size(); ++i) {
    if (!all.empty()) all += ' ';
    all += tokens[i].typed;
  }
  return all;
}

std::size_t Question::tokens_within(std::size_t first, std::size_t bytes) const {
  const std::size_t end = tokens[first].begin + bytes;
  std::size_t count = 0;
  while (first + count < tokens.size() && tokens[first + count].begin < end) ++count;
  return count;
}

Question question_of(std::string_view text) {
  Question question;
  question.text = with_plain_spaces(bounded(text));
  const std::string& whole = question.text;
  std::size_t listed = 0;  // end of a run of words that commas part
  for (std::size_t at = 0; at < whole.size() && question.tokens.size() < most_words;) {
    const std::size_t begin = whole.find_first_not_of(' ', at);
    if (begin == std::string::npos) break;
    std::size_t end = std::min(whole.find(' ', begin), whole.size());
    if (end > listed && is_list(std::string_view(whole).substr(begin, end - begin))) listed = end;
    if (end <= listed) end = std::min(end, whole.find(',', begin + 1));
    Token token = token_of(whole, begin, end);
    if (token.words.empty() && parts_words(whole, begin, end))
      token = {.typed = "+", .words = {"plus"}, .begin = begin, .end = end};
    if (!token.words.empty()) question.tokens.push_back(std::move(token));
    at = end;
  }
  return question;
}

}  // namespace sheaf
