// SPDX-License-Identifier: GPL-2.0-or-later
// A cursor over a designation in which the many spellings of one sign are already one: lower case,
// x for × * and their kin, - for every dash, a plain space for every space, "1/2" for ½. It remembers
// where each sign stood in the text, so that a failure marks the right bytes. Internal to trade.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "query/quantity/number.h"
#include "query/quantity/result.h"

namespace sheaf {

class Reader {
 public:
  // No designation is longer than this many bytes; what lies beyond is not looked at.
  static constexpr std::size_t longest = 80;

  explicit Reader(std::string_view text);

  bool done() const { return next_ >= signs_.size(); }
  bool at(std::string_view signs) const;  // the text goes on with these signs
  bool at_digit(std::size_t ahead = 0) const;
  char peek(std::size_t ahead = 0) const;  // 0 past the end
  bool at_word_end() const;                // no letter or digit follows
  std::string_view rest() const { return std::string_view(signs_).substr(next_); }

  void skip_spaces();
  bool take(std::string_view signs);
  bool take_word(std::string_view word);     // and no letter or digit follows
  std::optional<int> take_integer();         // up to six digits
  Result<Number> take_decimal(Input input);  // "9.5", at a prompt "9,5"

  // "5/16", "1-1/2", "1 1/2" or a plain decimal.
  Result<Number> take_mixed(Input input);

  std::size_t mark() const { return next_; }
  void back_to(std::size_t mark) { next_ = mark; }
  int source_offset() const { return source_at_[next_]; }
  std::string_view source_since(std::size_t mark) const;  // in the text's own letters

  // A failure that marks the text from here to its end.
  Failure failure(std::string message) const;

 private:
  void fold(std::string_view text);

  std::string_view text_;
  std::string signs_;
  std::vector<int> source_at_;  // where each sign stood; one more, for the end
  std::size_t next_ = 0;
};

// Runs `read` on a text that must be one designation and nothing more.
template <typename Read>
auto read_whole(std::string_view text, std::string_view what, Read read)
    -> decltype(read(std::declval<Reader&>())) {
  Reader reader(text);
  reader.skip_spaces();
  if (reader.done()) return Failure{"no " + std::string(what) + " is given"};
  auto value = read(reader);
  if (!value) return value;
  reader.skip_spaces();
  if (text.size() > Reader::longest) return Failure{"too long for a " + std::string(what)};
  if (!reader.done()) return reader.failure("this does not belong to a " + std::string(what));
  return value;
}

// ASCII letters in one case; other bytes as they are.
std::string lower_case(std::string_view text);
std::string upper_case(std::string_view text);

inline constexpr double mm_per_inch = 25.4;  // exact: international inch

// The number without what only spelling adds: 9.50 -> "9.5", 2/4 -> "1/2", 1-1/2 -> "1.5".
// A fraction that is a finite decimal is given as one; `fractions` keeps it a fraction ("1-1/2").
enum class Fractions { as_decimal, kept };
std::string plain(const Number& number, Fractions fractions = Fractions::as_decimal);

}  // namespace sheaf
