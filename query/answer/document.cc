// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/document.h"

#include <utility>

namespace sheaf {

Passage& Passage::add(std::string_view text, Tone tone) {
  if (!text.empty()) pieces_.emplace_back(Run{std::string(text), tone});
  return *this;
}

Passage& Passage::add(Tick tick) {
  pieces_.emplace_back(std::move(tick));
  return *this;
}

Passage& Passage::add(Blank blank) {
  pieces_.emplace_back(std::move(blank));
  return *this;
}

Passage& Passage::add(Piece piece) {
  pieces_.push_back(std::move(piece));
  return *this;
}

Passage& Passage::append(const Passage& more) {
  pieces_.insert(pieces_.end(), more.pieces_.begin(), more.pieces_.end());
  return *this;
}

Passage& Passage::new_line() {
  if (!pieces_.empty()) pieces_.emplace_back(Break{});
  return *this;
}

}  // namespace sheaf
