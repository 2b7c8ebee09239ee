// SPDX-License-Identifier: GPL-2.0-or-later
// What a function returns when the world, or the text it was given, may not allow the answer.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace sheaf {

// Why there is no answer, as a sentence without capital or period. Where the fault lies in a text
// that was read, `at` and `length` say which bytes of it are meant (length 0: the whole text).
struct Failure {
  std::string message;
  int at = 0;
  int length = 0;
};

// Either a value or a Failure. Test it before use:
//
//   auto unit = unit_from("N·m");
//   if (!unit) return unit.failure();
template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::move(value)) {}
  Result(Failure failure) : state_(std::move(failure)) {}

  explicit operator bool() const { return state_.index() == 0; }
  const T& value() const& { return std::get<0>(state_); }
  T&& value() && { return std::get<0>(std::move(state_)); }
  const T& operator*() const& { return value(); }
  T&& operator*() && { return std::get<0>(std::move(state_)); }
  const T* operator->() const { return &value(); }
  const Failure& failure() const { return std::get<1>(state_); }

 private:
  std::variant<T, Failure> state_;
};

}  // namespace sheaf
