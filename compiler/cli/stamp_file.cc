// SPDX-License-Identifier: GPL-2.0-or-later
// A stamp as bytes: numbers in eight bytes, texts and lists after their length, and the hash of it all before.
// What does not read back to its very end is no stamp.
#include <cstring>

#include "compiler/cli/stamp.h"
#include "query/library/hash.h"
#include "query/library/whole_file.h"

namespace sheafc {
namespace {

class Writer {
 public:
  void number(std::int64_t value) {
    char eight[8];
    std::memcpy(eight, &value, sizeof eight);  // for this machine alone
    bytes.append(eight, sizeof eight);
  }
  void number(std::uint64_t value) { number(static_cast<std::int64_t>(value)); }
  void text(std::string_view value) {
    number(std::uint64_t{value.size()});
    bytes += value;
  }
  void file(const StampedFile& file) {
    text(file.path);
    for (const std::uint64_t value : {file.state.device, file.state.inode, file.state.bytes, file.hash}) number(value);
    for (const std::int64_t value : {file.state.modified_ns, file.state.changed_ns}) number(value);
    number(std::int64_t{file.state.settled});
  }
  void diagnostic(const Diagnostic& diagnostic) {
    number(static_cast<std::int64_t>(diagnostic.severity));
    text(diagnostic.rule);
    text(diagnostic.where.file);
    for (const int value : {diagnostic.where.line, diagnostic.where.column, diagnostic.where.length})
      number(std::int64_t{value});
    text(diagnostic.message);
    number(std::uint64_t{diagnostic.notes.size()});
    for (const Diagnostic& note : diagnostic.notes) this->diagnostic(note);
  }

  std::string bytes;
};

class Reader {
 public:
  Reader(std::string_view bytes, std::deque<std::string>& texts) : rest_(bytes), texts_(texts) {}

  std::int64_t number() {
    std::int64_t value = 0;
    if (rest_.size() < sizeof value) return fail();
    std::memcpy(&value, rest_.data(), sizeof value);
    rest_.remove_prefix(sizeof value);
    return value;
  }
  std::string text() {
    const auto size = static_cast<std::uint64_t>(number());
    if (size > rest_.size()) return fail(), std::string();
    std::string value(rest_.substr(0, size));
    rest_.remove_prefix(size);
    return value;
  }
  // Never more than there are bytes, so that damage cannot ask for much.
  std::uint64_t count() {
    const auto value = static_cast<std::uint64_t>(number());
    return value > rest_.size() ? static_cast<std::uint64_t>(fail()) : value;
  }
  StampedFile file() {
    StampedFile file;
    file.path = text();
    for (std::uint64_t* value : {&file.state.device, &file.state.inode, &file.state.bytes, &file.hash})
      *value = static_cast<std::uint64_t>(number());
    for (std::int64_t* value : {&file.state.modified_ns, &file.state.changed_ns}) *value = number();
    file.state.settled = number() == 1;
    return file;
  }
  Diagnostic diagnostic(int depth = 0) {
    Diagnostic diagnostic;
    diagnostic.severity = static_cast<Severity>(std::min<std::int64_t>(std::max<std::int64_t>(number(), 0), 2));
    diagnostic.rule = texts_.emplace_back(text());
    diagnostic.where.file = texts_.emplace_back(text());
    for (int* value : {&diagnostic.where.line, &diagnostic.where.column, &diagnostic.where.length})
      *value = static_cast<int>(number());
    diagnostic.message = text();
    const std::uint64_t notes = count();
    if (notes > 0 && depth > 0) fail();
    for (std::uint64_t i = 0; i < notes && !failed_; ++i) diagnostic.notes.push_back(this->diagnostic(depth + 1));
    return diagnostic;
  }
  bool at_end() const { return !failed_ && rest_.empty(); }
  bool failed() const { return failed_; }

 private:
  std::int64_t fail() {
    failed_ = true;
    rest_ = {};
    return 0;
  }

  std::string_view rest_;
  std::deque<std::string>& texts_;
  bool failed_ = false;
};

constexpr std::size_t hash_length = 16;
constexpr std::size_t longest_stamp = 1u << 30;

}  // namespace

void keep_stamp(const std::string& file, const Stamp& stamp) {
  Writer writer;
  writer.text(stamp.circumstances);
  writer.number(std::uint64_t{stamp.inputs.size()});
  for (const StampedFile& input : stamp.inputs) writer.file(input);
  writer.file(stamp.library);
  writer.number(stamp.entries);
  writer.number(stamp.sheets);
  writer.number(std::uint64_t{stamp.found.all().size()});
  for (const Diagnostic& diagnostic : stamp.found.all()) writer.diagnostic(diagnostic);
  // One that cannot be kept costs time at the next build, and nothing else.
  (void)sheaf::replace_file(file, sheaf::to_hexadecimal(sheaf::hash_of(writer.bytes)) + writer.bytes);
}

std::optional<Stamp> kept_stamp(const std::string& path) {
  const auto file = sheaf::read_file(path, longest_stamp);
  if (!file || !*file || (*file)->size() < hash_length) return std::nullopt;
  const std::string& all = **file;
  const std::string_view bytes = std::string_view(all).substr(hash_length);
  if (sheaf::to_hexadecimal(sheaf::hash_of(bytes)) != all.substr(0, hash_length)) return std::nullopt;
  Stamp stamp;
  Reader reader(bytes, stamp.texts);
  stamp.circumstances = reader.text();
  for (std::uint64_t left = reader.count(); left > 0 && !reader.failed(); --left) stamp.inputs.push_back(reader.file());
  stamp.library = reader.file();
  stamp.entries = reader.number();
  stamp.sheets = reader.number();
  for (std::uint64_t left = reader.count(); left > 0 && !reader.failed(); --left)
    stamp.found.report(reader.diagnostic());
  if (!reader.at_end()) return std::nullopt;
  return stamp;
}

}  // namespace sheafc
