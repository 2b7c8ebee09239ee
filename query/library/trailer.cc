// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/trailer.h"

namespace sheaf {
namespace {

constexpr std::string_view magic = "\x89Sheaf library\r\n";
constexpr std::size_t checksum_at = 64;
constexpr std::size_t format_at = 76;
constexpr std::size_t magic_at = 80;
static_assert(magic_at + magic.size() == trailer_bytes);

constexpr std::size_t application_id_at = 68;  // in the header of an SQLite file, big-endian

void append(std::string& bytes, std::uint64_t number, int count) {
  for (int i = 0; i < count; ++i) bytes += static_cast<char>(number >> (8 * i) & 0xFF);
}

std::uint64_t number_at(std::string_view bytes, std::size_t at, int count) {
  std::uint64_t number = 0;
  for (int i = count; i-- > 0;) {
    number = number << 8 | static_cast<unsigned char>(bytes[at + static_cast<std::size_t>(i)]);
  }
  return number;
}

std::string checksum_bytes(std::string_view trailer) {
  std::string without(trailer);
  without.replace(checksum_at, 8, 8, '\0');
  std::string bytes;
  append(bytes, hash_of(without), 8);
  return bytes;
}

bool begins_as_library(std::string_view beginning) {
  if (!beginning.starts_with("SQLite format 3") || beginning.size() < application_id_at + 4) return false;
  std::int32_t id = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    id = id << 8 | static_cast<unsigned char>(beginning[application_id_at + i]);
  }
  return id == application_id;
}

Failure wrong_format(std::uint64_t format) {
  const std::string both = "has format " + std::to_string(format) + ", and this sheaf reads format " +
                           std::to_string(library_format);
  return Failure{format > library_format
                     ? both + "; use the sheaf that came with the sheafc that wrote it"
                     : both + "; build it again with the sheafc that came with this sheaf"};
}

bool parts_fit(const Trailer& trailer, std::uint64_t file_bytes) {
  const std::uint64_t end = file_bytes - trailer_bytes;
  if (trailer.file_bytes != file_bytes || trailer.rows_bytes > trailer.index_offset ||
      trailer.index_offset > end || trailer.index_bytes > end - trailer.index_offset) {
    return false;
  }
  const std::uint64_t checks = trailer.index_bytes / index_block * 8;
  return trailer.index_offset % index_block == 0 && trailer.index_bytes % index_block == 0 &&
         trailer.block_checks_offset() + checks == end;
}

}  // namespace

std::string block_check(std::string_view block) {
  std::string bytes;
  append(bytes, hash_of(block), 8);
  return bytes;
}

std::string to_bytes(const Trailer& trailer) {
  std::string bytes;
  append(bytes, trailer.rows_bytes, 8);
  append(bytes, trailer.index_offset, 8);
  append(bytes, trailer.index_bytes, 8);
  append(bytes, trailer.file_bytes, 8);
  bytes.append(reinterpret_cast<const char*>(trailer.digest.data()), trailer.digest.size());
  append(bytes, 0, 8);  // the checksum comes last
  append(bytes, 0, 4);
  append(bytes, library_format, 4);
  bytes += magic;
  return bytes.replace(checksum_at, 8, checksum_bytes(bytes));
}

Result<Trailer> read_trailer(std::string_view beginning, std::string_view end, std::uint64_t file_bytes) {
  if (file_bytes == 0) return Failure{"is empty, and no sheaf library"};
  if (end.size() < trailer_bytes || !end.ends_with(magic)) {
    return Failure{begins_as_library(beginning) ? "was cut off or damaged; copy or build it again"
                                                : "is no sheaf library"};
  }
  end = end.substr(end.size() - trailer_bytes);
  const std::uint64_t format = number_at(end, format_at, 4);
  if (format != library_format) return wrong_format(format);
  Trailer trailer{
      number_at(end, 0, 8), number_at(end, 8, 8), number_at(end, 16, 8), number_at(end, 24, 8), {}};
  end.copy(reinterpret_cast<char*>(trailer.digest.data()), trailer.digest.size(), 32);
  const bool intact = end.substr(checksum_at, 8) == checksum_bytes(end);
  if (!intact || !begins_as_library(beginning) || !parts_fit(trailer, file_bytes)) {
    return Failure{"was cut off or damaged; copy or build it again"};
  }
  return trailer;
}

}  // namespace sheaf
