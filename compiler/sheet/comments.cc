// SPDX-License-Identifier: GPL-2.0-or-later
// Every # outside a scalar begins a comment: the source has refused whatever else one could be. So the
// places of all scalars are gathered, to their very ends, and the bytes between them looked through.
#include "compiler/sheet/comments.h"

#include <algorithm>

#include "compiler/source/scalar_source.h"

namespace sheafc {
namespace {

struct Range {
  std::size_t from = 0, to = 0;
};

class Ranges {
 public:
  explicit Ranges(std::string_view bytes) : bytes_(bytes) {
    line_starts_.push_back(0);
    for (std::size_t i = 0; i < bytes.size(); ++i) {
      if (bytes[i] == '\n') line_starts_.push_back(i + 1);
    }
  }

  // `indent` is the column, from 0, of the block collection around the node; -1 at the root.
  void add(const Node& node, int indent) {
    switch (node.kind) {
      case Node::Kind::empty:
        return;
      case Node::Kind::scalar:
        return add_scalar(node, indent);
      case Node::Kind::sequence:
        for (const Node* item : node.items) add(*item, node.flow ? indent : node.span.column - 1);
        return;
      case Node::Kind::mapping:
        for (const Pair& pair : node.pairs) {
          add_key(pair);
          add(*pair.value, node.flow ? indent : pair.key_span.column - 1);
        }
    }
  }

  std::vector<Range> sorted() && {
    std::ranges::sort(ranges_, {}, &Range::from);
    return std::move(ranges_);
  }

  const std::vector<std::size_t>& line_starts() const { return line_starts_; }

 private:
  std::size_t offset(const Span& span) const {
    return line_starts_[static_cast<std::size_t>(span.line - 1)] + static_cast<std::size_t>(span.column - 1);
  }

  void add_key(const Pair& pair) {
    const std::size_t from = offset(pair.key_span);
    const bool quoted = bytes_[from] == '"' || bytes_[from] == '\'';
    ranges_.push_back({from, quoted ? read_quoted(bytes_, from).end
                                    : from + static_cast<std::size_t>(pair.key_span.length)});
  }

  void add_scalar(const Node& node, int indent) {
    const std::size_t from = offset(node.span);
    if (node.block) {
      // A comment may stand on the line of the | itself.
      ranges_.push_back(
          {std::min(bytes_.find('\n', from), bytes_.size()), read_block(bytes_, from, indent).end});
    } else if (node.quoted) {
      ranges_.push_back({from, read_quoted(bytes_, from).end});
    } else {
      ranges_.push_back({from, read_plain(bytes_, from, node.text).end});
    }
  }

  std::string_view bytes_;
  std::vector<std::size_t> line_starts_;
  std::vector<Range> ranges_;
};

std::string_view without_end(std::string_view line) {
  while (!line.empty() && (line.back() == ' ' || line.back() == '\t' || line.back() == '\r'))
    line.remove_suffix(1);
  return line;
}

}  // namespace

std::vector<Comment> comments_of(const SourceFile& file) {
  const std::string_view bytes = file.bytes();
  Ranges gathered(bytes);
  if (file.root()) gathered.add(*file.root(), -1);
  const std::vector<std::size_t> line_starts = gathered.line_starts();
  const std::vector<Range> scalars = std::move(gathered).sorted();

  std::vector<Comment> comments;
  std::size_t next = 0;
  for (std::size_t at = bytes.find('#'); at != std::string_view::npos; at = bytes.find('#', at)) {
    while (next < scalars.size() && scalars[next].to <= at) ++next;
    if (next < scalars.size() && scalars[next].from <= at) {
      at = scalars[next].to;
      continue;
    }
    const std::size_t end = std::min(bytes.find('\n', at), bytes.size());
    const auto line =
        static_cast<std::size_t>(std::ranges::upper_bound(line_starts, at) - line_starts.begin());
    const std::size_t start = line_starts[line - 1];
    const bool alone = without_end(bytes.substr(start, at - start)).empty();
    comments.push_back({static_cast<int>(line), static_cast<int>(at - start) + 1,
                        without_end(bytes.substr(at, end - at)), alone});
    at = end;
  }
  return comments;
}

}  // namespace sheafc
