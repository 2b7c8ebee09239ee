// SPDX-License-Identifier: GPL-2.0-or-later
// The two hashes of a library file, each where it serves best.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

// XXH3, 64 bits: for records, where a look-up waits for it. It notices damage; it proves nothing
// against a forger.
std::uint64_t hash_of(std::string_view bytes);

// The same of what is long, and comes in pieces of this size, the last one shorter.
inline constexpr std::size_t hashed_piece = 1 << 20;
class HashOfPieces {
 public:
  void add(std::string_view piece) { add_hash(hash_of(piece)); }
  void add_hash(std::uint64_t of_piece) { hashes_.push_back(of_piece); }
  std::uint64_t finish() const;

 private:
  std::vector<std::uint64_t> hashes_;
};

// SHA-256 of what was added: for the whole file, so that anybody can compare it with the usual tools.
using Digest = std::array<std::uint8_t, 32>;
class DigestOfBytes {
 public:
  DigestOfBytes();
  ~DigestOfBytes();
  DigestOfBytes(DigestOfBytes&&) noexcept;
  DigestOfBytes& operator=(DigestOfBytes&&) noexcept;
  void add(std::string_view bytes);
  Digest so_far() const;
  Digest finish();  // and begins anew

 private:
  struct State;
  std::unique_ptr<State> state_;
};

// Lower-case hexadecimal digits: 16 and 64 of them.
std::string to_hexadecimal(std::uint64_t hash);
std::string to_hexadecimal(const Digest& digest);

}  // namespace sheaf
