// SPDX-License-Identifier: GPL-2.0-or-later
// What all sheets of a run tell the rules that compare them: what a run over all of them gathered, which may
// lie in a file and is large, and on top of it what few sheets told since. What is asked for is little of it.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <utility>
#include <vector>

#include "compiler/check/facts.h"

namespace sheafc {

// Sheets have the numbers of their places among the run's own sheets, by name.
struct GatheredFacts {
  std::vector<Fact> facts;  // by likeness; those that are alike in the order of sheets and entries
  std::vector<std::vector<std::uint32_t>> statements;  // by sheet: see SheetFacts
};

// The same, wherever it lies. What is damaged there is told as nothing, and not sound from then on.
class FactStore {
 public:
  virtual ~FactStore() = default;
  virtual std::size_t sheets() const = 0;
  virtual std::size_t size() const = 0;                                             // how many facts
  virtual std::vector<Fact> facts(std::size_t first, std::size_t count) const = 0;  // fewer at the end
  virtual std::vector<Fact> of_sheet(std::uint32_t sheet) const = 0;                // in the same order
  virtual std::vector<std::uint32_t> statements_of(std::uint32_t sheet) const = 0;
  virtual bool is_sound() const = 0;
};

class ToldFacts {
 public:
  using Again = std::map<std::uint32_t, SheetFacts>;  // facts by likeness

  ToldFacts() : ToldFacts(GatheredFacts()) {}
  explicit ToldFacts(GatheredFacts gathered);
  ToldFacts(std::shared_ptr<const FactStore> gathered, Again again)
      : gathered_(std::move(gathered)), again_(std::move(again)) {}

  std::vector<Fact> of_sheet(std::uint32_t sheet) const;  // by likeness
  std::vector<Fact> alike(Likeness likeness) const;       // in the order of sheets and entries
  std::vector<std::uint32_t> statements_of(std::uint32_t sheet) const;
  GatheredFacts all() const;
  bool is_sound() const { return gathered_->is_sound(); }

  void replace(std::uint32_t sheet, SheetFacts now);  // facts by likeness
  const Again& again() const { return again_; }

 private:
  // Of these facts, in their order, those of sheets that did not tell again, among them those that did.
  std::vector<Fact> brought_up(std::vector<Fact> gathered, std::vector<Fact> again) const;

  std::shared_ptr<const FactStore> gathered_;
  Again again_;
};

}  // namespace sheafc
