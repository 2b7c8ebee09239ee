// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/compiler/emit/written_library.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>

namespace sheaf::test {

sheafc::Receipt write(const LibraryContent& content, const std::string& path, sheafc::EmitOptions options) {
  const auto receipt = sheafc::write_library(content, path, options);
  if (!receipt) FAIL(receipt.failure().message);
  return *receipt;
}

Library open(const std::string& path) {
  auto library = open_library(path);
  if (!library) FAIL(library.failure().message);
  return std::move(library).value();
}

std::string refusal(const std::string& path) {
  const auto library = open_library(path);
  return library ? "" : library.failure().message;
}

namespace {

// `written` is what lies at that address or under that name.
template <typename Record>
void count(const Result<std::vector<Record>>& read, const std::vector<Record>& written, Answers& answers) {
  if (!read) {
    ++answers.refused;
    return;
  }
  for (const Record& record : *read) answers.wrong += std::ranges::find(written, record) == written.end();
  for (const Record& record : written) answers.missed += std::ranges::find(*read, record) == read->end();
}

}  // namespace

Answers ask_for_everything(const std::string& path, const LibraryContent& content) {
  Answers answers;
  auto opened = open_library(path);
  if (!opened) return answers;
  answers.opened = true;
  Library library = std::move(opened).value();
  for (const SheetRecord& sheet : content.sheets) {
    count(library.sheet(sheet.name), {sheet}, answers);
    std::map<std::string, std::vector<EntryRecord>> by_address;
    for (const EntryRecord& entry : sheet.entries) by_address[entry.address].push_back(entry);
    for (const auto& [address, entries] : by_address) count(library.entries_at(address), entries, answers);
  }
  count(library.words(), content.words, answers);
  return answers;
}

}  // namespace sheaf::test
