// SPDX-License-Identifier: GPL-2.0-or-later
// Writes one JSON document (RFC 8259), keeping every figure's digits as they were written.
//
//   JsonWriter json;
//   json.begin_object();
//   json.key("value").number(Number{250, 1});   // 25.0 stays 25.0
//   json.end_object();
//   json.text()                                 // {"value":25.0}
#pragma once

#include <string>
#include <string_view>

#include "query/quantity/number.h"

namespace sheaf {

class JsonWriter {
 public:
  JsonWriter& key(std::string_view name);

  void begin_object() { open('{'); }
  void end_object() { close('}'); }
  void begin_array() { open('['); }
  void end_array() { close(']'); }

  void string(std::string_view text);  // bytes that are not UTF-8 become U+FFFD
  void number(const Number& value);    // a fraction is written as its nearest decimal
  void number(long long value);
  void boolean(bool value);
  void null();

  // A member that is a string; member_if leaves it out when it is empty.
  void member(std::string_view name, std::string_view text);
  void member_if(std::string_view name, std::string_view text);

  const std::string& text() const { return text_; }

 private:
  void open(char bracket);
  void close(char bracket);
  void separate();

  std::string text_;
  bool needs_comma_ = false;
};

}  // namespace sheaf
