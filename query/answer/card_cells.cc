// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/card_cells.h"

#include <algorithm>

#include "query/answer/fields.h"
#include "query/answer/record_check.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr std::size_t longest_beside = 12;  // "per leg", "out": conditions that stand beside the figure

std::string stage_words(const Stage& stage) {
  if (stage.act == Act::turn_further) return "+ " + shown(stage.figure);
  Statement one;
  one.stages = {stage};
  return shown(one);
}

std::string derived_lead(const Derived& derived) {
  std::string words = (derived.exact ? "= " : "≈ ") + derived.lead;
  return derived.band.empty() ? words : words + "  " + derived.band;
}

// Each stage on a line of its own, numbered, with the shop's unit beside it.
Passage stages_cell(const Value& value) {
  Passage cell;
  const auto& stages = value.statement->stages;
  for (std::size_t i = 0; i < stages.size(); ++i) {
    cell.new_line().add(std::to_string(i + 1) + "  ", Tone::quiet).add(stage_words(stages[i]), Tone::figure);
    for (const auto& derived : value.derived) {
      if (i >= derived.statement.stages.size() || derived.statement.stages[i] == stages[i]) continue;
      cell.new_line().add((derived.exact ? "= " : "≈ ") + stage_words(derived.statement.stages[i]),
                          Tone::derived);
    }
  }
  return cell;
}

bool is_withdrawn(const CardEntry& entry) { return !entry.answer.entry.withdrawn.empty(); }

std::string about(const CardEntry& entry, const CardItem& item) {
  return entry.answer.name + ", " + std::string(in_words(item.deed));
}

Tick tick_of(const CardEntry& entry, const CardItem& item, std::string label, const CardRecord* record) {
  return {item.id, std::move(label), about(entry, item), record && record->ticked.contains(item.id)};
}

Blank blank_of(const CardEntry& entry, const CardItem& item, const CardRecord* record) {
  Blank blank{item.id, item.place, item.unit, about(entry, item), "", 8};
  if (!record) return blank;
  const auto written = record->written.find(item.id);
  if (written == record->written.end()) return blank;
  blank.filled = written->second;
  if (written->second.find(item.unit) != std::string::npos) blank.unit.clear();  // it was written with it
  return blank;
}

// "stage 2, left": what the boxes of one line have in common.
std::string line_label(const CardItem& item) {
  std::string label = item.stage > 0 ? "stage " + std::to_string(item.stage) : "";
  if (!item.place.empty()) label += (label.empty() ? "" : ", ") + item.place;
  return label;
}

// A box for one of several says its number behind the label of its line; one for all says how many.
void add_box(Passage& cell, const CardEntry& entry, const CardItem& item, bool begins_line,
             const CardRecord* record) {
  const std::string label = line_label(item);
  if (item.number > 0) {
    if (begins_line && !label.empty()) cell.add(label + " ");
    Tick tick = tick_of(entry, item, std::to_string(item.number), record);
    if (!label.empty()) tick.about += ", " + label;
    cell.add(std::move(tick));
    return;
  }
  const bool for_all = item.deed == Deed::tightened && entry.count.number > 1;
  const std::string all = for_all ? "all " + std::to_string(entry.count.number) : "";
  cell.add(tick_of(entry, item, label.empty() || all.empty() ? label + all : label + ", " + all, record));
}

}  // namespace

std::string figure_words(const Value& value) {
  std::string words = value.lead;
  if (!value.band.empty()) words += " (" + value.band + ")";
  for (const auto& derived : value.derived) {
    words += (derived.exact ? " = " : " ≈ ") + derived.lead;
    if (!derived.band.empty()) words += " (" + derived.band + ")";
  }
  if (!value.conditions.empty())
    words += (value.conditions.size() <= longest_beside ? " " : ", ") + value.conditions;
  return words;
}

Passage figure_cell(const Value& value) {
  if (value.statement && value.statement->stages.size() > 1) return stages_cell(value);
  Passage cell(value.lead, Tone::figure);
  if (!value.band.empty()) cell.add("  " + value.band);
  const bool is_short = value.conditions.size() <= longest_beside;
  if (!value.conditions.empty())
    (is_short ? cell.add(" ") : cell.new_line()).add(value.conditions, Tone::act);
  for (const auto& derived : value.derived) {
    cell.new_line().add(derived_lead(derived), Tone::derived);
    if (const auto words = spelled_out(*derived.unit); !words.empty())
      cell.new_line().add(words, Tone::quiet);
  }
  return cell;
}

