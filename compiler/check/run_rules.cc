// SPDX-License-Identifier: GPL-2.0-or-later
// One task a sheet for what the rules see on it alone and for the facts it tells, then judgement on the
// facts.
#include <algorithm>
#include <set>
#include <utility>

#include "compiler/check/check.h"
#include "compiler/check/findings.h"
#include "compiler/check/judge.h"
#include "compiler/check/ledger.h"
#include "compiler/check/look_among.h"
#include "compiler/check/rule_set.h"
#include "compiler/sheet/parallel.h"

namespace sheafc {

struct RuleRun::State {
  // A group whose judgement wants sheets that were not there.
  struct Waiting {
    FactGroup group;
    std::set<std::uint32_t> wanted;
  };

  State(std::size_t sheets, const CheckOptions& given) : options(given), ledger(given.today) {
    facts.resize(sheets);
    findings.sheets.resize(sheets);
  }

  void judge(Waiting waits, LookAmong& look) {
    try {
      if (auto found = judge_group(waits.group, look, ledger)) findings.groups.push_back(std::move(*found));
    } catch (const NotAmongThem& missing) {
      LookAmong::add_likely(waits.group, missing, waits.wanted);
      waiting.push_back(std::move(waits));
    }
  }

  // Of the groups that wait, as many as have so few sheets in common; always one.
  std::vector<std::uint32_t> wanted_now() {
    std::set<std::uint32_t> wanted;
    chosen = 0;
    for (const Waiting& waits : waiting) {
      if (chosen > 0 && wanted.size() + waits.wanted.size() > most_wanted) break;
      wanted.insert(waits.wanted.begin(), waits.wanted.end());
      ++chosen;
    }
    return {wanted.begin(), wanted.end()};
  }

  CheckOptions options;
  Ledger ledger;
  std::vector<SheetFacts> facts;  // once they are grouped, their statements alone
  std::vector<Fact> grouped;
  Findings findings;
  bool is_grouped = false;
  std::vector<Waiting> waiting;  // the first of them were chosen, and have their sheets
  std::size_t chosen = 0;
};

RuleRun::RuleRun(std::size_t sheets, const CheckOptions& options)
    : state_(std::make_unique<State>(sheets, options)) {}
RuleRun::~RuleRun() = default;

int RuleRun::examine(const LinkedSheets& linked, std::span<const NumberedSheet> sheets) {
  const Shelf shelf(linked);
  for_all(
      sheets.size(),
      [&](std::size_t i) {
        const auto& [number, sheet] = sheets[i];
        SheetFindings& found = state_->findings.sheets[number];
        SheetFacts& facts = state_->facts[number];
        examine_sheet(*sheet, number, shelf, state_->ledger, found.reports, facts);
        found.allows = makes_allowances(*sheet);
      },
      state_->options.threads);
  int errors = 0;
  for (const NumberedSheet& sheet : sheets) {
    state_->ledger.list(*sheet.sheet);
    errors += state_->findings.sheets[sheet.number].reports.errors();
  }
  return errors;
}

std::vector<std::uint32_t> RuleRun::judge(std::span<const NumberedSheet> among) {
  State& state = *state_;
  LookAmong look(among, [&](std::uint32_t sheet) {
    return std::span<const std::uint32_t>(state.facts[sheet].statements);
  });
  if (!state.is_grouped) {
    state.grouped = in_groups(state.facts, state.options.threads);
    state.is_grouped = true;
    for (std::span<const Fact> rest(state.grouped); !rest.empty();) {
      const FactGroup group = group_at(rest);
      rest = rest.subspan(group.size());
      state.judge({group, {}}, look);
    }
  } else {
    std::vector<State::Waiting> all = std::exchange(state.waiting, {});
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (i < state.chosen)
        state.judge(std::move(all[i]), look);
      else
        state.waiting.push_back(std::move(all[i]));
    }
  }
  return state.wanted_now();
}

std::vector<Allowed> RuleRun::end(Diagnostics& sink, Findings* findings) {
  State& state = *state_;
  std::ranges::sort(state.findings.groups, {}, &GroupFindings::alike);
  for (const SheetFindings& sheet : state.findings.sheets) sink.take(sheet.reports);
  for (const GroupFindings& group : state.findings.groups) sink.take(group.reports);
  if (findings) {
    GatheredFacts gathered{std::move(state.grouped), {}};
    for (SheetFacts& sheet : state.facts) gathered.statements.push_back(std::move(sheet.statements));
    *findings = std::move(state.findings);
    findings->told = ToldFacts(std::move(gathered));
  }
  return state.ledger.close(sink);
}

std::vector<Allowed> run_rules(const LinkedSheets& sheets, const CheckOptions& options, Diagnostics& sink,
                               Findings* findings) {
  std::vector<NumberedSheet> all;
  for (const LinkedSheet& sheet : sheets.own())
    all.push_back({static_cast<std::uint32_t>(all.size()), &sheet});
  RuleRun run(all.size(), options);
  run.examine(sheets, all);
  run.judge(all);
  return run.end(sink, findings);
}

}  // namespace sheafc
