// SPDX-License-Identifier: GPL-2.0-or-later
// The library keeps every value in its canonical text, so reading it back is reading it by its type. What a
// record keeps apart (name, source, cautions ...) is put back among the fields.
#include "compiler/link/borrow.h"

#include <algorithm>
#include <set>

#include "compiler/link/references.h"
#include "compiler/sheet/forms.h"
#include "compiler/sheet/read_scalar.h"
#include "compiler/sheet/read_sections.h"
#include "compiler/source/file_names.h"
#include "query/library/library.h"

namespace sheafc {
namespace {

using sheaf::EntryRecord;
using sheaf::FieldDeclaration;
using sheaf::FieldRecord;
using sheaf::SheetRecord;
using sheaf::ValueType;

// "other-numbers.1.supplier" under "other-numbers": "1" and "supplier".
bool is_below(std::string_view key, std::string_view parent) {
  return key.size() > parent.size() && key.starts_with(parent) && key[parent.size()] == '.';
}

template <typename Record>
void put(std::vector<FieldRecord>& fields, std::string key, const std::string& text, const Record& record) {
  if (!text.empty()) fields.push_back({std::move(key), text, record.place});
}

class Borrower {
 public:
  Borrower(const std::string& library, const SheetRecord& record) : library_(library), record_(record) {}

  std::shared_ptr<Sheet> sheet() {
    sheet_ = std::make_unique<Sheet>();
    sheet_->name = record_.name;
    sheet_->form = &form_named(record_.form);
    sheet_->path = record_.place.file;
    sheet_->place = place(record_.place);
    sheet_->fields = fields(sheet_records(), sheet_->form->fields);
    read_columns();
    read_entries();
    read_cautions();
    return std::move(sheet_);
  }

 private:
  Span place(const sheaf::Place& at) {
    if (at.file != last_file_ || shown_file_.empty()) {
      last_file_ = at.file;
      shown_file_ = kept_file_name(library_ + ":" + at.file);
    }
    return {shown_file_, at.line, 1, 1};
  }

  Fields fields(const std::vector<FieldRecord>& records, const Scope& scope) {
    Fields all;
    for (const FieldDeclaration* declaration : scope) {
      if (const Field* field = this->field(records, *declaration)) all.add(field);
    }
    return all;
  }

  const Field* field(const std::vector<FieldRecord>& records, const FieldDeclaration& declaration) {
    Field field{&declaration, {}, {}};
    if (declaration.type == ValueType::record)
      read_records(field, records);
    else
      read_values(field, records);
    if (field.values.empty()) return nullptr;
    field.key_place = field.values.front().where;
    return sheet_->keep(std::move(field));
  }

  void read_values(Field& field, const std::vector<FieldRecord>& records) {
    if (field.declaration->type == ValueType::allowances || field.declaration->type == ValueType::variants)
      return;
    for (const FieldRecord& record : records) {
      if (record.key != field.key()) continue;
      auto scalar = read_scalar(*field.declaration, record.text);
      if (!scalar) continue;  // of a word that this compiler does not know: nothing can depend on it
      Scalar read = at_home(std::move(scalar).value());
      field.values.push_back({std::move(read.text), std::move(read.meaning), place(record.place)});
    }
  }

  // An address of the sheet itself is relative again: on a sheet based on this one it means that one's entry.
  Scalar at_home(Scalar scalar) const {
    const Address* address = scalar.meaning.as<Address>();
    if (!address || address->sheet != record_.name) return scalar;
    return {address->entry, Meaning(Address{{}, address->entry})};
  }

  // The records below the key, those of a list parted by their number.
  void read_records(Field& field, const std::vector<FieldRecord>& records) {
    std::vector<std::pair<std::string, std::vector<FieldRecord>>> groups;
    for (const FieldRecord& record : records) {
      if (!is_below(record.key, field.key())) continue;
      std::string rest = record.key.substr(field.key().size() + 1);
      std::string number;
      if (field.declaration->many) {
        const std::size_t point = std::min(rest.find('.'), rest.size());
        number = rest.substr(0, point);
        rest.erase(0, std::min(point + 1, rest.size()));
      }
      if (groups.empty() || groups.back().first != number)
        groups.emplace_back(number, std::vector<FieldRecord>{});
      groups.back().second.push_back({std::move(rest), record.text, record.place});
    }
    for (const auto& [number, parts] : groups) {
      field.values.push_back(
          {{}, Meaning(fields(parts, record_scope(*field.declaration))), place(parts.front().place)});
    }
  }

