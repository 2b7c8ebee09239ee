// SPDX-License-Identifier: GPL-2.0-or-later
// Chains are followed with a list, never by recursion: a folder may hold any number of sheets.
#include "compiler/link/resolve.h"

#include <algorithm>
#include <array>

#include "compiler/link/link_rules.h"
#include "compiler/sheet/forms.h"
#include "compiler/sheet/read_fields.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

using Keys = std::span<const std::string_view>;

// What is a sheet's or an entry's own affair, and never inherited.
constexpr std::array<std::string_view, 7> own_of_sheet = {"sheet",   "title", "also",    "based-on",
                                                          "without", "fits",  "formerly"};
constexpr std::array<std::string_view, 3> own_of_entry = {"fits", "formerly", "without"};
constexpr std::array<std::string_view, 7> own_of_like = {"fits",    "formerly", "without", "order",
                                                         "same-as", "like",     "page"};

bool holds(Keys keys, std::string_view key) { return std::ranges::find(keys, key) != keys.end(); }

// The base's fields but for `excluded`, the own ones in their stead, in declared order.
Fields merged(const Fields& base, const Fields& own, const Scope& order, Keys excluded) {
  Fields fields;
  for (const sheaf::FieldDeclaration* declaration : order) {
    const Field* field = own.find(declaration->key);
    if (!field && !holds(excluded, declaration->key)) field = base.find(declaration->key);
    if (field) fields.add(field);
  }
  return fields;
}

void drop_source(Fields& fields) {
  fields.drop("source");
  fields.drop("checked");
}

std::string quoted(std::string_view text) { return "'" + std::string(text) + "'"; }

}  // namespace

ResolvedEntry* ResolvedSheet::find(std::string_view id) {
  const auto found = index.find(id);
  return found == index.end() ? nullptr : &entries[found->second];
}

bool ResolvedSheet::may_hold(std::string_view id) const {
  for (const ResolvedSheet* at = this; at; at = at->base) {
    if (at->base_missing || std::ranges::find(at->sheet->unread, id) != at->sheet->unread.end()) return true;
  }
  return false;
}

void Resolver::add(const Sheet& sheet, bool borrowed) {
  const auto found = by_name_.find(sheet.name);
  if (found != by_name_.end()) {
    if (borrowed) return;  // the run's own sheet goes first
    sink_.report({Severity::error,
                  rule::duplicate_sheet,
                  sheet.place,
                  "two sheets are named " + quoted(sheet.name),
                  {{Severity::note, rule::duplicate_sheet, found->second->sheet->place, "the other one"}}});
    return;
  }
  ResolvedSheet& resolved = sheets_.emplace_back();
  resolved.sheet = &sheet;
  resolved.borrowed = borrowed;
  by_name_.emplace(sheet.name, &resolved);
}

ResolvedSheet* Resolver::find(std::string_view name) {
  const auto found = by_name_.find(name);
  return found == by_name_.end() ? nullptr : found->second;
}

void Resolver::resolve() {
  for (ResolvedSheet& sheet : sheets_) resolve_base(sheet);
  for (ResolvedSheet& sheet : sheets_) {
    for (ResolvedEntry& entry : sheet.entries) resolve_like(sheet, entry);
  }
}

// Down to the first sheet that is resolved or has no base, then back up.
void Resolver::resolve_base(ResolvedSheet& top) {
  std::vector<ResolvedSheet*> chain;
  for (ResolvedSheet* sheet = &top; sheet && !sheet->done;) {
    const auto again = std::ranges::find(chain, sheet);
    if (again != chain.end()) {
      sink_.error(rule::circular_base, chain.back()->sheet->fields.place("based-on"),
                  quoted(chain.back()->sheet->name) + " would be based on itself, by way of " +
                      quoted(sheet->sheet->name));
      chain.back()->base = nullptr;
      chain.back()->base_missing = true;
      break;
    }
    chain.push_back(sheet);
    find_base(*sheet);
    sheet = sheet->base;
  }
  for (auto sheet = chain.rbegin(); sheet != chain.rend(); ++sheet) inherit(**sheet);
}

void Resolver::find_base(ResolvedSheet& sheet) {
  const Value* based_on = sheet.sheet->fields.value("based-on");
  if (!based_on) {
    if (const Field* without = sheet.sheet->fields.find("without")) {
      sink_.error(rule::wrong_base, without->key_place,
                  "'without' leaves out entries of a base, and the sheet has no 'based-on'");
    }
    return;
  }
  sheet.base_missing = true;
  if (based_on->text.empty() || unread_.contains(based_on->text)) return;
  ResolvedSheet* base = find(based_on->text);
  if (!base) {
    sink_.error(rule::unknown_base, based_on->where,
                "there is no sheet " + quoted(based_on->text) + near_sheet(based_on->text));
  } else if (base->sheet->form != sheet.sheet->form) {
    sink_.error(rule::wrong_base, based_on->where,
                quoted(based_on->text) + " is " + with_article(base->sheet->form->name) +
                    " sheet; an assembly is based on an assembly");
  } else {
    sheet.base = base;
    sheet.base_missing = false;
  }
}

