// SPDX-License-Identifier: GPL-2.0-or-later
// The key of its form says what a sheet is; the form's declaration says what may stand on it.
#include "compiler/sheet/read_sheet.h"

#include <algorithm>

#include "compiler/sheet/read_sections.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

std::string stem_of(std::string_view path) {
  const auto slash = path.rfind('/');
  if (slash != std::string_view::npos) path.remove_prefix(slash + 1);
  const auto point = path.rfind('.');
  return std::string(path.substr(0, point == 0 ? std::string_view::npos : point));
}

Span first_line(const SourceFile& file) { return {file.name(), 1, 1, 1}; }

// A mapping under `cautions` is the glossary; every other form has a list there.
bool is_glossary(const Node& root) {
  const Node* cautions = root.find("cautions");
  return cautions && cautions->kind == Node::Kind::mapping;
}

// "You wrote assembly: and table:" or none of the four: null, reported.
const FormDeclaration* form_of(const Node& root, const SourceFile& file, Diagnostics& sink) {
  const FormDeclaration* form = nullptr;
  const Pair* first = nullptr;
  for (const FormDeclaration& candidate : all_forms()) {
    const Pair* pair = root.find_pair(candidate.name);
    if (!pair) continue;
    if (form) {
      sink.report({Severity::error,
                   rule::unknown_form,
                   pair->key_span,
                   "a sheet has one form; '" + std::string(candidate.name) + "' makes it a second",
                   {{Severity::note, rule::unknown_form, first->key_span, "the first"}}});
      return nullptr;
    }
    form = &candidate;
    first = pair;
  }
  if (!form && is_glossary(root)) return &form_named("words");
  if (!form && root.find("based-on")) return &form_named("assembly");  // the base says which
  if (!form)
    sink.error(rule::unknown_form, first_line(file),
               "no form: a sheet has one of the keys assembly, table, words or crib");
  return form;
}

// The blocks as declarations, so that the reader of fields knows their keys and can suggest them.
class BlockKeys {
 public:
  explicit BlockKeys(const FormDeclaration& form) {
    declarations_.reserve(form.blocks.size());
    for (const BlockDeclaration& block : form.blocks)
      declarations_.push_back({.key = block.key, .help = block.help});
    for (const sheaf::FieldDeclaration& declaration : declarations_) scope_.push_back(&declaration);
  }
  const Scope& scope() const { return scope_; }

 private:
  std::vector<sheaf::FieldDeclaration> declarations_;
  Scope scope_;
};

void check_name(FieldReader& reader, const SourceFile& file) {
  Sheet& sheet = reader.sheet();
  const Value* stated = sheet.fields.value("sheet");
  sheet.place = stated ? stated->where : first_line(file);
  if (!is_name(sheet.name)) {
    reader.sink().error(rule::file_name, first_line(file),
                        "a sheet's file is named in lower-case letters, digits and hyphens, as " +
                            kebab_case(sheet.name) + ".yaml");
  } else if (stated && !stated->text.empty() && stated->text != sheet.name) {
    reader.sink().error(rule::sheet_name, stated->where,
                        "the sheet calls itself '" + stated->text + "' and its file '" + sheet.name + "'");
  }
}

void read_blocks(FieldReader& reader, const Node& root, const SourceFile& file) {
  Sheet& sheet = reader.sheet();
  const FormDeclaration& form = *sheet.form;
  const auto find = [&](std::string_view key) {
    const Node* node = root.find(key);
    return node ? node : reader.meant(key);
  };
  for (const BlockDeclaration& block : form.blocks) {
    const Node* node = find(block.key);
    if (!node && block.required)
      reader.sink().error(rule::missing_key, first_line(file),
                          "a table needs '" + std::string(block.key) + "'");
    if (node && block.kind) read_section(reader, *node, *block.kind);
  }
  if (form.name == "table")
    read_table(reader, find("columns"), find("rows"));
  else
    check_entry_ids(reader);
  if (form.name != "words") return;
  if (const Node* words = find("words")) read_words(reader, *words);
  if (const Node* cautions = find("cautions")) read_glossary(reader, *cautions);
}

}  // namespace

std::unique_ptr<Sheet> read_sheet(std::shared_ptr<const SourceFile> file, std::string path,
                                  Diagnostics& sink) {
  const Node* root = file->root();
  if (!root) return nullptr;  // reported by parse()
  if (root->kind != Node::Kind::mapping) {
    if (root->kind == Node::Kind::empty)
      sink.error(rule::unknown_form, first_line(*file), "the sheet is empty");
    else
      sink.error(rule::wrong_shape, root->span, "a sheet is a mapping of keys to values");
    return nullptr;
  }
  const FormDeclaration* form = form_of(*root, *file, sink);
  if (!form) return nullptr;

  auto sheet = std::make_unique<Sheet>();
  sheet->name = stem_of(path);
  sheet->form = form;
  sheet->path = std::move(path);
  sheet->file = file;
  FieldReader reader(*file, *sheet, sink);
  const BlockKeys blocks(*form);
  sheet->fields =
      reader.read(*root, form->fields, with_article(form->name) + " sheet", nullptr, &blocks.scope());
  if (form->name == "table") {
    const auto kinds = sheaf::all_row_kinds();
    const auto kind = std::ranges::find(kinds, sheet->fields.text("table"), &sheaf::RowKind::name);
    if (kind != kinds.end()) sheet->row_kind = kind->name;
  }
  check_name(reader, *file);
  read_blocks(reader, *root, *file);
  return sheet;
}

}  // namespace sheafc
