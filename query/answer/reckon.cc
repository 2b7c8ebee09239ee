// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/reckon.h"

#include <array>

#include "query/answer/reckon_work.h"
#include "query/library/fold.h"
#include "query/library/near_word.h"
#include "query/trade/reckoned.h"

namespace sheaf {
namespace {

using Topics = std::span<const TopicEntry>;
std::array<Topics, 4> all_groups() { return {joint_topics(), oil_topics(), volume_topics(), part_topics()}; }

const TopicEntry* topic_named(std::string_view name) {
  for (const Topics& group : all_groups())
    for (const TopicEntry& entry : group)
      if (entry.topic.name == name) return &entry;
  return nullptr;
}

// Between units without an offset.
double in_another(double value, const Unit& from, const Unit& to) {
  const auto size = [](const Unit& unit) {
    return static_cast<double>(unit.factor.numerator) / static_cast<double>(unit.factor.denominator);
  };
  return value * size(from) / size(to);
}

Failure unknown(std::string_view name) {
  std::vector<std::string_view> names;
  std::string all;
  for (const auto& topic : all_topics()) {
    names.push_back(topic.name);
    all += (all.empty() ? "" : ", ") + std::string(topic.name);
  }
  const auto near = near_word(std::string(name), names);
  return Failure{"nothing called '" + std::string(name) + "' is reckoned" +
                 (near.empty() ? "; there is " + all : "; did you mean '" + std::string(near) + "'?")};
}

}  // namespace

std::vector<Topic> all_topics() {
  std::vector<Topic> topics;
  for (const Topics& group : all_groups())
    for (const TopicEntry& entry : group) topics.push_back(entry.topic);
  return topics;
}

Result<Reckoning> reckon(std::string_view topic, const std::vector<std::string>& words,
                         const OpenTables& open) {
  const TopicEntry* entry = topic_named(fold(topic));
  if (!entry) return unknown(topic);
  Given given(words, entry->topic.names);
  Work work(given);
  if (!given.fault()) entry->work(given, open, work);
  auto result = std::move(work).finish();
  if (!result)
    return Failure{result.failure().message + "; as in sheaf reckon " + std::string(entry->topic.example)};
  Reckoning reckoning = std::move(result).value();
  reckoning.topic = entry->topic.name;
  return reckoning;
}

std::string said(double value, const Unit& unit, int digits) {
  const auto figure = reckoned(value, unit, digits);
  return figure ? shown(*figure) : "?";
}

void Work::figure(std::string label, Band band, const Unit& unit, Symbols also, std::string note,
                  int digits) {
  if (failed()) return;
  ReckonedLine line{std::move(label), of(reckoned(band, unit, digits)), {}, {}, std::move(note)};
  for (const auto symbol : also) {
    const Unit& other = unit_named(symbol, unit.dimension);
    const Band converted{in_another(band.least, unit, other), in_another(band.most, unit, other)};
    line.derived.push_back(of(reckoned(converted, other, digits)));
  }
  if (!failed()) draft_.results.push_back(std::move(line));
}

void Work::words(std::string label, std::string text, std::string note) {
  draft_.results.push_back({std::move(label), {}, std::move(text), {}, std::move(note)});
}

Result<Reckoning> Work::finish() && {
  if (given_.fault()) return *given_.fault();
  if (fault_) return *fault_;
  draft_.given = given_.understood();
  return std::move(draft_);
}

}  // namespace sheaf
