// SPDX-License-Identifier: GPL-2.0-or-later
// Which fields of which kind are figures, which change the act and which only identify, and the words
// for them. A field that none of these tables names is a detail: nothing on a sheet is left unsaid.
#include "query/answer/answer.h"

#include <algorithm>
#include <array>
#include <span>
#include <utility>

#include "query/answer/supersession.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

using Words = std::string_view;

struct KindFigures {
  Words kind;
  std::array<Words, 6> fields;  // said large, in this order; the rest empty
};
constexpr std::array<KindFigures, 16> figures_by_kind = {
    {{"fastener", {"torque", "gap"}},
     {"fluid", {"volume", "dry-fill", "after-drain", "with-filter", "level", "mixture"}},
     {"seal", {"size"}},
     {"o-ring", {"size"}},
     {"bearing", {"designation", "size"}},
     {"bushing", {"inside", "outside", "length"}},
     {"spring", {"rate", "free-length"}},
     {"setting", {"standard", "range"}},
     {"limit", {"limit", "new"}},
     {"clearance", {"value"}},
     {"pressure", {"value"}},
     {"part", {"part-number", "size"}},
     {"tool", {"description", "drive"}},
     {"step", {"do"}},
     {"wrench", {"range", "step", "accuracy"}},
     {"adapter", {"drive", "offset"}}}};

// clang-format off
constexpr std::array<Words, 15> mark_fields = {
    "drive", "thread", "class", "length", "purpose", "grade", "family", "viscosity", "use", "tube", "bore",
    "material", "code", "side", "load"};
// clang-format on

// Said elsewhere in the answer, or for the compiler alone.
constexpr std::array<Words, 15> unsaid_fields = {"name",      "also",        "order",  "status",   "same-as",
                                                 "like",      "formerly",    "allow",  "critical", "page",
                                                 "withdrawn", "also-stated", "source", "checked",  "fits"};

bool among(std::span<const Words> words, Words word) { return std::ranges::find(words, word) != words.end(); }

const std::string* text_of(const EntryRecord& entry, Words key) {
  const auto found = std::ranges::find(entry.fields, key, &FieldRecord::key);
  return found == entry.fields.end() ? nullptr : &found->text;
}

// "1 per leg" says all; a bare number of several says that there are more of it.
std::string count_words(const std::string& count) {
  return count == "1" ? std::string() : choice_words("count", count);
}

std::string stage_words(const Value& torque) {
  const std::size_t stages = torque.statement ? torque.statement->stages.size() : 1;
  return stages > 1 ? std::to_string(stages) + " stages" : std::string();
}

// Dry or oiled, and which threadlocker: the strength says that there is one.
std::string state_words(const EntryRecord& entry) {
  const auto* strength = text_of(entry, "threadlocker");
  std::vector<std::string> parts;
  for (const auto& field : entry.fields) {
    const bool said_by_strength = strength && field.text == "threadlocker";
    if (field.key == "state" && !said_by_strength) parts.push_back(choice_words("state", field.text));
  }
  if (strength) parts.push_back(choice_words("threadlocker", *strength));
  return joined(parts, ", ");
}

// What changes the act, most dangerous first.
std::vector<std::string> acts_of(const EntryRecord& entry, const Value* torque) {
  std::vector<std::string> acts;
  const auto add = [&](std::string words) {
    if (!words.empty()) acts.push_back(std::move(words));
  };
  const auto add_choice = [&](Words key, Words unless) {
    const auto* text = text_of(entry, key);
    if (text && *text != unless) add(choice_words(key, *text));
  };
  const auto add_text = [&](Words before, Words key) {
    if (const auto* text = text_of(entry, key)) add(std::string(before) + *text);
  };
  add_choice("hand", "right");
  if (torque) add(stage_words(*torque));
  add_choice("reuse", "yes");
  add_choice("torque-is", "");
  if (const auto* count = text_of(entry, "count")) add(count_words(*count));
  add_choice("sold-as", "single");
  add(state_words(entry));
  add_text("in the order ", "pattern");
  add_text("tighten again ", "retighten");
  add_text("counted from ", "count-from");
  add_text("lip ", "lip");
  return acts;
}

