// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/emit/row_pages.h"

#include <algorithm>
#include <optional>
#include <string_view>

namespace sheafc {
namespace {

using namespace sheaf;

// What is not as it should be, or cannot be done; caught in this file.
struct NotThisWay {};

constexpr char leaf_of_rows = 13, above_leaves = 5;
constexpr std::size_t leaf_header = 8, upper_header = 12;
constexpr std::size_t longest_row = page_bytes - 35;  // a longer one goes on in other pages
constexpr std::size_t least_cell = 4;
constexpr int most_levels = 20;

std::uint64_t number_at(std::string_view page, std::size_t at, std::size_t bytes) {
  if (at + bytes > page.size()) throw NotThisWay();
  std::uint64_t number = 0;
  for (std::size_t i = 0; i < bytes; ++i) number = number << 8 | static_cast<unsigned char>(page[at + i]);
  return number;
}

void put_two(std::string& page, std::size_t at, std::size_t number) {
  page[at] = static_cast<char>(number >> 8);
  page[at + 1] = static_cast<char>(number);
}

// Seven bits a byte, the high ones first; all but the last byte have the eighth. Ours need no more than eight
// bytes.
struct Varint {
  std::uint64_t number = 0;
  std::size_t bytes = 0;
};

Varint varint_at(std::string_view page, std::size_t at) {
  Varint read;
  for (;;) {
    const std::uint64_t byte = number_at(page, at + read.bytes, 1);
    read.number = read.number << 7 | (byte & 0x7F);
    if (++read.bytes > 8) throw NotThisWay();
    if (byte < 0x80) return read;
  }
}

std::string varint(std::uint64_t number) {
  std::string bytes(1, static_cast<char>(number & 0x7F));
  while (number >>= 7) bytes.insert(bytes.begin(), static_cast<char>(0x80 | (number & 0x7F)));
  return bytes;
}

std::size_t count_in(std::string_view page) { return number_at(page, 3, 2); }

// Takes rows while there is room, the first at the end of the page.
class NewLeaf {
 public:
  bool takes(const std::string& cell) {
    const std::size_t pointer = leaf_header + 2 * count_;
    if (pointer + 2 + cell.size() > begin_) return false;
    begin_ -= cell.size();
    page_.replace(begin_, cell.size(), cell);
    put_two(page_, pointer, begin_);
    ++count_;
    return true;
  }
  bool is_empty() const { return count_ == 0; }
  std::string page() && {
    page_[0] = leaf_of_rows;
    put_two(page_, 3, count_);
    put_two(page_, 5, begin_);
    return std::move(page_);
  }