  std::vector<FieldRecord> sheet_records() const {
    std::vector<FieldRecord> records = record_.fields;
    put(records, "sheet", record_.name, record_);
    put(records, "title", record_.title, record_);
    put(records, "assembly", record_.assembly, record_);
    put(records, "table", record_.row_kind, record_);
    put(records, "maker", record_.maker, record_);
    put(records, "invented", record_.invented ? "yes" : "", record_);
    for (const auto& caution : record_.cautions) {
      if (record_.form != "words") put(records, "cautions", caution.name, record_);
    }
    put_fits(records);
    put_source(records, record_.source, record_);
    put_check(records, record_.checked, record_);
    return records;
  }

  void put_fits(std::vector<FieldRecord>& records) const {
    for (std::size_t i = 0; i < record_.fits.size(); ++i) {
      const sheaf::FitRecord& fit = record_.fits[i];
      const std::string key = "fits." + std::to_string(i + 1) + ".";
      put(records, key + "make", fit.make, record_);
      put(records, key + "model", fit.model, record_);
      if (fit.year_from || fit.year_to)
        put(records, key + "years", to_text(Years{fit.year_from, fit.year_to}), record_);
      put(records, key + "market", fit.market, record_);
      if (!fit.frame_from.empty() || !fit.frame_to.empty())
        put(records, key + "frames", to_text(Frames{fit.frame_from, fit.frame_to}), record_);
      put(records, key + "note", fit.note, record_);
    }
  }

  template <typename Record>
  static void put_source(std::vector<FieldRecord>& records, const sheaf::SourceRecord& source,
                         const Record& of) {
    put(records, "source.title", source.title, of);
    put(records, "source.publisher", source.publisher, of);
    put(records, "source.edition", source.edition, of);
    if (source.year) put(records, "source.year", std::to_string(source.year), of);
    put(records, "source.page", source.page, of);
    put(records, "source.note", source.note, of);
  }

  template <typename Record>
  static void put_check(std::vector<FieldRecord>& records, const sheaf::CheckRecord& check,
                        const Record& of) {
    put(records, "checked.on", check.on, of);
    put(records, "checked.by", check.by, of);
    put(records, "checked.against", check.against, of);
    put(records, "checked.second", check.second, of);
  }

  void read_columns() {
    if (record_.form != "table") return;
    sheet_->row_kind = sheet_->fields.text("table");
    sheet_->key_column = sheet_->fields.text("key");
    for (const FieldRecord& record : record_.fields) {
      if (!is_below(record.key, "columns")) continue;
      const std::string_view name = sheet_->keep(record.key.substr(std::string_view("columns.").size()));
      if (auto column = column_of(name, record.text, *sheet_)) {
        column->place = place(record.place);
        sheet_->columns.push_back(*column);
      }
    }
  }

  void read_entries() {
    for (std::size_t i = 0; i < record_.entries.size();) {
      std::size_t end = i + 1;
      while (end < record_.entries.size() && record_.entries[end].address == record_.entries[i].address)
        ++end;
      read_entry({record_.entries.data() + i, end - i});
      i = end;
    }
  }

  void read_entry(std::span<const EntryRecord> variants) {
    const EntryRecord& first = variants.front();
    Entry entry;
    entry.id = first.address.substr(first.address.find('/') + 1);
    entry.place = place(first.place);
    entry.declaration = sheaf::kind_named(first.kind);
    if (!entry.declaration) {
      if (sheet_->row_kind != first.kind) return;
      entry.kind = sheet_->row_kind;
      entry.fields = cells(first);
    } else {
      entry.kind = entry.declaration->name;
      entry.carries_source = differs_in_source(first);
      entry.fields = fields(entry_records(first), entry_scope(*entry.declaration));
      if (!first.variant.empty()) entry.fields.put(variants_field(variants, *entry.declaration));
    }
    sheet_->entries.push_back(std::move(entry));
  }

  Fields cells(const EntryRecord& row) {
    Fields cells;
    for (const Column& column : sheet_->columns) {
      for (const FieldRecord& record : row.fields) {
        if (record.key != column.name) continue;
        auto scalar = column.type == Column::Type::number ? read_cell(column, record.text)
                                                          : read_scalar(*column.declaration, record.text);
        if (!scalar) continue;
        Scalar read = std::move(scalar).value();
        Field field{column.declaration, column.place, {}};
        field.values.push_back({std::move(read.text), std::move(read.meaning), place(record.place)});
        cells.add(sheet_->keep(std::move(field)));
      }
    }
    return cells;
  }