constexpr std::array<Words, 11> act_fields = {"hand",      "reuse",      "torque-is",    "count",
                                              "sold-as",   "state",      "threadlocker", "pattern",
                                              "retighten", "count-from", "lip"};

const FieldDeclaration* declaration_of(const EntryRecord& entry, Words key) {
  const auto* kind = kind_named(entry.kind);
  return kind ? field_of(*kind, key) : nullptr;
}

bool is_table_row(const EntryRecord& entry) { return kind_named(entry.kind) == nullptr; }

std::span<const Words> figure_fields(const EntryRecord& entry) {
  const auto* found = std::ranges::find(figures_by_kind, entry.kind, &KindFigures::kind);
  if (found == figures_by_kind.end()) return {};
  return {found->fields.begin(), std::ranges::find(found->fields, Words())};
}

std::string mark_words(const Value& value) {
  std::string words = value.lead;
  if (!value.band.empty()) words += " (" + value.band + ")";
  if (!value.conditions.empty()) words += " " + value.conditions;
  if (value.key == "class" || value.key == "grade" || value.key == "code" || value.key == "tube" ||
      value.key == "bore")
    words = value.label + " " + words;
  if (value.key == "length") words += " long";
  return words;
}

class Builder {
 public:
  Builder(Answer& answer, const Asked& asked) : answer_(answer), asked_(asked) {}

  void build() {
    for (const auto& figure : asked_.figures) say_asked(figure);
    for (const Words key : figure_fields(answer_.entry)) take(key, answer_.figures);
    if (is_table_row(answer_.entry)) take_all(answer_.figures);
    if (answer_.figures.empty() && answer_.missing.empty()) miss_main_figure();
    for (const Words key : mark_fields) take_mark(key);
    answer_.acts = acts_of(answer_.entry, find(answer_.figures, "torque"));
    take_rest();
  }

 private:
  bool is_said(Words key) const { return std::ranges::find(said_, key) != said_.end(); }

  void take(Words key, std::vector<Value>& into) {
    if (is_said(key)) return;
    for (const auto& field : answer_.entry.fields)
      if (field.key == key) into.push_back(say(field, declaration_of(answer_.entry, key), asked_.units));
    said_.emplace_back(key);
  }

  void say_asked(const AskedFigure& figure) {
    bool stated = false, possible = false;
    for (const auto& key : figure.fields) {
      stated = stated || text_of(answer_.entry, key);
      possible = possible || declaration_of(answer_.entry, key);
      take(key, answer_.figures);
    }
    if (!stated && possible) answer_.missing.push_back(figure.label);
  }

  void miss_main_figure() {
    const auto fields = figure_fields(answer_.entry);
    if (!fields.empty()) answer_.missing.push_back(in_words(fields.front()));
  }

  void take_all(std::vector<Value>& into) {
    for (const auto& field : answer_.entry.fields) take(field.key, into);
  }

  void take_mark(Words key) {
    std::vector<Value> values;
    take(key, values);
    for (const auto& value : values) answer_.marks.push_back(mark_words(value));
  }

  // A record of several fields is said in one sentence.
  void say_words(Words record, std::string label, std::string words) {
    if (words.empty() || is_said(record)) return;
    Value value;
    value.key = record;
    value.label = std::move(label);
    value.text = words;
    value.lead = std::move(words);
    answer_.details.push_back(std::move(value));
    said_.emplace_back(record);
  }

  void take_rest() {
    for (const auto& field : answer_.entry.fields) {
      const Words top = Words(field.key).substr(0, field.key.find('.'));
      if (top == "superseded-by")
        say_words(top, "superseded by", successor_words(answer_.entry));
      else if (top == "other-numbers")
        say_words(top, "also numbered", joined(numbers_elsewhere(answer_.entry), "; "));
      else if (!among(unsaid_fields, top) && !among(act_fields, top))
        take(field.key, answer_.details);
    }
  }

  static const Value* find(const std::vector<Value>& values, Words key) {
    const auto found = std::ranges::find(values, key, &Value::key);
    return found == values.end() ? nullptr : &*found;
  }

  Answer& answer_;
  const Asked& asked_;
  std::vector<std::string> said_;
};

