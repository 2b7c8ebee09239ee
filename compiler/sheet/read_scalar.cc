// SPDX-License-Identifier: GPL-2.0-or-later
// The grammars live in query/quantity, query/trade and scalar_types; here each is called by its type.
#include "compiler/sheet/read_scalar.h"

#include <algorithm>
#include <cassert>

#include "compiler/sheet/sheet.h"
#include "compiler/sheet/sheet_rules.h"
#include "compiler/sheet/suggestion.h"
#include "query/library/near_word.h"

namespace sheafc {
namespace {

using sheaf::Failure;
using sheaf::FieldDeclaration;
using sheaf::Input;
using sheaf::Result;
using sheaf::ValueType;
using Text = std::string_view;

constexpr std::size_t longest_text = 2000;

// The value and its canonical spelling, once its parser has had its say.
template <typename T>
Result<Scalar> scalar_of(Result<T> value) {
  if (!value) return value.failure();
  using sheaf::to_text;
  using sheafc::to_text;
  std::string text = to_text(*value);
  return Scalar{std::move(text), Meaning(std::move(value).value())};
}

// "a text with a dimension is a unit of it": see forms.h.
Result<Scalar> read_unit(Text text, sheaf::Dimension dimension) {
  const auto unit = sheaf::unit_from(text, dimension);
  if (!unit) return unit.failure();
  return Scalar{std::string((*unit)->symbol), {}};
}

Result<Scalar> read_text(const FieldDeclaration& declaration, Text text) {
  if (declaration.dimension) return read_unit(text, *declaration.dimension);
  while (text.ends_with('\n') || text.ends_with(' ')) text.remove_suffix(1);
  while (text.starts_with(' ')) text.remove_prefix(1);
  if (text.empty()) return Failure{"the text is empty; leave the key out instead"};
  if (text.find('\n') != Text::npos)
    return Failure{"a text stands on one line; > folds several lines into one, | keeps them"};
  if (text.size() > longest_text) {
    return Failure{"a text has at most 2000 bytes, not " + std::to_string(text.size()) +
                   "; part it into several notes"};
  }
  return Scalar{std::string(text), {}};
}

Result<Scalar> read_choice(const FieldDeclaration& declaration, Text text) {
  if (std::ranges::find(declaration.choices, text) != declaration.choices.end())
    return Scalar{std::string(text), {}};
  const Text near = sheaf::near_word(text, declaration.choices);
  if (!near.empty())
    return Failure{"'" + std::string(text) + "' is no " + std::string(declaration.key) + "; did you mean '" +
                   std::string(near) + "'?"};
  return Failure{"'" + std::string(text) + "' is no " + std::string(declaration.key) + ": " +
                 any_of(declaration.choices)};
}

Result<Scalar> read_flag(Text text) {
  if (text == "yes" || text == "no") return Scalar{std::string(text), Meaning(text == "yes")};
  return Failure{"'" + std::string(text) + "' is neither yes nor no"};
}

Result<Scalar> read_integer(Text text) {
  const auto number = parse_integer(text);
  if (!number) return number.failure();
  return Scalar{std::to_string(*number), Meaning(*number)};
}

Result<Scalar> read_torque(const FieldDeclaration& declaration, Text text) {
  return scalar_of(sheaf::parse_statement(text, declaration.dimension, Input::sheet));
}

Result<Scalar> read_figure(const FieldDeclaration& declaration, Text text) {
  auto statement = sheaf::parse_statement(text, declaration.dimension, Input::sheet);
  if (!statement) return statement.failure();
  const bool staged = statement->stages.size() != 1 || statement->stages.front().act != sheaf::Act::tighten ||
                      statement->stages.front().hand_tight;
  if (staged) return Failure{"stages belong to a torque; this takes one figure"};
  return scalar_of(std::move(statement));
}

std::size_t first_letter(Text text) {
  const auto letter =
      std::ranges::find_if(text, [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); });
  return letter == text.end() ? Text::npos : static_cast<std::size_t>(letter - text.begin());
}

}  // namespace

