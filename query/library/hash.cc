// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/hash.h"

#include <nettle/sha2.h>

#define XXH_INLINE_ALL  // the header alone: nothing to load when sheaf starts
#include <xxhash.h>

namespace sheaf {
namespace {
constexpr std::string_view digits = "0123456789abcdef";
}

std::uint64_t hash_of(std::string_view bytes) { return XXH3_64bits(bytes.data(), bytes.size()); }

std::uint64_t HashOfPieces::finish() const {
  return XXH3_64bits(hashes_.data(), hashes_.size() * sizeof(std::uint64_t));
}

struct DigestOfBytes::State {
  sha256_ctx context;
};

DigestOfBytes::DigestOfBytes() : state_(std::make_unique<State>()) { sha256_init(&state_->context); }
DigestOfBytes::~DigestOfBytes() = default;

void DigestOfBytes::add(std::string_view bytes) {
  sha256_update(&state_->context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
}

DigestOfBytes::DigestOfBytes(DigestOfBytes&&) noexcept = default;
DigestOfBytes& DigestOfBytes::operator=(DigestOfBytes&&) noexcept = default;

Digest DigestOfBytes::so_far() const {
  sha256_ctx context = state_->context;
  Digest digest;
  sha256_digest(&context, digest.size(), digest.data());
  return digest;
}

Digest DigestOfBytes::finish() {
  Digest digest;
  sha256_digest(&state_->context, digest.size(), digest.data());
  return digest;
}

std::string to_hexadecimal(std::uint64_t hash) {
  std::string text(16, '0');
  for (auto digit = text.rbegin(); digit != text.rend(); ++digit, hash >>= 4) *digit = digits[hash & 15];
  return text;
}

std::string to_hexadecimal(const Digest& digest) {
  std::string text;
  for (const std::uint8_t byte : digest) {
    text += digits[byte >> 4];
    text += digits[byte & 15];
  }
  return text;
}

}  // namespace sheaf
