// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/record_check.h"

#include <algorithm>
#include <array>

#include "query/answer/fields.h"
#include "query/answer/text.h"
#include "query/quantity/exact.h"
#include "query/quantity/scale.h"

namespace sheaf {
namespace {

// The fields that a written value is measured against, by kind.
constexpr std::array<std::string_view, 4> limiting_fields = {"limit", "value", "range", "level"};

std::optional<Figure> limit_of(const EntryRecord& entry) {
  for (const auto key : limiting_fields)
    if (const auto statement = statement_of(entry.fields, key, std::nullopt))
      if (statement->figure().unit) return statement->figure();
  const auto standard = statement_of(entry.fields, "standard", std::nullopt);
  return standard && standard->figure().unit ? std::optional(standard->figure()) : std::nullopt;
}

std::optional<Quantity> quantity_of(std::string_view written, const Unit& unit) {
  auto statement = parse_statement(written, unit.dimension, Input::prompt);
  if (!statement)
    statement =
        parse_statement(std::string(written) + " " + std::string(unit.symbol), unit.dimension, Input::prompt);
  if (!statement || !statement->figure().nominal || !statement->figure().unit) return std::nullopt;
  return Quantity{*statement->figure().nominal, statement->figure().unit};
}

std::string outcome_of(const CardEntry& entry, const std::string& written) {
  const auto limit = limit_of(entry.answer.entry);
  return written + " is beyond " + (limit ? shown(*limit) : "its limit");
}

std::optional<std::strong_ordering> compared(const Quantity& value, const Quantity& to) {
  if (value.unit->dimension != to.unit->dimension) return std::nullopt;
  const auto in_unit = apply(scale_between(*value.unit, *to.unit), exact(value.value));
  return in_unit ? std::optional(compare(*in_unit, exact(to.value))) : std::nullopt;
}

std::optional<Quantity> standard_of(const EntryRecord& entry) {
  const auto standard = statement_of(entry.fields, "standard", std::nullopt);
  if (!standard || !standard->figure().unit || !standard->figure().nominal) return std::nullopt;
  return Quantity{*standard->figure().nominal, standard->figure().unit};
}

bool is_box(const CardItem& item) {
  return item.deed == Deed::made_sure || item.deed == Deed::done || item.deed == Deed::tightened ||
         item.deed == Deed::filled;
}

class Checker {
 public:
  Checker(const CardRecord& record, const Card& card) : record_(record), card_(card) {}

  std::vector<Finding> check() {
    check_head();
    for (const auto* section :
         {&card_.settings, &card_.steps, &card_.fasteners, &card_.fluids, &card_.measures})
      for (const auto& entry : *section) check(entry);
    for (const auto& item : card_.identify)
      if (!record_.ticked.contains(item.id))
        report(Weight::open, item.id, name_of(card_, item) + ": not made sure");
    find_strangers();
    std::ranges::stable_sort(findings_, std::less<>(), &Finding::weight);
    return std::move(findings_);
  }

 private:
  void report(Weight weight, std::string id, std::string text) {
    findings_.push_back({weight, std::move(id), std::move(text)});
  }

  void check_head() {
    if (record_.sheet != card_.sheet.name)
      report(Weight::wrong, "", "the record is of " + record_.sheet + ", the card of " + card_.sheet.name);
    const auto& kept = record_.machine;
    const auto& here = card_.machine;
    if (kept.make != here.make || kept.model != here.model || kept.year != here.year ||
        kept.frame != here.frame || kept.market != here.market)
      report(Weight::wrong, "",
             "the record is of another machine, year, frame number or market than the card");
    if (record_.digest != card_.library.digest)
      report(Weight::note, "", "the library has changed since the record was begun");
  }

