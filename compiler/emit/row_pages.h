// SPDX-License-Identifier: GPL-2.0-or-later
// Rows of a library replaced page by page. The rows of each table lie in its leaves in their order, each leaf
// as full as can be, as SQLite copies them; rows of another length move those behind them on to the next
// leaf, until a leaf ends where it ended before. What comes of it are the pages of a file that was written
// from the beginning.
//
//   const auto rows = RowPages(small).rows_of(its_root);
//   RowPages pages(library);
//   if (rows && pages.replace(root, *rows)) write(pages.changed());
//
// The layout is that of https://www.sqlite.org/fileformat2.html.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "query/library/file_descriptor.h"

namespace sheafc {

inline constexpr std::size_t page_bytes = 4096;

// Rows as they lie in a leaf, by their numbers.
using RowCells = std::map<std::int64_t, std::string>;

class RowPages {
 public:
  explicit RowPages(const sheaf::FileDescriptor& file) : file_(file) {}  // which outlives it

  std::optional<RowCells> rows_of(std::uint32_t root);  // none, as below
  // False if it cannot be done this way: a row is new, or too long for a leaf; the table would have more or
  // fewer leaves; or the file is damaged. Then the pages are of no use.
  bool replace(std::uint32_t root, const RowCells& rows);
  // Those that were changed, by their numbers, from 1.
  const std::map<std::uint32_t, std::string>& changed() const { return changed_; }

 private:
  // Where the greatest row number of a leaf stands in a page above it. The last leaf of a table has none.
  struct Bound {
    std::uint32_t page = 0;
    std::size_t at = 0;
    std::int64_t number = 0;
  };
  struct Leaf {
    std::uint32_t page;
    Bound bound;
  };
  class Packing;

  std::string page(std::uint32_t number);
  int height_of(std::uint32_t root);
  void gather_leaves(std::uint32_t page, int height, const Bound& bound, std::vector<Leaf>& leaves);
  std::vector<Leaf> leaves_of(std::uint32_t root);
  std::vector<std::pair<std::int64_t, std::string>> cells_of(const Leaf& leaf);
  void set_bound(const Bound& bound, std::int64_t number);

  const sheaf::FileDescriptor& file_;
  std::map<std::uint32_t, std::string> changed_;
};

}  // namespace sheafc
