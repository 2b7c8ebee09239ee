// SPDX-License-Identifier: GPL-2.0-or-later
// The four forms of sheet and the keys that stand on each, declared once. With the vocabulary of
// entries (query/library/vocabulary.h) this is the whole language: the reader, the format, the JSON
// Schema and the manual's tables follow it.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "query/library/vocabulary.h"

namespace sheafc {

// Fields in the order in which `sheafc format` writes them.
using Scope = std::vector<const sheaf::FieldDeclaration*>;

const sheaf::FieldDeclaration* find_in(const Scope& scope, std::string_view key);

// A key whose value has a shape of its own: the sections of entries, a table's columns and rows, words.
struct BlockDeclaration {
  std::string_view key;
  std::string_view help;
  const sheaf::KindDeclaration* kind = nullptr;  // of a section of entries
  bool required = false;
};

struct FormDeclaration {
  std::string_view name;  // assembly, table, words, crib; also the key that tells the form
  std::string_view help;
  Scope fields;
  std::vector<BlockDeclaration> blocks;
};

std::span<const FormDeclaration> all_forms();
const FormDeclaration& form_named(std::string_view name);  // one of the four

// What may stand on an entry of that kind, in a variant of one, in a group of words, on a caution.
const Scope& entry_scope(const sheaf::KindDeclaration& kind);
const Scope& variant_scope(const sheaf::KindDeclaration& kind);
const Scope& word_group_scope();
const Scope& caution_scope();
// Of an allowance that is more than its reason.
const Scope& allowance_scope();

// The fields of a record. A field of type text with a dimension is a unit of that dimension.
Scope record_scope(const sheaf::FieldDeclaration& record);

// Words in one of the languages a group may have; "same" is English.
std::span<const std::string_view> word_languages();  // de, fr, es, it

}  // namespace sheafc
