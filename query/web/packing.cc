// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/packing.h"

#include <zlib.h>

#include <stdexcept>

namespace sheaf {
namespace {

constexpr std::size_t least_packed = 1'000;  // bytes: below, a packet is sent either way
constexpr int window_bits = 15, with_gzip_header = 16,
              memory_level = 8;  // zlib's own defaults, and its gzip flag

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = std::min(text.find_first_not_of(" \t"), text.size());
  text.remove_prefix(begin);
  return text.substr(0, text.find_last_not_of(" \t") + 1);
}

// "q=0", "q=0.000": not this one.
bool refuses(std::string_view weight) {
  return weight.starts_with("q=0") && weight.find_first_not_of("0.", 2) == std::string_view::npos;
}

std::string gzip(std::string_view body) {
  z_stream stream{};
  if (deflateInit2(&stream, Z_DEFAULT_COMPRESSION, Z_DEFLATED, window_bits + with_gzip_header, memory_level,
                   Z_DEFAULT_STRATEGY) != Z_OK)
    throw std::runtime_error("zlib: deflateInit2");
  std::string bytes(deflateBound(&stream, body.size()), '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(body.data()));  // zlib reads it only
  stream.avail_in = static_cast<uInt>(body.size());
  stream.next_out = reinterpret_cast<Bytef*>(bytes.data());
  stream.avail_out = static_cast<uInt>(bytes.size());
  const int ended = deflate(&stream, Z_FINISH);
  bytes.resize(stream.total_out);
  deflateEnd(&stream);
  if (ended != Z_STREAM_END) throw std::runtime_error("zlib: deflate");
  return bytes;
}

}  // namespace

bool accepts_gzip(std::string_view header) {
  while (!header.empty()) {
    const std::size_t end = std::min(header.find(','), header.size());
    const std::string_view each = header.substr(0, end);
    header.remove_prefix(std::min(end + 1, header.size()));
    const std::size_t semicolon = std::min(each.find(';'), each.size());
    if (trimmed(each.substr(0, semicolon)) == "gzip")
      return semicolon == each.size() || !refuses(trimmed(each.substr(semicolon + 1)));
  }
  return false;
}

Response packed(Response response) {
  if (response.body.size() < least_packed) return response;
  std::string bytes = gzip(response.body);
  if (bytes.size() >= response.body.size()) return response;
  response.body = std::move(bytes);
  response.gzip = true;
  return response;
}

}  // namespace sheaf