  bool differs_in_source(const EntryRecord& entry) const {
    const sheaf::SourceRecord& own = entry.source;
    const sheaf::SourceRecord& of_sheet = record_.source;
    return own.title != of_sheet.title || own.edition != of_sheet.edition || own.year != of_sheet.year ||
           own.page != of_sheet.page;
  }

  std::vector<FieldRecord> entry_records(const EntryRecord& entry) const {
    std::vector<FieldRecord> records = entry.fields;
    put(records, "name", entry.name, entry);
    put(records, "status", entry.status, entry);
    for (const auto& caution : entry.cautions) put(records, "cautions", caution.name, entry);
    if (differs_in_source(entry)) {
      put_source(records, entry.source, entry);
      put_check(records, entry.checked, entry);
    }
    for (const auto& withdrawn : entry.withdrawn) {
      put(records, "withdrawn.on", withdrawn.on, entry);
      put(records, "withdrawn.reason", withdrawn.reason, entry);
      put(records, "withdrawn.instead", withdrawn.instead, entry);
    }
    return records;
  }

  // Each variant with all its fields: those that hold for all do no harm when they are said twice.
  const Field* variants_field(std::span<const EntryRecord> entries, const sheaf::KindDeclaration& kind) {
    Variants variants;
    for (const EntryRecord& entry : entries) {
      std::vector<FieldRecord> records = entry_records(entry);
      put_when(records, entry);
      variants.push_back({fields(records, variant_scope(kind)), place(entry.place)});
    }
    Field field{find_in(entry_scope(kind), "variants"), place(entries.front().place), {}};
    field.values.push_back({{}, Meaning(std::move(variants)), field.key_place});
    return sheet_->keep(std::move(field));
  }

  // "2011..2012, frames ..HK4-004999, market north"
  static void put_when(std::vector<FieldRecord>& records, const EntryRecord& entry) {
    std::string_view rest = entry.variant;
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find(", "), rest.size());
      const std::string_view part = rest.substr(0, end);
      if (part.starts_with("frames "))
        put(records, "frames", std::string(part.substr(7)), entry);
      else if (part.starts_with("market "))
        put(records, "market", std::string(part.substr(7)), entry);
      else
        put(records, "years", std::string(part), entry);
      rest.remove_prefix(std::min(end + 2, rest.size()));
    }
  }

  void read_cautions() {
    if (record_.form != "words") return;
    for (const sheaf::CautionRecord& record : record_.cautions) {
      std::vector<FieldRecord> records = {{"text", record.text, record_.place}};
      for (const FieldRecord& field : record_.fields) {
        if (field.key == "cautions." + record.name + ".about")
          records.push_back({"about", field.text, field.place});
      }
      sheet_->cautions.push_back(
          {record.name, record.text, fields(records, caution_scope()), place(record_.place)});
    }
  }

  const std::string& library_;
  const SheetRecord& record_;
  std::shared_ptr<Sheet> sheet_;
  std::string last_file_;
  std::string_view shown_file_;
};

bool is_always_needed(const SheetRecord& sheet) {
  return sheet.form == "table" || (sheet.form == "words" && !sheet.cautions.empty());
}

}  // namespace

sheaf::Result<std::vector<std::shared_ptr<Sheet>>> borrow_sheets(
    std::span<const std::string> libraries, std::span<const std::shared_ptr<Sheet>> sheets) {
  std::vector<std::shared_ptr<Sheet>> borrowed;
  if (libraries.empty()) return borrowed;  // whatever the sheets speak of
  std::set<std::string> wanted;
  for (const auto& sheet : sheets) {
    for (std::string& name : references_of(*sheet).all) wanted.insert(std::move(name));
  }
  std::set<std::string> taken;
  for (const std::string& path : libraries) {
    auto opened = sheaf::open_library(path);
    if (!opened) return opened.failure();
    sheaf::Library library = std::move(opened).value();
    const auto listed = library.sheets();
    if (!listed) return listed.failure();
    for (const SheetRecord& head : *listed) {
      const bool needed = wanted.contains(head.name) || is_always_needed(head);
      if (!needed || !taken.insert(head.name).second) continue;
      const auto whole = library.sheet(head.name);
      if (!whole) return whole.failure();
      borrowed.push_back(Borrower(library.facts().name, whole->front()).sheet());
    }
  }
  return borrowed;
}

}  // namespace sheafc
