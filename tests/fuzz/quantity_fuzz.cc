// SPDX-License-Identifier: GPL-2.0-or-later
// Any bytes, read as a statement, a number, a unit and a request. Whatever reads must be written so that it
// reads back equal, and must convert without losing its band; nothing may crash or hang.
//
// The first byte chooses the dimension asked for (or none) and whether a sheet or a prompt is read.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "query/quantity/convert.h"
#include "query/quantity/printed_pair.h"
#include "query/quantity/request.h"

namespace {

using namespace sheaf;

void require(bool truth) {
  if (!truth) std::abort();
}

void check_failure(const Failure& failure, std::string_view text) {
  require(!failure.message.empty());
  require(failure.at >= 0 && failure.length >= 0);
  require(static_cast<std::size_t>(failure.at) + static_cast<std::size_t>(failure.length) <= text.size() + 1);
}

void check_conversions(const Statement& statement) {
  const Figure& figure = statement.figure();
  if (figure.unit == nullptr) return;
  for (const Unit& unit : units_of(figure.unit->dimension)) {
    const auto converted = convert(statement, unit);
    if (!converted) continue;
    const Figure& derived = converted->statement.figure();
    require(derived.least.has_value() == figure.least.has_value());
    require(derived.most.has_value() == figure.most.has_value());
    if (derived.least && derived.most) require(compare(*derived.least, *derived.most) < 0);
    if (derived.nominal && derived.least) require(compare(*derived.nominal, *derived.least) >= 0);
    if (derived.nominal && derived.most) require(compare(*derived.nominal, *derived.most) <= 0);
    const auto setting = set_on_scale(figure, unit, Number{5, 1, 1});
    if (setting) require(setting->stated == (figure.least || figure.most));
  }
}

void check_statement(std::string_view text, std::optional<Dimension> dimension, Input input) {
  const auto statement = parse_statement(text, dimension, input);
  if (!statement) return check_failure(statement.failure(), text);
  // "lb" is read back by one who knows that a mass is meant.
  if (!dimension && statement->figure().unit != nullptr) dimension = statement->figure().unit->dimension;
  for (const std::string& again : {to_text(*statement), shown(*statement)}) {
    const auto second = parse_statement(again, dimension, Input::sheet);
    require(static_cast<bool>(second));
    require(*second == *statement);
  }
  check_conversions(*statement);
  if (statement->printed) compare_printed(statement->figure(), *statement->printed);
}

void check_number(std::string_view text, Input input) {
  const auto number = parse_number(text, input);
  if (!number) return check_failure(number.failure(), text);
  const auto again = parse_number(to_text(*number), Input::sheet);
  require(again && *again == *number);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const Input input = (data[0] & 1) != 0 ? Input::prompt : Input::sheet;
  const int choice = data[0] >> 1;
  std::optional<Dimension> dimension;
  if (choice <= static_cast<int>(Dimension::density)) dimension = static_cast<Dimension>(choice);
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);

  check_statement(text, dimension, input);
  check_number(text, input);
  const auto unit = unit_from(text, dimension);
  if (unit) require(!readings(text, dimension).empty());
  const auto answers = answer_request({text, Number{1, 0, 1}, {}});
  if (answers) require(!answers->empty() && !answers->front().derived.empty());
  const auto table = answer_table(text, Number{25, 1, 1});
  if (table) require(table->rows.size() <= most_table_rows);
  return 0;
}
