// SPDX-License-Identifier: GPL-2.0-or-later
// sheaf dump: everything that a library holds, for other programs. Every record is tested as it is read; a
// damaged library is a fault, and never half an answer that looks whole.

#include "query/answer/dump.h"

#include "query/answer/csv.h"
#include "query/cli/command.h"
#include "query/cli/libraries.h"

namespace sheaf {
namespace {

// Hands every record of the library to `take`, in the order of the file.
template <typename Take>
std::optional<Failure> for_each_record(Library& library, Take take) {
  const auto sheets = library.sheets();
  if (!sheets) return sheets.failure();
  for (const SheetRecord& sheet : *sheets) take(sheet);
  auto fault = library.for_each_entry([&](EntryId id, const EntryRecord& entry, const SheetRecord&) {
    take(id, entry);
    return true;
  });
  if (fault) return fault;
  const auto machines = library.machines();
  if (!machines) return machines.failure();
  for (const Machine& machine : *machines) take(machine);
  const auto words = library.words();
  if (!words) return words.failure();
  for (const WordRecord& word : *words) take(word);
  return std::nullopt;
}

std::vector<std::string> table_names() {
  std::vector<std::string> names;
  for (const DumpTable& table : dump_tables()) names.emplace_back(table.name);
  return names;
}

class Dump : public Command {
 public:
  void declare(Flags& flags) override {
    flags.one_of("--csv", table_, table_names(), "TABLE",
                 "One table as comma-separated values, with a row of names first");
    declare_library(flags, common_);
  }

  ExitStatus run(const Words& words) override {
    if (!words.empty()) {
      say_error("'" + words.front() + "' is one word too many", "see sheaf dump --help");
      return ExitStatus::trouble;
    }
    auto open = open_libraries(common_.libraries);
    if (!open) {
      say_error(open.failure().message);
      return ExitStatus::trouble;
    }
    OpenLibraries libraries = std::move(open).value();
    if (!table_.empty()) print_names();
    for (Library& library : libraries.all) {
      const auto fault = table_.empty() ? print_lines(library) : print_table(library);
      if (!fault) continue;
      say_error(fault->message);
      return ExitStatus::trouble;
    }
    return ExitStatus::done;
  }

 private:
  static std::optional<Failure> print_lines(Library& library) {
    print(dump_line(library.facts()) + "\n");
    return for_each_record(library, [](const auto&... record) { print(dump_line(record...) + "\n"); });
  }

  std::optional<Failure> print_table(Library& library) const {
    return for_each_record(library, [this](const auto&... record) {
      for (const auto& row : dump_rows(table_, record...)) print(csv_row(row));
    });
  }

  void print_names() const {
    for (const DumpTable& table : dump_tables())
      if (table.name == table_) print(csv_row(table.columns));
  }

  Common common_;
  std::string table_;
};

}  // namespace

std::unique_ptr<Command> make_dump() { return std::make_unique<Dump>(); }

}  // namespace sheaf
