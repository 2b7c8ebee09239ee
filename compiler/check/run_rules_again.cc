// SPDX-License-Identifier: GPL-2.0-or-later
// A group is judged again if its facts changed, or if its judgement looked at a sheet that is examined again.
#include <algorithm>
#include <iterator>
#include <map>
#include <set>

#include "compiler/check/findings.h"
#include "compiler/check/judge.h"
#include "compiler/check/ledger.h"
#include "compiler/check/look_among.h"
#include "compiler/check/rules.h"
#include "compiler/sheet/parallel.h"

namespace sheafc {
namespace {

class Again {
 public:
  Again(const FewSheets& few, const CheckOptions& options, Findings& findings)
      : few_(few),
        options_(options),
        findings_(findings),
        ledger_(options.today),
        among_(numbered(few)),
        look_(among_, [this](std::uint32_t sheet) { return statements_of(sheet); }),
        told_(findings.told) {}

  std::vector<std::uint32_t> run(Diagnostics& sink) {
    for (const NumberedSheet& sheet : among_) ledger_.list(*sheet.sheet);
    examine();
    find_groups();
    judge();
    if (!missing_.empty()) return {missing_.begin(), missing_.end()};
    keep();
    for (const SheetFindings& sheet : findings_.sheets) sink.take(sheet.reports);
    for (const GroupFindings& group : findings_.groups) sink.take(group.reports);
    ledger_.close(sink);
    return {};
  }

 private:
  struct Examined {
    std::uint32_t number = 0;
    Diagnostics reports;
    std::vector<Fact> before;  // by likeness
    SheetFacts now;
    bool same_statements = false;
    bool allows = false;
  };

  static std::vector<NumberedSheet> numbered(const FewSheets& few) {
    std::vector<NumberedSheet> sheets;
    for (const LinkedSheet& sheet : few.sheets.own()) {
      const auto at = std::ranges::lower_bound(few.names, sheet.name);
      if (at != few.names.end() && *at == sheet.name)
        sheets.push_back({static_cast<std::uint32_t>(at - few.names.begin()), &sheet});
    }
    return sheets;
  }

  std::span<const std::uint32_t> statements_of(std::uint32_t sheet) {
    const auto [known, is_new] = statements_.try_emplace(sheet);
    if (is_new) known->second = told_.statements_of(sheet);
    return known->second;
  }

  bool is_examined(std::uint32_t number) const { return std::ranges::binary_search(few_.examined, number); }

  void examine() {
    const Shelf shelf(few_.sheets);
    examined_.resize(few_.examined.size());
    for_all(
        examined_.size(),
        [&](std::size_t i) {
          Examined& to = examined_[i];
          to.number = few_.examined[i];
          const LinkedSheet& sheet =
              *std::ranges::lower_bound(among_, to.number, {}, &NumberedSheet::number)->sheet;
          examine_sheet(sheet, to.number, shelf, ledger_, to.reports, to.now);
          std::ranges::stable_sort(to.now.facts, {}, &Fact::alike);
          to.allows = makes_allowances(sheet);
        },
        options_.threads);
    for (Examined& sheet : examined_) {
      sheet.before = findings_.told.of_sheet(sheet.number);
      sheet.same_statements = sheet.now.statements == findings_.told.statements_of(sheet.number);
      if (!sheet.same_statements || sheet.now.facts != sheet.before) told_.replace(sheet.number, sheet.now);
    }
  }

  // Those of likenesses in which the sheet tells something else than before; with `all`, in which it tells
  // anything.
  void add_groups(const Examined& sheet, bool all) {
    std::span<const Fact> before(sheet.before), now(sheet.now.facts);
    while (!before.empty() || !now.empty()) {
      const bool is_before = now.empty() || (!before.empty() && before.front().alike <= now.front().alike);
      const Likeness alike = is_before ? before.front().alike : now.front().alike;
      const auto take = [&](std::span<const Fact>& facts) {
        const FactGroup group =
            !facts.empty() && facts.front().alike == alike ? group_at(facts) : FactGroup();
        facts = facts.subspan(group.size());
        return group;
      };
      const FactGroup was = take(before), is = take(now);
      if (all || !std::ranges::equal(was, is)) groups_.insert(alike);
    }
  }

  void find_groups() {
    const auto rules = all_check_rules();
    const auto compares_statements = std::ranges::find(rules, &twin_sheets) - rules.begin();
    for (const Examined& sheet : examined_) {
      add_groups(sheet, findings_.sheets[sheet.number].allows || sheet.allows);
      if (sheet.same_statements) continue;
      for (const auto* facts : {&sheet.before, &sheet.now.facts}) {
        for (const Fact& fact : *facts) {
          if (fact.rule == compares_statements) groups_.insert(fact.alike);
        }
      }
    }
    for (const GroupFindings& group : findings_.groups) {
      if (std::ranges::any_of(group.looked_at, [&](std::uint32_t number) { return is_examined(number); }))
        groups_.insert(group.alike);
    }
  }

  void judge() {
    for (const Likeness alike : groups_) {
      const std::vector<Fact> group = told_.alike(alike);
      if (group.empty()) continue;
      try {
        if (auto found = judge_group(group, look_, ledger_)) judged_.push_back(std::move(*found));
      } catch (const NotAmongThem& missing) {
        std::set<std::uint32_t> wanted;
        LookAmong::add_likely(group, missing, wanted);
        // And those that it looked at before.
        const auto before = std::ranges::lower_bound(findings_.groups, alike, {}, &GroupFindings::alike);
        if (before != findings_.groups.end() && before->alike == alike)
          wanted.insert(before->looked_at.begin(), before->looked_at.end());
        std::erase_if(wanted, [&](std::uint32_t number) { return look_.contains(number); });
        missing_.insert(wanted.begin(), wanted.end());
      }
    }
  }

  void keep() {
    findings_.told = std::move(told_);
    for (Examined& sheet : examined_) {
      findings_.sheets[sheet.number] = {std::move(sheet.reports), sheet.allows};
    }
    std::vector<GroupFindings> kept;
    for (GroupFindings& group : findings_.groups) {
      if (!groups_.contains(group.alike)) kept.push_back(std::move(group));
    }
    findings_.groups.clear();
    std::ranges::merge(std::make_move_iterator(kept.begin()), std::make_move_iterator(kept.end()),
                       std::make_move_iterator(judged_.begin()), std::make_move_iterator(judged_.end()),
                       std::back_inserter(findings_.groups), {}, &GroupFindings::alike,
                       &GroupFindings::alike);
  }

  const FewSheets& few_;
  const CheckOptions& options_;
  Findings& findings_;
  Ledger ledger_;
  std::vector<NumberedSheet> among_;  // by number
  LookAmong look_;
  std::vector<Examined> examined_;                                  // as few_.examined
  ToldFacts told_;                                                  // with what the examined sheets tell now
  std::map<std::uint32_t, std::vector<std::uint32_t>> statements_;  // that were asked for
  std::set<Likeness> groups_;
  std::vector<GroupFindings> judged_;
  std::set<std::uint32_t> missing_;
};

}  // namespace

std::vector<std::uint32_t> run_rules_again(const FewSheets& few, const CheckOptions& options,
                                           Findings& findings, Diagnostics& sink) {
  return Again(few, options, findings).run(sink);
}

}  // namespace sheafc
