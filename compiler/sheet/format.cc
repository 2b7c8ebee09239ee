// SPDX-License-Identifier: GPL-2.0-or-later
// Laying out is done by layout_*; here the result is proved before anybody may have it.
#include "compiler/sheet/format.h"

#include <algorithm>

#include "compiler/sheet/comments.h"
#include "compiler/sheet/forms.h"
#include "compiler/sheet/layout_builder.h"
#include "compiler/sheet/read_sheet.h"

namespace sheafc {
namespace {

class Teller {
 public:
  std::string of(const Sheet& sheet) {
    text_ += sheet.name + "\n";
    tell(sheet.fields, " ");
    for (const Column& column : sheet.columns)
      text_ += "column " + std::string(column.name) + " " +
               std::string(column.unit ? column.unit->symbol : "") +
               std::to_string(static_cast<int>(column.type)) + "\n";
    for (const BlockDeclaration& block : sheet.form->blocks) {
      for (const Entry& entry : sheet.entries) {
        if (entry.declaration == block.kind && (block.kind || block.key == "rows"))
          tell(entry.id, entry.fields);
      }
    }
    for (const WordGroup& group : sheet.words) tell("words " + group.name, group.fields);
    for (const Caution& caution : sheet.cautions) tell("caution " + caution.name, caution.fields);
    return std::move(text_);
  }

 private:
  void tell(const std::string& name, const Fields& fields) {
    text_ += name + "\n";
    tell(fields, " ");
  }

  void tell(const Fields& fields, const std::string& indent) {
    for (const Field* field : fields.all()) {
      for (const Value& value : field->values) {
        text_ += indent + std::string(field->key()) + "=" + value.text + "\n";
        tell_parts(value, indent + " ");
      }
    }
  }

  void tell_parts(const Value& value, const std::string& indent) {
    if (const Fields* record = value.as<Fields>()) tell(*record, indent);
    if (const Variants* variants = value.as<Variants>()) {
      for (const Variant& variant : *variants) {
        text_ += indent + "variant\n";
        tell(variant.fields, indent);
      }
    }
    if (const Allowances* allowances = value.as<Allowances>()) {
      for (const Allowance& allowance : *allowances) {
        text_ += indent + allowance.rule + "=" + allowance.reason +
                 (allowance.until ? to_text(*allowance.until) : "") + "\n";
      }
    }
  }

  std::string text_;
};

std::vector<std::string> remarks_of(const SourceFile& file) {
  std::vector<std::string> remarks;
  for (const Comment& comment : comments_of(file)) remarks.emplace_back(comment.text);
  std::ranges::sort(remarks);
  return remarks;
}

// A section begins with a blank line, so that the head of the sheet stands apart.
void part_head(const Sheet& sheet, LayoutValue& root) {
  const int first_block = static_cast<int>(sheet.form->fields.size());
  const auto block =
      std::ranges::find_if(root.items, [&](const LayoutItem& item) { return item.rank >= first_block; });
  if (block == root.items.end() || block == root.items.begin()) return;
  const bool apart = !block->before.empty() && block->before.back().empty();
  if (!apart) block->blank_before = true;
}

// With its tree, which the reading of a sheet lets go of.
SourceFile parsed_again(const SourceFile& file) {
  SourceFile again(std::string(file.name()), std::string(file.bytes()));
  Diagnostics known;
  again.parse(known);
  return again;
}

std::string laid_out(const Sheet& sheet, const SourceFile& file) {
  LayoutValue root = layout_of(sheet, file);
  Edges edges = attach_comments(file, root);
  const bool apart = !root.items.empty() && root.items.front().blank_before;
  if (apart && !edges.head.empty()) edges.head.emplace_back();
  arrange(root);
  part_head(sheet, root);
  return write_layout(root, edges);
}

}  // namespace

std::string meaning_of(const Sheet& sheet) { return Teller().of(sheet); }

sheaf::Result<std::string> format_sheet(const Sheet& sheet) {
  const SourceFile written = parsed_again(*sheet.file);
  std::string text = laid_out(sheet, written);
  Diagnostics faults;
  auto file = std::make_shared<SourceFile>(std::string(sheet.file->name()), text);
  const auto again = file->parse(faults) ? read_sheet(file, sheet.path, faults) : nullptr;
  if (!again || faults.errors() > 0 || meaning_of(*again) != meaning_of(sheet)) {
    return sheaf::Failure{"cannot be formatted without changing what it says; it is left as it is"};
  }
  if (remarks_of(*file) != remarks_of(written)) {
    return sheaf::Failure{"cannot be formatted without losing a remark; it is left as it is"};
  }
  return text;
}

}  // namespace sheafc
