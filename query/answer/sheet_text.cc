// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/sheet_text.h"

#include <algorithm>

#include "query/answer/answer_text.h"
#include "query/answer/text.h"
#include "query/library/vocabulary.h"

namespace sheaf {
namespace {

// What of the sheet's source and check an entry's line is made of.
EntryRecord as_entry(const SheetRecord& sheet) {
  EntryRecord entry;
  entry.source = sheet.source;
  entry.checked = sheet.checked;
  return entry;
}

std::string heading_of(const std::string& kind) {
  const auto* declared = kind_named(kind);
  return declared ? in_words(declared->section) : in_words(kind);
}

void write_head(Page& page, const SheetRecord& sheet) {
  page.line(Line(sheet.title, Tone::figure), 2);
  for (const auto& fit : sheet.fits) page.labelled("fits", Line(machine_line(fit)));
  for (const auto& field : sheet.fields) page.labelled(in_words(field.key), Line(field.text));
  for (const auto& caution : sheet.cautions) page.labelled("caution", Line(caution.text, Tone::caution));
  page.labelled("source", Line(source_line(as_entry(sheet))));
  if (!sheet.library.empty()) page.labelled("library", Line(sheet.library));
  const std::string invented = sheet.invented ? "Invented demonstration figures. " : "";
  page.labelled("", Line(invented + std::string(authority_notice), Tone::quiet));
}

std::vector<Line> entry_row(const SheetRecord& sheet, const EntryRecord& entry) {
  const Answer answer = build_answer(sheet, entry);
  std::string figure = entry.withdrawn.empty() ? short_figure(answer) : "withdrawn";
  std::string which = entry.variant.empty() ? "" : " (" + entry.variant + ")";
  return {Line(entry.address.substr(entry.address.find('/') + 1), Tone::quiet), Line(entry.name + which),
          Line(figure, Tone::figure)};
}

}  // namespace

void write_text(Page& page, const SheetRecord& sheet) {
  write_head(page, sheet);
  for (std::size_t i = 0; i < sheet.entries.size();) {
    const std::string& kind = sheet.entries[i].kind;
    page.blank();
    page.line(Line(heading_of(kind)), 2);
    std::vector<std::vector<Line>> rows;
    for (; i < sheet.entries.size() && sheet.entries[i].kind == kind; ++i)
      rows.push_back(entry_row(sheet, sheet.entries[i]));
    page.rows(rows, 4);
  }
}

}  // namespace sheaf