  void check(const CardEntry& entry) {
    const auto seen = record_.figures.find(entry.name);
    const std::string now = figure_text(entry);
    const bool changed = seen != record_.figures.end() && seen->second != now;
    if (changed)
      report(Weight::wrong, entry.name,
             entry.answer.name + ": the figure was " + seen->second + " when it was filled in, and is " +
                 (now.empty() ? "withdrawn" : now) + " now");
    for (const auto& item : entry.items) is_box(item) ? check_box(item) : check_blank(entry, item);
    check_sides(entry);
  }

  // A setting that was put to other than the standard may be meant so; that both sides differ seldom is.
  void check_sides(const CardEntry& entry) {
    std::optional<Quantity> first;
    for (const auto& item : entry.items) {
      const auto written = record_.written.find(item.id);
      const auto standard = standard_of(entry.answer.entry);
      if (item.deed != Deed::set || written == record_.written.end() || !standard) continue;
      const auto value = quantity_of(written->second, *standard->unit);
      if (!value) continue;
      if (compared(*value, *standard) != std::strong_ordering::equal)
        report(Weight::note, item.id,
               name_of(card_, item) + ": " + written->second + ", the standard is " + shown(*standard));
      if (first && compared(*value, *first) != std::strong_ordering::equal)
        report(Weight::note, item.id, entry.answer.name + ": the sides are set differently");
      first = value;
    }
  }

  void check_box(const CardItem& item) {
    if (record_.ticked.contains(item.id)) return;
    report(Weight::open, item.id, name_of(card_, item) + ": not ticked");
  }

  void check_blank(const CardEntry& entry, const CardItem& item) {
    const auto written = record_.written.find(item.id);
    if (written == record_.written.end() || written->second.empty()) {
      report(Weight::open, item.id, name_of(card_, item) + ": nothing written");
      return;
    }
    const auto judgement = judge(entry, written->second);
    const std::string name = name_of(card_, item) + ": ";
    if (judgement == Judgement::unreadable)
      report(Weight::wrong, item.id, name + "'" + written->second + "' is no figure in " + item.unit);
    if (judgement != Judgement::beyond) return;
    const bool as_found = item.deed == Deed::found;  // a machine may come in set wrongly
    report(as_found ? Weight::note : Weight::wrong, item.id, name + outcome_of(entry, written->second));
  }

  // Items that the card does not have, or no longer has.
  void find_strangers() {
    std::set<std::string> known;
    for (const CardItem* item : card_.items()) known.insert(item->id);
    for (const auto& id : record_.ticked)
      if (!known.contains(id)) report(Weight::note, id, id + " is not on the card");
    for (const auto& [id, text] : record_.written)
      if (!known.contains(id)) report(Weight::note, id, id + " is not on the card");
  }

  const CardRecord& record_;
  const Card& card_;
  std::vector<Finding> findings_;
};

}  // namespace

Judgement judge(const CardEntry& entry, std::string_view written) {
  const auto limit = limit_of(entry.answer.entry);
  if (!limit) return Judgement::unlimited;
  const auto value = quantity_of(written, *limit->unit);
  if (!value || value->unit->dimension != limit->unit->dimension) return Judgement::unreadable;
  if (!limit->least && !limit->most) return Judgement::unlimited;
  const bool too_little =
      limit->least && compared(*value, {*limit->least, limit->unit}) == std::strong_ordering::less;
  const bool too_much =
      limit->most && compared(*value, {*limit->most, limit->unit}) == std::strong_ordering::greater;
  return too_little || too_much ? Judgement::beyond : Judgement::within;
}

std::vector<Finding> check_record(const CardRecord& record, const Card& card) {
  return Checker(record, card).check();
}

std::string name_of(const Card& card, const CardItem& item) {
  const CardEntry* entry = card.entry_named(item.id.substr(0, item.id.find('/')));
  std::vector<std::string> parts;
  if (entry) {
    parts.push_back(entry->answer.name);
    parts.emplace_back(in_words(item.deed));
  } else {
    parts.push_back("that it is this one, " + item.id.substr(item.id.find('/') + 1));
  }
  const std::string which = in_words(item);
  if (!which.empty()) parts.push_back(which);
  return joined(parts, ", ");
}

}  // namespace sheaf
