// SPDX-License-Identifier: GPL-2.0-or-later
// Walks the pairs as written, then puts what it read into declared order. The source has refused
// duplicate keys already.
#include "compiler/sheet/read_fields.h"

#include <algorithm>
#include <unordered_map>

#include "compiler/sheet/read_scalar.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"
#include "query/library/near_word.h"

namespace sheafc {
namespace {

using sheaf::FieldDeclaration;
using sheaf::ValueType;

std::string quoted(std::string_view text) { return "'" + std::string(text) + "'"; }

std::string_view shape_of(const Node& node) {
  switch (node.kind) {
    case Node::Kind::sequence:
      return "a list";
    case Node::Kind::mapping:
      return "a mapping";
    case Node::Kind::scalar:
      return "a single value";
    case Node::Kind::empty:
      break;
  }
  return "nothing";
}

std::string_view shape_wanted(const FieldDeclaration& declaration) {
  switch (declaration.type) {
    case ValueType::record:
      return declaration.many ? "a mapping, or a list of them" : "a mapping";
    case ValueType::allowances:
      return "a mapping of rules to reasons";
    case ValueType::variants:
      return "a list of mappings";
    default:
      return declaration.many ? "a value, or a list of values" : "a single value";
  }
}

}  // namespace

std::string with_article(std::string_view noun) {
  const bool vowel = !noun.empty() && std::string_view("aeio").find(noun.front()) != std::string_view::npos;
  return (vowel ? "an " : "a ") + std::string(noun);
}

void require_fields(const Fields& fields, const Scope& scope, std::string_view owner, const Span& place,
                    Diagnostics& sink) {
  for (const FieldDeclaration* declaration : scope) {
    if (!declaration->required || fields.has(declaration->key)) continue;
    std::string message = std::string(owner) + " needs " + quoted(declaration->key);
    if (!declaration->example.empty())
      message += ", as " + std::string(declaration->key) + ": " + std::string(declaration->example);
    sink.error(rule::missing_key, place, std::move(message));
  }
}

Fields FieldReader::read(const Node& mapping, const Scope& scope, std::string_view owner,
                         const sheaf::KindDeclaration* kind, const Scope* also_known) {
  Fields as_written;
  std::vector<const Pair*> unknown;
  for (const Pair& pair : mapping.pairs) {
    if (const FieldDeclaration* declaration = find_in(scope, pair.key)) {
      read_field(*declaration, pair, kind, as_written);
    } else if (!also_known || !find_in(*also_known, pair.key)) {
      unknown.push_back(&pair);
    }
  }
  for (const Pair* pair : unknown) {
    const std::string_view near = report_unknown(*pair, scope, owner, also_known);
    const FieldDeclaration* declaration = find_in(scope, near);
    if (declaration && !as_written.has(near))
      read_field(*declaration, *pair, kind, as_written);
    else if (also_known && find_in(*also_known, near))
      meant_.emplace(near, pair->value);
  }
  Fields ordered;
  for (const FieldDeclaration* declaration : scope) {
    if (const Field* field = as_written.find(declaration->key)) ordered.add(field);
  }
  return ordered;
}

bool FieldReader::expect_mapping(const Node& node, std::string_view what) {
  if (node.kind == Node::Kind::mapping) return true;
  if (node.kind == Node::Kind::empty)
    report_empty(node);
  else
    sink_.error(rule::wrong_shape, node.span,
                std::string(what) + " is a mapping, not " + std::string(shape_of(node)));
  return false;
}

bool FieldReader::expect_name(std::string_view name, const Span& place) {
  const auto parsed = parse_name(name);
  if (!parsed) sink_.error(rule::bad_name, place, parsed.failure().message);
  return static_cast<bool>(parsed);
}

void FieldReader::require(const Fields& fields, const Scope& scope, std::string_view owner,
                          const Span& place) {
  require_fields(fields, scope, owner, place, sink_);
}

const Node* FieldReader::meant(std::string_view key) const {
  const auto found = meant_.find(key);
  return found == meant_.end() ? nullptr : found->second;
}

void FieldReader::report_unreadable(std::string_view rule, const Node& scalar,
                                    const sheaf::Failure& failure) {
  const Span place = failure.length > 0 ? file_.within(scalar, failure.at, failure.length) : scalar.span;
  sink_.error(rule, place, failure.message);
}

// A misspelt key is read as the one that was meant: what else is wrong with it shows in the same run, and a
// required key is not called missing as well.
std::string_view FieldReader::report_unknown(const Pair& pair, const Scope& scope, std::string_view owner,
                                             const Scope* also_known) {
  std::vector<std::string_view> keys;
  for (const FieldDeclaration* declaration : scope) keys.push_back(declaration->key);
  if (also_known) {
    for (const FieldDeclaration* declaration : *also_known) keys.push_back(declaration->key);
  }
  const std::string_view near = sheaf::near_word(pair.key, keys);
  std::string message = std::string(owner) + " has no key " + quoted(pair.key);
  if (!near.empty())
    message += "; did you mean " + quoted(near) + "?";
  else if (keys.size() <= 8)
    message += "; it may have " + any_of(keys);
  sink_.error(rule::unknown_key, pair.key_span, std::move(message));
  return near;
}

// A field of which nothing could be read is left out; `require` must not then call it missing, so it
// is kept as a field with one empty text where it was written at all.
void FieldReader::read_field(const FieldDeclaration& declaration, const Pair& pair,
                             const sheaf::KindDeclaration* kind, Fields& fields) {
  Field field{&declaration, pair.key_span, {}};
  if (declaration.type == ValueType::variants && kind)
    read_variants(field, *pair.value, *kind);
  else
    read_values(field, pair);
  if (field.values.empty()) field.values.push_back({{}, {}, pair.value->span});
  report_repeated(field);
  fields.add(sheet_.keep(std::move(field)));
}

bool FieldReader::read_values(Field& field, const Pair& pair) {
  const Node& node = *pair.value;
  if (node.kind != Node::Kind::sequence) return read_value(field, node);
  if (!field.declaration->many) {
    sink_.error(
        rule::wrong_shape, node.span,
        quoted(pair.key) + " takes " + std::string(shape_wanted(*field.declaration)) + ", not a list");
    return false;
  }
  if (node.items.empty()) {
    sink_.error(rule::empty_value, node.span, "the list is empty; leave the key out instead");
    return false;
  }
  for (const Node* item : node.items) read_value(field, *item);
  if (node.flow && field.declaration->type == ValueType::text) report_split_sentence(node);
  return true;
}

// Three words that begin like a sentence, and after the comma one that goes on in lower case.
void FieldReader::report_split_sentence(const Node& list) {
  const auto begins_sentence = [](const Node& item) {
    return item.text.front() >= 'A' && item.text.front() <= 'Z' && std::ranges::count(item.text, ' ') >= 2;
  };
  const auto goes_on = [](const Node& item) { return item.text.front() >= 'a' && item.text.front() <= 'z'; };
  for (std::size_t i = 1; i < list.items.size(); ++i) {
    const Node &before = *list.items[i - 1], &after = *list.items[i];
    if (before.quoted || after.quoted || before.text.empty() || after.text.empty()) continue;
    if (!begins_sentence(before) || !goes_on(after)) continue;
    sink_.report(
        {Severity::warning,
         rule::split_sentence,
         after.span,
         "the comma before this begins a new item; if it is one sentence, put the whole of it in quotes",
         {{Severity::note, rule::split_sentence, before.span, "it seems to begin here"}}});
  }
}

bool FieldReader::read_value(Field& field, const Node& node) {
  if (node.kind == Node::Kind::empty) {
    report_empty(node);
    return false;
  }
  switch (field.declaration->type) {
    case ValueType::record:
      return read_record(field, node);
    case ValueType::allowances:
      return read_allowances(field, node);
    default:
      return read_scalar_value(field, node);
  }
}

bool FieldReader::read_scalar_value(Field& field, const Node& node) {
  const FieldDeclaration& declaration = *field.declaration;
  if (node.kind != Node::Kind::scalar) {
    sink_.error(rule::wrong_shape, node.span,
                quoted(declaration.key) + " takes " + std::string(shape_wanted(declaration)) + ", not " +
                    std::string(shape_of(node)));
    return false;
  }
  auto scalar = read_scalar(declaration, node.text);
  if (!scalar) {
    const auto comma =
        declaration.type == ValueType::text ? std::string_view::npos : decimal_comma(node.text);
    if (comma == std::string_view::npos) {
      report_unreadable(rule_of(declaration.type), node, scalar.failure());
    } else {
      std::string fixed(node.text);
      fixed[comma] = '.';
      report_unreadable(rule::decimal_comma, node,
                        {"a decimal is written with a point: " + fixed, static_cast<int>(comma), 1});
    }
    return false;
  }
  Scalar read = std::move(scalar).value();
  field.values.push_back({std::move(read.text), std::move(read.meaning), node.span});
  return true;
}

bool FieldReader::read_record(Field& field, const Node& node) {
  const std::string owner = quoted(field.declaration->key);
  if (!expect_mapping(node, owner)) return false;
  const Scope scope = record_scope(*field.declaration);
  Fields fields = read(node, scope, owner);
  require(fields, scope, owner, field.declaration->many ? node.span : field.key_place);
  field.values.push_back({{}, Meaning(std::move(fields)), node.span});
  return true;
}

bool FieldReader::read_allowances(Field& field, const Node& node) {
  if (!expect_mapping(node, quoted(field.declaration->key))) return false;
  Allowances allowances;
  for (const Pair& pair : node.pairs) read_allowance(allowances, pair);
  field.values.push_back({{}, Meaning(std::move(allowances)), node.span});
  return true;
}

bool FieldReader::read_allowance(Allowances& allowances, const Pair& pair) {
  if (!expect_name(pair.key, pair.key_span)) return false;
  if (pair.value->kind == Node::Kind::mapping) {
    const Fields fields = read(*pair.value, allowance_scope(), "an allowance");
    require(fields, allowance_scope(), "an allowance", pair.key_span);
    if (!fields.has("reason")) return false;
    Allowance allowance{std::string(pair.key), std::string(fields.text("reason")), {}, pair.key_span};
    if (const Date* date = fields.date("until")) allowance.until = *date;
    allowances.push_back(std::move(allowance));
    return true;
  }
  Field field{find_in(allowance_scope(), "reason"), pair.key_span, {}};
  if (pair.value->kind == Node::Kind::sequence) {
    sink_.error(rule::wrong_shape, pair.value->span,
                "an allowance is a reason in words, or a mapping of reason and until");
    return false;
  }
  if (!read_value(field, *pair.value)) return false;
  allowances.push_back({std::string(pair.key), field.values.front().text, {}, pair.key_span});
  return true;
}

bool FieldReader::read_variants(Field& field, const Node& node, const sheaf::KindDeclaration& kind) {
  if (node.kind == Node::Kind::empty) {
    report_empty(node);
    return false;
  }
  if (node.kind != Node::Kind::sequence || node.items.empty()) {
    sink_.error(
        rule::wrong_shape, node.span,
        "'variants' is a list of mappings, each with years, frames or market and the fields that differ");
    return false;
  }
  Variants variants;
  for (const Node* item : node.items) {
    if (!expect_mapping(*item, "a variant")) continue;
    Variant variant{read(*item, variant_scope(kind), "a variant"), item->span};
    const bool when =
        variant.fields.has("years") || variant.fields.has("frames") || variant.fields.has("market");
    if (!when)
      sink_.error(rule::variant_without_when, item->span,
                  "a variant needs years, frames or market, to say for which machines it holds");
    variants.push_back(std::move(variant));
  }
  field.values.push_back({{}, Meaning(std::move(variants)), node.span});
  return true;
}

void FieldReader::report_repeated(const Field& field) {
  if (field.values.size() < 2) return;
  std::unordered_map<std::string_view, const Value*> seen;
  for (const Value& value : field.values) {
    if (value.text.empty()) continue;
    const auto [first, is_new] = seen.emplace(value.text, &value);
    if (is_new) continue;
    sink_.report({Severity::error,
                  rule::repeated_value,
                  value.where,
                  quoted(value.text) + " stands twice in " + quoted(field.key()),
                  {{Severity::note, rule::repeated_value, first->second->where, "here first"}}});
  }
}

}  // namespace sheafc
