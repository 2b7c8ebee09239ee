// SPDX-License-Identifier: GPL-2.0-or-later
// A remark beside something belongs to it; a remark on a line of its own belongs to what follows, unless
// it stands further in: then it closes what came before.
#include <algorithm>

#include "compiler/sheet/comments.h"
#include "compiler/sheet/layout_builder.h"

namespace sheafc {
namespace {

struct Placed {
  LayoutItem* item;
  std::size_t parent;  // its place in the list; its own at the top
};

void list_items(LayoutValue& value, std::size_t parent, std::vector<Placed>& placed) {
  for (LayoutItem& item : value.items) {
    const std::size_t at = placed.size();
    placed.push_back({&item, parent == std::string_view::npos ? at : parent});
    list_items(item.value, at, placed);
  }
}

bool starts_before(const LayoutItem& item, const Comment& comment) {
  return item.line < comment.line || (item.line == comment.line && item.column < comment.column);
}

class Attacher {
 public:
  Attacher(const SourceFile& file, LayoutValue& root) : file_(file) {
    list_items(root, std::string_view::npos, placed_);
  }

  Edges attach() {
    for (const Comment& comment : comments_of(file_)) {
      if (comment.alone)
        attach_alone(comment);
      else
        attach_beside(comment);
    }
    for (Placed& placed : placed_) note_blank(*placed.item);
    return std::move(edges_);
  }

 private:
  // How many items start before the comment.
  std::size_t count_before(const Comment& comment) const {
    const auto end = std::ranges::partition_point(
        placed_, [&](const Placed& placed) { return starts_before(*placed.item, comment); });
    return static_cast<std::size_t>(end - placed_.begin());
  }

  bool blank_above(int line) const {
    return line > 1 && file_.line(line - 1).find_first_not_of(" \t\r") == std::string_view::npos;
  }

  static void append(std::vector<std::string_view>& remarks, std::string_view text, bool blank_above) {
    if (blank_above && !remarks.empty()) remarks.push_back({});
    remarks.push_back(text);
  }

  void attach_alone(const Comment& comment) {
    const std::size_t before = count_before(comment);
    const bool blank = blank_above(comment.line);
    if (before == 0) return append(edges_.head, comment.text, blank);
    const int next_column = before < placed_.size() ? placed_[before].item->column : 1;
    if (comment.column > next_column) {
      if (LayoutItem* closed = closed_by(placed_[before - 1], comment.column, next_column)) {
        return append(closed->after, comment.text, blank);
      }
    }
    if (before == placed_.size()) return append(edges_.tail, comment.text, blank || edges_.tail.empty());
    LayoutItem& next = *placed_[before].item;
    if (next.before.empty()) next.blank_before = blank;
    append(next.before, comment.text, blank);
  }

  // The innermost item, of those still open, that the remark stands level with or inside of.
  LayoutItem* closed_by(Placed last, int column, int next_column) {
    for (;;) {
      if (last.item->column <= column)
        return last.item->column > next_column || next_column == 1 ? last.item : nullptr;
      if (placed_[last.parent].item == last.item) return nullptr;
      last = placed_[last.parent];
    }
  }

  void attach_beside(const Comment& comment) {
    std::size_t at = count_before(comment);
    if (at == 0) return append(edges_.head, comment.text, false);  // beside the { of a sheet all in braces
    LayoutItem& item = *placed_[ended_beside(at, comment.line)].item;
    if (item.beside.empty())
      item.beside = comment.text;
    else
      append(item.after, comment.text, false);
  }

  // Of the items that start on that line, the outermost one that also ends there; else the outermost one;
  // else the last before it. `end` is one past the last item before the remark.
  std::size_t ended_beside(std::size_t end, int line) const {
    std::size_t first = end - 1;
    while (first > 0 && placed_[first - 1].item->line == line) --first;
    for (std::size_t at = first; at < end; ++at) {
      if (last_line(*placed_[at].item) == line) return at;
    }
    return first;
  }

  static int last_line(const LayoutItem& item) {
    return item.value.items.empty() ? item.line : last_line(item.value.items.back());
  }

  void note_blank(LayoutItem& item) {
    if (!blank_above(item.line)) return;
    if (item.before.empty())
      item.blank_before = true;
    else
      item.before.push_back({});
  }

  const SourceFile& file_;
  std::vector<Placed> placed_;
  Edges edges_;
};

bool holds_remarks(const LayoutValue& value) {
  return std::ranges::any_of(value.items, [](const LayoutItem& item) {
    return !item.before.empty() || !item.beside.empty() || !item.after.empty() || holds_remarks(item.value);
  });
}

}  // namespace

Edges attach_comments(const SourceFile& file, LayoutValue& root) { return Attacher(file, root).attach(); }

void arrange(LayoutValue& value) {
  if (value.kind == LayoutValue::Kind::mapping) std::ranges::stable_sort(value.items, {}, &LayoutItem::rank);
  if (value.flow && holds_remarks(value)) value.flow = false;
  for (LayoutItem& item : value.items) arrange(item.value);
  if (!value.items.empty()) value.items.front().blank_before = false;
}

}  // namespace sheafc
