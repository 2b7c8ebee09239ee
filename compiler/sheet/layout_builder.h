// SPDX-License-Identifier: GPL-2.0-or-later
// From the located tree and its declarations to the layout tree. Internal to `sheafc format`.
#pragma once

#include "compiler/sheet/forms.h"
#include "compiler/sheet/layout_tree.h"
#include "compiler/sheet/sheet.h"

namespace sheafc {

// The sheet was read without a fault; `file` is its own, with its tree. Remarks are not in it yet.
LayoutValue layout_of(const Sheet& sheet, const SourceFile& file);

// Gives every remark and blank line of the file to an item; returns those that stand before the first
// item (the head of the file) and after the last one.
struct Edges {
  std::vector<std::string_view> head, tail;
};
Edges attach_comments(const SourceFile& file, LayoutValue& root);

// In declared order, and flow collections that hold remarks opened up. Call after attaching.
void arrange(LayoutValue& root);

// The text, ending in a line feed.
std::string write_layout(const LayoutValue& root, const Edges& edges);

}  // namespace sheafc
