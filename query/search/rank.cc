// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/rank.h"

#include <algorithm>
#include <limits>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/draft.h"

namespace sheaf {
namespace {

// The scale on which names are compared: a word too many is 1.
constexpr double side_too_many = 0.1;     // "front axle nut" for "axle nut"
constexpr double context_too_many = 0.2;  // "engine oil drain plug" for "drain plug" on the engine's sheet
constexpr double part_elsewhere = 0.4;    // a word that only its sheet or its notes hold
constexpr double table_row = 0.5;         // a row of a table comes after the parts of machines

std::vector<std::string> names_of(const EntryRecord& entry) {
  std::vector<std::string> names = {entry.name};
  for (const auto& field : entry.fields)
    if (field.key == "also") names.push_back(field.text);
  return names;
}

std::string spaced(std::string text) {
  std::ranges::replace(text, '-', ' ');
  return text;
}

// Words that go without saying on this sheet: its assembly, its machines, its maker.
std::set<std::string> context_of(const EntryRecord& entry, const SheetRecord& sheet) {
  std::set<std::string> stems;
  const auto add = [&](const std::string& text) {
    for (const auto& word : words_of(fold(text))) stems.insert(stem_of(word));
  };
  add(spaced(sheet.assembly));
  add(sheet.maker);
  for (const auto& fit : entry.fits) add(fit.make + " " + fit.model);
  return stems;
}

}  // namespace

Ranker::Ranker(const QuestionReading& reading, Lexicon& lexicon) : reading_(reading), lexicon_(lexicon) {
  for (const auto& part : reading.parts) {
    for (const auto& word : part.words) stems_.insert(stem_of(word));
    groups_.insert(part.groups.begin(), part.groups.end());
  }
  for (const auto& side : reading.sides) groups_.insert("side-" + side);
  for (const auto& figure : reading.figures) groups_.insert("kind-" + figure);
}

bool Ranker::is_asked(const std::string& word) const {
  return stems_.contains(stem_of(word)) || is_noise(word);
}

double Ranker::cost_of_name(const std::string& name, const std::set<std::string>& context) {
  const auto words = words_of(fold(name));
  std::vector<double> costs(words.size(), 1);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (is_asked(words[i]))
      costs[i] = 0;
    else if (context.contains(stem_of(words[i])))
      costs[i] = context_too_many;
  }
  for (const auto& match : lexicon_.groups_in(words)) {
    const bool asked = groups_.contains(match.group);
    if (!asked && !match.group.starts_with("side-")) continue;
    for (std::size_t i = match.first; i < match.first + match.count; ++i)
      costs[i] = std::min(costs[i], asked ? 0 : side_too_many);
  }
  double sum = 0;
  for (const double cost : costs) sum += cost;
  return sum;
}

// A part that none of the entry's names holds was found on its sheet or in its notes.
double Ranker::cost_of_absent_parts(const EntryRecord& entry) {
  std::set<std::string> stems, groups;
  for (const auto& name : names_of(entry)) {
    const auto words = words_of(fold(name));
    for (const auto& word : words) stems.insert(stem_of(word));
    for (const auto& match : lexicon_.groups_in(words)) groups.insert(match.group);
  }
  double sum = 0;
  for (const auto& part : reading_.parts) {
    const auto has_stem = [&](const std::string& word) { return stems.contains(stem_of(word)); };
    const auto has_group = [&](const std::string& group) {
      return groups.contains(group) || entry.kind == group;
    };
    const bool in_names =
        std::ranges::all_of(part.words, has_stem) || std::ranges::any_of(part.groups, has_group);
    if (!in_names) sum += part_elsewhere;
  }
  return sum;
}

double Ranker::cost_of(const EntryRecord& entry, const SheetRecord& sheet) {
  const double row = kind_named(entry.kind) ? 0 : table_row;
  if (reading_.parts.empty()) return row;
  const auto context = context_of(entry, sheet);
  double least = std::numeric_limits<double>::max();
  for (const auto& name : names_of(entry)) least = std::min(least, cost_of_name(name, context));
  return least + cost_of_absent_parts(entry) + row;
}

}  // namespace sheaf
