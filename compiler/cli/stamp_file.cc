// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/kept_bytes.h"
#include "compiler/cli/stamp.h"

namespace sheafc {
namespace {

void write(const StampedFile& file, KeptWriter& writer) {
  writer.text(file.path);
  for (const std::uint64_t value : {file.state.device, file.state.inode, file.state.bytes, file.hash})
    writer.number(value);
  for (const std::int64_t value : {file.state.modified_ns, file.state.changed_ns}) writer.number(value);
  writer.number(std::int64_t{file.state.settled});
}

StampedFile read_file(KeptReader& reader) {
  StampedFile file;
  file.path = reader.text();
  for (std::uint64_t* value : {&file.state.device, &file.state.inode, &file.state.bytes, &file.hash})
    *value = static_cast<std::uint64_t>(reader.number());
  for (std::int64_t* value : {&file.state.modified_ns, &file.state.changed_ns}) *value = reader.number();
  file.state.settled = reader.number() == 1;
  return file;
}

}  // namespace

void keep_stamp(const std::string& file, const Stamp& stamp) {
  KeptWriter writer;
  writer.text(stamp.circumstances);
  writer.number(std::uint64_t{stamp.inputs.size()});
  for (const StampedFile& input : stamp.inputs) write(input, writer);
  write(stamp.library, writer);
  writer.text(stamp.digest);
  writer.number(stamp.entries);
  writer.number(stamp.sheets);
  writer.diagnostics(stamp.found);
  keep_bytes(file, writer.bytes());
}

std::optional<Stamp> kept_stamp(const std::string& path) {
  const auto bytes = kept_bytes(path);
  if (!bytes) return std::nullopt;
  Stamp stamp;
  KeptReader reader(*bytes, stamp.texts);
  stamp.circumstances = reader.text();
  for (std::uint64_t left = reader.count(); left > 0 && !reader.failed(); --left)
    stamp.inputs.push_back(read_file(reader));
  stamp.library = read_file(reader);
  stamp.digest = reader.text();
  stamp.entries = reader.number();
  stamp.sheets = reader.number();
  stamp.found = reader.diagnostics();
  if (!reader.at_end()) return std::nullopt;
  return stamp;
}

}  // namespace sheafc
