// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>

#include "compiler/check/fit_spans.h"
#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

constexpr std::string_view answers[] = {"torque",   "volume", "level", "size", "designation",
                                        "standard", "limit",  "value", "rate"};

bool share_a_machine(const LinkedEntry& left, const LinkedEntry& right) {
  for (const Fit& one : left.fits) {
    for (const Fit& other : right.fits) {
      if (meet(one, other)) return true;
    }
  }
  return false;
}

bool same_sides(const LinkedEntry& left, const LinkedEntry& right) {
  const auto text = [](const Value& value) { return std::string_view(value.text); };
  return std::ranges::equal(left.values("side"), right.values("side"), {}, text, text);
}

// What the question's number says already, in words.
bool same_question(const LinkedEntry& left, const LinkedEntry& right) {
  return left.kind == right.kind && left.sheet->assembly() == right.sheet->assembly() &&
         same_sides(left, right) && left.text("load") == right.text("load") &&
         sheaf::fold(left.name) == sheaf::fold(right.name);
}

bool meant_so(const LinkedEntry& entry) {
  return entry.status == "disputed" || entry.has("withdrawn") || entry.has("same-as");
}

void compare(const LinkedEntry& left, const LinkedEntry& right, Report& report) {
  if (!share_a_machine(left, right) || !same_question(left, right)) return;
  for (const std::string_view key : answers) {
    if (!left.has(key) || !right.has(key) || left.text(key) == right.text(key)) continue;
    report(right, right.place(key),
           "says " + std::string(right.text(key)) + " where '" + left.address + "' says " +
               std::string(left.text(key)) + " for the same part of the same machine",
           {other_place(left.place(key), "the other answer stands here")});
    return;
  }
}

bool may_answer(const LinkedEntry& entry) {
  return entry.has_fits() && !meant_so(entry) && entry.declaration && entry.kind != "step" &&
         entry.kind != "tool";
}

// What a question cannot tell apart: kind, assembly, folded name, sides; asked of one model.
Likeness question_of(const LinkedEntry& entry) {
  Likeness question =
      likeness({entry.kind, entry.sheet->assembly(), entry.text("load")}) + folded_likeness(entry.name);
  for (const Value& side : entry.values("side")) question = likeness(question, side.text);
  return question;
}

// 0 where it answers nothing.
Likeness answer_of(const LinkedEntry& entry) {
  Likeness answer = 0;
  for (const std::string_view key : answers) {
    if (entry.has(key)) answer = likeness(likeness(answer, key), entry.text(key));
  }
  return answer;
}

void gather(const LinkedEntry& entry, Facts& facts) {
  const Likeness answer = may_answer(entry) ? answer_of(entry) : 0;
  if (answer == 0) return;
  const Likeness question = question_of(entry);
  for (const Fit& fit : entry.fits)
    set_years(facts.add(entry, likeness(likeness(question, fit.make), fit.model), answer), fit.years);
}

void judge(FactGroup group, Look& look, Report& report) {
  if (all_say_the_same(group)) return;
  for (std::size_t i = 1; i < group.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (group[i].sheet == group[j].sheet || group[i].says == group[j].says ||
          !group[i].years_meet(group[j]))
        continue;
      compare(look.entry(group[j]), look.entry(group[i]), report);
    }
  }
}

}  // namespace

const Rule two_answers = {
    {.name = "two-answers",
     .severity = Severity::error,
     .summary = "two entries that answer one question differently",
     .why =
         "Same kind, name, side, assembly and machine in the same year, but another figure: whoever asks is given one of "
         "two truths. Part the years, name the frame numbers, tell the names apart, withdraw one, or mark it disputed.",
     .wrong = R"(fits: { make: Haldrek, model: Muleback 380, years: 2011.. }
assembly: chain-drive
fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m, state: dry }
# file: later.yaml
fits: { make: Haldrek, model: Muleback 380, years: 2014.. }
assembly: chain-drive
fasteners:
  guard-bolt: { name: Chain guard bolt, thread: M8x1.25, torque: 26 N·m, state: dry }
)",
     .right = R"(fits: { make: Haldrek, model: Muleback 380, years: 2011..2013 }
assembly: chain-drive
fasteners:
  guard-bolt: { name: chain guard bolt, thread: M8x1.25, torque: 22 N·m, state: dry }
# file: later.yaml
fits: { make: Haldrek, model: Muleback 380, years: 2014.. }
assembly: chain-drive
fasteners:
  guard-bolt: { name: Chain guard bolt, thread: M8x1.25, torque: 26 N·m, state: dry }
)"},
    {.gather = gather, .judge = judge}};

}  // namespace sheafc
