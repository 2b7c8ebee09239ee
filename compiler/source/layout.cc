// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/layout.h"

#include <algorithm>

#include "compiler/source/syntax_fault.h"

namespace sheafc {
namespace {

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

}  // namespace

void Layout::walk_to(std::size_t position) {
  position = std::min(position, bytes_.size());
  while (at_ < position) {
    const char c = bytes_[at_];
    if (c == '#') {
      skip_comment();
      continue;
    }
    if (!is_space(c)) take(c);
    ++at_;
    if (c == '\n') {
      line_start_ = at_;
      line_is_blank_ = true;
    }
  }
  if (at_ == position && at_ < bytes_.size()) check_flow_indent(bytes_[at_]);
}

void Layout::jump_to(std::size_t position) {
  const std::size_t feed = bytes_.substr(at_, position - at_).rfind('\n');
  if (feed != std::string_view::npos) line_start_ = at_ + feed + 1;
  line_is_blank_ = position == line_start_;
  at_ = position;
}

void Layout::take(char c) {
  check_flow_indent(c);
  line_is_blank_ = false;
  if (c == '[' || c == '{') ++flow_depth_;
  if (c == ']' || c == '}') --flow_depth_;
  if (c == '-') last_dash_ = at_;
  const bool document_end = c == '.' && at_ - line_start_ < 3;
  if (!document_end && std::string_view("[]{},:-?").find(c) == std::string_view::npos) {
    throw SyntaxFault{at_, 1, "bad-yaml",
                      "this cannot be read here; put text that holds YAML's own marks in quotes"};
  }
}

void Layout::skip_comment() {
  if (at_ > 0 && !is_space(bytes_[at_ - 1])) {
    throw SyntaxFault{
        at_, 1, "comment-without-space",
        "a # right after something: put a space before a comment, or put the whole value in quotes"};
  }
  at_ = std::min(bytes_.find('\n', at_), bytes_.size());
}

void Layout::enter_flow(int indent) {
  if (flow_depth_ == 0) flow_indent_ = indent;
}

void Layout::check_flow_indent(char c) const {
  const auto column = static_cast<int>(at_ - line_start_);
  if (flow_depth_ == 0 || !line_is_blank_ || c == '#' || is_space(c) || column > flow_indent_) return;
  throw SyntaxFault{at_, 1, "flow-indent",
                    "this line is still inside [ ] or { }: indent it more than the line that they belong to"};
}

}  // namespace sheafc
