// SPDX-License-Identifier: GPL-2.0-or-later
// A YAML file as a tree in which every key and value knows its place. Scalars are text: nothing here
// guesses that "010" is a number or "no" a truth value.
#pragma once

#include <span>
#include <string_view>

#include "compiler/source/diagnostics.h"

namespace sheafc {

struct Pair;

// Nodes live in the arena of the SourceFile that they were read from and are never changed.
struct Node {
  enum class Kind { empty, scalar, sequence, mapping };
  Kind kind = Kind::empty;
  bool quoted = false;                 // 'x' or "x": the writer meant text
  bool block = false;                  // | or >
  bool flow = false;                   // [ ] or { }
  std::string_view text;               // of a scalar, after quotes and folding
  Span span;                           // of a scalar: its characters; else its first character
  std::span<const Node* const> items;  // of a sequence
  std::span<const Pair> pairs;         // of a mapping, as written; keys are unique

  const Node* find(std::string_view key) const;  // of a mapping; null if absent
  const Pair* find_pair(std::string_view key) const;
};

struct Pair {
  std::string_view key;
  Span key_span;
  const Node* value;  // never a null pointer; an empty value is a Node of kind empty at its key
};

}  // namespace sheafc
