// SPDX-License-Identifier: GPL-2.0-or-later
// FORMAT.md names every table, column, view and prefix there is.
#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <string>

#include "query/library/index_terms.h"
#include "query/library/schema.h"

using namespace sheaf;

namespace {

const std::string& document() {
  static const std::string text = [] {
    std::ifstream file("query/library/FORMAT.md");
    return std::string(std::istreambuf_iterator<char>(file), {});
  }();
  return text;
}

bool documents(const std::string& text) { return document().find(text) != std::string::npos; }

}  // namespace

TEST_CASE("every table and view has its own line") {
  for (const auto items : {schema_tables(), schema_views()}) {
    for (const SchemaItem& item : items) {
      INFO(item.name);
      CHECK(documents("\n| `" + std::string(item.name) + "` |"));
    }
  }
}

TEST_CASE("every prefix has its own line, with what it holds and an example") {
  for (const PrefixDeclaration& declared : all_prefixes()) {
    const std::string letters = declared.letters.empty() ? "none" : "`" + std::string(declared.letters) + "`";
    INFO(declared.example);
    CHECK(documents("\n| " + letters + " | " + std::string(declared.holds) + " | `" +
                    std::string(declared.example) + "` |"));
  }
}
