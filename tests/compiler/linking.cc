// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/compiler/linking.h"

#include <algorithm>

#include "compiler/link/addresses.h"

namespace sheafc {
namespace {

bool has_key(std::string_view text, std::string_view key) {
  const std::string line = std::string(key) + ":";
  return text.starts_with(line) || text.find("\n" + line) != std::string_view::npos;
}

std::string stem(const std::string& path) {
  const std::string name = path.substr(path.rfind('/') + 1);
  return name.substr(0, name.rfind('.'));
}

void complete(SheetText& sheet) {
  std::string& text = sheet.text;
  if (has_key(text, "title")) return;
  const bool glossary = text.find("\ncautions:\n") != std::string::npos;
  const bool words = has_key(text, "words") || glossary;
  if (!has_key(text, "sheet")) text += "sheet: " + stem(sheet.path) + "\n";
  text += "title: An example\n";
  if (words || has_key(text, "crib")) return;
  if (!has_key(text, "table") && !has_key(text, "assembly")) text += "assembly: fork\n";
  if (!has_key(text, "source")) text += "source: { title: Sorvane fork service leaflet 41 }\n";
  if (!has_key(text, "checked")) text += "checked: { on: 2026-10-02, by: workshop }\n";
}

}  // namespace

std::vector<SheetText> sheets_in(std::string_view text) {
  constexpr std::string_view mark = "# file: ";
  std::vector<SheetText> sheets;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end);
    if (line.starts_with(mark)) {
      sheets.push_back({std::string(line.substr(mark.size(), line.size() - mark.size() - 1)), {}});
    } else {
      if (sheets.empty()) sheets.push_back({"example.yaml", {}});
      sheets.back().text += line;
    }
  }
  for (SheetText& sheet : sheets) {
    if (sheet.path == "example.yaml" && has_key(sheet.text, "sheet")) {
      const std::size_t at = sheet.text.find("sheet: ") + 7;
      sheet.path = sheet.text.substr(at, sheet.text.find('\n', at) - at) + ".yaml";
    }
    complete(sheet);
  }
  return sheets;
}

std::vector<const LinkedEntry*> variants_at(const LinkedSheets& sheets, std::string_view address) {
  std::vector<const LinkedEntry*> variants;
  for (const auto* all : {&sheets.own(), &sheets.borrowed()}) {
    for (const LinkedSheet& sheet : *all) {
      for (const LinkedEntry& entry : sheet.entries) {
        if (entry.address == address) variants.push_back(&entry);
      }
    }
  }
  return variants;
}

const LinkedEntry* entry_at(const LinkedSheets& sheets, std::string_view address) {
  const auto variants = variants_at(sheets, address);
  if (!variants.empty()) return variants.front();
  for (const LinkedSheet& sheet : sheets.own()) {
    for (const LinkedEntry& entry : sheet.entries) {
      if (std::ranges::find(entry.formerly, address) != entry.formerly.end()) return &entry;
    }
  }
  return nullptr;
}

Linking::Linking(std::string_view text) {
  const std::vector<SheetText> texts = sheets_in(text);
  workspace = read_texts(texts, sink);
  linked = link_sheets(workspace.sheets, {}, sink, workspace.unread);
  report_taken_addresses(linked, sink);
  sink.sort();
}

std::string Linking::faults() const {
  std::string text;
  for (const Diagnostic& fault : sink.all()) {
    text += text.empty() ? "" : ", ";
    if (fault.where.file != workspace.files.front()->name()) text += std::string(fault.where.file) + ":";
    text += std::to_string(fault.where.line) + ":" + std::to_string(fault.where.column) + " " +
            std::string(fault.rule);
  }
  return text.empty() ? "none" : text;
}

}  // namespace sheafc
