// SPDX-License-Identifier: GPL-2.0-or-later
// Linked sheets as the library keeps them. What has a place of its own in a record (name, source, fits,
// cautions ...) is not repeated among its fields.
#include <algorithm>
#include <array>

#include "compiler/link/linked_sheets.h"
#include "compiler/sheet/forms.h"

namespace sheafc {
namespace {

using Keys = std::span<const std::string_view>;
constexpr std::array<std::string_view, 13> apart_of_entry = {
    "name", "without",  "cautions",  "source", "page",     "checked", "status",
    "fits", "formerly", "withdrawn", "allow",  "variants", "critical"};
constexpr std::array<std::string_view, 13> apart_of_sheet = {
    "sheet",    "allow",   "title", "assembly", "table",   "maker",   "invented",
    "based-on", "without", "fits",  "source",   "checked", "cautions"};

bool holds(Keys keys, std::string_view key) { return std::ranges::find(keys, key) != keys.end(); }

sheaf::SourceRecord source_of(const Fields* fields) {
  sheaf::SourceRecord source;
  if (!fields) return source;
  source.title = fields->text("title");
  source.publisher = fields->text("publisher");
  source.edition = fields->text("edition");
  source.page = fields->text("page");
  source.note = fields->text("note");
  source.year = fields->integer("year").value_or(0);
  return source;
}

sheaf::CheckRecord check_of(const Fields* fields) {
  sheaf::CheckRecord check;
  if (!fields) return check;
  check.on = fields->text("on");
  check.by = fields->text("by");
  check.against = fields->text("against");
  check.second = fields->text("second");
  return check;
}

std::vector<sheaf::FitRecord> fits_of(const std::vector<Fit>& fits) {
  std::vector<sheaf::FitRecord> records;
  for (const Fit& fit : fits) {
    records.push_back({fit.make, fit.model, fit.years.from, fit.years.to, fit.market, fit.frames.from,
                       fit.frames.to, fit.note});
  }
  return records;
}

class Recorder {
 public:
  Recorder(const LinkedSheets& sheets, const LinkedSheet& sheet) : sheets_(sheets), sheet_(sheet) {}

  sheaf::SheetRecord record();

 private:
  sheaf::EntryRecord record(const LinkedEntry& entry);
  sheaf::Place place(const Span& where) const {
    return {std::string(sheets_.path_of(where.file)), where.line};
  }
  std::string full(const Address& address) const {
    return (address.sheet.empty() ? sheet_.name : address.sheet) + "/" + address.entry;
  }

  void flatten(const Fields& fields, const std::string& prefix, Keys apart,
               std::vector<sheaf::FieldRecord>& out);
  void flatten(const Field& field, const std::string& prefix, std::vector<sheaf::FieldRecord>& out);

  // What a library that builds on this one must know besides the rows: "columns.pitch" is "mm".
  void add_columns(std::vector<sheaf::FieldRecord>& out) const {
    constexpr std::array<std::string_view, 7> names = {"",     "thread", "size",  "bearing",
                                                       "text", "number", "choice"};
    for (const Column& column : sheet_.sheet->columns) {
      const std::string_view type =
          column.unit ? column.unit->symbol : names[static_cast<std::size_t>(column.type)];
      out.push_back({"columns." + std::string(column.name), std::string(type), place(column.place)});
    }
  }

  // "cautions.spring-load.about" is "spring".
  void add_caution_subjects(std::vector<sheaf::FieldRecord>& out) const {
    for (const Caution& caution : sheet_.sheet->cautions) {
      for (const Value& about : caution.fields.values("about")) {
        out.push_back({"cautions." + caution.name + ".about", about.text, place(about.where)});
      }
    }
  }

