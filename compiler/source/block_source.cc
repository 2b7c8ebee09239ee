// SPDX-License-Identifier: GPL-2.0-or-later
// The texts after | and > (YAML 1.2, chapter 8.1).
#include <algorithm>
#include <optional>
#include <vector>

#include "compiler/source/scalar_source.h"

namespace sheafc {
namespace {

using Text = std::string_view;

bool is_blank(char c) { return c == ' ' || c == '\t'; }

struct BlockHeader {
  bool folded = false;
  char chomp = ' ';  // '-', '+' or ' '
  int indent = 0;    // as said by a digit; 0: by the first line
  std::size_t end = 0;
};

std::optional<BlockHeader> header_at(Text bytes, std::size_t at) {
  BlockHeader header{bytes[at] == '>', ' ', 0, at + 1};
  for (int i = 0; i < 2; ++i) {
    const char c = bytes[header.end];
    if ((c == '+' || c == '-') && header.chomp == ' ') {
      header.chomp = c;
    } else if (c >= '1' && c <= '9' && header.indent == 0) {
      header.indent = c - '0';
    } else {
      break;
    }
    ++header.end;
  }
  const std::size_t line_end = bytes.find('\n', header.end);
  const std::size_t rest = bytes.find_first_not_of(" \t\r", header.end);
  const bool comment = bytes[rest] == '#' && rest > header.end;
  if (rest < line_end && !comment) return std::nullopt;
  header.end = line_end + 1;
  return header;
}

struct Line {
  Text text;        // without its indentation and its end
  std::size_t end;  // after the line feed
  bool empty() const { return text.empty(); }
  bool spaced() const { return !text.empty() && is_blank(text.front()); }
};

Text line_at(Text bytes, std::size_t at, std::size_t& end) {
  const std::size_t feed = bytes.find('\n', at);
  end = feed == Text::npos ? bytes.size() : feed + 1;
  Text line = bytes.substr(at, feed - at);
  if (line.ends_with('\r')) line.remove_suffix(1);
  return line;
}

std::size_t indent_of(Text line) { return std::min(line.find_first_not_of(' '), line.size()); }

class BlockReader {
 public:
  BlockReader(Text bytes, const BlockHeader& header, int parent_indent)
      : bytes_(bytes), header_(header), parent_(parent_indent), at_(header.end) {}

  ScalarSource run() {
    ScalarSource result;
    result.closed = find_indent();
    read_lines();
    result.end = lines_.empty() ? header_.end : lines_.back().end;
    result.text = joined();
    if (lines_.size() == 1 && result.text == bytes_.substr(at_ + indent_, result.text.size())) {
      result.literal = bytes_.substr(at_ + indent_, result.text.size());
    }
    return result;
  }

 private:
  // The first line that is not blank sets the indentation; a blank one before it must not be wider.
  bool find_indent() {
    const auto least = static_cast<std::size_t>(parent_ + 1);
    if (header_.indent > 0) {
      indent_ = static_cast<std::size_t>(std::max(parent_, 0) + header_.indent);
      return true;
    }
    std::size_t widest = 0, end = at_;
    for (std::size_t at = at_; at < bytes_.size(); at = end) {
      const Text line = line_at(bytes_, at, end);
      indent_ = indent_of(line);
      if (indent_ < line.size()) break;
      widest = std::max(widest, indent_);
    }
    if (indent_ < least) return indent_ = least, true;  // no line of text at all
    return widest <= indent_;
  }

  void read_lines() {
    std::size_t end = at_;
    for (std::size_t at = at_; at < bytes_.size(); at = end) {
      const Text line = line_at(bytes_, at, end);
      const std::size_t indent = indent_of(line);
      const bool marker = at_marker(line);
      if (marker || (indent < indent_ && indent < line.size())) break;
      lines_.push_back({line.substr(std::min(indent_, line.size())), end});
    }
    while (!lines_.empty() && lines_.back().empty()) {
      ++blank_end_;
      lines_.pop_back();
    }
  }

  static bool at_marker(Text line) {
    return (line.starts_with("---") || line.starts_with("...")) && (line.size() == 3 || is_blank(line[3]));
  }

  std::string joined() const {
    std::string text;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (i > 0) join(text, i);
      text += lines_[i].text;
    }
    if (header_.chomp != '-' && !lines_.empty()) text += '\n';
    if (header_.chomp == '+') text.append(static_cast<std::size_t>(blank_end_), '\n');
    return text;
  }

  // A folded text keeps the breaks around empty lines (one less) and around lines that are set in.
  void join(std::string& text, std::size_t i) const {
    if (!header_.folded) {
      text += '\n';
      return;
    }
    if (lines_[i].empty()) return;
    std::size_t before = i - 1;
    while (before > 0 && lines_[before].empty()) --before;
    const std::size_t breaks = i - before;
    const bool leading = lines_[before].empty();
    const bool kept = leading || lines_[before].spaced() || lines_[i].spaced();
    text += kept ? std::string(breaks, '\n') : breaks == 1 ? " " : std::string(breaks - 1, '\n');
  }

  Text bytes_;
  BlockHeader header_;
  int parent_;
  std::size_t at_;
  std::size_t indent_ = 0;
  std::vector<Line> lines_;
  int blank_end_ = 0;
};

}  // namespace

ScalarSource read_block(Text bytes, std::size_t at, int parent_indent) {
  const auto header = header_at(bytes, at);
  if (!header) {
    ScalarSource result;
    result.closed = false;
    result.end = bytes.find('\n', at);
    return result;
  }
  return BlockReader(bytes, *header, parent_indent).run();
}

}  // namespace sheafc
