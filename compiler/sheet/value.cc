// SPDX-License-Identifier: GPL-2.0-or-later
// A field list is short (fifteen at most in practice), so it is searched from the front.
#include "compiler/sheet/value.h"

#include <algorithm>

namespace sheafc {

const Field* Fields::search(std::string_view key) const {
  const auto found = std::ranges::find(fields_, key, &Field::key);
  return found == fields_.end() ? nullptr : *found;
}

void Fields::add(const Field* field) {
  fields_.push_back(field);
  trace_ |= trace_of(field->key());
}

void Fields::put(const Field* field) {
  const auto found = std::ranges::find(fields_, field->key(), &Field::key);
  if (found == fields_.end()) add(field);
  else *found = field;
}

void Fields::drop(std::string_view key) {
  std::erase_if(fields_, [key](const Field* field) { return field->key() == key; });
}

const Value* Fields::value(std::string_view key) const {
  const Field* field = find(key);
  return field ? &field->values.front() : nullptr;
}

const std::vector<Value>& Fields::values(std::string_view key) const {
  static const std::vector<Value> none;
  const Field* field = find(key);
  return field ? field->values : none;
}

std::string_view Fields::text(std::string_view key) const {
  const Value* found = value(key);
  return found ? std::string_view(found->text) : std::string_view{};
}

template <typename T>
const T* Fields::as(std::string_view key) const {
  const Value* found = value(key);
  return found ? found->as<T>() : nullptr;
}

bool Fields::flag(std::string_view key) const {
  const bool* yes = as<bool>(key);
  return yes && *yes;
}

std::optional<int> Fields::integer(std::string_view key) const {
  const int* number = as<int>(key);
  return number ? std::optional<int>(*number) : std::nullopt;
}

const sheaf::Statement* Fields::figure(std::string_view key) const { return as<sheaf::Statement>(key); }
const sheaf::Thread* Fields::thread(std::string_view key) const { return as<sheaf::Thread>(key); }
const sheaf::Drive* Fields::drive(std::string_view key) const { return as<sheaf::Drive>(key); }
const sheaf::Size* Fields::size(std::string_view key) const { return as<sheaf::Size>(key); }
const sheaf::Bearing* Fields::bearing(std::string_view key) const { return as<sheaf::Bearing>(key); }
const Count* Fields::count(std::string_view key) const { return as<Count>(key); }
const Interval* Fields::interval(std::string_view key) const { return as<Interval>(key); }
const Pattern* Fields::pattern(std::string_view key) const { return as<Pattern>(key); }
const Address* Fields::reference(std::string_view key) const { return as<Address>(key); }
const Date* Fields::date(std::string_view key) const { return as<Date>(key); }
const Years* Fields::years(std::string_view key) const { return as<Years>(key); }
const Frames* Fields::frames(std::string_view key) const { return as<Frames>(key); }
const sheaf::Number* Fields::number(std::string_view key) const { return as<sheaf::Number>(key); }
const Fields* Fields::record(std::string_view key) const { return as<Fields>(key); }

Span Fields::place(std::string_view key) const {
  const Value* found = value(key);
  return found ? found->where : Span{};
}

}  // namespace sheafc
