// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets are matched by name or former name, entries by address and variant or by a former address. What is
// left over on either side came or went.
#include "compiler/review/changes.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "query/quantity/figure.h"

namespace sheafc {
namespace {

using sheaf::EntryRecord;
using sheaf::FieldRecord;
using sheaf::SheetRecord;
using Said = std::vector<std::pair<std::string, std::string>>;  // key and text, in order

void say(Said& said, std::string_view key, std::string text) {
  if (text.empty()) return;
  for (auto& [known, value] : said) {
    if (known != key) continue;
    value += ", " + text;  // another value of a list
    return;
  }
  said.emplace_back(key, std::move(text));
}

std::string years_text(int from, int to) {
  if (from && from == to) return std::to_string(from);
  return (from ? std::to_string(from) : "") + (from || to ? ".." : "") + (to ? std::to_string(to) : "");
}

std::string fit_text(const sheaf::FitRecord& fit) {
  std::string text = fit.make + (fit.model.empty() ? "" : " " + fit.model);
  for (const std::string& part :
       {years_text(fit.year_from, fit.year_to), fit.market,
        fit.frame_from.empty() && fit.frame_to.empty() ? ""
                                                       : "frames " + fit.frame_from + ".." + fit.frame_to}) {
    if (!part.empty()) text += (text.empty() ? "" : " ") + part;
  }
  return text;
}

std::string fits_text(const std::vector<sheaf::FitRecord>& fits) {
  std::string text;
  for (const sheaf::FitRecord& fit : fits) text += (text.empty() ? "" : "; ") + fit_text(fit);
  return text;
}

std::string source_text(const sheaf::SourceRecord& source) {
  std::string text = source.title;
  if (!source.publisher.empty()) text += ", " + source.publisher;
  if (!source.edition.empty()) text += ", ed. " + source.edition;
  if (source.year) text += " (" + std::to_string(source.year) + ")";
  if (!source.page.empty()) text += ", p. " + source.page;
  return text + (source.note.empty() ? "" : "; " + source.note);
}

std::string check_text(const sheaf::CheckRecord& check) {
  return check.on + (check.by.empty() ? "" : " by " + check.by) +
         (check.second.empty() ? "" : " and " + check.second);
}

Said said_of(const std::vector<FieldRecord>& fields) {
  Said said;
  for (const FieldRecord& field : fields) say(said, field.key, field.text);
  return said;
}

// What only the sheet says is compared on the sheet, once, and not on each of its entries.
Said said_of(const EntryRecord& entry, const SheetRecord& sheet) {
  Said said = said_of(entry.fields);
  const bool has_name =
      std::ranges::find(said, "name", &Said::value_type::first) != said.end();  // a column of a table
  if (!has_name) say(said, "name", entry.name);
  say(said, "status", entry.status);
  say(said, "critical", entry.critical ? "yes" : "");
  for (const auto& caution : entry.cautions) say(said, "cautions", caution.name);
  if (const std::string fits = fits_text(entry.fits); fits != fits_text(sheet.fits)) say(said, "fits", fits);
  if (const std::string source = source_text(entry.source); source != source_text(sheet.source))
    say(said, "source", source);
  if (const std::string check = check_text(entry.checked); check != check_text(sheet.checked))
    say(said, "checked", check);
  for (const auto& withdrawn : entry.withdrawn)
    say(said, "withdrawn", withdrawn.on + ": " + withdrawn.reason);
  return said;
}

Said said_of(const SheetRecord& sheet) {
  Said said = said_of(sheet.fields);
  say(said, "title", sheet.title);
  say(said, "assembly", sheet.assembly);
  say(said, "table", sheet.row_kind);
  say(said, "maker", sheet.maker);
  say(said, "invented", sheet.invented ? "yes" : "");
  say(said, "fits", fits_text(sheet.fits));
  say(said, "source", source_text(sheet.source));
  say(said, "checked", check_text(sheet.checked));
  for (const auto& caution : sheet.cautions)
    say(said, "cautions", sheet.form == "words" ? caution.name + ": " + caution.text : caution.name);
  return said;
}

std::string entries_text(const SheetRecord& sheet) {
  return std::to_string(sheet.entries.size()) + (sheet.entries.size() == 1 ? " entry" : " entries");
}

std::optional<double> middle(const std::string& text) {
  const auto statement = sheaf::parse_statement(text, {}, sheaf::Input::sheet);
  if (!statement || statement->stages.empty() || !statement->stages.back().figure.unit) return {};
  const sheaf::BaseBand band = sheaf::base_band(statement->stages.back().figure);
  if (std::isinf(band.least)) return band.most;
  return std::isinf(band.most) ? band.least : (band.least + band.most) / 2;
}

FieldChange field_change(const std::string& key, const std::string& before, const std::string& after) {
  FieldChange change{key, before, after, false, {}};
  const auto old_middle = middle(before), new_middle = middle(after);
  change.figure = old_middle && new_middle;
  if (change.figure && *old_middle != 0 && std::isfinite(*old_middle) && std::isfinite(*new_middle)) {
    change.percent = (*new_middle / *old_middle - 1) * 100;
  }
  return change;
}

std::vector<FieldChange> field_changes(const Said& before, const Said& after) {
  std::vector<FieldChange> changes;
  const auto find = [](const Said& said, const std::string& key) {
    const auto found = std::ranges::find(said, key, &Said::value_type::first);
    return found == said.end() ? std::string{} : found->second;
  };
  for (const auto& [key, text] : after) {
    if (const std::string old = find(before, key); old != text)
      changes.push_back(field_change(key, old, text));
  }
  for (const auto& [key, text] : before) {
    if (find(after, key).empty()) changes.push_back(field_change(key, text, ""));
  }
  return changes;
}

class Comparison {
 public:
  Comparison(std::span<const SheetRecord> before, std::span<const SheetRecord> after)
      : before_(before), after_(after) {}