// "also-stated.1.value" and "also-stated.1.source.title", in order.
std::vector<std::string> disputes_of(const EntryRecord& entry) {
  std::vector<std::string> disputes;
  for (const auto& field : entry.fields) {
    if (!field.key.starts_with("also-stated.")) continue;
    if (field.key.ends_with(".value")) disputes.push_back(field.text);
    if (field.key.ends_with(".source.title") && !disputes.empty()) disputes.back() += " by " + field.text;
  }
  return disputes;
}

std::vector<std::string> machines_of(const EntryRecord& entry, const Asked& asked) {
  std::vector<FitRecord> fits = entry.fits;
  const auto is_named = [&](const FitRecord& fit) {
    return !asked.model.empty() && fit.model == asked.model && (asked.make.empty() || fit.make == asked.make);
  };
  std::stable_partition(fits.begin(), fits.end(), is_named);
  std::vector<std::string> lines;
  for (const auto& fit : fits) lines.push_back(machine_line(fit));
  return lines;
}

std::string edition_words(const SourceRecord& source) {
  std::string words;
  if (!source.edition.empty()) words += ", ed. " + source.edition;
  if (source.year > 0) words += " (" + std::to_string(source.year) + ")";
  return words;
}

std::string check_words(const CheckRecord& checked) {
  if (checked.on.empty()) return "not checked";
  std::string words = "checked " + checked.on;
  if (!checked.by.empty()) words += " by " + checked.by;
  if (!checked.against.empty()) words += " against " + checked.against;
  if (!checked.second.empty()) words += "; second reader " + checked.second;
  return words;
}

}  // namespace

Answer build_answer(const SheetRecord& sheet, EntryRecord entry, const Asked& asked) {
  Answer answer;
  answer.address = entry.address;
  answer.variant = entry.variant;
  answer.kind = entry.kind;
  answer.name = entry.name;
  answer.sheet_title = sheet.title;
  answer.assembly = sheet.assembly;
  answer.library = entry.library;
  answer.invented = sheet.invented;
  answer.unit_wanted = !asked.units.empty();
  answer.machines = machines_of(entry, asked);
  answer.disputes = disputes_of(entry);
  answer.entry = std::move(entry);
  Builder(answer, asked).build();
  return answer;
}

std::string source_line(const EntryRecord& entry) {
  const auto& source = entry.source;
  std::string line = source.title.empty() ? std::string("no source recorded") : source.title;
  if (!source.publisher.empty()) line += ", " + source.publisher;
  line += edition_words(source);
  if (!source.page.empty()) line += ", p. " + source.page;
  line += "; " + check_words(entry.checked);
  if (!source.note.empty()) line += "; " + source.note;
  return line;
}

std::string years_text(int from, int to) {
  if (from == 0 && to == 0) return "all years";
  if (from == 0) return "to " + std::to_string(to);
  if (to == 0) return std::to_string(from) + " on";
  return from == to ? std::to_string(from) : std::to_string(from) + "–" + std::to_string(to);
}

std::string machine_line(const FitRecord& fit) {
  std::string line = fit.make + " " + fit.model + ", " + years_text(fit.year_from, fit.year_to);
  if (!fit.market.empty()) line += ", market " + fit.market;
  if (!fit.frame_from.empty() || !fit.frame_to.empty()) {
    line += ", frames " + (fit.frame_from.empty() ? "to " + fit.frame_to
                           : fit.frame_to.empty() ? fit.frame_from + " on"
                                                  : fit.frame_from + " to " + fit.frame_to);
  }
  if (!fit.note.empty()) line += ", " + fit.note;
  return line;
}

std::string short_figure(const Answer& answer) {
  if (answer.kind == "step") {
    const auto* order = text_of(answer.entry, "order");
    return order ? "step " + *order : "a step";
  }
  if (answer.figures.empty()) return answer.missing.empty() ? std::string() : "not stated";
  const Value& first = answer.figures.front();
  const auto with_band = [](const std::string& lead, const std::string& band) {
    return band.empty() ? lead : lead + " (" + band + ")";
  };
  std::string text = with_band(first.lead, first.band);
  if (answer.unit_wanted)
    for (const auto& derived : first.derived)
      text += (derived.exact ? " = " : " ≈ ") + with_band(derived.lead, derived.band);
  return text;
}

std::string conditions_of(const Answer& answer) {
  return answer.figures.empty() ? std::string() : answer.figures.front().conditions;
}

}  // namespace sheaf
