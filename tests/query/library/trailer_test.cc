// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/trailer.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

Trailer sample() {
  Trailer trailer{8192, 8192, 40960, 8192 + 40960 + 5 * 8 + trailer_bytes, {}};
  trailer.digest[0] = 0xAB;
  trailer.digest[31] = 0xCD;
  return trailer;
}

std::string beginning() {
  std::string header("SQLite format 3\0", 16);
  header.resize(100, '\0');
  return header.replace(68, 4, "Shea");
}

std::string with_format(std::uint8_t format) {
  std::string bytes = to_bytes(sample());
  bytes[76] = static_cast<char>(format);
  return bytes;
}

std::string message_for(const std::string& start, const std::string& end, std::uint64_t size) {
  const auto read = read_trailer(start, end, size);
  return read ? "" : read.failure().message;
}

const std::uint64_t file_bytes = sample().file_bytes;

}  // namespace

TEST_CASE("a trailer is read back as it was written") {
  const auto read = read_trailer(beginning(), to_bytes(sample()), file_bytes);
  REQUIRE(read);
  CHECK(read->rows_bytes == 8192);
  CHECK(read->index_offset == 8192);
  CHECK(read->index_bytes == 40960);
  CHECK(read->file_bytes == file_bytes);
  CHECK(read->digest == sample().digest);
}

TEST_CASE("what is no library is called so") {
  CHECK(message_for("", "", 0) == "is empty, and no sheaf library");
  CHECK(message_for("hello", "hello", 5) == "is no sheaf library");
  CHECK(message_for(std::string(100, 'x'), std::string(96, 'x'), 500) == "is no sheaf library");
  std::string other_sqlite = beginning().replace(68, 4, "abcd");
  CHECK(message_for(other_sqlite, std::string(96, 'x'), 500) == "is no sheaf library");
}

TEST_CASE("what begins as a library and does not end as one was cut off or damaged") {
  const std::string cut = "was cut off or damaged; copy or build it again";
  CHECK(message_for(beginning(), std::string(96, '\0'), 5000) == cut);
  CHECK(message_for(beginning(), to_bytes(sample()), file_bytes + 1) == cut);
  CHECK(message_for(std::string(100, 'x'), to_bytes(sample()), file_bytes) == cut);
}

TEST_CASE("every flipped bit of a trailer is noticed") {
  const std::string good = to_bytes(sample());
  for (std::size_t bit = 0; bit < good.size() * 8; ++bit) {
    std::string bad = good;
    bad[bit / 8] = static_cast<char>(bad[bit / 8] ^ (1 << bit % 8));
    CHECK_FALSE(read_trailer(beginning(), bad, file_bytes));
  }
}

TEST_CASE("a newer and an older format are named, each with a way out") {
  CHECK(message_for(beginning(), with_format(6), file_bytes) ==
        "has format 6, and this sheaf reads format 5; use the sheaf that came with the sheafc that wrote it");
  CHECK(message_for(beginning(), with_format(0), file_bytes) ==
        "has format 0, and this sheaf reads format 5; build it again with the sheafc that came with this "
        "sheaf");
}
