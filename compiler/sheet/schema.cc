// SPDX-License-Identifier: GPL-2.0-or-later
// Alternatives (anyOf) mislead an editor about which branch is meant, so they stand only where a list of
// choices may also be one of them; elsewhere a type that is a list of types does as well.
#include "compiler/sheet/schema.h"

#include <map>
#include <nlohmann/json.hpp>

#include "compiler/sheet/forms.h"

namespace sheafc {
namespace {

using Json = nlohmann::ordered_json;
using sheaf::FieldDeclaration;
using sheaf::ValueType;

constexpr const char* name_pattern = "^[a-z0-9]+([.-][a-z0-9]+)*$";

Json reference(std::string_view definition) { return {{"$ref", "#/definitions/" + std::string(definition)}}; }

std::string description_of(const FieldDeclaration& declaration) {
  std::string text(declaration.help);
  if (!declaration.example.empty()) text += " Example: " + std::string(declaration.example);
  return text;
}

Json object(Json properties, Json required = Json::array()) {
  Json schema = {{"type", "object"}, {"properties", std::move(properties)}, {"additionalProperties", false}};
  if (!required.empty()) schema["required"] = std::move(required);
  return schema;
}

// What YAML 1.2 makes of a scalar of that type: 6203 is a number to it, 28 N·m a string.
Json scalar_of(const FieldDeclaration& declaration) {
  const Json text_or_number = Json::array({"string", "number"});
  switch (declaration.type) {
    case ValueType::choice:
      return {{"type", "string"}, {"enum", declaration.choices}};
    case ValueType::flag:
      return {{"type", "string"}, {"enum", {"yes", "no"}}};
    case ValueType::integer:
      return {{"type", {"integer", "string"}}, {"pattern", "^[0-9]+$"}, {"minimum", 0}};
    case ValueType::date:
      return {{"type", "string"}, {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}};
    case ValueType::years:
      return {{"type", {"string", "integer"}}, {"pattern", "^ *([0-9]{4})?( *\\.\\. *([0-9]{4})?)? *$"}};
    case ValueType::count:
      return {{"type", {"string", "integer"}}, {"pattern", "^[0-9]+( +per [a-z -]+)?$"}};
    case ValueType::figure:
    case ValueType::torque:
    case ValueType::interval:
    case ValueType::thread:
    case ValueType::drive:
    case ValueType::size:
    case ValueType::pattern:
      return {{"type", "string"}};
    default:
      return {{"type", text_or_number}};
  }
}

class Schema {
 public:
  explicit Schema(std::span<const RuleInfo> allowable) { define_allow(allowable); }

  std::string text() {
    for (const FormDeclaration& form : all_forms()) define_form(form);
    Json root = {{"$schema", "http://json-schema.org/draft-07/schema#"},
                 {"title", "Spec sheet"},
                 {"description", "One sheet: an assembly, a published table, words, or a crib."},
                 {"type", "object"}};
    root.update(by_form());
    root["definitions"] = std::move(definitions_);
    return root.dump(2) + "\n";
  }

 private:
  // The key of its form decides; a sheet without any is taken for an assembly, the usual one.
  static Json by_form() {
    const Json glossary = {{"properties", {{"cautions", {{"type", "object"}}}}}, {"required", {"cautions"}}};
    const Json words = {{"anyOf", {{{"required", {"words"}}}, glossary}}};
    const Json third = {{"if", words}, {"then", reference("words")}, {"else", reference("assembly")}};
    const Json second = {{"if", {{"required", {"crib"}}}}, {"then", reference("crib")}, {"else", third}};
    return {{"if", {{"required", {"table"}}}}, {"then", reference("table")}, {"else", second}};
  }

  void define_form(const FormDeclaration& form) {
    Json properties = properties_of(form.fields);
    for (const BlockDeclaration& block : form.blocks) properties[std::string(block.key)] = block_of(block);
    Json required = Json::array({"sheet", "title"});  // the rest may come from a base
    if (form.name == "table") required.insert(required.end(), {"table", "key", "columns", "rows"});
    if (form.name == "crib") required.push_back("crib");
    Json schema = object(std::move(properties), std::move(required));
    schema["description"] = form.help;
    definitions_[std::string(form.name)] = std::move(schema);
  }

