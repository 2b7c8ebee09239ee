// SPDX-License-Identifier: GPL-2.0-or-later
// What is packed comes back whole by zlib's own reading, and only to who asked for it.
#include "query/web/packing.h"

#include <doctest/doctest.h>
#include <zlib.h>

using namespace sheaf;

namespace {

std::string unpacked(const std::string& bytes, std::size_t length) {
  std::string text(length, '\0');
  z_stream stream{};
  REQUIRE(inflateInit2(&stream, 15 + 16) == Z_OK);  // gzip alone
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
  stream.avail_in = static_cast<uInt>(bytes.size());
  stream.next_out = reinterpret_cast<Bytef*>(text.data());
  stream.avail_out = static_cast<uInt>(text.size());
  CHECK(inflate(&stream, Z_FINISH) == Z_STREAM_END);
  CHECK(stream.avail_in == 0);
  CHECK(stream.total_out == length);
  inflateEnd(&stream);
  return text;
}

}  // namespace

TEST_CASE("a page is packed, and comes back whole") {
  std::string page;
  for (int i = 0; i < 2'000; ++i) page += "<li>top plug " + std::to_string(i) + " N·m</li>\n";
  const Response whole{.body = page};
  const Response small = packed(whole);
  CHECK(small.gzip);
  CHECK(small.body.size() < page.size() / 4);
  CHECK(unpacked(small.body, page.size()) == page);
  CHECK(packed(whole).body == small.body);
  const std::string bytes = bytes_of(small, {});
  CHECK(bytes.find("Content-Encoding: gzip\r\nContent-Length: " + std::to_string(small.body.size()) +
                   "\r\n") != std::string::npos);
  CHECK(bytes.find("Vary: Accept-Encoding\r\n") != std::string::npos);
  CHECK(bytes_of(small, {.if_none_match = entity_tag(small.body)}).starts_with("HTTP/1.1 304"));
  CHECK(bytes_of(whole, {}).find("Content-Encoding") == std::string::npos);
}

TEST_CASE("what gains nothing is sent as it is") {
  CHECK_FALSE(packed({.body = "ok\n"}).gzip);
  CHECK_FALSE(packed({.body = ""}).gzip);
  std::string noise(5'000, '\0');
  unsigned state = 1;  // a linear congruential generator, the constants of ISO C's example of rand
  for (char& sign : noise) sign = static_cast<char>((state = state * 1103515245 + 12345) >> 16);
  const Response same = packed({.body = noise});
  CHECK_FALSE(same.gzip);
  CHECK(same.body == noise);
}

TEST_CASE("gzip is for who accepts it") {
  for (const char* header :
       {"gzip", "gzip, deflate, br, zstd", "deflate , gzip;q=0.5", "br;q=1.0,gzip; q=1", "gzip;q=0.001"})
    CHECK_MESSAGE(accepts_gzip(header), header);
  for (const char* header :
       {"", "identity", "br", "xgzip", "gzip;q=0", "gzip; q=0.000", "*", "gzip ;q=0.", ",;,q=1"})
    CHECK_FALSE_MESSAGE(accepts_gzip(header), header);
}
