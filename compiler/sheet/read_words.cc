// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets of words: groups that mean the same, and the glossary of cautions.
#include "compiler/sheet/read_sections.h"

namespace sheafc {

void read_words(FieldReader& reader, const Node& words) {
  if (!reader.expect_mapping(words, "'words'")) return;
  for (const Pair& pair : words.pairs) {
    reader.expect_name(pair.key, pair.key_span);
    if (!reader.expect_mapping(*pair.value, "a group of words")) continue;
    WordGroup group{std::string(pair.key), reader.read(*pair.value, word_group_scope(), "a group of words"),
                    pair.key_span};
    reader.require(group.fields, word_group_scope(), "a group of words", pair.key_span);
    reader.sheet().words.push_back(std::move(group));
  }
}

void read_glossary(FieldReader& reader, const Node& cautions) {
  if (!reader.expect_mapping(cautions, "the glossary of cautions")) return;
  for (const Pair& pair : cautions.pairs) {
    reader.expect_name(pair.key, pair.key_span);
    if (!reader.expect_mapping(*pair.value, "a caution")) continue;
    Caution caution{
        std::string(pair.key), {}, reader.read(*pair.value, caution_scope(), "a caution"), pair.key_span};
    reader.require(caution.fields, caution_scope(), "a caution", pair.key_span);
    caution.text = caution.fields.text("text");
    reader.sheet().cautions.push_back(std::move(caution));
  }
}

}  // namespace sheafc
