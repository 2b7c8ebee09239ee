// SPDX-License-Identifier: GPL-2.0-or-later
// Part of the format: a change here, or in what SQL says of bodies (schema.cc), is a new format.
#include "query/library/row_body.h"

#include <algorithm>

#include "query/library/body_text.h"
#include "query/library/field_band.h"
#include "query/library/hash.h"
#include "query/library/row_checksum.h"

namespace sheaf {
namespace {

// What is shared is a place in a list here.
struct FieldBody {
  std::string key, text;
  int line = 0;
  std::uint32_t file = 0;
  std::string dimension;
  std::optional<double> least, most;  // for SQL alone
  friend bool operator==(const FieldBody&, const FieldBody&) = default;
};

struct SheetBody {
  std::string form, title, assembly, maker, row_kind;
  int line = 0;
  bool invented = false;
  std::vector<FieldBody> fields;
  SharedLists shared;
};

struct EntryBody {
  std::string kind, name;
  int line = 0;
  std::vector<FieldBody> fields;
  std::string status, variant;
  bool critical = false;
  std::uint32_t fits = 0, cautions = 0, source = 0, reading = 0, file = 0;
  std::vector<std::string> formerly;
  std::vector<WithdrawalRecord> withdrawn;
};

}  // namespace

template <typename Body, Like<FitRecord> Fit>
void pass(Body& body, Fit& fit) {
  body.whole_record(fit.make, fit.model, fit.year_from, fit.year_to, fit.market, fit.frame_from, fit.frame_to,
                    fit.note);
}

template <typename Body, Like<CautionRecord> Caution>
void pass(Body& body, Caution& caution) {
  body.whole_record(caution.name, caution.text);
}

template <typename Body, Like<SourceRecord> Source>
void pass(Body& body, Source& source) {
  body.whole_record(source.title, source.publisher, source.edition, source.year, source.page, source.note);
}

template <typename Body, Like<CheckRecord> Reading>
void pass(Body& body, Reading& reading) {
  body.whole_record(reading.on, reading.by, reading.against, reading.second);
}

template <typename Body, Like<WithdrawalRecord> Withdrawal>
void pass(Body& body, Withdrawal& withdrawal) {
  body.whole_record(withdrawal.on, withdrawal.reason, withdrawal.instead);
}

namespace {

template <typename Body, Like<FieldBody> Field>
void pass(Body& body, Field& field) {
  body.record(field.key, field.text, field.line, field.file, field.dimension, field.least, field.most);
}

template <typename Body, Like<SheetBody> Sheet>
void pass(Body& body, Sheet& sheet) {
  body.record(sheet.form, sheet.title, sheet.assembly, sheet.maker, sheet.row_kind, sheet.line,
              sheet.invented, sheet.fields, sheet.shared.files, sheet.shared.fits, sheet.shared.cautions,
              sheet.shared.sources, sheet.shared.readings);
}

template <typename Body, Like<EntryBody> Entry>
void pass(Body& body, Entry& entry) {
  body.record(entry.kind, entry.name, entry.line, entry.fields, entry.status, entry.variant, entry.critical,
              entry.fits, entry.cautions, entry.source, entry.reading, entry.file, entry.formerly,
              entry.withdrawn);
}

template <typename Body>
std::string written(const Body& body) {
  BodyWriter writer;
  writer.value(body);
  return writer.take();
}

template <typename Body>
std::optional<Body> read(std::string_view text) {
  std::optional<Body> body(std::in_place);
  BodyReader reader(text);
  reader.value(*body);
  if (!reader.has_read_all()) body.reset();
  return body;
}

template <typename Record>
std::uint32_t place_in(std::vector<Record>& list, const Record& record) {
  const auto found = std::ranges::find(list, record);
  const auto place = static_cast<std::uint32_t>(found - list.begin());
  if (found == list.end()) list.push_back(record);
  return place;
}

std::vector<FieldBody> bodies_of(std::string_view kind, const std::vector<FieldRecord>& fields,
                                 SharedLists& shared) {
  std::vector<FieldBody> bodies;
  bodies.reserve(fields.size());
  for (const FieldRecord& field : fields) {
    FieldBody& body = bodies.emplace_back();
    body = {field.key, field.text, field.place.line, place_in(shared.files, field.place.file), "", {}, {}};
    if (kind.empty()) continue;
    if (const auto bands = figures_of(kind, field).bands; !bands.empty()) {
      body.dimension = name_of(bands.front().dimension);
      body.least = bands.front().least;
      body.most = bands.front().most;
    }
  }
  return bodies;
}

std::string body_of(const EntryRecord& entry, SharedLists& shared) {
  EntryBody body;
  body.kind = entry.kind;
  body.name = entry.name;
  body.line = entry.place.line;
  body.fields = bodies_of(entry.kind, entry.fields, shared);
  body.status = entry.status;
  body.variant = entry.variant;
  body.critical = entry.critical;
  body.fits = place_in(shared.fits, entry.fits);
  body.cautions = place_in(shared.cautions, entry.cautions);
  body.source = place_in(shared.sources, entry.source);
  body.reading = place_in(shared.readings, entry.checked);
  body.file = place_in(shared.files, entry.place.file);
  body.formerly = entry.formerly;
  body.withdrawn = entry.withdrawn;
  return written(body);
}

// False, if one of them names no file.
bool take_fields(std::vector<FieldBody>& bodies, const SharedLists& shared,
                 std::vector<FieldRecord>& fields) {
  fields.reserve(bodies.size());
  for (FieldBody& body : bodies) {
    if (body.file >= shared.files.size()) return false;
    fields.push_back({std::move(body.key), std::move(body.text), {shared.files[body.file], body.line}});
  }
  return true;
}

}  // namespace

SheetBodies bodies_of(const SheetRecord& sheet) {
  SheetBody body;
  SharedLists& shared = body.shared;
  shared = {{sheet.place.file}, {sheet.fits}, {sheet.cautions}, {sheet.source}, {sheet.checked}};
  body.form = sheet.form;
  body.title = sheet.title;
  body.assembly = sheet.assembly;
  body.maker = sheet.maker;
  body.row_kind = sheet.row_kind;
  body.line = sheet.place.line;
  body.invented = sheet.invented;
  body.fields = bodies_of("", sheet.fields, shared);
  SheetBodies bodies;
  bodies.entries.reserve(sheet.entries.size());
  for (const EntryRecord& entry : sheet.entries) bodies.entries.push_back(body_of(entry, shared));
  bodies.sheet = written(body);
  return bodies;
}

std::uint64_t hash_of(const SheetRecord& sheet, const SheetBodies& bodies) {
  std::string checksums = std::to_string(row_checksum({}, {sheet.name, bodies.sheet}));
  for (std::size_t i = 0; i < bodies.entries.size(); ++i) {
    checksums += ' ' + std::to_string(row_checksum({}, {sheet.entries[i].address, bodies.entries[i]}));
  }
  return hash_of(checksums);
}

std::optional<SheetFromBody> sheet_from_body(std::string_view name, std::string_view text) {
  auto body = read<SheetBody>(text);
  if (!body) return std::nullopt;
  SheetFromBody made{{}, std::move(body->shared)};
  const SharedLists& shared = made.shared;
  if (shared.files.empty() || shared.fits.empty() || shared.cautions.empty() || shared.sources.empty() ||
      shared.readings.empty()) {
    return std::nullopt;
  }
  SheetRecord& sheet = made.sheet;
  sheet.name = name;
  sheet.form = std::move(body->form);
  sheet.title = std::move(body->title);
  sheet.assembly = std::move(body->assembly);
  sheet.maker = std::move(body->maker);
  sheet.row_kind = std::move(body->row_kind);
  sheet.place = {shared.files.front(), body->line};
  sheet.invented = body->invented;
  sheet.fits = shared.fits.front();
  sheet.cautions = shared.cautions.front();
  sheet.source = shared.sources.front();
  sheet.checked = shared.readings.front();
  if (!take_fields(body->fields, shared, sheet.fields)) return std::nullopt;
  return made;
}

std::optional<EntryRecord> entry_from_body(std::string_view address, std::string_view text,
                                           const SharedLists& shared) {
  auto body = read<EntryBody>(text);
  if (!body) return std::nullopt;
  if (body->fits >= shared.fits.size() || body->cautions >= shared.cautions.size() ||
      body->source >= shared.sources.size() || body->reading >= shared.readings.size() ||
      body->file >= shared.files.size()) {
    return std::nullopt;
  }
  EntryRecord entry;
  entry.address = address;
  entry.kind = std::move(body->kind);
  entry.name = std::move(body->name);
  entry.place = {shared.files[body->file], body->line};
  entry.status = std::move(body->status);
  entry.variant = std::move(body->variant);
  entry.critical = body->critical;
  entry.fits = shared.fits[body->fits];
  entry.cautions = shared.cautions[body->cautions];
  entry.source = shared.sources[body->source];
  entry.checked = shared.readings[body->reading];
  entry.formerly = std::move(body->formerly);
  entry.withdrawn = std::move(body->withdrawn);
  if (!take_fields(body->fields, shared, entry.fields)) return std::nullopt;
  return entry;
}

}  // namespace sheaf
