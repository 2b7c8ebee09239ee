// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <set>
#include <unordered_map>

#include "compiler/check/fit_spans.h"
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

bool meant_so(const LinkedEntry& entry) { return entry.status == "disputed" || entry.has("withdrawn") || entry.has("same-as"); }

void compare(const LinkedEntry& left, const LinkedEntry& right, Report& report) {
  if (left.sheet == right.sheet || meant_so(left) || meant_so(right) || !share_a_machine(left, right)) return;
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

// What a question cannot tell apart: kind, assembly, folded name, sides.
std::string question(const LinkedEntry& entry) {
  std::string text = std::string(entry.kind) + "|" + std::string(entry.sheet->assembly()) + "|" + sheaf::fold(entry.name);
  for (const Value& side : entry.values("side")) text += "|" + side.text;
  return text + "|" + std::string(entry.text("load"));
}

using EntriesByQuestion = std::unordered_map<std::string, std::vector<const LinkedEntry*>>;

// Asked of one model, so that those of other models are never compared.
EntriesByQuestion by_question_and_model(const LinkedSheets& sheets) {
  EntriesByQuestion asked;
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (!entry.has_fits() || !answers_something(entry)) continue;
      const std::string text = question(entry);
      for (const Fit& fit : entry.fits) {
        auto& entries = asked[text + "|" + fit.make + "|" + fit.model];
        if (entries.empty() || entries.back() != &entry) entries.push_back(&entry);
      }
    }
  }
  return asked;
}

void examine(const LinkedSheets& sheets, const Shelf&, Report& report) {
  std::set<std::pair<const LinkedEntry*, const LinkedEntry*>> compared;  // two entries may share several models
  for (const auto& [text, entries] : by_question_and_model(sheets)) {
    for (std::size_t i = 1; i < entries.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (compared.emplace(entries[j], entries[i]).second) compare(*entries[j], *entries[i], report);
      }
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
