// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <set>
#include <unordered_map>
#include <vector>

#include "compiler/check/fit_spans.h"
#include "compiler/check/likeness.h"
#include "compiler/check/rules.h"
#include "query/library/fold.h"

namespace sheafc {
namespace {

constexpr std::string_view answers[] = {"torque", "volume", "level", "size", "designation", "standard", "limit", "value", "rate"};

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
  return left.kind == right.kind && left.sheet->assembly() == right.sheet->assembly() && same_sides(left, right) &&
         left.text("load") == right.text("load") && sheaf::fold(left.name) == sheaf::fold(right.name);
}

bool meant_so(const LinkedEntry& entry) { return entry.status == "disputed" || entry.has("withdrawn") || entry.has("same-as"); }

void compare(const LinkedEntry& left, const LinkedEntry& right, Report& report) {
  if (left.sheet == right.sheet || meant_so(left) || meant_so(right) || !share_a_machine(left, right) || !same_question(left, right)) return;
  for (const std::string_view key : answers) {
    if (!left.has(key) || !right.has(key) || left.text(key) == right.text(key)) continue;
    report(right, right.place(key),
           "says " + std::string(right.text(key)) + " where '" + left.address + "' says " + std::string(left.text(key)) +
               " for the same part of the same machine",
           {other_place(left.place(key), "the other answer stands here")});
    return;
  }
}

bool answers_something(const LinkedEntry& entry) {
  if (!entry.declaration || entry.kind == "step" || entry.kind == "tool") return false;
  return std::ranges::any_of(answers, [&](std::string_view key) { return entry.has(key); });
}

// What a question cannot tell apart: kind, assembly, folded name, sides; asked of one model.
class Questions {
 public:
  Likeness of(const LinkedEntry& entry) {
    Likeness question = likeness({entry.kind, entry.sheet->assembly(), folded(entry.name), entry.text("load")});
    for (const Value& side : entry.values("side")) question = likeness(question, side.text);
    return question;
  }

 private:
  const std::string& folded(const std::string& name) {
    const auto [known, fresh] = folded_.try_emplace(name);
    if (fresh) known->second = sheaf::fold(name);
    return known->second;
  }
  std::unordered_map<std::string_view, std::string> folded_;
};

struct Asked {
  Likeness question;
  const LinkedEntry* entry;
};

std::vector<Asked> all_asked(const LinkedSheets& sheets) {
  std::vector<Asked> asked;
  Questions questions;
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (!entry.has_fits() || !answers_something(entry)) continue;
      const Likeness question = questions.of(entry);
      for (const Fit& fit : entry.fits) asked.push_back({likeness(likeness(question, fit.make), fit.model), &entry});
    }
  }
  std::ranges::stable_sort(asked, {}, &Asked::question);
  return asked;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  const std::vector<Asked> asked = all_asked(sheets);
  std::set<std::pair<const LinkedEntry*, const LinkedEntry*>> compared;  // two entries may share several models
  for (std::size_t i = 1, first = 0; i < asked.size(); ++i) {
    if (asked[i].question != asked[first].question) first = i;
    for (std::size_t j = first; j < i; ++j) {
      if (compared.emplace(asked[j].entry, asked[i].entry).second) compare(*asked[j].entry, *asked[i].entry, report);
    }
  }
}

}  // namespace

const Rule two_answers = {
    {.name = "two-answers",
     .severity = Severity::error,
     .summary = "two entries that answer one question differently",
     .why = "Same kind, name, side, assembly and machine in the same year, but another figure: whoever asks is given one of "
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
    {.all = examine}};

}  // namespace sheafc