Passage figure_cell(const Answer& answer) {
  if (!answer.entry.withdrawn.empty()) return Passage("withdrawn", Tone::caution);
  if (answer.figures.empty()) return Passage("not stated", Tone::act);
  return figure_cell(answer.figures.front());
}

// What changes the act stands in the first line, behind the name: beside the figure, not below it.
Passage name_cell(const CardEntry& entry) {
  const Answer& answer = entry.answer;
  std::vector<std::string> first = answer.acts;
  first.insert(first.begin(), answer.name);
  Passage cell(joined(first, " · "), Tone::act);
  std::vector<std::string> marks = answer.marks;
  std::erase(marks, answer.name);
  if (!marks.empty()) cell.new_line().add(joined(marks, " · "));
  if (entry.name.find(':') != std::string::npos) cell.new_line().add("only for " + answer.variant, Tone::act);
  return cell;
}

Passage deed_cell(const CardEntry& entry, Deed deed, const CardRecord* record) {
  Passage cell;
  const CardItem* before = nullptr;
  for (const auto& item : entry.items) {
    if (item.deed != deed) continue;
    const bool begins_line = !before || before->stage != item.stage || before->place != item.place;
    if (begins_line) cell.new_line();
    if (item.unit.empty() && deed != Deed::measured && deed != Deed::found && deed != Deed::set)
      add_box(cell, entry, item, begins_line, record);
    else
      cell.add(blank_of(entry, item, record));
    before = &item;
  }
  return cell;
}

Passage measure_cell(const CardEntry& entry, const CardRecord* record) {
  Passage cell;
  for (const auto& item : entry.items) {
    if (item.deed != Deed::measured) continue;
    const Blank blank = blank_of(entry, item, record);
    const auto judgement = blank.filled.empty() ? Judgement::unlimited : judge(entry, blank.filled);
    const std::string name = about(entry, item) + (item.place.empty() ? "" : ", " + item.place);
    cell.new_line().add(blank).new_line();
    cell.add(Tick{item.id + "/pass", "pass", name, judgement == Judgement::within});
    cell.add(Tick{item.id + "/fail", "fail", name, judgement == Judgement::beyond});
  }
  return cell;
}

Cautions shared_cautions(const std::vector<CardEntry>& entries) {
  if (entries.empty()) return {};
  Cautions shared = entries.front().answer.entry.cautions;
  std::erase_if(shared, [&](const CautionRecord& caution) {
    return !std::ranges::all_of(entries, [&](const CardEntry& each) {
      const auto& own = each.answer.entry.cautions;
      return std::ranges::find(own, caution) != own.end();
    });
  });
  return shared;
}

std::vector<Remark> remarks_of(const Cautions& cautions) {
  std::vector<Remark> remarks;
  Passage all;
  for (const auto& caution : cautions) all.add(all.empty() ? "" : "  ").add(caution.text, Tone::caution);
  if (!all.empty()) remarks.push_back({"caution", all});
  return remarks;
}

std::vector<Remark> remarks_of(const CardEntry& entry, const Cautions& shared) {
  const EntryRecord& record = entry.answer.entry;
  std::vector<Remark> remarks;
  if (is_withdrawn(entry)) {
    const auto& withdrawal = record.withdrawn.front();
    const std::string instead =
        withdrawal.instead.empty() ? "take the maker's manual" : "take " + withdrawal.instead;
    remarks.push_back({"withdrawn", Passage("on " + withdrawal.on + ": " + withdrawal.reason + "; " + instead,
                                            Tone::caution)});
  }
  Cautions own = record.cautions;
  std::erase_if(own,
                [&](const CautionRecord& each) { return std::ranges::find(shared, each) != shared.end(); });
  for (auto& remark : remarks_of(own)) remarks.push_back(std::move(remark));
  for (const auto& dispute : entry.answer.disputes)
    remarks.push_back(
        {"disputed", Passage("also stated: " + dispute + "; take no value between", Tone::act)});
  if (!record.status.empty() && record.status != "maker-paper")
    remarks.push_back({"status", Passage(in_words(record.status), Tone::act)});
  if (is_withdrawn(entry)) return remarks;
  for (const auto& note : texts_of(record.fields, "notes")) remarks.push_back({"note", Passage(note)});
  return remarks;
}

}  // namespace sheaf
