// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/response.h"

#include <doctest/doctest.h>

#include "query/web/html.h"

using namespace sheaf;

namespace {
bool has(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }
}  // namespace

TEST_CASE("every response carries the strict headers") {
  for (const int status : {200, 304, 400, 404, 405, 421, 500, 503}) {
    const std::string bytes = bytes_of({.status = status, .body = "x"}, {});
    CHECK(has(bytes, "HTTP/1.1 " + std::to_string(status) + " "));
    CHECK(has(bytes, "Content-Security-Policy: default-src 'none'; script-src 'self'; style-src 'sha256-"));
    CHECK_FALSE(has(bytes, "unsafe"));
    CHECK(has(bytes, "frame-ancestors 'none'"));
    CHECK(has(bytes, "X-Content-Type-Options: nosniff\r\n"));
    CHECK(has(bytes, "Referrer-Policy: no-referrer\r\n"));
    CHECK(has(bytes, "Allow: GET, HEAD\r\n") == (status == 405));
  }
}

TEST_CASE("a head has the length of the body that it leaves out") {
  const Response response{.body = "twelve bytes"};
  const std::string whole = bytes_of(response, {}), head = bytes_of(response, {.head_only = true});
  CHECK(whole == head + "twelve bytes");
  CHECK(has(head, "Content-Length: 12\r\n"));
}

TEST_CASE("who has it already is told so") {
  const Response response{.body = "a page"};
  const std::string again = bytes_of(response, {.if_none_match = entity_tag("a page")});
  CHECK(again.starts_with("HTTP/1.1 304 Not Modified\r\n"));
  CHECK(again.ends_with("\r\n\r\n"));
  CHECK(bytes_of(response, {.if_none_match = entity_tag("another")}).starts_with("HTTP/1.1 200"));
  CHECK(bytes_of({.status = 404, .body = "a page"}, {.if_none_match = entity_tag("a page")})
            .starts_with("HTTP/1.1 404"));
}

TEST_CASE("text never becomes markup") {
  CHECK(element("p", "", "<script>&\"'") == "<p>&lt;script&gt;&amp;&quot;&#39;</p>\n");
  CHECK(link("/find?q=\"><b>", "<b>") == "<a href=\"/find?q=&quot;&gt;&lt;b&gt;\">&lt;b&gt;</a>");
  CHECK(address_of("/find", {{"q", "a&b=c"}, {"unit", ""}}) == "/find?q=a%26b%3Dc");
  CHECK(element("p", "", "").empty());
  Facts facts;
  CHECK(facts.finish().empty());
  facts.add("set", "one");
  facts.add("set", "<two>");
  CHECK(facts.finish() ==
        "<dl class=\"facts\">\n<div><dt>set</dt><dd>one</dd><dd>&lt;two&gt;</dd></div>\n</dl>\n");
}
