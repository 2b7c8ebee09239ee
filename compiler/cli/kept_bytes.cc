// SPDX-License-Identifier: GPL-2.0-or-later
// The hash of the bytes stands behind them. A file is not synced: after a power cut one that lost its end is
// none.
#include "compiler/cli/kept_bytes.h"

#include <algorithm>
#include <cstdio>
#include <fstream>

#include "query/library/hash.h"
#include "query/library/whole_file.h"

namespace sheafc {
namespace {

constexpr std::size_t hash_length = 16;
constexpr std::size_t longest_file = std::size_t{8} << 30;

}  // namespace

void KeptWriter::number(std::int64_t value) {
  char eight[8];
  std::memcpy(eight, &value, sizeof eight);
  bytes_.append(eight, sizeof eight);
}

void KeptWriter::text(std::string_view value) {
  number(std::uint64_t{value.size()});
  bytes_ += value;
}

void KeptWriter::diagnostic(const Diagnostic& diagnostic) {
  number(static_cast<std::int64_t>(diagnostic.severity));
  text(diagnostic.rule);
  text(diagnostic.where.file);
  for (const int value : {diagnostic.where.line, diagnostic.where.column, diagnostic.where.length})
    number(std::int64_t{value});
  text(diagnostic.message);
  number(std::uint64_t{diagnostic.notes.size()});
  for (const Diagnostic& note : diagnostic.notes) this->diagnostic(note);
}

void KeptWriter::diagnostics(const Diagnostics& all) {
  number(std::uint64_t{all.all().size()});
  for (const Diagnostic& one : all.all()) diagnostic(one);
}

std::int64_t KeptReader::fail() {
  failed_ = true;
  rest_ = {};
  return 0;
}

std::int64_t KeptReader::number() {
  std::int64_t value = 0;
  if (rest_.size() < sizeof value) return fail();
  std::memcpy(&value, rest_.data(), sizeof value);
  rest_.remove_prefix(sizeof value);
  return value;
}

std::uint64_t KeptReader::count() {
  const auto value = static_cast<std::uint64_t>(number());
  return value > rest_.size() ? static_cast<std::uint64_t>(fail()) : value;
}

std::string KeptReader::text() {
  const std::uint64_t size = count();
  std::string value(rest_.substr(0, size));
  rest_.remove_prefix(size);
  return value;
}

Diagnostic KeptReader::diagnostic(int depth) {
  Diagnostic diagnostic;
  diagnostic.severity = static_cast<Severity>(std::clamp<std::int64_t>(number(), 0, 2));
  diagnostic.rule = texts_.emplace_back(text());
  diagnostic.where.file = texts_.emplace_back(text());
  for (int* value : {&diagnostic.where.line, &diagnostic.where.column, &diagnostic.where.length})
    *value = static_cast<int>(number());
  diagnostic.message = text();
  const std::uint64_t notes = count();
  if (notes > 0 && depth > 0) fail();
  for (std::uint64_t i = 0; i < notes && !failed_; ++i)
    diagnostic.notes.push_back(this->diagnostic(depth + 1));
  return diagnostic;
}

Diagnostics KeptReader::diagnostics() {
  Diagnostics all;
  for (std::uint64_t left = count(); left > 0 && !failed_; --left) all.report(diagnostic(0));
  return all;
}

void keep_bytes(const std::string& file, const std::string& bytes) {
  const std::string draft = file + ".new";  // two builds of one library at once may spoil it: see the hash
  std::ofstream out(draft, std::ios::binary | std::ios::trunc);
  out << bytes << sheaf::to_hexadecimal(sheaf::hash_of(bytes));
  out.close();
  if (!out || std::rename(draft.c_str(), file.c_str()) != 0) std::remove(draft.c_str());
}

std::optional<std::string> kept_bytes(const std::string& path) {
  auto file = sheaf::read_file(path, longest_file);
  if (!file || !*file || (*file)->size() < hash_length) return std::nullopt;
  std::string bytes = std::move(*std::move(file).value());
  const std::string hash = bytes.substr(bytes.size() - hash_length);
  bytes.resize(bytes.size() - hash_length);
  if (sheaf::to_hexadecimal(sheaf::hash_of(bytes)) != hash) return std::nullopt;
  return bytes;
}

}  // namespace sheafc
