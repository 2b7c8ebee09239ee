// SPDX-License-Identifier: GPL-2.0-or-later
// What the cache keeps, as bytes for this machine alone: numbers in eight bytes, texts and lists after their
// length. Reading goes on after damage, with nothing in its hands; `at_end` says at the end whether it was
// sound.
#pragma once

#include <cstdint>
#include <cstring>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "compiler/source/diagnostics.h"

namespace sheafc {

class KeptWriter {
 public:
  void number(std::int64_t value);
  void number(std::uint64_t value) { number(static_cast<std::int64_t>(value)); }
  void text(std::string_view value);
  void diagnostics(const Diagnostics& all);
  // Values that mean the same wherever they lie.
  template <typename Value>
  void values(const std::vector<Value>& all) {
    static_assert(std::is_trivially_copyable_v<Value>);
    number(std::uint64_t{all.size()});
    bytes_.append(reinterpret_cast<const char*>(all.data()), all.size() * sizeof(Value));
  }
  const std::string& bytes() const { return bytes_; }

 private:
  void diagnostic(const Diagnostic& diagnostic);

  std::string bytes_;
};

class KeptReader {
 public:
  // `texts` takes what diagnostics point into.
  KeptReader(std::string_view bytes, std::deque<std::string>& texts) : rest_(bytes), texts_(texts) {}

  std::int64_t number();
  std::string text();
  std::uint64_t count();  // never more than there are bytes, so that damage cannot ask for much
  Diagnostics diagnostics();
  template <typename Value>
  std::vector<Value> values() {
    static_assert(std::is_trivially_copyable_v<Value>);
    const std::uint64_t size = count();
    if (size > rest_.size() / sizeof(Value)) return fail(), std::vector<Value>();
    std::vector<Value> all(size);
    if (size > 0) std::memcpy(static_cast<void*>(all.data()), rest_.data(), size * sizeof(Value));
    rest_.remove_prefix(size * sizeof(Value));
    return all;
  }
  bool failed() const { return failed_; }
  bool at_end() const { return !failed_ && rest_.empty(); }

 private:
  Diagnostic diagnostic(int depth);
  std::int64_t fail();

  std::string_view rest_;
  std::deque<std::string>& texts_;
  bool failed_ = false;
};

// Whole or not at all. What cannot be kept costs time at the next build, and nothing else.
void keep_bytes(const std::string& file, const std::string& bytes);
// None if they are not what was kept, to the last bit.
std::optional<std::string> kept_bytes(const std::string& file);

}  // namespace sheafc
