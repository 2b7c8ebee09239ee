// SPDX-License-Identifier: GPL-2.0-or-later
// The bytes between scalars. Only space, comments and YAML's marks ([ ] { } , : - ? and the document
// markers) may stand there; whatever else does, the parser has misread. Two freedoms that the parser
// allows and YAML 1.2 does not are refused here: a # that starts a comment without a space before it,
// and lines inside [ ] or { } that are not indented.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace sheafc {

class Layout {
 public:
  explicit Layout(std::string_view bytes) : bytes_(bytes) {}

  // Walks on to `position`, the start of the next scalar or collection. Throws SyntaxFault.
  void walk_to(std::size_t position);
  void jump_to(std::size_t position);  // past a scalar

  // Walks over the [ or { here, in a block collection whose column (from 0) is `indent`; -1 at the root.
  void enter_flow(int indent);

  // Throws what to say of the line at `position`, which is inside [ ] or { } but not indented.
  [[noreturn]] void refuse_flow_line(std::size_t position) const;

  std::size_t at() const { return at_; }
  bool in_flow() const { return flow_depth_ > 0; }
  std::size_t flow_start() const { return flow_start_; }  // the outermost open bracket
  bool at_line_start() const { return line_is_blank_; }   // nothing but space before at()
  std::size_t last_dash() const { return last_dash_; }    // the latest list mark walked over

  // Comments right after a value that start like a screw size: "#10-32" was perhaps meant as text.
  const std::vector<std::size_t>& doubtful_comments() const { return doubtful_comments_; }

 private:
  void take(char c);
  void skip_comment();
  void check_flow_indent(char c) const;

  std::string_view bytes_;
  std::size_t at_ = 0;
  std::size_t line_start_ = 0;
  std::size_t last_dash_ = 0;
  std::size_t value_end_ = 0;  // where the latest scalar ended
  std::vector<std::size_t> doubtful_comments_;
  bool line_is_blank_ = true;  // up to at_
  int flow_depth_ = 0;
  int flow_indent_ = -1;
  std::size_t flow_start_ = 0;
};

}  // namespace sheafc
