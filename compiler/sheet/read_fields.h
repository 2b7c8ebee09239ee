// SPDX-License-Identifier: GPL-2.0-or-later
// A mapping of the tree, read as the fields that a scope declares. Every fault goes to the sink, at its
// own characters; what could be read is kept, so that one run shows all that is wrong.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "compiler/sheet/forms.h"
#include "compiler/sheet/sheet.h"
#include "compiler/source/diagnostics.h"

namespace sheafc {

class FieldReader {
 public:
  FieldReader(const SourceFile& file, Sheet& sheet, Diagnostics& sink)
      : file_(file), sheet_(sheet), sink_(sink) {}

  // `owner` is the mapping in words: "a fastener", "a source". With a kind, `variants` is understood.
  // Keys in `also_known` are left to the caller.
  Fields read(const Node& mapping, const Scope& scope, std::string_view owner,
              const sheaf::KindDeclaration* kind = nullptr, const Scope* also_known = nullptr);

  // What stands under a misspelling of one of the `also_known` keys; null if nothing does.
  const Node* meant(std::string_view key) const;

  // True if the node is a mapping; else says that `what` must be one.
  bool expect_mapping(const Node& node, std::string_view what);

  // True if the text is a name; else says so.
  bool expect_name(std::string_view name, const Span& place);

  void require(const Fields& fields, const Scope& scope, std::string_view owner, const Span& place);

  void report_empty(const Node& node) { sink_.report(file_.empty_value(node)); }
  // The failure of reading `scalar`, under the characters at fault.
  void report_unreadable(std::string_view rule, const Node& scalar, const sheaf::Failure& failure);

  Diagnostics& sink() { return sink_; }
  Sheet& sheet() { return sheet_; }

 private:
  void read_field(const sheaf::FieldDeclaration& declaration, const Pair& pair,
                  const sheaf::KindDeclaration* kind, Fields& fields);
  bool read_values(Field& field, const Pair& pair);
  bool read_value(Field& field, const Node& node);
  bool read_scalar_value(Field& field, const Node& node);
  bool read_record(Field& field, const Node& node);
  bool read_allowances(Field& field, const Node& node);
  bool read_allowance(Allowances& allowances, const Pair& pair);
  bool read_variants(Field& field, const Node& node, const sheaf::KindDeclaration& kind);
  std::string_view report_unknown(const Pair& pair, const Scope& scope, std::string_view owner,
                                  const Scope* also_known);
  void report_split_sentence(const Node& list);
  void report_repeated(const Field& field);

  const SourceFile& file_;
  Sheet& sheet_;
  Diagnostics& sink_;
  std::map<std::string_view, const Node*> meant_;
};

// Reports the required fields of a record, an entry or a sheet that are absent, at `place`.
void require_fields(const Fields& fields, const Scope& scope, std::string_view owner, const Span& place,
                    Diagnostics& sink);

// "a fluid", "an o-ring"
std::string with_article(std::string_view noun);

}  // namespace sheafc
