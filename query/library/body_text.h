// SPDX-License-Identifier: GPL-2.0-or-later
// The JSON in which a row's body is written: arrays of texts, numbers and arrays, without spaces. What an
// array holds is said once for both ways (row_body.cc):
//
//   template <typename Body, Like<CautionRecord> Caution>
//   void pass(Body& body, Caution& caution) { body.record(caution.name, caution.text); }
//
// The reader takes any bytes. It goes no deeper than the types do, and what is not as the writer has it is a
// fault.
#pragma once

#include <concepts>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

namespace sheaf {

template <typename Type, typename Record>
concept Like = std::same_as<std::remove_const_t<Type>, Record>;

class BodyWriter {
 public:
  // An array of these values, without those at its end that say nothing: empty texts and lists, 0, no.
  template <typename... Value>
  void record(const Value&... values) {
    bytes_ += '[';
    std::size_t kept = bytes_.size();
    (member(values, kept), ...);
    bytes_.resize(kept);
    bytes_ += ']';
  }
  // All of them, or, if none says anything, none.
  template <typename... Value>
  void whole_record(const Value&... values) {
    const bool says_something = (!(values == Value{}) || ...);
    if (says_something) list(values...);
    if (!says_something) bytes_ += "[]";
  }
  template <typename Value>
  void value(const Value& value) {
    if constexpr (std::same_as<Value, std::string>) {
      text(value);
    } else if constexpr (std::integral<Value>) {
      number(static_cast<std::int64_t>(value));
    } else {
      pass(*this, value);
    }
  }
  template <typename Value>
  void value(const std::vector<Value>& values) {
    bytes_ += '[';
    for (const Value& one : values) {
      value(one);
      bytes_ += ',';
    }
    if (!values.empty()) bytes_.pop_back();  // the comma
    bytes_ += ']';
  }
  void value(const std::optional<double>& number);  // null, if there is none or it is infinite

  std::string take() { return std::move(bytes_); }

 private:
  template <typename Value>
  void member(const Value& one, std::size_t& kept) {
    if (bytes_.back() != '[') bytes_ += ',';
    value(one);
    if (!(one == Value{})) kept = bytes_.size();
  }
  template <typename First, typename... Value>
  void list(const First& first, const Value&... values) {
    bytes_ += '[';
    value(first);
    ((bytes_ += ',', value(values)), ...);
    bytes_ += ']';
  }
  void text(std::string_view text);
  void number(std::int64_t number);

  std::string bytes_;
};

class BodyReader {
 public:
  explicit BodyReader(std::string_view bytes) : rest_(bytes) {}

  // Values that are not there stay as they are.
  template <typename... Value>
  void record(Value&... values) {
    bool is_first = true;
    expect('[');
    (member(values, is_first), ...);
    expect(']');
  }
  template <typename... Value>
  void whole_record(Value&... values) {
    record(values...);
  }
  template <typename Value>
  void value(Value& value) {
    if constexpr (std::same_as<Value, std::string>) {
      text(value);
    } else if constexpr (std::integral<Value>) {
      integer(value);
    } else {
      pass(*this, value);
    }
  }
  template <typename Value>
  void value(std::vector<Value>& values) {
    expect('[');
    while (is_sound_ && !is_next(']')) {
      if (!values.empty()) expect(',');
      value(values.emplace_back());
    }
    expect(']');
  }
  void value(std::optional<double>& number);

  bool has_read_all() const { return is_sound_ && rest_.empty(); }

 private:
  template <typename Value>
  void member(Value& one, bool& is_first) {
    if (!is_sound_ || is_next(']')) return;
    if (!std::exchange(is_first, false)) expect(',');
    value(one);
  }
  template <typename Integer>
  void integer(Integer& integer) {
    const std::int64_t read = number();
    integer = static_cast<Integer>(read);
    if (static_cast<std::int64_t>(integer) != read) is_sound_ = false;
  }
  bool is_next(char sign) const { return rest_.starts_with(sign); }
  void expect(char sign);
  void text(std::string& text);
  std::int64_t number();

  std::string_view rest_;
  bool is_sound_ = true;
};

}  // namespace sheaf
