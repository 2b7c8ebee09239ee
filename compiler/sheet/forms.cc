// SPDX-License-Identifier: GPL-2.0-or-later
// The tables. Their keys are written once here and nowhere else in the compiler, but where a key has a
// meaning that a rule or the linker must know.
#include "compiler/sheet/forms.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <map>

namespace sheafc {
namespace {

using sheaf::FieldDeclaration;
using enum sheaf::ValueType;
using Dim = sheaf::Dimension;
using Words = std::string_view;

// clang-format off
constexpr std::array<Words, 4> languages = {"de", "fr", "es", "it"};

constexpr std::array<Words, 4> statuses = {"maker-paper", "measured", "second-hand", "disputed"};

// Common to every form.
constexpr FieldDeclaration sheet_field = {
    .key = "sheet", .help = "The sheet's name: the file's, without .yaml.", .example = "sorvane-41-rod", .required = true};
constexpr FieldDeclaration title_field = {
    .key = "title", .help = "What the sheet is about, for people.", .example = "41 mm conventional fork, damper rods", .required = true};
constexpr FieldDeclaration invented_field = {
    .key = "invented", .type = flag, .help = "Yes for demonstration data: every answer says so.", .example = "yes"};
constexpr FieldDeclaration also_field = {
    .key = "also", .help = "Other words people look for it by.", .example = "[rod fork]", .many = true};
constexpr FieldDeclaration notes_field = {.key = "notes", .help = "What else the reader must know.", .many = true};
constexpr FieldDeclaration formerly_field = {
    .key = "formerly", .help = "Earlier names of this sheet; their addresses still resolve.", .many = true};
constexpr FieldDeclaration status_field = {
    .key = "status", .type = choice, .help = "How sure the figures are, where an entry says nothing else.", .example = "maker-paper", .choices = statuses};
constexpr FieldDeclaration cautions_field = {
    .key = "cautions", .help = "Cautions that hold for each entry, by their names.", .example = "[spring-load]", .many = true};

constexpr FieldDeclaration allow_field = {
    .key = "allow", .type = allowances, .help = "Rules set aside on the whole sheet, each with its reason."};

// Spans of another file are known only when the program runs, so these are made on first use.
const FieldDeclaration& source_field() {
  static const FieldDeclaration field = {
      .key = "source", .type = record, .help = "The paper the figures come from.", .required = true, .fields = sheaf::source_fields()};
  return field;
}
const FieldDeclaration& checked_field() {
  static const FieldDeclaration field = {
      .key = "checked", .type = record, .help = "When and by whom the figures were checked.", .required = true, .fields = sheaf::check_fields()};
  return field;
}
const FieldDeclaration& fits_field() {
  static const FieldDeclaration field = {
      .key = "fits", .type = record, .help = "The machines the sheet is for.", .many = true, .fields = sheaf::fit_fields()};
  return field;
}
const FieldDeclaration& assembly_field() {
  static const FieldDeclaration field = {
      .key = "assembly", .type = choice, .help = "The part of the machine.", .example = "fork", .choices = sheaf::all_assemblies(), .required = true};
  return field;
}
const FieldDeclaration& table_field() {
  static const std::vector<Words> names = [] {
    std::vector<Words> all;
    for (const sheaf::RowKind& kind : sheaf::all_row_kinds()) all.push_back(kind.name);
    return all;
  }();
  static const FieldDeclaration field = {
      .key = "table", .type = choice, .help = "What each row is.", .example = "thread-size", .choices = names, .required = true};
  return field;
}

constexpr FieldDeclaration maker_field = {.key = "maker", .help = "Who makes the assembly.", .example = "Sorvane"};
constexpr FieldDeclaration based_on_field = {
    .key = "based-on", .help = "A sheet of which everything holds here too, unless this one says otherwise.", .example = "sorvane-41-rod"};
constexpr FieldDeclaration without_field = {
    .key = "without", .help = "Entries of the base that this assembly lacks.", .example = "[preload]", .many = true};
constexpr FieldDeclaration identify_field = {
    .key = "identify", .help = "How to be sure that this is the assembly at hand.", .example = "[The casting reads S41 beside the axle.]", .many = true};
constexpr FieldDeclaration tube_field = {
    .key = "tube", .type = figure, .help = "Forks: outside of the tube the seal runs on.", .example = "41 mm", .dimension = Dim::length};
constexpr FieldDeclaration tube_bore_field = {
    .key = "tube-bore", .type = figure, .help = "Forks: inside of the tube the oil stands in.", .example = "37.4 mm", .dimension = Dim::length};
constexpr FieldDeclaration seal_bore_field = {
    .key = "seal-bore", .type = figure, .help = "Forks: housing of the oil seal.", .example = "54 mm", .dimension = Dim::length};
constexpr FieldDeclaration key_field = {
    .key = "key", .help = "The column that names a row.", .example = "thread", .required = true};

constexpr std::array<FieldDeclaration, 5> crib_record = {{
    {.key = "shop", .help = "Whose crib it is.", .example = "Orrindale ranger workshop", .required = true},
    {.key = "torque", .help = "The unit in which the shop wants torque.", .example = "lbf·ft", .dimension = Dim::torque},
    {.key = "pressure", .help = "The unit in which the shop wants pressure.", .example = "psi", .dimension = Dim::pressure},
    {.key = "volume", .help = "The unit in which the shop wants volume.", .example = "mL", .dimension = Dim::volume},
    {.key = "tolerance", .type = figure, .help = "The shop's own tolerance where a source states none; shown as the shop's.", .example = "5 %", .dimension = Dim::ratio}}};
constexpr FieldDeclaration crib_field = {
    .key = "crib", .type = record, .help = "The shop and the units it wants.", .required = true, .fields = crib_record};

constexpr std::array<FieldDeclaration, 6> word_group = {{
    {.key = "same", .help = "English words that mean the same, the main one first.", .example = "[fork cap, top cap]", .required = true, .many = true},
    {.key = "de", .help = "German words for it.", .example = "Gabelverschluss", .many = true},
    {.key = "fr", .help = "French words for it.", .many = true},
    {.key = "es", .help = "Spanish words for it.", .many = true},
    {.key = "it", .help = "Italian words for it.", .many = true},
    {.key = "never", .help = "False friends: words that must not be taken for it.", .many = true}}};

constexpr std::array<FieldDeclaration, 2> caution = {{
    {.key = "text", .help = "The caution, in one short line.", .required = true},
    {.key = "about", .help = "What it is about: spring, brake, pressure, heat.", .example = "[spring]", .many = true}}};

constexpr std::array<FieldDeclaration, 2> allowance = {{
    {.key = "reason", .help = "Why the rule does not hold here.", .required = true},
    {.key = "until", .type = date, .help = "The last day of the allowance.", .example = "2027-01-01"}}};

// clang-format on

std::vector<BlockDeclaration> sections(bool of_crib) {
  std::vector<BlockDeclaration> blocks;
  for (const sheaf::KindDeclaration& kind : sheaf::all_kinds()) {
    const bool crib_kind = kind.name == "wrench" || kind.name == "adapter";
    if (crib_kind == of_crib) blocks.push_back({.key = kind.section, .help = kind.help, .kind = &kind});
  }
  return blocks;
}

std::vector<FormDeclaration> declare_forms() {
  return {{"assembly",
           "One assembly of some machines.",
           {&sheet_field,  &title_field,     &assembly_field(), &maker_field,    &invented_field,
            &also_field,   &based_on_field,  &without_field,    &fits_field(),   &identify_field,
            &tube_field,   &tube_bore_field, &seal_bore_field,  &source_field(), &checked_field(),
            &status_field, &cautions_field,  &notes_field,      &formerly_field, &allow_field},
           sections(false)},
          {"table",
           "One published table.",
           {&sheet_field, &title_field, &table_field(), &invented_field, &also_field, &source_field(),
            &checked_field(), &status_field, &cautions_field, &notes_field, &formerly_field, &allow_field,
            &key_field},
           {{.key = "columns",
             .help = "The columns: each name with its type, a unit or one of thread, size, bearing, text, "
                     "number, choice.",
             .required = true},
            {.key = "rows",
             .help = "The rows, each a list with one cell a column; \"-\" leaves a cell out.",
             .required = true}}},
          {"words",
           "Words that mean the same, and the cautions in words.",
           {&sheet_field, &title_field, &notes_field},
           {{.key = "words", .help = "Groups of words that mean the same."},
            {.key = "cautions", .help = "The glossary of cautions: each name with its text."}}},
          {"crib",
           "The workshop's own wrenches and adapters.",
           {&sheet_field, &title_field, &invented_field, &crib_field, &notes_field},
           sections(true)}};
}

Scope pointers(std::span<const FieldDeclaration> fields) {
  Scope scope;
  for (const FieldDeclaration& field : fields) scope.push_back(&field);
  return scope;
}

// What tells an entry from the others comes first; the rest of what all kinds share follows the kind's own.
Scope entry_fields(const sheaf::KindDeclaration& kind) {
  constexpr std::array<Words, 7> leading = {"name", "also", "side", "like", "without", "count", "order"};
  const auto leads = [&](const FieldDeclaration& field) {
    return std::ranges::find(leading, field.key) != leading.end();
  };
  Scope scope;
  for (const FieldDeclaration& field : sheaf::common_fields()) {
    if (leads(field)) scope.push_back(&field);
  }
  for (const FieldDeclaration& field : kind.fields) scope.push_back(&field);
  for (const FieldDeclaration& field : sheaf::common_fields()) {
    if (!leads(field)) scope.push_back(&field);
  }
  return scope;
}

// When it applies, and all but what belongs to the entry as a whole.
Scope variant_fields(const sheaf::KindDeclaration& kind) {
  constexpr std::array<Words, 8> whole = {"variants", "fits",    "formerly", "allow",
                                          "like",     "without", "same-as",  "critical"};
  const FieldDeclaration* variants_field = sheaf::field_of(kind, "variants");
  assert(variants_field);
  Scope scope = pointers(variants_field->fields);
  for (const FieldDeclaration* field : entry_fields(kind)) {
    if (std::ranges::find(whole, field->key) == whole.end()) scope.push_back(field);
  }
  return scope;
}

using ScopeOfKind = std::map<const sheaf::KindDeclaration*, Scope>;
ScopeOfKind for_each_kind(Scope (*make)(const sheaf::KindDeclaration&)) {
  ScopeOfKind scopes;
  for (const sheaf::KindDeclaration& kind : sheaf::all_kinds()) scopes.emplace(&kind, make(kind));
  return scopes;
}

}  // namespace

const FieldDeclaration* find_in(const Scope& scope, std::string_view key) {
  const auto found = std::ranges::find(scope, key, [](const FieldDeclaration* field) { return field->key; });
  return found == scope.end() ? nullptr : *found;
}

std::span<const FormDeclaration> all_forms() {
  static const std::vector<FormDeclaration> forms = declare_forms();
  return forms;
}

const FormDeclaration& form_named(std::string_view name) {
  const auto forms = all_forms();
  const auto found = std::ranges::find(forms, name, &FormDeclaration::name);
  assert(found != forms.end());
  return *found;
}

const Scope& entry_scope(const sheaf::KindDeclaration& kind) {
  static const ScopeOfKind scopes = for_each_kind(entry_fields);
  return scopes.at(&kind);
}

const Scope& variant_scope(const sheaf::KindDeclaration& kind) {
  static const ScopeOfKind scopes = for_each_kind(variant_fields);
  return scopes.at(&kind);
}

const Scope& word_group_scope() {
  static const Scope scope = pointers(word_group);
  return scope;
}

const Scope& caution_scope() {
  static const Scope scope = pointers(caution);
  return scope;
}

const Scope& allowance_scope() {
  static const Scope scope = pointers(allowance);
  return scope;
}

Scope record_scope(const FieldDeclaration& record) { return pointers(record.fields); }

std::span<const std::string_view> word_languages() { return languages; }

}  // namespace sheafc