void Resolver::inherit(ResolvedSheet& sheet) {
  sheet.done = true;
  const Sheet& own = *sheet.sheet;
  if (sheet.base) {
    sheet.depth = sheet.base->depth + 1;
    if (sheet.depth > longest_chain) {
      sink_.error(rule::long_chain, own.fields.place("based-on"), "a chain of bases has at most 16 sheets");
      sheet.base = nullptr;
      sheet.base_missing = true;
    }
  }
  sheet.fields =
      sheet.base ? merged(sheet.base->fields, own.fields, own.form->fields, own_of_sheet) : own.fields;
  if (sheet.base && sheet.base->fields.has("fits") && !own.fields.has("fits")) {
    sink_.error(rule::base_without_fits, own.fields.place("based-on"),
                "the sheet must say which machines it fits; those of its base are not its own");
  }
  inherit_entries(sheet);
}

std::vector<std::string_view> Resolver::left_out(const ResolvedSheet& sheet) {
  std::vector<std::string_view> out;
  for (const Value& id : sheet.sheet->fields.values("without")) {
    if (!id.text.empty() && !sheet.base->find(id.text) && !sheet.base->may_hold(id.text)) {
      sink_.error(rule::unknown_entry, id.where,
                  quoted(sheet.base->sheet->name) + " has no entry " + quoted(id.text) +
                      near_entry(*sheet.base, id.text));
    }
    out.push_back(id.text);
  }
  return out;
}

void Resolver::inherit_entries(ResolvedSheet& sheet) {
  if (sheet.base) {
    const auto out = left_out(sheet);
    for (const ResolvedEntry& entry : sheet.base->entries) {
      if (holds(out, entry.id)) continue;
      ResolvedEntry copy = entry;
      copy.own = copy.own_variants = false;
      copy.like = ResolvedEntry::Like::unread;
      for (const std::string_view key : own_of_entry) copy.fields.drop(key);
      sheet.index.emplace(copy.id, sheet.entries.size());
      sheet.entries.push_back(std::move(copy));
    }
  }
  for (const Entry& entry : sheet.sheet->entries) {
    if (sheet.entries.size() >= most_entries) {
      sink_.error(rule::too_many_entries, entry.place,
                  "a sheet has at most 20 000 entries, those of its base among them");
      return;
    }
    add_own_entry(sheet, entry);
  }
}

void Resolver::add_own_entry(ResolvedSheet& sheet, const Entry& entry) {
  ResolvedEntry own{entry.id, entry.kind, entry.declaration, entry.fields, sheet.sheet, entry.place};
  own.carries_source = entry.carries_source;
  const auto [at, is_new] = sheet.index.emplace(entry.id, sheet.entries.size());
  if (is_new) {
    const Field* lacks = entry.fields.find("without");
    if (lacks && !entry.fields.has("like") && !sheet.base_missing) {
      sink_.error(rule::wrong_base, lacks->key_place,
                  "'without' names keys of a base's entry, and " + quoted(entry.id) + " has none");
    }
    sheet.entries.push_back(std::move(own));
    return;
  }
  ResolvedEntry& base = sheet.entries[at->second];
  if (base.own) return;  // twice on this sheet: reported when it was read
  if (base.declaration != entry.declaration) {
    sink_.report({Severity::error,
                  rule::kind_differs,
                  entry.place,
                  quoted(entry.id) + " is " + with_article(entry.kind) + " here and " +
                      with_article(base.kind) + " on the base; leave the base's out with 'without'",
                  {{Severity::note, rule::kind_differs, base.where, "the base's"}}});
    return;
  }
  check_own_against_variants(entry, base.fields);
  own.own_variants = entry.fields.has("variants");
  Fields inherited = without(entry, base.fields);
  if (base.carries_source) drop_source(inherited);  // this sheet states the entry now, so its source holds
  if (sheet.sheet->fields.has("source")) inherited.drop("page");  // a page of another paper
  own.fields = merged(inherited, entry.fields, entry_scope(*entry.declaration), own_of_entry);
  base = std::move(own);
}

// The base's fields, but for those that the entry says it lacks.
Fields Resolver::without(const Entry& entry, Fields base) {
  for (const Value& key : entry.fields.values("without")) {
    if (!key.text.empty() && !base.has(key.text)) {
      std::vector<std::string_view> keys;
      for (const Field* field : base.all()) keys.push_back(field->key());
      sink_.error(
          rule::wrong_base, key.where,
          "the base's " + quoted(entry.id) + " has no " + quoted(key.text) + did_you_mean(key.text, keys));
    }
    base.drop(key.text);
  }
  return base;
}

