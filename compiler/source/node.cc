// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/source/node.h"

namespace sheafc {

const Pair* Node::find_pair(std::string_view key) const {
  for (const Pair& pair : pairs) {
    if (pair.key == key) return &pair;
  }
  return nullptr;
}

const Node* Node::find(std::string_view key) const {
  const Pair* pair = find_pair(key);
  return pair ? pair->value : nullptr;
}

}  // namespace sheafc
