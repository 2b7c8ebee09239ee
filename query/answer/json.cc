// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/json.h"

#include <array>
#include <charconv>

#include "query/answer/text.h"

namespace sheaf {
namespace {

void append_escaped(std::string& out, char sign) {
  switch (sign) {
    case '"':
      out += "\\\"";
      return;
    case '\\':
      out += "\\\\";
      return;
    case '\n':
      out += "\\n";
      return;
    case '\t':
      out += "\\t";
      return;
    default:
      break;
  }
  constexpr std::string_view hex = "0123456789abcdef";
  const auto code = static_cast<unsigned char>(sign);
  out += "\\u00";
  out += hex[code >> 4];
  out += hex[code & 15];
}

bool must_escape(unsigned char byte) { return byte < 0x20 || byte == 0x7F || byte == '"' || byte == '\\'; }

// The shortest decimal that reads back as the same double; independent of the locale.
std::string shortest(double value) {
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return {buffer.data(), end.ptr};
}

}  // namespace

JsonWriter& JsonWriter::key(std::string_view name) {
  string(name);
  text_ += ':';
  needs_comma_ = false;
  return *this;
}

void JsonWriter::string(std::string_view text) {
  separate();
  text_ += '"';
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = sign_length(text, at);
    if (length == 0) {
      text_ += "\\ufffd";
    } else if (length == 1 && must_escape(static_cast<unsigned char>(text[at]))) {
      append_escaped(text_, text[at]);
    } else {
      text_ += text.substr(at, length);
    }
    at += length == 0 ? 1 : length;
  }
  text_ += '"';
}

void JsonWriter::number(const Number& value) {
  separate();
  text_ += value.denominator == 1 ? to_text(value) : shortest(approximate(value));
}

void JsonWriter::number(long long value) {
  separate();
  text_ += std::to_string(value);
}

void JsonWriter::boolean(bool value) {
  separate();
  text_ += value ? "true" : "false";
}

void JsonWriter::null() {
  separate();
  text_ += "null";
}

void JsonWriter::member(std::string_view name, std::string_view text) { key(name).string(text); }

void JsonWriter::member_if(std::string_view name, std::string_view text) {
  if (!text.empty()) member(name, text);
}

void JsonWriter::open(char bracket) {
  separate();
  text_ += bracket;
  needs_comma_ = false;
}

void JsonWriter::close(char bracket) {
  text_ += bracket;
  needs_comma_ = true;
}

void JsonWriter::separate() {
  if (needs_comma_) text_ += ',';
  needs_comma_ = true;
}

}  // namespace sheaf
