// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/told_facts.h"

#include <algorithm>
#include <iterator>

namespace sheafc {
namespace {

class InMemory : public FactStore {
 public:
  explicit InMemory(GatheredFacts all) : all_(std::move(all)) {}

  std::size_t sheets() const override { return all_.statements.size(); }
  std::size_t size() const override { return all_.facts.size(); }
  std::vector<Fact> facts(std::size_t first, std::size_t count) const override {
    const auto begin = all_.facts.begin() + static_cast<std::ptrdiff_t>(first);
    return {begin, begin + static_cast<std::ptrdiff_t>(std::min(count, size() - first))};
  }
  std::vector<Fact> of_sheet(std::uint32_t sheet) const override {
    std::vector<Fact> its;
    std::ranges::copy_if(all_.facts, std::back_inserter(its),
                         [&](const Fact& fact) { return fact.sheet == sheet; });
    return its;
  }
  std::vector<std::uint32_t> statements_of(std::uint32_t sheet) const override {
    return all_.statements[sheet];
  }
  bool is_sound() const override { return true; }

 private:
  GatheredFacts all_;
};

// Entries of one sheet are in their order already.
bool comes_before(const Fact& one, const Fact& other) {
  return one.alike != other.alike ? one.alike < other.alike : one.sheet < other.sheet;
}

// The place of the first that is alike to this one, or would come behind it.
std::size_t place_of(Likeness likeness, const FactStore& store) {
  std::size_t first = 0, end = store.size();
  while (first < end) {
    const std::size_t middle = first + (end - first) / 2;
    const auto fact = store.facts(middle, 1);
    if (!fact.empty() && fact.front().alike < likeness)
      first = middle + 1;
    else
      end = middle;
  }
  return first;
}

}  // namespace

ToldFacts::ToldFacts(GatheredFacts gathered) : gathered_(std::make_shared<InMemory>(std::move(gathered))) {}

std::vector<Fact> ToldFacts::of_sheet(std::uint32_t sheet) const {
  const auto told = again_.find(sheet);
  return told == again_.end() ? gathered_->of_sheet(sheet) : told->second.facts;
}

std::vector<std::uint32_t> ToldFacts::statements_of(std::uint32_t sheet) const {
  const auto told = again_.find(sheet);
  return told == again_.end() ? gathered_->statements_of(sheet) : told->second.statements;
}

std::vector<Fact> ToldFacts::brought_up(std::vector<Fact> gathered, std::vector<Fact> again) const {
  if (again_.empty()) return gathered;
  std::erase_if(gathered, [&](const Fact& fact) { return again_.contains(fact.sheet); });
  std::ranges::stable_sort(again, comes_before);
  const auto end = static_cast<std::ptrdiff_t>(gathered.size());
  gathered.insert(gathered.end(), again.begin(), again.end());
  std::inplace_merge(gathered.begin(), gathered.begin() + end, gathered.end(), comes_before);
  return gathered;
}

std::vector<Fact> ToldFacts::alike(Likeness likeness) const {
  constexpr std::size_t most_at_once = 128;
  std::vector<Fact> group, again;
  const auto is_other = [&](const Fact& fact) { return fact.alike != likeness; };
  for (std::size_t at = place_of(likeness, *gathered_);;) {
    const auto some = gathered_->facts(at, most_at_once);
    const auto end = std::ranges::find_if(some, is_other);
    group.insert(group.end(), some.begin(), end);
    if (end != some.end() || some.size() < most_at_once) break;
    at += some.size();
  }
  for (const auto& [_, told] : again_) {
    const auto first = std::ranges::lower_bound(told.facts, likeness, {}, &Fact::alike);
    again.insert(again.end(), first, std::ranges::upper_bound(told.facts, likeness, {}, &Fact::alike));
  }
  return brought_up(std::move(group), std::move(again));
}

GatheredFacts ToldFacts::all() const {
  std::vector<Fact> again;
  for (const auto& [_, told] : again_) again.insert(again.end(), told.facts.begin(), told.facts.end());
  GatheredFacts all;
  all.facts = brought_up(gathered_->facts(0, gathered_->size()), std::move(again));
  for (std::uint32_t sheet = 0; sheet < gathered_->sheets(); ++sheet)
    all.statements.push_back(statements_of(sheet));
  return all;
}

void ToldFacts::replace(std::uint32_t sheet, SheetFacts now) { again_[sheet] = std::move(now); }

}  // namespace sheafc
