// SPDX-License-Identifier: GPL-2.0-or-later
// The bare program that sheaf find is measured against: linked the same way, it opens the same library, runs
// one plain query of the index and reads ten rows.
//
//   plain_query LIBRARY WORD...
#include <unistd.h>

#include <cstdio>
#include <string>

#include "query/library/fold.h"
#include "query/library/index.h"
#include "query/library/index_terms.h"
#include "query/library/library.h"

int main(int count, char** words) {
  if (count < 3) return std::fputs("usage: plain_query LIBRARY WORD...\n", stderr), 2;
  auto opened = sheaf::open_library(words[1]);
  if (!opened) return std::fprintf(stderr, "%s\n", opened.failure().message.c_str()), 2;
  sheaf::Library library = std::move(opened).value();
  std::vector<Xapian::Query> all;
  for (int i = 2; i < count; ++i)
    all.emplace_back(sheaf::term(sheaf::Prefix::stem, sheaf::stem_of(sheaf::fold(words[i]))));
  Xapian::Enquire enquire(sheaf::index_of(library).database());
  enquire.set_query(Xapian::Query(Xapian::Query::OP_AND, all.begin(), all.end()));
  const Xapian::MSet found = enquire.get_mset(0, 10);
  for (auto hit = found.begin(); hit != found.end(); ++hit)
    if (const auto entry = library.entry_by_id(*hit)) std::printf("%s\n", entry->entry->address.c_str());
  std::fflush(stdout);
  ::_exit(0);
}