 private:
  std::string page_ = std::string(page_bytes, '\0');
  std::size_t begin_ = page_bytes, count_ = 0;
};

}  // namespace

std::string RowPages::page(std::uint32_t number) {
  if (const auto found = changed_.find(number); found != changed_.end()) return found->second;
  auto read = read_at(file_.number(), (std::uint64_t{number} - 1) * page_bytes, page_bytes);
  if (number < 2 || !read || read->size() != page_bytes) throw NotThisWay();
  return std::move(read).value();
}

int RowPages::height_of(std::uint32_t root) {
  for (int height = 0; height < most_levels; ++height) {
    const std::string top = page(root);
    if (top[0] == leaf_of_rows) return height;
    if (top[0] != above_leaves) break;
    root = static_cast<std::uint32_t>(number_at(top, number_at(top, upper_header, 2), 4));
  }
  throw NotThisWay();
}

void RowPages::gather_leaves(std::uint32_t number, int height, const Bound& bound,
                             std::vector<Leaf>& leaves) {
  if (height == 0) return leaves.push_back({number, bound});
  const std::string upper = page(number);
  if (upper[0] != above_leaves) throw NotThisWay();
  for (std::size_t i = 0; i < count_in(upper); ++i) {
    const std::size_t at = number_at(upper, upper_header + 2 * i, 2);
    const auto below = static_cast<std::uint32_t>(number_at(upper, at, 4));
    const auto greatest = static_cast<std::int64_t>(varint_at(upper, at + 4).number);
    gather_leaves(below, height - 1, {number, at + 4, greatest}, leaves);
  }
  gather_leaves(static_cast<std::uint32_t>(number_at(upper, leaf_header, 4)), height - 1, bound, leaves);
}

std::vector<RowPages::Leaf> RowPages::leaves_of(std::uint32_t root) {
  std::vector<Leaf> leaves;
  gather_leaves(root, height_of(root), {}, leaves);
  return leaves;
}

std::vector<std::pair<std::int64_t, std::string>> RowPages::cells_of(const Leaf& leaf) {
  const std::string all = page(leaf.page);
  const bool has_holes = number_at(all, 1, 2) != 0 || all[7] != 0;
  if (all[0] != leaf_of_rows || has_holes) throw NotThisWay();
  std::vector<std::pair<std::int64_t, std::string>> cells;
  for (std::size_t i = 0; i < count_in(all); ++i) {
    const std::size_t at = number_at(all, leaf_header + 2 * i, 2);
    const Varint row = varint_at(all, at), number = varint_at(all, at + row.bytes);
    const std::size_t bytes = std::max(least_cell, row.bytes + number.bytes + row.number);
    if (row.number > longest_row || at + bytes > page_bytes) throw NotThisWay();
    cells.emplace_back(static_cast<std::int64_t>(number.number), all.substr(at, bytes));
  }
  return cells;
}

void RowPages::set_bound(const Bound& bound, std::int64_t number) {
  if (bound.page == 0 || bound.number == number) return;
  const std::string before = varint(static_cast<std::uint64_t>(bound.number)),
                    now = varint(static_cast<std::uint64_t>(number));
  if (before.size() != now.size()) throw NotThisWay();
  std::string upper = page(bound.page);
  changed_[bound.page] = upper.replace(bound.at, now.size(), now);
}

std::optional<RowCells> RowPages::rows_of(std::uint32_t root) try {
  RowCells rows;
  for (const Leaf& leaf : leaves_of(root)) {
    for (auto& cell : cells_of(leaf)) rows.insert(std::move(cell));
  }
  return rows;
} catch (const NotThisWay&) {
  return std::nullopt;
}

// Goes through leaves with those rows that wait for their place.
class RowPages::Packing {
 public:
  Packing(RowPages& pages, const std::vector<Leaf>& leaves, const RowCells& rows)
      : pages_(pages), leaves_(leaves), rows_(rows), next_row_(rows.begin()) {}

  bool all() {
    while (next_row_ != rows_.end()) {
      const auto first = next_row_;
      const auto holds = std::ranges::find_if(leaves_, [&](const Leaf& leaf) {
        return leaf.bound.page == 0 || leaf.bound.number >= next_row_->first;
      });
      if (holds == leaves_.end()) return false;
      write_ = read_ = static_cast<std::size_t>(holds - leaves_.begin());
      waiting_.clear();
      at_ = 0;
      do {
        if (write_ == leaves_.size() || !fill(leaves_[write_++])) return false;
      } while (!is_in_step());
      if (next_row_ == first) return false;
    }
    return true;
  }

 private:
  // Whether the next leaf begins with the row that it began with, and nothing in it changes; or there is
  // none.
  bool is_in_step() const {
    if (write_ == leaves_.size()) return read_ == write_ && at_ == waiting_.size();
    return write_ + 1 == read_ && at_ == 0 && !changes_;
  }
  bool read_more() {
    if (at_ < waiting_.size()) return true;
    if (read_ == leaves_.size()) return false;
    waiting_ = pages_.cells_of(leaves_[read_++]);
    at_ = 0;
    changes_ = false;
    for (auto& [number, cell] : waiting_) {
      if (next_row_ == rows_.end() || next_row_->first != number) continue;
      cell = next_row_->second;
      if (cell.size() > longest_row) throw NotThisWay();
      changes_ = true;
      ++next_row_;
    }
    return true;
  }
  bool fill(const Leaf& leaf) {
    NewLeaf now;
    std::int64_t last = 0;
    while (read_more() && now.takes(waiting_[at_].second)) last = waiting_[at_++].first;
    if (now.is_empty()) return false;
    pages_.changed_[leaf.page] = std::move(now).page();
    pages_.set_bound(leaf.bound, last);
    return true;
  }

  RowPages& pages_;
  const std::vector<Leaf>& leaves_;
  const RowCells& rows_;
  RowCells::const_iterator next_row_;
  std::size_t write_ = 0, read_ = 0;                           // leaves
  std::vector<std::pair<std::int64_t, std::string>> waiting_;  // the rows of the leaf read last
  std::size_t at_ = 0;                                         // the first that has no place yet
  bool changes_ = false;                                       // one of them is not as it was
};

bool RowPages::replace(std::uint32_t root, const RowCells& rows) {
  try {
    const auto leaves = leaves_of(root);
    return Packing(*this, leaves, rows).all();
  } catch (const NotThisWay&) {
    return false;
  }
}

}  // namespace sheafc
