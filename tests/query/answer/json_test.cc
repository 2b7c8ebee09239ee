// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/json.h"

#include <doctest/doctest.h>

using namespace sheaf;

TEST_CASE("numbers keep their digits") {
  JsonWriter json;
  json.begin_array();
  json.number(Number{250, 1, 1});
  json.number(Number{-40, 0, 1});
  json.number(Number{5, 0, 16});
  json.number(1234567890123LL);
  json.end_array();
  CHECK(json.text() == "[25.0,-40,0.3125,1234567890123]");
}

TEST_CASE("strings are escaped, and bytes that are not UTF-8 are replaced") {
  JsonWriter json;
  json.string("a\"b\\c\n\t\x01\x7F Öl \xFF end");
  CHECK(json.text() == "\"a\\\"b\\\\c\\n\\t\\u0001\\u007f Öl \\ufffd end\"");
}

TEST_CASE("members are parted by commas, whatever is nested in them") {
  JsonWriter json;
  json.begin_object();
  json.member("a", "1");
  json.member_if("left-out", "");
  json.key("b").begin_array();
  json.begin_object();
  json.end_object();
  json.boolean(true);
  json.null();
  json.end_array();
  json.member("c", "");
  json.end_object();
  CHECK(json.text() == R"({"a":"1","b":[{},true,null],"c":""})");
}