// A figure stated here would be passed over in silence where the base's variants state it too.
void Resolver::check_own_against_variants(const Entry& entry, const Fields& base) {
  const Value* variants = base.value("variants");
  const Variants* list = variants ? variants->as<Variants>() : nullptr;
  if (!list || entry.fields.has("variants")) return;
  for (const Field* field : entry.fields.all()) {
    const auto stated =
        std::ranges::find_if(*list, [&](const Variant& variant) { return variant.fields.has(field->key()); });
    if (stated == list->end()) continue;
    sink_.report(
        {Severity::error,
         rule::wrong_base,
         field->key_place,
         "the base's variants state " + quoted(field->key()) + "; give this entry its own variants",
         {{Severity::note, rule::wrong_base, stated->fields.find(field->key())->key_place, "stated here"}}});
  }
}

// Looking for a near name costs the more the more names there are: a run with many faults does without.
bool Resolver::may_suggest() { return suggestions_++ < 200; }

std::string Resolver::near_sheet(std::string_view name) {
  if (!may_suggest()) return {};
  std::vector<std::string_view> names(names_.begin(), names_.end());
  if (names.empty()) {
    for (const ResolvedSheet& other : sheets_) names.push_back(other.sheet->name);
  }
  return did_you_mean(name, names);
}

std::string Resolver::near_entry(const ResolvedSheet& sheet, std::string_view id) {
  if (!may_suggest()) return {};
  std::vector<std::string_view> ids;
  for (const ResolvedEntry& entry : sheet.entries) ids.push_back(entry.id);
  return did_you_mean(id, ids);
}

ResolvedEntry* Resolver::look_up(ResolvedSheet& from, const Address& address, const Span& place) {
  ResolvedSheet* sheet = address.sheet.empty() ? &from : find(address.sheet);
  if (!sheet && unread_.contains(address.sheet)) return nullptr;
  if (!sheet) {
    sink_.error(rule::unknown_entry, place,
                "there is no sheet " + quoted(address.sheet) + near_sheet(address.sheet));
    return nullptr;
  }
  ResolvedEntry* entry = sheet->find(address.entry);
  if (!entry && !sheet->may_hold(address.entry)) {
    sink_.error(rule::unknown_entry, place,
                quoted(sheet->sheet->name) + " has no entry " + quoted(address.entry) +
                    near_entry(*sheet, address.entry));
  }
  return entry;
}

void Resolver::resolve_like(ResolvedSheet& top_sheet, ResolvedEntry& top) {
  struct Link {
    ResolvedEntry* entry;
    ResolvedEntry* target;
  };
  std::vector<Link> chain;
  ResolvedSheet* sheet = &top_sheet;
  for (ResolvedEntry* entry = &top; entry && entry->like == ResolvedEntry::Like::unread;) {
    entry->like = ResolvedEntry::Like::reading;
    const Address* address = entry->fields.reference("like");
    const Span place = entry->fields.place("like");
    ResolvedEntry* target = address ? look_up(*sheet, *address, place) : nullptr;
    entry->like_missing = entry->fields.has("like") && !target;
    if (target && target->like == ResolvedEntry::Like::reading) {
      sink_.error(rule::circular_like, place,
                  quoted(entry->id) + " would be like itself, by way of " + quoted(target->id));
      entry->like_missing = true;
      target = nullptr;
    }
    chain.push_back({entry, target});
    if (target && !address->sheet.empty()) sheet = find(address->sheet);
    entry = target;
  }
  for (auto link = chain.rbegin(); link != chain.rend(); ++link) {
    if (link->target) take_from(*link->entry, *link->target);
    link->entry->like = ResolvedEntry::Like::done;
  }
}

void Resolver::take_from(ResolvedEntry& entry, const ResolvedEntry& other) {
  const Span place = entry.fields.place("like");
  entry.like_missing = true;
  if (!entry.declaration || entry.declaration != other.declaration) {
    sink_.error(rule::wrong_like, place,
                quoted(entry.id) + " is " + with_article(entry.kind) + " and " + quoted(other.id) + " " +
                    with_article(other.kind) + "; an entry is like one of its own kind");
    return;
  }
  entry.like_depth = other.like_depth + 1;
  if (entry.like_depth > longest_chain) {
    sink_.error(rule::long_chain, place,
                "a chain of entries that are like each other has at most 16 of them");
    return;
  }
  entry.like_missing = other.like_missing;
  if (!entry.fields.has("variants")) entry.own_variants = false;
  Fields taken = other.fields;
  if (other.carries_source) drop_source(taken);
  for (const Value& key : entry.fields.values("without")) taken.drop(key.text);
  entry.fields = merged(taken, entry.fields, entry_scope(*entry.declaration), own_of_like);
}

}  // namespace sheafc
