// SPDX-License-Identifier: GPL-2.0-or-later
#include <array>

#include "query/answer/dump.h"

namespace sheaf {
namespace {

using Row = std::vector<std::string>;

std::string yes(bool flag) { return flag ? "yes" : "no"; }
std::string year(int number) { return number == 0 ? "" : std::to_string(number); }

Row joined(Row row, const Row& more) {
  row.insert(row.end(), more.begin(), more.end());
  return row;
}

Row cells(const Place& place) { return {place.file, std::to_string(place.line)}; }
Row cells(const SourceRecord& source, const CheckRecord& checked) {
  return {source.title, source.publisher, source.edition, year(source.year), source.page,
          source.note,  checked.on,       checked.by,     checked.against,   checked.second};
}
const Row source_columns = {"source-title",    "source-publisher", "source-edition", "source-year",
                            "source-page",     "source-note",      "checked-on",     "checked-by",
                            "checked-against", "checked-second"};

}  // namespace

std::span<const DumpTable> dump_tables() {
  static const std::array<DumpTable, 9> tables = {{
      {"sheets", "a sheet",
       joined(joined({"sheet", "form", "title", "assembly", "maker", "row-kind", "invented"}, source_columns),
              {"file", "line"})},
      {"sheet-fields", "a value of a field of a sheet", {"sheet", "field", "text", "file", "line"}},
      {"entries", "an entry, or one variant of it",
       joined(joined({"id", "address", "variant", "kind", "name", "status", "critical", "withdrawn-on",
                      "withdrawn-reason", "withdrawn-instead"},
                     source_columns),
              {"file", "line"})},
      {"fields",
       "a value of a field of an entry",
       {"id", "address", "variant", "field", "text", "file", "line"}},
      {"fits",
       "a machine that an entry is for",
       {"id", "address", "variant", "make", "model", "year-from", "year-to", "market", "frame-from",
        "frame-to", "note"}},
      {"cautions", "a caution beside an entry", {"id", "address", "variant", "caution", "text"}},
      {"former-addresses", "an address that an entry had", {"former-address", "id", "address", "variant"}},
      {"machines", "a machine, with all its years", {"make", "model", "year-from", "year-to"}},
      {"words", "a word of the glossary", {"group", "word", "language", "main", "never"}},
  }};
  return tables;
}

Rows dump_rows(std::string_view table, const SheetRecord& sheet) {
  Rows rows;
  if (table == "sheets") {
    rows.push_back(joined(joined({sheet.name, sheet.form, sheet.title, sheet.assembly, sheet.maker,
                                  sheet.row_kind, yes(sheet.invented)},
                                 cells(sheet.source, sheet.checked)),
                          cells(sheet.place)));
  } else if (table == "sheet-fields") {
    for (const FieldRecord& field : sheet.fields)
      rows.push_back(joined({sheet.name, field.key, field.text}, cells(field.place)));
  }
  return rows;
}

Rows dump_rows(std::string_view table, EntryId id, const EntryRecord& entry) {
  Rows rows;
  const Row self = {std::to_string(id), entry.address, entry.variant};
  if (table == "entries") {
    const WithdrawalRecord withdrawn = entry.withdrawn.empty() ? WithdrawalRecord{} : entry.withdrawn.front();
    rows.push_back(joined(joined(joined(self, {entry.kind, entry.name, entry.status, yes(entry.critical),
                                               withdrawn.on, withdrawn.reason, withdrawn.instead}),
                                 cells(entry.source, entry.checked)),
                          cells(entry.place)));
  } else if (table == "fields") {
    for (const FieldRecord& field : entry.fields)
      rows.push_back(joined(joined(self, {field.key, field.text}), cells(field.place)));
  } else if (table == "fits") {
    for (const FitRecord& fit : entry.fits)
      rows.push_back(joined(self, {fit.make, fit.model, year(fit.year_from), year(fit.year_to), fit.market,
                                   fit.frame_from, fit.frame_to, fit.note}));
  } else if (table == "cautions") {
    for (const CautionRecord& caution : entry.cautions)
      rows.push_back(joined(self, {caution.name, caution.text}));
  } else if (table == "former-addresses") {
    for (const std::string& address : entry.formerly) rows.push_back(joined({address}, self));
  }
  return rows;
}

Rows dump_rows(std::string_view table, const Machine& machine) {
  if (table != "machines") return {};
  return {{machine.make, machine.model, year(machine.year_from), year(machine.year_to)}};
}

Rows dump_rows(std::string_view table, const WordRecord& word) {
  if (table != "words") return {};
  return {{word.group, word.word, word.language, yes(word.main), yes(word.never)}};
}

}  // namespace sheaf