  std::vector<Change> changes() {
    std::map<std::string_view, const SheetRecord*> old;
    for (const SheetRecord& sheet : before_) old.emplace(sheet.name, &sheet);
    for (const SheetRecord& sheet : after_) compare_sheet(take_old(old, sheet), sheet);
    for (const auto& [name, sheet] : old) went(*sheet);
    match_entries();
    std::ranges::stable_sort(changes_,
                             [](const Change& a, const Change& b) { return weight(a) < weight(b); });
    return std::move(changes_);
  }

 private:
  struct Old {
    const SheetRecord* sheet;
    const EntryRecord* entry;
  };

  // The sheet as it was, by its name or one of its former names; null if it is new.
  static const SheetRecord* take_old(std::map<std::string_view, const SheetRecord*>& old,
                                     const SheetRecord& sheet) {
    auto found = old.find(sheet.name);
    for (const FieldRecord& field : sheet.fields) {
      if (found == old.end() && field.key == "formerly") found = old.find(field.text);
    }
    if (found == old.end()) return nullptr;
    const SheetRecord* was = found->second;
    old.erase(found);
    return was;
  }

  void compare_sheet(const SheetRecord* was, const SheetRecord& sheet) {
    for (const EntryRecord& entry : sheet.entries) now_.push_back({&sheet, &entry});
    if (!was) {
      Change& change = add(Change::Kind::added, sheet);
      change.reason = entries_text(sheet);
      return;
    }
    for (const EntryRecord& entry : was->entries) then_.emplace(key_of(entry), Old{was, &entry});
    auto fields = field_changes(said_of(*was), said_of(sheet));
    if (fields.empty() && was->name == sheet.name) return;
    Change& change = add(was->name == sheet.name ? Change::Kind::changed : Change::Kind::renamed, sheet);
    change.before_address = was->name == sheet.name ? "" : was->name;
    change.source_changed = source_text(was->source) != source_text(sheet.source);
    change.fields = std::move(fields);
  }

  Change& add(Change::Kind kind, const SheetRecord& sheet) {
    Change& change = changes_.emplace_back();
    change.kind = kind;
    change.sheet = true;
    change.address = sheet.name;
    change.name = sheet.title;
    change.fits = sheet.fits;
    change.place = sheet.place;
    return change;
  }

  void went(const SheetRecord& sheet) {
    Change& change = add(Change::Kind::removed, sheet);
    change.reason = entries_text(sheet);
    for (const EntryRecord& entry : sheet.entries) then_.emplace(key_of(entry), Old{&sheet, &entry});
    gone_sheets_.push_back(sheet.name);
  }

