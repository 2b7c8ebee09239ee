// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/csv.h"

#include <doctest/doctest.h>

using namespace sheaf;

TEST_CASE("cells that hold a comma or a quote are quoted") {
  CHECK(csv_row({"plain", "a,b", "1/4\" drive", ""}) == "plain,\"a,b\",\"1/4\"\" drive\",\n");
  CHECK(csv_row({"line\nbreak"}) == "line break\n");
}

TEST_CASE("another separator is quoted instead of the comma") {
  CHECK(csv_row({"a,b", "c;d"}, ';') == "a,b;\"c;d\"\n");
}
