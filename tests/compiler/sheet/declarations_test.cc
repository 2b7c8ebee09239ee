// SPDX-License-Identifier: GPL-2.0-or-later
// The language as it is declared: whatever is shown as an example must be of the language.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "compiler/sheet/forms.h"
#include "compiler/sheet/read_scalar.h"
#include "compiler/sheet/schema.h"

using namespace sheafc;
using sheaf::FieldDeclaration;
using sheaf::ValueType;

namespace {

void visit(const Scope& scope, const std::string& path,
           const std::function<void(const FieldDeclaration&, const std::string&)>& look) {
  for (const FieldDeclaration* field : scope) {
    const std::string name = path + "." + std::string(field->key);
    look(*field, name);
    if (field->type == ValueType::record) visit(record_scope(*field), name, look);
  }
}

void for_each_field(const std::function<void(const FieldDeclaration&, const std::string&)>& look) {
  for (const FormDeclaration& form : all_forms()) {
    visit(form.fields, std::string(form.name), look);
    for (const BlockDeclaration& block : form.blocks) {
      if (!block.kind) continue;
      visit(entry_scope(*block.kind), std::string(block.key), look);
      visit(variant_scope(*block.kind), std::string(block.key) + " variants", look);
    }
  }
  visit(word_group_scope(), "words", look);
  visit(caution_scope(), "cautions", look);
  visit(allowance_scope(), "allow", look);
}

// "[dry, oiled]" -> "dry", "oiled"
std::vector<std::string> values_in(std::string_view example) {
  if (!example.starts_with('[')) return {std::string(example)};
  std::vector<std::string> values;
  std::string_view rest = example.substr(1, example.size() - 2);
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(", "), rest.size());
    values.emplace_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 2, rest.size()));
  }
  return values;
}

}  // namespace

TEST_CASE("every example reads as its field does, and its canonical spelling reads to itself") {
  for_each_field([](const FieldDeclaration& field, const std::string& name) {
    if (field.example.empty()) return;
    for (const std::string& value : values_in(field.example)) {
      const auto read = read_scalar(field, value);
      REQUIRE_MESSAGE(read, name << ": " << read.failure().message);
      const auto again = read_scalar(field, read->text);
      REQUIRE_MESSAGE(again, name << ": " << read->text);
      CHECK(again->text == read->text);
    }
  });
}

TEST_CASE("every key has one sentence of help, and a list as an example only where a list may stand") {
  for_each_field([](const FieldDeclaration& field, const std::string& name) {
    CHECK_MESSAGE(field.help.ends_with('.'), name);
    CHECK_MESSAGE((field.many || !field.example.starts_with('[')), name);
    CHECK_MESSAGE((field.type != ValueType::choice || !field.choices.empty()), name);
    CHECK_MESSAGE((field.type != ValueType::record || !field.fields.empty()), name);
    CHECK_MESSAGE(is_name(field.key), name);
  });
}

TEST_CASE("no key is declared twice in one place") {
  for (const sheaf::KindDeclaration& kind : sheaf::all_kinds()) {
    std::set<std::string_view> keys;
    for (const FieldDeclaration* field : entry_scope(kind))
      CHECK_MESSAGE(keys.insert(field->key).second, kind.name << " " << field->key);
  }
  for (const FormDeclaration& form : all_forms()) {
    std::set<std::string_view> keys;
    for (const FieldDeclaration* field : form.fields)
      CHECK_MESSAGE(keys.insert(field->key).second, form.name << " " << field->key);
    for (const BlockDeclaration& block : form.blocks) {
      if (form.name != "words") CHECK_MESSAGE(keys.insert(block.key).second, form.name << " " << block.key);
    }
  }
}

TEST_CASE("every kind of entry stands on one form of sheet") {
  for (const sheaf::KindDeclaration& kind : sheaf::all_kinds()) {
    int forms = 0;
    for (const FormDeclaration& form : all_forms()) {
      for (const BlockDeclaration& block : form.blocks) forms += block.kind == &kind;
    }
    CHECK_MESSAGE(forms == 1, kind.name);
  }
}

TEST_CASE("the schema describes every key and lets no other pass") {
  const auto schema = nlohmann::json::parse(json_schema({}));
  int objects = 0;
  for (const auto& [name, definition] : schema["definitions"].items()) {
    if (!definition.contains("properties")) continue;
    ++objects;
    CHECK_MESSAGE(definition["additionalProperties"] == false, name);
    for (const auto& [key, property] : definition["properties"].items()) {
      const auto& described = property.contains("$ref")
                                  ? schema["definitions"][property["$ref"].get<std::string>().substr(14)]
                                  : property;
      if (name != "allow") CHECK_MESSAGE(!described.value("description", "").empty(), name << "." << key);
    }
  }
  CHECK(objects > 30);
}
