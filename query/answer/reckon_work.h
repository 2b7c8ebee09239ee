// SPDX-License-Identifier: GPL-2.0-or-later
// A reckoning while it is being worked out. Internal to the reckoning.
#pragma once

#include <initializer_list>

#include "query/answer/reckon_given.h"

namespace sheaf {

// As with what is given, the first failure is kept and the rest of the work comes to nothing.
class Work {
 public:
  explicit Work(Given& given) : given_(given) {}

  // The value, or an empty one if there is none.
  template <typename T>
  T of(const Result<T>& result) {
    if (result) return *result;
    if (!fault_) fault_ = result.failure();
    return T{};
  }
  bool failed() const { return fault_ || given_.fault(); }

  // A line of the result in a unit, and below it in those of other tools.
  using Symbols = std::initializer_list<std::string_view>;
  void figure(std::string label, double value, const Unit& unit, Symbols also = {}, std::string note = {},
              int digits = 3) {
    figure(std::move(label), Band{value, value}, unit, also, std::move(note), digits);
  }
  void figure(std::string label, Band band, const Unit& unit, Symbols also = {}, std::string note = {},
              int digits = 3);
  void words(std::string label, std::string text, std::string note = {});

  void formula(std::string text, std::string source) {
    draft_.formulae.push_back({std::move(text), std::move(source)});
  }
  void taken(std::string text) { draft_.taken.push_back(std::move(text)); }
  void table(std::string text) { draft_.tables.push_back(std::move(text)); }
  void caution(std::string_view text) { draft_.cautions.emplace_back(text); }
  void picture(std::string svg) { draft_.picture = std::move(svg); }

  Result<Reckoning> finish() &&;

 private:
  Given& given_;
  Reckoning draft_;
  std::optional<Failure> fault_;
};

// A value as a figure for a text: "580 mm", to three digits unless said otherwise.
std::string said(double value, const Unit& unit, int digits = 3);

struct TopicEntry {
  Topic topic;
  void (*work)(Given&, const OpenTables&, Work&);
};
std::span<const TopicEntry> joint_topics();   // torque, preload, thread
std::span<const TopicEntry> oil_topics();     // viscosity, grade, blend
std::span<const TopicEntry> volume_topics();  // level, bottles, warmth, air
std::span<const TopicEntry> part_topics();    // spring, springs, fit, ring

}  // namespace sheaf
