// SPDX-License-Identifier: GPL-2.0-or-later
// One pass over the bytes. Nearly all are sheaf::printable ASCII, which costs one look in a table.
#include "compiler/source/characters.h"

#include <algorithm>
#include <array>
#include <string>

#include "query/library/utf8.h"

namespace sheafc {
namespace {

constexpr auto is_plain = [] {
  std::array<bool, 256> table{};
  for (std::size_t c = 0x20; c < 0x7F; ++c) table[c] = true;
  table['\t'] = true;
  return table;
}();

struct Range {
  char32_t first, last;
  std::string_view name;
};

// What a reader cannot see, or what makes text look other than it is.
constexpr Range invisible[] = {
    {0x00AD, 0x00AD, "soft hyphen"},        {0x061C, 0x061C, "direction mark"},
    {0x200B, 0x200B, "zero-width space"},   {0x200E, 0x200F, "direction mark"},
    {0x2028, 0x2029, "line separator"},     {0x202A, 0x202E, "direction override"},
    {0x2060, 0x2064, "invisible operator"}, {0x2066, 0x2069, "direction override"},
    {0xFEFF, 0xFEFF, "byte order mark"},    {0xFFF9, 0xFFFC, "annotation mark"},
    {0xFFFE, 0xFFFF, "noncharacter"},       {0xE0000, 0xE007F, "tag character"},
};

// Spaces that look like indentation and are none. Inside a line they are left to who reads the value.
constexpr Range other_spaces[] = {
    {0x00A0, 0x00A0, "no-break space"},     {0x1680, 0x1680, "ogham space"},
    {0x2000, 0x200A, "space of odd width"}, {0x202F, 0x202F, "narrow no-break space"},
    {0x205F, 0x205F, "space of odd width"}, {0x3000, 0x3000, "ideographic space"},
};

template <std::size_t n>
const Range* find_in(const Range (&ranges)[n], char32_t code) {
  const auto* found = std::find_if(std::begin(ranges), std::end(ranges),
                                   [=](const Range& r) { return code >= r.first && code <= r.last; });
  return found == std::end(ranges) ? nullptr : found;
}

std::string hex(char32_t value, int digits) {
  std::string text;
  for (int shift = 4 * (std::max(digits, value > 0xFFFF ? 6 : 0) - 1); shift >= 0; shift -= 4) {
    text += "0123456789ABCDEF"[(value >> shift) & 0xF];
  }
  return text;
}

std::string name_of_code(char32_t code) { return "U+" + hex(code, 4); }

unsigned byte_at(std::string_view bytes, std::size_t at) {
  return at < bytes.size() ? static_cast<unsigned char>(bytes[at]) : 0u;
}

bool looks_like_utf16(std::string_view bytes) {
  const unsigned a = byte_at(bytes, 0), b = byte_at(bytes, 1);
  if ((a == 0xFF && b == 0xFE) || (a == 0xFE && b == 0xFF)) return true;
  return bytes.size() >= 4 && ((a == 0) != (b == 0)) && ((bytes[2] == 0) != (bytes[3] == 0));
}

class Check {
 public:
  Check(std::string_view file, std::string_view bytes, Diagnostics& sink)
      : file_(file), bytes_(bytes), sink_(sink) {}

  bool run() {
    if (looks_like_utf16(bytes_)) {
      report(0, 1, "not-utf-8", "the sheet is saved as UTF-16; save it as UTF-8");
      return false;
    }
    check_indent();
    while (at_ < bytes_.size() && faults_ < max_character_faults) step();
    if (faults_ == max_character_faults) {
      sink_.error(last_rule_, last_place_,
                  "too many faults of this sort: the rest of the sheet was not searched");
    }
    return faults_ == 0;
  }

 private:
  void step() {
    while (at_ < bytes_.size() && is_plain[static_cast<unsigned char>(bytes_[at_])]) ++at_;
    if (at_ == bytes_.size()) return;
    const unsigned c = byte_at(bytes_, at_);
    if (c == '\n') {
      start_line(at_ + 1);
    } else if (c == '\r' && byte_at(bytes_, at_ + 1) == '\n') {
      start_line(at_ + 2);
    } else {
      check_character();
    }
  }

  void start_line(std::size_t at) {
    line_start_ = at_ = at;
    ++line_;
    check_indent();
  }

  // YAML counts columns of indentation in spaces; anything else that only looks like space misleads.
  void check_indent() {
    while (byte_at(bytes_, at_) == ' ') ++at_;
    if (byte_at(bytes_, at_) == '\t') {
      report(at_, bytes_.find_first_not_of('\t', at_) - at_, "tab-indent",
             "a tab indents this line; YAML counts only spaces, so write spaces instead");
    } else if (at_ < bytes_.size()) {
      const sheaf::Character c = sheaf::character_at(bytes_, at_);
      if (const Range* odd = find_in(other_spaces, c.code)) {
        report(at_, c.length, "odd-indent",
               "a " + std::string(odd->name) + " indents this line; YAML counts only plain spaces");
      }
    }
  }

  void check_character() {
    const sheaf::Character c = sheaf::character_at(bytes_, at_);
    if (c.code == sheaf::not_utf8) {
      report(at_, 1, "not-utf-8",
             "byte 0x" + hex(byte_at(bytes_, at_), 2) + " is not UTF-8; save the sheet as UTF-8");
      ++at_;
      return;
    }
    const Refusal refusal = refusal_of(c.code);
    if (!refusal.rule.empty()) report(at_, c.length, refusal.rule, refusal.message);
    at_ += c.length;
  }

  void report(std::size_t at, std::size_t length, std::string_view rule, std::string message) {
    if (last_place_.line == line_) return;
    last_rule_ = rule;
    length = std::min(length, bytes_.size() - at);
    last_place_ = {file_, line_, static_cast<int>(at - line_start_) + 1, static_cast<int>(length)};
    sink_.error(rule, last_place_, std::move(message));
    ++faults_;
  }

  std::string_view file_, bytes_;
  Diagnostics& sink_;
  std::size_t at_ = 0, line_start_ = 0;
  int line_ = 1, faults_ = 0;
  std::string_view last_rule_;
  Span last_place_;
};

}  // namespace

Refusal refusal_of(char32_t code) {
  if (code == '\r')
    return {"control-character", "a carriage return that ends no line; end lines with a line feed"};
  if ((code < 0x20 && code != '\t' && code != '\n') || (code >= 0x7F && code < 0xA0)) {
    return {"control-character", "control character " + name_of_code(code) + "; a sheet holds only text"};
  }
  if (code == 0xFFFD) {
    return {"invisible-character",
            "the mark U+FFFD stands where a character was lost; write the character again"};
  }
  if (const Range* found = find_in(invisible, code)) {
    return {"invisible-character", "a character that cannot be seen, " + name_of_code(code) + " (" +
                                       std::string(found->name) + "); take it out"};
  }
  return {};
}

bool check_characters(std::string_view file, std::string_view bytes, Diagnostics& sink) {
  return Check(file, bytes, sink).run();
}

}  // namespace sheafc