std::string_view rule_of(ValueType type) {
  switch (type) {
    case ValueType::text:
      return rule::unreadable_text;
    case ValueType::choice:
      return rule::not_a_choice;
    case ValueType::flag:
      return rule::not_yes_or_no;
    case ValueType::integer:
      return rule::unreadable_number;
    case ValueType::date:
      return rule::unreadable_date;
    case ValueType::years:
      return rule::unreadable_years;
    case ValueType::frames:
      return rule::unreadable_frames;
    case ValueType::count:
      return rule::unreadable_count;
    case ValueType::figure:
    case ValueType::torque:
      return rule::unreadable_figure;
    case ValueType::interval:
      return rule::unreadable_interval;
    case ValueType::thread:
      return rule::unreadable_thread;
    case ValueType::drive:
      return rule::unreadable_drive;
    case ValueType::size:
      return rule::unreadable_size;
    case ValueType::bearing:
      return rule::unreadable_bearing;
    case ValueType::reference:
      return rule::unreadable_address;
    case ValueType::pattern:
      return rule::unreadable_pattern;
    case ValueType::record:
    case ValueType::allowances:
    case ValueType::variants:
      return rule::wrong_shape;
  }
  return rule::wrong_shape;
}

Result<Scalar> read_scalar(const FieldDeclaration& declaration, Text text) {
  switch (declaration.type) {
    case ValueType::text:
      return read_text(declaration, text);
    case ValueType::choice:
      return read_choice(declaration, text);
    case ValueType::flag:
      return read_flag(text);
    case ValueType::integer:
      return read_integer(text);
    case ValueType::date:
      return scalar_of(parse_date(text));
    case ValueType::years:
      return scalar_of(parse_years(text));
    case ValueType::frames:
      return scalar_of(parse_frames(text));
    case ValueType::count:
      return scalar_of(parse_count(text));
    case ValueType::figure:
      return read_figure(declaration, text);
    case ValueType::torque:
      return read_torque(declaration, text);
    case ValueType::interval:
      return scalar_of(parse_interval(text));
    case ValueType::thread:
      return scalar_of(sheaf::parse_thread(text, Input::sheet));
    case ValueType::drive:
      return scalar_of(sheaf::parse_drive(text, Input::sheet));
    case ValueType::size:
      return scalar_of(sheaf::parse_size(text, Input::sheet));
    case ValueType::bearing:
      return scalar_of(sheaf::parse_bearing(text, Input::sheet));
    case ValueType::reference:
      return scalar_of(parse_address(text));
    case ValueType::pattern:
      return scalar_of(parse_pattern(text));
    case ValueType::record:
    case ValueType::allowances:
    case ValueType::variants:
      break;
  }
  assert(false && "records, allowances and variants are no scalars");
  return Failure{"this is no single value"};
}

Result<Scalar> read_cell(const Column& column, Text text) {
  switch (column.type) {
    case Column::Type::number:
      return scalar_of(sheaf::parse_number(text, Input::sheet));
    case Column::Type::figure: {
      auto cell = scalar_of(sheaf::parse_statement(std::string(text) + " " + std::string(column.unit->symbol),
                                                   column.unit->dimension, Input::sheet));
      if (cell) return cell;
      const std::size_t letter = first_letter(text);
      if (letter != Text::npos) {
        return Failure{
            "a cell is a plain number; its unit, " + std::string(column.unit->symbol) + ", is the column's",
            static_cast<int>(letter), static_cast<int>(text.size() - letter)};
      }
      Failure failure = cell.failure();  // the unit was added here: only the cell's own bytes can be marked
      failure.at = std::min(failure.at, static_cast<int>(text.size()));
      failure.length = std::min(failure.length, static_cast<int>(text.size()) - failure.at);
      return failure;
    }
    default:
      return read_scalar(*column.declaration, text);
  }
}

std::size_t decimal_comma(Text text) {
  const auto digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  for (std::size_t comma = text.find(','); comma != Text::npos; comma = text.find(',', comma + 1)) {
    if (comma > 0 && digit(comma - 1) && digit(comma + 1)) return comma;
  }
  return Text::npos;
}

}  // namespace sheafc