  static std::string key_of(const EntryRecord& entry) { return entry.address + "\n" + entry.variant; }

  void match_entries() {
    std::vector<Old> came;
    for (const Old& now : now_) {
      if (const auto was = then_.extract(key_of(*now.entry)))
        compare_entry(was.mapped(), now);
      else
        came.push_back(now);
    }
    std::erase_if(came, [&](const Old& now) { return match_former(now) || match_other_variant(now); });
    for (const Old& now : came) {
      const bool with_its_sheet = std::ranges::any_of(changes_, [&](const Change& c) {
        return c.sheet && c.kind == Change::Kind::added && c.address == now.sheet->name;
      });
      if (!with_its_sheet) add(Change::Kind::added, now);
    }
    for (const auto& [key, old] : then_) {
      if (std::ranges::find(gone_sheets_, old.sheet->name) == gone_sheets_.end())
        add(Change::Kind::removed, old);
    }
  }

  bool match_former(const Old& now) {
    for (const std::string& address : now.entry->formerly) {
      const auto was = then_.extract(address + "\n" + now.entry->variant);
      if (!was) continue;
      compare_entry(was.mapped(), now);
      return true;
    }
    return false;
  }

  // The years of a variant were changed, or variants were made of one entry: its first one is the old one.
  bool match_other_variant(const Old& now) {
    const auto was = then_.lower_bound(now.entry->address + "\n");
    if (was == then_.end() || was->second.entry->address != now.entry->address) return false;
    const Old old = was->second;
    then_.erase(was);
    compare_entry(old, now);
    return true;
  }

  void compare_entry(const Old& was, const Old& now) {
    auto fields = field_changes(said_of(*was.entry, *was.sheet), said_of(*now.entry, *now.sheet));
    if (was.entry->variant != now.entry->variant)
      fields.push_back({"variant", was.entry->variant, now.entry->variant, false, {}});
    const bool renamed = was.entry->address != now.entry->address;
    if (fields.empty() && !(renamed && was.sheet->name == now.sheet->name)) return;
    const bool withdrawn = !now.entry->withdrawn.empty() && was.entry->withdrawn.empty();
    Change& change = add(withdrawn ? Change::Kind::withdrawn
                         : renamed ? Change::Kind::renamed
                                   : Change::Kind::changed,
                         now);
    if (renamed) change.before_address = was.entry->address;
    if (withdrawn) change.reason = now.entry->withdrawn.front().reason;
    change.critical = change.critical || was.entry->critical;
    change.source_changed = source_text(was.entry->source) != source_text(now.entry->source);
    change.fields = std::move(fields);
  }

  Change& add(Change::Kind kind, const Old& of) {
    Change& change = changes_.emplace_back();
    change.kind = kind;
    change.address = of.entry->address;
    change.variant = of.entry->variant;
    change.name = of.entry->name;
    change.fits = of.entry->fits;
    change.critical = of.entry->critical;
    change.place = of.entry->place;
    return change;
  }

  static double movement(const Change& change) {
    double most = 0;
    for (const FieldChange& field : change.fields) most = std::max(most, std::abs(field.percent.value_or(0)));
    return most;
  }

  static std::tuple<int, double, const std::string&, const std::string&> weight(const Change& change) {
    int rank = 7;
    if (change.kind == Change::Kind::withdrawn)
      rank = 0;
    else if (change.changes_figure())
      rank = change.critical ? 1 : change.source_changed ? 3 : 2;
    else if (change.kind == Change::Kind::removed)
      rank = 4;
    else if (change.kind == Change::Kind::renamed)
      rank = 5;
    else if (change.kind == Change::Kind::added)
      rank = 6;
    return {rank, -movement(change), change.address, change.variant};
  }

  std::span<const SheetRecord> before_, after_;
  std::map<std::string, Old> then_;  // entries as they were, not matched yet
  std::vector<Old> now_;
  std::vector<std::string> gone_sheets_;
  std::vector<Change> changes_;
};

}  // namespace

bool Change::changes_figure() const {
  return std::ranges::any_of(fields, [](const FieldChange& field) { return field.figure; });
}

std::vector<Change> compare(std::span<const SheetRecord> before, std::span<const SheetRecord> after) {
  return Comparison(before, after).changes();
}

}  // namespace sheafc
