// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/layout.h"

#include <algorithm>

#include "compiler/source/syntax_fault.h"

namespace sheafc {
namespace {

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

bool looks_like_entry(std::string_view line) {
  return line.find(": ") != std::string_view::npos || line.ends_with(':') || line.starts_with("- ");
}

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
  at_ = value_end_ = position;
}

void Layout::take(char c) {
  check_flow_indent(c);
  line_is_blank_ = false;
  if (c == '%' && at_ == line_start_) {
    throw SyntaxFault{at_, 1, "directive", "a YAML directive, which sheets do not use; take it out"};
  }
  if (c == '[' || c == '{') ++flow_depth_;
  if (c == ']' || c == '}') --flow_depth_;
  if (c == '-') last_dash_ = at_;
  if (c == '?') throw SyntaxFault{at_, 1, "bad-key", "`? key` is not used in sheets: write `key: value`"};
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
  const bool after_value =
      value_end_ > 0 &&
      bytes_.substr(value_end_, at_ - value_end_).find_first_not_of(' ') == std::string_view::npos;
  const char next = at_ + 1 < bytes_.size() ? bytes_[at_ + 1] : '\0';
  if (after_value && next >= '0' && next <= '9') doubtful_comments_.push_back(at_);
  at_ = std::min(bytes_.find('\n', at_), bytes_.size());
}

void Layout::enter_flow(int indent) {
  if (flow_depth_ == 0) {
    flow_indent_ = indent;
    flow_start_ = at_;
  }
  take(bytes_[at_]);
  ++at_;
}

void Layout::check_flow_indent(char c) const {
  const auto column = static_cast<int>(at_ - line_start_);
  if (flow_depth_ == 0 || !line_is_blank_ || c == '#' || is_space(c) || column > flow_indent_) return;
  if (column == flow_indent_ && (c == ']' || c == '}')) return;  // everyone writes and reads this
  refuse_flow_line(at_);
}

void Layout::refuse_flow_line(std::size_t position) const {
  const std::string_view line = bytes_.substr(position, bytes_.find_first_of("\r\n", position) - position);
  if (looks_like_entry(line)) throw unclosed_bracket(bytes_, flow_start_, position);
  throw SyntaxFault{position, 1, "bad-indent",
                    "this line is still inside [ ] or { }: indent it more than the line where they open"};
}

}  // namespace sheafc
