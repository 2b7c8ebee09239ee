// SPDX-License-Identifier: GPL-2.0-or-later
// The examples are those of the declarations, so they are always of the language as it is.
#include "compiler/sheet/new_sheet.h"

#include <algorithm>

#include "compiler/sheet/forms.h"
#include "compiler/sheet/scalar_style.h"
#include "query/library/utf8.h"

namespace sheafc {
namespace {

using sheaf::FieldDeclaration;
using sheaf::ValueType;

class Draft {
 public:
  std::string of(const SheetStart& start) {
    opening(start);
    if (start.form == "assembly") assembly_head(start);
    if (start.form == "table") table_head(start);
    if (start.form == "crib")
      text_ += "crib:\n  shop:\n  # torque: lbf·ft\n  # pressure: psi\n  # tolerance: 5 %\n";
    text_ += "\n";
    if (!start.body.empty())
      text_ += start.body;
    else
      examples(start);
    return std::move(text_);
  }

 private:
  void opening(const SheetStart& start) {
    text_ +=
        "# Fill in what stands open, take the # from what you need, and delete the rest.\n"
        "# What is wrong with it: sheafc check " +
        start.name + ".yaml\n";
    pair("sheet", start.name);
    pair("title", start.title);
  }

  void pair(std::string_view key, const std::string& value, std::string_view indent = "") {
    text_ += std::string(indent) + std::string(key) + ":" +
             (value.empty() ? "" : " " + as_scalar(value, true)) + "\n";
  }

  void assembly_head(const SheetStart& start) {
    pair("assembly", start.what);
    if (start.maker.empty())
      text_ += "# maker: Sorvane\n";
    else
      pair("maker", start.maker);
    text_ += "fits:\n  - make:" + (start.make.empty() ? "" : " " + as_scalar(start.make, false)) + "\n";
    pair("model", start.model, "    ");
    pair("years", start.years, "    ");
    text_ += "# identify:\n#   - How to be sure that this is the assembly at hand.\n";
    provenance(start);
    text_ += "# status: maker-paper\n# cautions: [eye-protection]\n";
  }

  void table_head(const SheetStart& start) {
    pair("table", start.what);
    provenance(start);
  }

  void provenance(const SheetStart& start) {
    text_ += "source:\n";
    pair("title", start.source, "  ");
    text_ += "  # publisher: who issued it\n  # edition: 2\n  # year: 2012\n  # page: 5\n";
    text_ += "checked:\n";
    pair("on", start.day, "  ");
    pair("by", start.by, "  ");
    text_ += "  # second: who read it again, for brakes, steering and wheels\n";
  }

  void examples(const SheetStart& start) {
    if (start.form == "table") {
      text_ += "key: name\ncolumns:\n  name: text\n  # width: mm\nrows:\n  - [first]\n";
    } else if (start.form == "words") {
      text_ +=
          "words:\n  short-name:\n    same: [the main word, another word for it]\n    # de: [ein deutsches "
          "Wort]\n    # never: [a false friend]\n";
    } else {
      for (const BlockDeclaration& block : form_named(start.form).blocks) example(block);
    }
  }

  // A section with one entry that shows the keys most sheets need.
  void example(const BlockDeclaration& block) {
    text_ += "# " + std::string(block.key) + ":  # " + std::string(block.help) + "\n";
    text_ += "#   some-" + std::string(block.kind->name) +
             ":  # its short name, by which links and cards find it\n";
    for (const FieldDeclaration* field : entry_scope(*block.kind)) {
      const bool elsewhere = field->type == ValueType::reference || field->type == ValueType::pattern ||
                             field->key == "cautions" || field->key == "without";
      if (elsewhere || (field->example.empty() && !field->required)) continue;
      const std::string example = example_of(*field, *block.kind);
      const std::string line =
          "#     " + std::string(field->key) + ": " + (field->many ? example : as_scalar(example, false));
      const auto wide = static_cast<std::size_t>(sheaf::count_characters(line));
      text_ += line + std::string(wide < 46 ? 46 - wide : 2, ' ') + "# " + std::string(field->help) + "\n";
    }
  }

  static std::string example_of(const FieldDeclaration& field, const sheaf::KindDeclaration& kind) {
    if (field.key == "name" && kind.name != "fastener")
      return "the " + std::string(kind.name) + "'s name in the shop";
    if (!field.example.empty()) return std::string(field.example);
    return field.type == ValueType::choice ? std::string(field.choices.front()) : "in words";
  }

  std::string text_;
};

}  // namespace

std::string start_of_sheet(const SheetStart& start) { return Draft().of(start); }

}  // namespace sheafc