  const LinkedSheets& sheets_;
  const LinkedSheet& sheet_;
};

void Recorder::flatten(const Fields& fields, const std::string& prefix, Keys apart,
                       std::vector<sheaf::FieldRecord>& out) {
  for (const Field* field : fields.all()) {
    if (!holds(apart, field->key())) flatten(*field, prefix, out);
  }
}

void Recorder::flatten(const Field& field, const std::string& prefix, std::vector<sheaf::FieldRecord>& out) {
  const std::string key = prefix + std::string(field.key());
  for (std::size_t i = 0; i < field.values.size(); ++i) {
    const Value& value = field.values[i];
    if (const Fields* record = value.as<Fields>()) {
      flatten(*record, key + (field.declaration->many ? "." + std::to_string(i + 1) : "") + ".", {}, out);
      continue;
    }
    const Address* address = value.as<Address>();
    out.push_back({key, address ? full(*address) : value.text, place(value.where)});
  }
}

sheaf::EntryRecord Recorder::record(const LinkedEntry& entry) {
  sheaf::EntryRecord record;
  record.address = entry.address;
  record.variant = entry.variant;
  record.kind = entry.kind;
  record.name = entry.name;
  flatten(entry, "", entry.declaration ? Keys(apart_of_entry) : Keys(), record.fields);
  record.fits = fits_of(entry.fits);
  for (const Caution* caution : entry.cautions) record.cautions.push_back({caution->name, caution->text});
  record.source = source_of(entry.source);
  if (entry.declaration && entry.has("page") && !entry.has("source")) record.source.page = entry.text("page");
  record.checked = check_of(entry.checked);
  record.status = entry.status;
  if (const Fields* withdrawn = entry.declaration ? entry.Fields::record("withdrawn") : nullptr) {
    const Address* instead = withdrawn->reference("instead");
    record.withdrawn.push_back({std::string(withdrawn->text("on")), std::string(withdrawn->text("reason")),
                                instead ? full(*instead) : ""});
  }
  record.formerly = entry.formerly;
  record.critical = entry.critical;
  record.place = place(entry.where);
  return record;
}

sheaf::SheetRecord Recorder::record() {
  sheaf::SheetRecord record;
  record.name = sheet_.name;
  record.form = sheet_.form->name;
  record.title = sheet_.title();
  record.assembly = sheet_.assembly();
  record.maker = sheet_.text("maker");
  record.row_kind = sheet_.row_kind;
  flatten(sheet_, "", apart_of_sheet, record.fields);
  add_columns(record.fields);
  add_caution_subjects(record.fields);
  record.fits = fits_of(sheet_.fits);
  record.source = source_of(sheet_.Fields::record("source"));
  record.checked = check_of(sheet_.Fields::record("checked"));
  for (const Value& name : sheet_.values("cautions")) {
    if (const Caution* caution = sheets_.caution_named(name.text))
      record.cautions.push_back({caution->name, caution->text});
  }
  for (const Caution& caution : sheet_.sheet->cautions)
    record.cautions.push_back({caution.name, caution.text});
  record.entries.reserve(sheet_.entries.size());
  for (const LinkedEntry& entry : sheet_.entries) record.entries.push_back(this->record(entry));
  record.invented = sheet_.flag("invented");
  record.place = place(sheet_.where());
  return record;
}

void add_words(const WordGroup& group, std::string_view key, std::string_view language,
               std::vector<sheaf::WordRecord>& words) {
  bool first = true;
  for (const Value& value : group.fields.values(key)) {
    words.push_back({group.name, value.text, std::string(language), key == "same" && first, key == "never"});
    first = false;
  }
}

}  // namespace

sheaf::SheetRecord record_of(const LinkedSheets& sheets, const LinkedSheet& sheet) {
  return Recorder(sheets, sheet).record();
}

std::vector<sheaf::WordRecord> words_of(const LinkedSheets& sheets) {
  std::vector<sheaf::WordRecord> words;
  for (const WordGroup* group : sheets.words()) {
    add_words(*group, "same", "en", words);
    for (const std::string_view language : word_languages()) add_words(*group, language, language, words);
    add_words(*group, "never", "en", words);
  }
  return words;
}

sheaf::LibraryContent content_of(const LinkedSheets& sheets, std::string name) {
  sheaf::LibraryContent content;
  content.name = std::move(name);
  for (const LinkedSheet& sheet : sheets.own()) content.sheets.push_back(record_of(sheets, sheet));
  content.words = words_of(sheets);
  return content;
}

}  // namespace sheafc