  Json block_of(const BlockDeclaration& block) {
    Json schema;
    if (block.kind) {
      define_kind(*block.kind);
      schema = named(reference(block.kind->name));
    } else if (block.key == "columns") {
      schema = named(
          {{"type", "string"}, {"description", "A unit, or thread, size, bearing, text, number or choice."}});
    } else if (block.key == "rows") {
      schema = {{"type", "array"},
                {"items", {{"type", "array"}, {"items", {{"type", {"string", "number"}}}}}}};
    } else {
      schema = named(block.key == "words" ? object(properties_of(word_group_scope()), {"same"})
                                          : object(properties_of(caution_scope()), {"text"}));
    }
    schema["description"] = block.help;
    return schema;
  }

  // A mapping of names to things that all have one shape.
  static Json named(Json shape) {
    return {{"type", "object"},
            {"propertyNames", {{"pattern", name_pattern}}},
            {"additionalProperties", std::move(shape)}};
  }

  void define_kind(const sheaf::KindDeclaration& kind) {
    const std::string variant = std::string(kind.name) + "-variant";
    definitions_[variant] = object(properties_of(variant_scope(kind)));
    definitions_[variant]["description"] = "The fields that differ for some machines, and for which.";
    Json properties = properties_of(entry_scope(kind));
    properties["variants"]["items"] = reference(variant);
    Json schema = object(std::move(properties));
    schema["description"] = kind.help;
    definitions_[std::string(kind.name)] = std::move(schema);
  }

  Json properties_of(const Scope& scope) {
    Json properties = Json::object();
    for (const FieldDeclaration* declaration : scope)
      properties[std::string(declaration->key)] = field_of(*declaration);
    return properties;
  }

  // A field that many kinds share, and whatever has fields of its own, is defined once.
  Json field_of(const FieldDeclaration& declaration) {
    if (declaration.type == ValueType::allowances) return reference("allow");
    const auto common = sheaf::common_fields();
    const bool shared = &declaration >= common.data() && &declaration < common.data() + common.size();
    if ((!shared || declaration.type == ValueType::variants) && declaration.type != ValueType::record)
      return defined(declaration);
    const auto [name, is_new] = names_.emplace(&declaration, "");
    if (is_new) {
      name->second = "field-" + std::string(declaration.key);
      for (int i = 2; definitions_.contains(name->second); ++i)
        name->second = "field-" + std::string(declaration.key) + "-" + std::to_string(i);
      definitions_[name->second] = nullptr;  // taken
      definitions_[name->second] = defined(declaration);
    }
    return reference(name->second);
  }

  Json defined(const FieldDeclaration& declaration) {
    Json schema;
    switch (declaration.type) {
      case ValueType::record:
        schema = record_of(declaration);
        break;
      case ValueType::variants:
        schema = {{"type", "array"}, {"minItems", 1}};
        break;
      default:
        schema = declaration.many ? one_or_many(declaration) : scalar_of(declaration);
    }
    schema["description"] = description_of(declaration);
    return schema;
  }

  static Json one_or_many(const FieldDeclaration& declaration) {
    Json one = scalar_of(declaration);
    if (one.contains("enum")) return {{"anyOf", {one, {{"type", "array"}, {"minItems", 1}, {"items", one}}}}};
    Json types = one["type"].is_array() ? one["type"] : Json::array({one["type"]});
    types.push_back("array");
    Json schema = one;
    schema["type"] = std::move(types);
    schema["items"] = std::move(one);
    schema["minItems"] = 1;
    return schema;
  }

  Json record_of(const FieldDeclaration& declaration) {
    Json required = Json::array();
    for (const FieldDeclaration& field : declaration.fields) {
      if (field.required) required.push_back(field.key);
    }
    Json one = object(properties_of(record_scope(declaration)), std::move(required));
    if (!declaration.many) return one;
    Json schema = one;
    schema["type"] = {"object", "array"};
    schema["items"] = std::move(one);
    schema["minItems"] = 1;
    return schema;
  }

  void define_allow(std::span<const RuleInfo> allowable) {
    Json properties = Json::object();
    for (const RuleInfo& rule : allowable) {
      Json allowance = object(properties_of(allowance_scope()), {"reason"});
      allowance["type"] = {"string", "object"};
      allowance["description"] = "Sets aside: " + std::string(rule.summary);
      properties[std::string(rule.name)] = std::move(allowance);
    }
    definitions_["allow"] = object(std::move(properties));
    definitions_["allow"]["description"] = "Rules set aside here, each with its reason.";
  }

  Json definitions_;
  std::map<const FieldDeclaration*, std::string> names_;
};

}  // namespace

std::string json_schema(std::span<const RuleInfo> allowable) { return Schema(allowable).text(); }

}  // namespace sheafc
