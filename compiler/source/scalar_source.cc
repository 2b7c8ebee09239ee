// SPDX-License-Identifier: GPL-2.0-or-later
// Plain and quoted scalars (YAML 1.2, chapter 7.3).
#include "compiler/source/scalar_source.h"

#include <algorithm>
#include <optional>

#include "compiler/source/characters.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

using Text = std::string_view;

bool is_blank(char c) { return c == ' ' || c == '\t'; }
bool is_break(char c) { return c == '\n' || c == '\r'; }

// Line breaks between two words of a scalar, with the blanks around them.
struct Fold {
  std::size_t end;  // the first byte of the next word
  int breaks;       // how many line feeds
  int indent;       // of the next word
};

// `at` stands on a blank or a break that is followed by nothing else on its line.
Fold fold_at(Text bytes, std::size_t at) {
  Fold fold{at, 0, 0};
  for (; fold.end < bytes.size(); ++fold.end) {
    const char c = bytes[fold.end];
    if (c == '\n') {
      ++fold.breaks;
      fold.indent = 0;
    } else if (is_blank(c)) {
      ++fold.indent;
    } else if (c != '\r') {
      break;
    }
  }
  return fold;
}

void note_indent(ScalarSource& result, const Fold& fold) {
  if (fold.indent >= result.least_indent) return;
  result.least_indent = fold.indent;
  result.least_line = fold.end;
}

// One break is a space; of several, the first is dropped.
std::string folded(int breaks) {
  return breaks == 1 ? " " : std::string(static_cast<std::size_t>(breaks - 1), '\n');
}

bool ends_line(Text bytes, std::size_t at) {
  while (at < bytes.size() && is_blank(bytes[at])) ++at;
  return at < bytes.size() && is_break(bytes[at]);
}

std::optional<char32_t> hex_value(Text digits, std::size_t wanted) {
  if (digits.size() != wanted) return std::nullopt;
  char32_t value = 0;
  for (const char c : digits) {
    const auto digit = Text("0123456789abcdefABCDEF").find(c);
    if (digit == Text::npos) return std::nullopt;
    value = value << 4 | static_cast<char32_t>(digit < 16 ? digit : digit - 6);
  }
  return value;
}

struct Escape {
  char32_t code;
  std::size_t length;  // with the backslash
};

// Of YAML's escapes those that make text; none that makes a control character or something unseen.
std::optional<Escape> escape_at(Text bytes, std::size_t at) {
  switch (const char c = at + 1 < bytes.size() ? bytes[at + 1] : '\0') {
    case 't':
      return Escape{'\t', 2};
    case 'n':
      return Escape{'\n', 2};
    case '_':
      return std::nullopt;  // the parser makes half a character of it
    case ' ':
    case '"':
    case '/':
    case '\\':
      return Escape{static_cast<char32_t>(c), 2};
    case 'x':
    case 'u':
    case 'U': {
      const std::size_t digits = c == 'x' ? 2 : c == 'u' ? 4 : 8;
      const auto code = hex_value(bytes.substr(at + 2, digits), digits);
      const bool is_character = code && *code <= 0x10FFFF && (*code < 0xD800 || *code > 0xDFFF);
      if (!is_character || !refusal_of(*code).rule.empty()) return std::nullopt;
      return Escape{*code, 2 + digits};
    }
    default:
      return std::nullopt;
  }
}

// The text between two quotes, read word by word.
class QuotedReader {
 public:
  QuotedReader(Text bytes, std::size_t at) : bytes_(bytes), at_(at + 1), quote_(bytes[at]) {}

  ScalarSource run() {
    if (ends_as_written()) return std::move(result_);
    while (at_ < bytes_.size() && !at_end()) step();
    result_.closed = at_ < bytes_.size();
    result_.end = std::min(at_ + 1, bytes_.size());
    return std::move(result_);
  }

 private:
  // Most quotes hold one line and no escape: their text is where it stands.
  bool ends_as_written() {
    const std::size_t end = bytes_.find_first_of(quote_ == '"' ? "\"\\\n" : "'\n", at_);
    if (end == Text::npos || bytes_[end] != quote_) return false;
    if (quote_ == '\'' && bytes_.substr(end, 2) == "''") return false;
    result_.literal = bytes_.substr(at_, end - at_);
    result_.end = end + 1;
    return true;
  }

  bool at_end() const { return bytes_[at_] == quote_ && !(quote_ == '\'' && bytes_.substr(at_, 2) == "''"); }

  void step() {
    if (bytes_[at_] == quote_) {
      take('\'', 2);
    } else if (bytes_[at_] == '\\' && quote_ == '"') {
      take_escape();
    } else if (is_break(bytes_[at_]) || (is_blank(bytes_[at_]) && ends_line(bytes_, at_))) {
      const int breaks = take_fold();
      result_.text += folded(breaks);
    } else {
      result_.text += bytes_[at_++];
    }
  }

  void take(char32_t code, std::size_t length) {
    sheaf::append_utf8(result_.text, code);
    at_ += length;
  }

  void take_escape() {
    if (at_ + 1 < bytes_.size() && is_break(bytes_[at_ + 1])) {  // an escaped break joins without a space
      ++at_;
      const int breaks = take_fold();
      result_.text += std::string(static_cast<std::size_t>(breaks - 1), '\n');
    } else if (const auto escape = escape_at(bytes_, at_)) {
      take(escape->code, escape->length);
    } else {
      if (result_.bad_escape == 0) result_.bad_escape = at_;
      take('?', 2);
    }
  }

  int take_fold() {
    const Fold fold = fold_at(bytes_, at_);
    at_ = fold.end;
    note_indent(result_, fold);
    return fold.breaks;
  }

  Text bytes_;
  std::size_t at_;
  char quote_;
  ScalarSource result_;
};

}  // namespace

ScalarSource read_quoted(Text bytes, std::size_t at) { return QuotedReader(bytes, at).run(); }

ScalarSource read_plain(Text bytes, std::size_t at, Text text) {
  ScalarSource result;
  if (bytes.substr(at, text.size()) == text && text.find('\n') == Text::npos) {
    result.literal = bytes.substr(at, text.size());
    result.end = at + text.size();
    return result;
  }
  std::size_t matched = 0;
  while (matched < text.size() && result.closed) {
    if (!ends_line(bytes, at)) {
      result.closed = at < bytes.size() && bytes[at++] == text[matched++];
      continue;
    }
    const Fold fold = fold_at(bytes, at);
    const std::string expected = folded(fold.breaks);
    result.closed = text.substr(matched, expected.size()) == expected;
    note_indent(result, fold);
    matched += expected.size();
    at = fold.end;
  }
  result.text = text;
  result.end = at;
  return result;
}

}  // namespace sheafc
