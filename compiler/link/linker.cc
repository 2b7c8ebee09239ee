// SPDX-License-Identifier: GPL-2.0-or-later
// Inheritance is done (resolve.cc); here variants are parted, machines and cautions worked out, and every
// reference is looked up.
#include "compiler/link/linker.h"

#include <algorithm>
#include <array>

#include "compiler/link/link_rules.h"
#include "compiler/link/variants.h"
#include "compiler/sheet/forms.h"
#include "compiler/sheet/read_fields.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"

namespace sheafc {
namespace {

std::string quoted(std::string_view text) { return "'" + std::string(text) + "'"; }

std::vector<Fit> fits_of(const Fields& fields) {
  std::vector<Fit> fits;
  for (const Value& value : fields.values("fits")) {
    const Fields* record = value.as<Fields>();
    if (!record) continue;
    Fit& fit = fits.emplace_back();
    fit.make = record->text("make");
    fit.model = record->text("model");
    if (const Years* years = record->years("years")) fit.years = *years;
    fit.market = record->text("market");
    if (const Frames* frames = record->frames("frames")) fit.frames = *frames;
    fit.note = record->text("note");
    fit.where = value.where;
  }
  return fits;
}

// Where a wrong figure can let a machine's brakes, steering or wheels go.
bool is_critical_assembly(std::string_view assembly) {
  constexpr std::array<std::string_view, 5> critical = {"front-brake", "rear-brake", "steering-head",
                                                        "front-wheel", "rear-wheel"};
  return std::ranges::find(critical, assembly) != critical.end();
}

bool carries_figures(std::string_view kind) { return kind != "tool" && kind != "step" && kind != "part"; }

std::string row_name(const Sheet& sheet, const Fields& fields) {
  const auto kinds = sheaf::all_row_kinds();
  const auto kind = std::ranges::find(kinds, sheet.row_kind, &sheaf::RowKind::name);
  const std::string title(kind == kinds.end() ? sheet.row_kind : kind->title);
  return title + " " + std::string(fields.text(sheet.key_column));
}

}  // namespace

LinkedSheets link_sheets(std::span<const std::shared_ptr<Sheet>> sheets,
                         std::span<const std::shared_ptr<Sheet>> borrowed, Diagnostics& sink,
                         std::span<const std::string> unread, std::span<const std::string> names) {
  Linker linker(unread, names, sink);
  for (const auto& sheet : sheets) linker.add(*sheet, false);
  for (const auto& sheet : borrowed) linker.add(*sheet, true);
  return linker.link();
}

void Linker::add(const Sheet& sheet, bool borrowed) {
  resolver_.add(sheet, borrowed);
  if (sheet.file) out_.paths_.emplace(sheet.file->name(), sheet.path);
  collect_glossary(sheet, borrowed);
}

// A run's own caution may take a borrowed one's name, as its sheets may.
void Linker::collect_glossary(const Sheet& sheet, bool borrowed) {
  for (const Caution& caution : sheet.cautions) {
    const auto [first, is_new] = out_.cautions_.emplace(caution.name, &caution);
    if (is_new || borrowed) continue;
    sink_.report({Severity::error,
                  rule::duplicate_caution,
                  caution.place,
                  "two cautions are named " + quoted(caution.name),
                  {{Severity::note, rule::duplicate_caution, first->second->place, "the other one"}}});
  }
  if (borrowed) return;
  for (const WordGroup& group : sheet.words) {
    const auto [first, is_new] = groups_.emplace(group.name, &group);
    if (is_new)
      out_.words_.push_back(&group);
    else
      sink_.report({Severity::error,
                    rule::duplicate_words,
                    group.place,
                    "two groups of words are named " + quoted(group.name),
                    {{Severity::note, rule::duplicate_words, first->second->place, "the other one"}}});
  }
}

LinkedSheets Linker::link() {
  resolver_.resolve();
  std::unordered_map<const ResolvedSheet*, LinkedSheet*> linked;
  for (ResolvedSheet& resolved : resolver_.sheets()) {
    LinkedSheet& sheet = (resolved.borrowed ? out_.borrowed_ : out_.own_).emplace_back();
    linked[&resolved] = &sheet;
    link_sheet(resolved, sheet);
  }
  for (const auto& [resolved, sheet] : linked) {
    if (resolved->base) sheet->base = linked.at(resolved->base);
  }
  for (auto* sheets : {&out_.own_, &out_.borrowed_}) {
    for (LinkedSheet& sheet : *sheets) index(sheet);
  }
  return std::move(out_);
}

void Linker::link_sheet(ResolvedSheet& resolved, LinkedSheet& sheet) {
  static_cast<Fields&>(sheet) = resolved.fields;
  sheet.name = resolved.sheet->name;
  sheet.form = resolved.sheet->form;
  sheet.sheet = resolved.sheet;
  sheet.row_kind = resolved.sheet->row_kind;
  sheet.fits = fits_of(resolved.fields);
  sheet.borrowed = resolved.borrowed;
  if (!sheet.borrowed && !resolved.base_missing)
    require_fields(sheet, sheet.form->fields, with_article(sheet.form->name) + " sheet", sheet.where(),
                   sink_);
  std::vector<const Caution*> cautions;
  add_cautions(sheet, cautions);
  sheet.entries.reserve(resolved.entries.size());
  for (ResolvedEntry& entry : resolved.entries) link_entry(resolved, entry, sheet);
}

void Linker::link_entry(ResolvedSheet& resolved, ResolvedEntry& entry, LinkedSheet& sheet) {
  LinkedEntry whole;
  static_cast<Fields&>(whole) = entry.fields;
  whole.sheet = &sheet;
  whole.id = entry.id;
  whole.address = sheet.name + "/" + whole.id;
  whole.kind = entry.kind;
  whole.declaration = entry.declaration;
  whole.fits = whole.has("fits") ? fits_of(whole) : sheet.fits;
  whole.inherited = !entry.own;
  whole.where = entry.where;
  if (!sheet.borrowed) check_references(resolved, whole);

  const Value* variants = whole.value("variants");
  const Variants* list = variants ? variants->as<Variants>() : nullptr;
  if (list) return part_variants(resolved, entry, *list, whole, sheet);
  complete(whole, resolved, entry);
  sheet.entries.push_back(std::move(whole));
}

void Linker::part_variants(const ResolvedSheet& resolved, const ResolvedEntry& entry,
                           const Variants& variants, const LinkedEntry& whole, LinkedSheet& sheet) {
  std::vector<When> whens;
  for (const Variant& variant : variants) {
    const When when = when_of(variant);
    LinkedEntry part = whole;
    part.drop("variants");
    for (const Field* field : variant.fields.all()) {
      if (find_in(entry_scope(*entry.declaration), field->key())) part.put(field);
    }
    part.fits.clear();
    for (const Fit& fit : whole.fits) {
      if (auto narrow = narrowed(fit, when)) part.fits.push_back(std::move(*narrow));
    }
    if (whole.fits.empty()) part.fits.push_back(*narrowed(Fit{}, when));
    if (part.fits.empty()) {
      if (entry.own_variants)
        sink_.error(rule::variant_outside_fits, when.where,
                    "the variant " + to_text(when) + " is for none of the machines that " +
                        quoted(whole.address) + " fits");
      continue;  // a base's variant may be for its own machines alone
    }
    part.variant = to_text(when);
    part.where = when.where;
    complete(part, resolved, entry);
    sheet.entries.push_back(std::move(part));
    whens.push_back(when);
  }
  if (whens.empty() && !entry.own_variants && !variants.empty()) {
    sink_.error(rule::variant_outside_fits, resolved.sheet->place,
                "the base's variants of " + quoted(whole.id) +
                    " are for none of the machines of this sheet; state the entry here");
  }
  if (!sheet.borrowed) check_variants(whole.fits, whens, sink_);
}

// What depends on all of an entry's fields, its variant's among them.
void Linker::complete(LinkedEntry& entry, const ResolvedSheet& resolved_sheet,
                      const ResolvedEntry& resolved) {
  const LinkedSheet& sheet = *entry.sheet;
  entry.name = entry.declaration ? std::string(entry.text("name")) : row_name(*sheet.sheet, entry);
  const ResolvedSheet* stated_by = resolver_.find(resolved.stated_by->name);
  const Fields& stating = stated_by ? stated_by->fields : sheet;
  entry.source = entry.has("source") && entry.declaration ? entry.record("source") : stating.record("source");
  entry.checked =
      entry.has("checked") && entry.declaration ? entry.record("checked") : stating.record("checked");
  entry.status = entry.declaration && entry.has("status") ? entry.text("status") : stating.text("status");
  if (entry.declaration) add_cautions(entry, entry.cautions);
  add_cautions(sheet, entry.cautions);
  const Value* critical = entry.declaration ? entry.value("critical") : nullptr;
  entry.critical = critical ? entry.flag("critical")
                            : is_critical_assembly(sheet.assembly()) && carries_figures(entry.kind);
  entry.formerly = former_addresses(entry);
  if (!sheet.borrowed && !resolved_sheet.base_missing && !resolved.like_missing) require_entry(entry);
}

void Linker::add_cautions(const Fields& fields, std::vector<const Caution*>& cautions) {
  for (const Value& value : fields.values("cautions")) {
    if (value.text.empty()) continue;
    const Caution* caution = out_.caution_named(value.text);
    if (caution) {
      if (std::ranges::find(cautions, caution) == cautions.end()) cautions.push_back(caution);
      continue;
    }
    if (!unread_.empty()) continue;  // the glossary may be among them
    std::vector<std::string_view> names;
    for (const auto& [name, known] : out_.cautions_) names.push_back(name);
    std::ranges::sort(names);
    sink_.error(rule::unknown_caution, value.where,
                "no words sheet has a caution " + quoted(value.text) + did_you_mean(value.text, names));
  }
}

// An inherited entry's gaps are its base's to report.
void Linker::require_entry(const LinkedEntry& entry) {
  if (!entry.declaration || entry.inherited) return;
  if (!entry.has("name"))
    sink_.error(rule::missing_key, entry.where, quoted(entry.id) + " needs 'name', as name: fork top plug");
  require_fields(entry, entry_scope(*entry.declaration), quoted(entry.id), entry.where, sink_);
}

void Linker::check_references(ResolvedSheet& resolved, const Fields& fields) {
  for (const Field* field : fields.all()) {
    if (field->key() == "like") continue;  // looked up when it was taken from
    for (const Value& value : field->values) {
      if (const Address* address = value.as<Address>()) resolver_.look_up(resolved, *address, value.where);
      if (const Fields* record = value.as<Fields>()) check_references(resolved, *record);
      if (const Variants* variants = value.as<Variants>()) {
        for (const Variant& variant : *variants) check_references(resolved, variant.fields);
      }
    }
  }
}

// Each of the entry's names under each of the sheet's, but for the present address.
std::vector<std::string> Linker::former_addresses(const LinkedEntry& entry) {
  std::vector<std::string> sheets = {entry.sheet->name}, ids = {entry.id}, addresses;
  for (const Value& name : entry.sheet->values("formerly")) sheets.push_back(name.text);
  for (const Value& name : entry.declaration ? entry.values("formerly") : std::vector<Value>{}) {
    if (name.text.find('/') == std::string::npos)
      ids.push_back(name.text);
    else
      addresses.push_back(name.text);
  }
  for (const std::string& sheet : sheets) {
    for (const std::string& id : ids) {
      const std::string address = sheet + "/" + id;
      if (address != entry.address && is_name(sheet) && is_name(id)) addresses.push_back(address);
    }
  }
  return addresses;
}

void Linker::index(LinkedSheet& sheet) {
  out_.by_name_.emplace(sheet.name, &sheet);
  if (sheet.form->name != "table") return;
  std::vector<const LinkedEntry*>& rows = out_.rows_[std::string(sheet.row_kind)];
  for (const LinkedEntry& entry : sheet.entries) rows.push_back(&entry);
}

}  // namespace sheafc
