// SPDX-License-Identifier: GPL-2.0-or-later
// A sheet as it is to be laid out: the tree's nodes in their canonical order and spelling, with the
// remarks that belong to each. Internal to `sheafc format`.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheafc {

struct LayoutItem;

struct LayoutValue {
  enum class Kind { scalar, sequence, mapping };
  Kind kind = Kind::scalar;
  std::string text;               // of a scalar, with its quotes
  bool folded = false;            // a long text of which the writer made several lines
  bool flow = false;              // [ ] or { }, as long as it fits on a line and holds no remark
  bool aligned = false;           // rows of a table: cells stand below one another
  std::vector<LayoutItem> items;  // of a sequence or mapping
};

// A pair of a mapping, or an item of a sequence (which has no key).
struct LayoutItem {
  std::string key;
  LayoutValue value;
  int line = 0, column = 0;  // where it starts in the source
  int rank = 0;              // its place in the declared order
  bool blank_before = false;
  std::vector<std::string_view> before;  // remarks on lines of their own; empty: a blank line
  std::string_view beside;               // a remark on its own line
  std::vector<std::string_view> after;   // remarks below it, before what follows
};

}  // namespace sheafc
