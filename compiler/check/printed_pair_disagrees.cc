// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/rules.h"
#include "query/quantity/printed_pair.h"

namespace sheafc {
namespace {

// The printed value belongs to the last torque stated, else to the figure itself.
const sheaf::Figure& primary_of(const sheaf::Statement& statement) {
  for (auto stage = statement.stages.rbegin(); stage != statement.stages.rend(); ++stage) {
    if (stage->figure.unit && stage->figure.unit->dimension == statement.printed->unit->dimension)
      return stage->figure;
  }
  return statement.figure();
}

void examine(const LinkedEntry& entry, const Shelf&, Report& report) {
  for (const Field* field : entry.all()) {
    const sheaf::ValueType type = field->declaration->type;
    if (type != sheaf::ValueType::figure && type != sheaf::ValueType::torque) continue;
    for (const Value& value : field->values) {
      const auto* statement = value.as<sheaf::Statement>();
      if (!statement || !statement->printed || !statement->printed->unit) continue;
      const sheaf::PairVerdict verdict = sheaf::compare_printed(primary_of(*statement), *statement->printed);
      if (!verdict.agrees) report(entry, value.where, verdict.message);
    }
  }
}

}  // namespace

const Rule printed_pair_disagrees = {
    {.name = "printed-pair-disagrees",
     .severity = Severity::error,
     .summary = "two printed values of one figure cannot both be true",
     .why =
         "A paper that prints a figure in two units gives a free proof: after exact conversion the rounding of their "
         "digits must meet. Where it does not, one of the two was mistyped or converted wrongly, and nobody can say "
         "which without the paper. Look it up; if the paper itself contradicts, mark the entry disputed and keep both.",
     .wrong = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m (18 lbf·ft), state: dry }
)",
     .right = R"(fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m (16 lbf·ft), state: dry }
)"},
    {.entry = examine}};

}  // namespace sheafc
