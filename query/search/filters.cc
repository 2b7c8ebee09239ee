// SPDX-License-Identifier: GPL-2.0-or-later
// Filters are read as the words of a question are, but what they say must be understood.
#include "query/search/filters.h"

#include <algorithm>

#include "query/library/vocabulary.h"
#include "query/search/read.h"

namespace sheaf {
namespace {

using Fault = std::optional<Failure>;

Fault read_machine(QuestionReading& reading, const std::string& typed, Lexicon& lexicon) {
  QuestionReading named = read_question(typed, lexicon);
  if (named.machines.empty()) return Failure{"no machine '" + typed + "' in the library"};
  reading.machines = std::move(named.machines);
  reading.machine = std::move(named.machine);
  if (named.year != 0 && reading.year == 0) {
    reading.year = named.year;
    reading.year_to = named.year_to;
  }
  return std::nullopt;
}

std::string choices_of_kinds() {
  std::string names;
  for (const auto& kind : all_kinds()) names += (names.empty() ? "" : ", ") + std::string(kind.name);
  return names;
}

Fault read_kind(QuestionReading& reading, const std::string& typed) {
  const auto is_section = [&](const KindDeclaration& kind) {
    return kind.section == typed || kind.name == typed;
  };
  const auto kinds = all_kinds();
  const auto found = std::ranges::find_if(kinds, is_section);
  const auto rows = all_row_kinds();
  const bool is_row = std::ranges::find(rows, typed, &RowKind::name) != rows.end();
  if (found == kinds.end() && !is_row)
    return Failure{"no kind '" + typed + "'; kinds are " + choices_of_kinds()};
  reading.kinds = {is_row ? typed : std::string(found->name)};
  return std::nullopt;
}

Fault read_assembly(QuestionReading& reading, const std::string& typed) {
  const auto names = all_assemblies();
  if (std::ranges::find(names, typed) == names.end()) return Failure{"no assembly '" + typed + "'"};
  reading.assemblies = {typed};
  return std::nullopt;
}

Fault read_thread(QuestionReading& reading, const std::string& typed) {
  auto thread = parse_thread(typed, Input::prompt);
  if (!thread) return Failure{"'" + typed + "' is no thread: " + thread.failure().message};
  reading.threads = {*std::move(thread)};
  return std::nullopt;
}

Fault read_drive(QuestionReading& reading, const std::string& typed) {
  auto drive = parse_drive(typed, Input::prompt);
  if (!drive) return Failure{"'" + typed + "' is no drive: " + drive.failure().message};
  reading.drives = {*std::move(drive)};
  return std::nullopt;
}

Fault read_between(QuestionReading& reading, const std::string& typed) {
  auto statements = parse_readings(typed, std::nullopt);
  if (!statements) return Failure{"'" + typed + "' is no range: " + statements.failure().message};
  QuantityAsked asked{typed, {}, true};
  for (const auto& statement : *statements) {
    if (!statement.figure().unit) return Failure{"'" + typed + "' has no unit"};
    asked.figures.push_back(statement.figure());
  }
  reading.quantities.push_back(std::move(asked));
  return std::nullopt;
}

Fault read_year(QuestionReading& reading, int year) {
  if (year < first_year || year > last_year) return Failure{"no year " + std::to_string(year)};
  reading.year = reading.year_to = year;
  return std::nullopt;
}

}  // namespace

std::optional<Failure> apply_filters(const Filters& filters, QuestionReading& reading, Lexicon& lexicon) {
  Fault fault;
  const auto apply = [&](const std::string& typed, auto read) {
    if (!fault && !typed.empty()) fault = read();
  };
  if (filters.year != 0) fault = read_year(reading, filters.year);
  apply(filters.machine, [&] { return read_machine(reading, filters.machine, lexicon); });
  apply(filters.kind, [&] { return read_kind(reading, filters.kind); });
  apply(filters.assembly, [&] { return read_assembly(reading, filters.assembly); });
  apply(filters.thread, [&] { return read_thread(reading, filters.thread); });
  apply(filters.drive, [&] { return read_drive(reading, filters.drive); });
  apply(filters.between, [&] { return read_between(reading, filters.between); });
  if (!filters.frame.empty()) reading.frame = filters.frame;
  if (!filters.market.empty()) reading.market = filters.market;
  return fault;
}

}  // namespace sheaf
