// SPDX-License-Identifier: GPL-2.0-or-later
// The same sentence in a terminal and in a pull request: what it is, what changed, for whom.
#include <algorithm>
#include <cmath>

#include "compiler/review/changes.h"

namespace sheafc {
namespace {

std::string_view word_of(Change::Kind kind) {
  switch (kind) {
    case Change::Kind::withdrawn:
      return "withdrawn";
    case Change::Kind::changed:
      return "changed";
    case Change::Kind::removed:
      return "removed";
    case Change::Kind::renamed:
      return "renamed";
    case Change::Kind::added:
      break;
  }
  return "added";
}

// "64 ± 6 N·m" and "70 ± 6 N·m" share their unit: it is said once.
std::string without_shared_unit(const std::string& before, const std::string& after) {
  const auto space = before.rfind(' ');
  if (space == std::string::npos || !after.ends_with(before.substr(space))) return before;
  return before.substr(0, space);
}

std::string percent_text(double percent) {
  const double rounded = std::abs(percent) < 10 ? std::round(percent * 10) / 10 : std::round(percent);
  std::string digits = std::to_string(static_cast<long long>(std::abs(rounded) * 10 + 0.5));
  digits.insert(digits.begin(), digits.size() < 2 ? 2 - digits.size() : 0, '0');
  std::string text = digits.substr(0, digits.size() - 1);
  if (digits.back() != '0') text += "." + digits.substr(digits.size() - 1);
  return (percent < 0 ? "−" : "+") + text + " %";
}

std::string field_text(const FieldChange& field) {
  if (field.before.empty()) return field.key + ": " + field.after + " (new)";
  if (field.after.empty()) return field.key + ": " + field.before + " (gone)";
  std::string text = field.key + ": " +
                     (field.figure ? without_shared_unit(field.before, field.after) : field.before) + " → " +
                     field.after;
  if (field.percent) text += " (" + percent_text(*field.percent) + ")";
  return text;
}

std::string machine_text(const sheaf::FitRecord& fit) {
  std::string text = fit.make + (fit.model.empty() ? "" : " " + fit.model);
  if (fit.year_from || fit.year_to) {
    const bool one = fit.year_from == fit.year_to;
    text += " " + (fit.year_from ? std::to_string(fit.year_from) : "") +
            (one ? "" : "–" + (fit.year_to ? std::to_string(fit.year_to) : ""));
  }
  return text;
}

std::string machines_text(const Change& change) {
  constexpr std::size_t most = 4;
  std::string text;
  for (std::size_t i = 0; i < std::min(change.fits.size(), most); ++i)
    text += (text.empty() ? "" : ", ") + machine_text(change.fits[i]);
  if (change.fits.size() > most) text += " and " + std::to_string(change.fits.size() - most) + " more";
  return text;
}

// What a reviewer must not miss.
std::string marks_text(const Change& change) {
  std::string text;
  if (change.critical && (change.changes_figure() || change.kind != Change::Kind::added))
    text += "safety-critical; ";
  if (change.changes_figure()) text += change.source_changed ? "source changed; " : "source unchanged; ";
  return text.empty() ? text : text.substr(0, text.size() - 2);
}

std::string address_text(const Change& change) {
  return change.address + (change.variant.empty() ? "" : " (" + change.variant + ")");
}

std::string story_text(const Change& change) {
  std::string text;
  if (!change.before_address.empty()) text += ", formerly " + change.before_address;
  if (!change.reason.empty()) text += ": " + change.reason;
  return text;
}

std::string counts_text(std::span<const Change> changes) {
  std::string text;
  for (const auto kind : {Change::Kind::withdrawn, Change::Kind::changed, Change::Kind::removed,
                          Change::Kind::renamed, Change::Kind::added}) {
    const auto count = std::ranges::count(changes, kind, &Change::kind);
    if (count) text += (text.empty() ? "" : ", ") + std::to_string(count) + " " + std::string(word_of(kind));
  }
  return text;
}

}  // namespace

std::string changes_text(std::span<const Change> changes) {
  std::string text;
  for (const Change& change : changes) {
    text += std::string(word_of(change.kind)) + "  " + address_text(change) + ": " + change.name +
            story_text(change) + "\n";
    for (const FieldChange& field : change.fields) text += "    " + field_text(field) + "\n";
    const std::string machines = machines_text(change), marks = marks_text(change);
    if (!machines.empty() || !marks.empty())
      text += "    " + machines + (machines.empty() || marks.empty() ? "" : "; ") + marks + "\n";
  }
  return changes.empty() ? text : text + counts_text(changes) + "\n";
}

std::string changes_markdown(std::span<const Change> changes) {
  if (changes.empty()) return "No figure and no word changed.\n";
  std::string text = "**" + counts_text(changes) + "**\n\n";
  for (const Change& change : changes) {
    const std::string marks = marks_text(change), machines = machines_text(change);
    text += "- **" + std::string(word_of(change.kind)) + "** " + change.name + " (`" + address_text(change) +
            "`)" + story_text(change);
    if (!marks.empty()) text += " — **" + marks + "**";
    if (!machines.empty()) text += " — " + machines;
    text += "\n";
    for (const FieldChange& field : change.fields) text += "  - " + field_text(field) + "\n";
  }
  return text;
}

}  // namespace sheafc
