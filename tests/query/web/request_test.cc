// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/request.h"

#include <doctest/doctest.h>

using namespace sheaf;

namespace {

ReadRequest read(const std::string& first, const std::string& headers = "Host: localhost:8427\r\n") {
  return read_request(first + "\r\n" + headers + "\r\n");
}

int status_of(const ReadRequest& request) { return request ? 200 : request.refusal().status; }

}  // namespace

TEST_CASE("a request is read into path and parameters") {
  const auto request = read("GET /find?q=top+plug%20%C2%B7&unit=&q=second&flag HTTP/1.1");
  REQUIRE(request);
  CHECK(request->path == "/find");
  CHECK(request->parameter("q") == "top plug ·");
  CHECK(request->has("unit"));
  CHECK(request->has("flag"));
  CHECK(request->parameter("absent").empty());
  CHECK_FALSE(request->has("absent"));
  CHECK(request->host == "localhost");
  CHECK(request->keep_alive);
  CHECK_FALSE(request->head_only);
}

TEST_CASE("a plus in a path is a plus") { CHECK(read("GET /a+b HTTP/1.1")->path == "/a+b"); }

TEST_CASE("HTTP/1.0 closes unless asked not to") {
  CHECK_FALSE(read("GET / HTTP/1.0")->keep_alive);
  CHECK(read("GET / HTTP/1.0", "Host: a\r\nConnection: Keep-Alive\r\n")->keep_alive);
  CHECK_FALSE(read("GET / HTTP/1.1", "Host: a\r\nConnection: close\r\n")->keep_alive);
}

TEST_CASE("the host is read without its port, in small letters, brackets and all") {
  CHECK(read("GET / HTTP/1.1", "Host: Bench.Local:80\r\n")->host == "bench.local");
  CHECK(read("GET / HTTP/1.1", "hOsT:[::1]:8427\r\n")->host == "[::1]");
  for (const char* bad : {"Host: a b\r\n", "Host: a/b\r\n", "Host: a:b\r\n", "Host: [::1\r\n",
                          "Host: a@b\r\n", "Host:\r\n", "Host: a\r\nHost: b\r\n", ""})
    CHECK_MESSAGE(status_of(read("GET / HTTP/1.1", bad)) == 400, bad);
}

TEST_CASE("what is no request is refused with the status that says why") {
  CHECK(status_of(read("POST / HTTP/1.1")) == 405);
  CHECK(status_of(read("DELETE /x HTTP/1.1")) == 405);
  CHECK(status_of(read("GET / HTTP/2.0")) == 505);
  CHECK(status_of(read("GET /")) == 400);
  CHECK(status_of(read("GET  / HTTP/1.1")) == 400);
  CHECK(status_of(read(" GET / HTTP/1.1")) == 400);
  CHECK(status_of(read("GET http://localhost/ HTTP/1.1")) == 400);
  CHECK(status_of(read("G(T / HTTP/1.1")) == 400);
  CHECK(status_of(read("GET /" + std::string(longest_target, 'a') + " HTTP/1.1")) == 414);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\nContent-Length: 5\r\n")) == 413);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\nTransfer-Encoding: chunked\r\n")) == 413);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\nContent-Length: 0\r\n")) == 200);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\n folded: b\r\n")) == 400);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\nname : b\r\n")) == 400);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\nno colon\r\n")) == 400);
  CHECK(status_of(read("GET / HTTP/1.1", "Host: a\r\nx: a\nSet-Cookie: b\r\n")) == 400);
  std::string many = "Host: a\r\n";
  for (std::size_t i = 0; i < most_headers; ++i) many += "x: y\r\n";
  CHECK(status_of(read("GET / HTTP/1.1", many)) == 431);
}

TEST_CASE("broken escapes, control characters and bytes that are no UTF-8 are refused") {
  for (const char* bad : {"/%", "/%4", "/%zz", "/?q=%", "/?q=%0d%0aSet-Cookie:x", "/%00", "/?q=%ff",
                          "/?q=%c3", "/?q=%1b[2J", "/?q=%7f", "/\x80", "/a\tb"})
    CHECK_MESSAGE(status_of(read(std::string("GET ") + bad + " HTTP/1.1")) == 400, bad);
}

TEST_CASE("the head ends with its first empty line") {
  CHECK(head_length("GET / HTTP/1.1\r\nHost: a\r\n") == 0);
  CHECK(head_length("GET / HTTP/1.1\r\n\r\nmore") == 18);
}

TEST_CASE("what is encoded for an address comes back") {
  const std::string text = "35 ± 3 N·m & \"<a>\" 100 % +1";
  CHECK(decoded(encoded(text), Plus::space) == text);
  CHECK(encoded("sorvane-41-rod/top-plug") == "sorvane-41-rod/top-plug");
}
