// SPDX-License-Identifier: GPL-2.0-or-later
// What sizes are compared with, read once however many sizes are asked for: published tables whole, and of
// the fleet, which may be large, only the sizes that occur in it. Internal to the matching.
#pragma once

#include <deque>
#include <map>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "query/answer/picture.h"
#include "query/library/library.h"
#include "query/search/of_size.h"
#include "query/trade/size_match.h"

namespace sheaf {

class Shelf {
 public:
  explicit Shelf(std::vector<Library*> libraries) : libraries_(std::move(libraries)) {}

  const std::vector<Library*>& libraries() const { return libraries_; }

  // The rows of one kind from all libraries; `sizes` are those of the rows that have one, in their order.
  struct Table {
    std::vector<EntryRecord> rows;
    std::vector<SizeRow> sizes;
    std::vector<std::size_t> row_of_size;
  };
  Result<const Table*> table(std::string_view kind);

  // The sizes that occur among the entries of a library: of two dimensions for O-rings, of three for others.
  struct Sizes {
    std::vector<SizeRow> rows;
    std::vector<std::string> keys;  // as the index has them (Prefix::size)
  };
  Result<const Sizes*> sizes(Library& library, RingShape shape);

  // Up to `most` entries of a kind and a size, as the index has it. They stand until the next call.
  Result<const SizedEntries*> entries(Library& library, std::string_view kind, const std::string& size_key,
                                      std::size_t most);

 private:
  std::vector<Library*> libraries_;
  std::map<std::string, Table, std::less<>> tables_;
  std::map<std::pair<const Library*, bool>, Sizes> sizes_;
  std::map<std::tuple<const Library*, std::string, std::string, std::size_t>, SizedEntries> entries_;
};

}  // namespace sheaf
