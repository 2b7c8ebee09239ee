// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/quantity/unit_page.h"

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

TEST_CASE("the page of units is the one that the table makes") {
  std::ifstream file("query/quantity/UNITS.md");
  const std::string page{std::istreambuf_iterator<char>(file), {}};
  CHECK_MESSAGE(page == sheaf::units_as_markdown(),
                "query/quantity/UNITS.md is stale; its first line says how to make it");
}
