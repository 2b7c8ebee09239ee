// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/sheet/value.h"

#include <algorithm>

namespace sheafc {

const Field* Fields::search(std::string_view key) const {
  const char mark = mark_of(key);
  for (auto at = marks_.find(mark); at != marks_.npos; at = marks_.find(mark, at + 1)) {
    if (fields_[at]->key() == key) return fields_[at];
  }
  return nullptr;
}

void Fields::add(const Field* field) {
  fields_.push_back(field);
  marks_ += mark_of(field->key());
  marked_ |= bit_of(field->key());
}

void Fields::put(const Field* field) {
  const auto found = std::ranges::find(fields_, field->key(), &Field::key);
  if (found == fields_.end())
    add(field);
  else
    *found = field;
}

void Fields::drop(std::string_view key) {
  const auto found = std::ranges::find(fields_, key, &Field::key);
  if (found == fields_.end()) return;
  marks_.erase(marks_.begin() + (found - fields_.begin()));
  fields_.erase(found);
}

bool Fields::flag(std::string_view key) const {
  const bool* yes = as<bool>(key);
  return yes && *yes;
}

std::optional<int> Fields::integer(std::string_view key) const {
  const int* number = as<int>(key);
  return number ? std::optional<int>(*number) : std::nullopt;
}

Span Fields::place(std::string_view key) const {
  const Value* found = value(key);
  return found ? found->where : Span{};
}

}  // namespace sheafc
