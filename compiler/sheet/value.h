// SPDX-License-Identifier: GPL-2.0-or-later
// What stands in a field: its canonical text, what the text means, and where it is written.
//
//   if (const sheaf::Statement* torque = entry.figure("torque")) ...
//   entry.choice("joint") == "axle"          // "" where the field is absent
//   sink.warning(rule, entry.place("torque"), ...)
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "compiler/sheet/scalar_types.h"
#include "compiler/source/diagnostics.h"
#include "query/library/vocabulary.h"
#include "query/quantity/figure.h"
#include "query/trade/designation.h"

namespace sheafc {

struct Field;
struct Value;

// The fields of a sheet, an entry, a record or a variant, in declared order. It points to fields that
// a Sheet owns, so copies are cheap and an inherited field is the base's own. Each getter gives the
// first value, or nothing where the field is absent or of another type.
class Fields {
 public:
  const Field* find(std::string_view key) const { return marked_ & bit_of(key) ? search(key) : nullptr; }
  bool has(std::string_view key) const { return find(key) != nullptr; }
  const std::vector<const Field*>& all() const { return fields_; }
  bool empty() const { return fields_.empty(); }
  void add(const Field* field);
  void put(const Field* field);  // replaces the field of the same key, or adds it
  void drop(std::string_view key);

  const Value* value(std::string_view key) const;
  const std::vector<Value>& values(std::string_view key) const;  // none where absent
  std::string_view text(std::string_view key) const;             // canonical; any type
  std::string_view choice(std::string_view key) const { return text(key); }
  bool flag(std::string_view key) const;  // false where absent
  std::optional<int> integer(std::string_view key) const;
  const sheaf::Statement* figure(std::string_view key) const {
    return as<sheaf::Statement>(key);
  }  // and torque
  const sheaf::Thread* thread(std::string_view key) const { return as<sheaf::Thread>(key); }
  const sheaf::Drive* drive(std::string_view key) const { return as<sheaf::Drive>(key); }
  const sheaf::Size* size(std::string_view key) const { return as<sheaf::Size>(key); }
  const sheaf::Bearing* bearing(std::string_view key) const { return as<sheaf::Bearing>(key); }
  const Count* count(std::string_view key) const { return as<Count>(key); }
  const Interval* interval(std::string_view key) const { return as<Interval>(key); }
  const Pattern* pattern(std::string_view key) const { return as<Pattern>(key); }
  const Address* reference(std::string_view key) const { return as<Address>(key); }
  const Date* date(std::string_view key) const { return as<Date>(key); }
  const Years* years(std::string_view key) const { return as<Years>(key); }
  const Frames* frames(std::string_view key) const { return as<Frames>(key); }
  const sheaf::Number* number(std::string_view key) const {
    return as<sheaf::Number>(key);
  }  // a table's, without unit
  const Fields* record(std::string_view key) const { return as<Fields>(key); }
  Span place(std::string_view key) const;  // of its first value; line 0 where absent

 private:
  template <typename T>
  const T* as(std::string_view key) const;
  const Field* search(std::string_view key) const;

  // One of 64 for a key; the factors keep apart nearly all keys of one kind of entry. Every rule asks every
  // entry, mostly for what it lacks: the marks tell, and no field is looked at in vain.
  static constexpr char mark_of(std::string_view key) {
    if (key.empty()) return 0;
    const auto at = [&](std::size_t place) { return std::size_t{static_cast<unsigned char>(key[place])}; };
    return static_cast<char>(
        (35 * key.size() + 11 * at(0) + 55 * at(key.size() - 1) + 34 * at(key.size() / 2)) % 64);
  }
  static constexpr std::uint64_t bit_of(std::string_view key) { return std::uint64_t{1} << mark_of(key); }

  std::vector<const Field*> fields_;
  std::string marks_;         // of each field
  std::uint64_t marked_ = 0;  // the bits of all of them, and of some that were dropped
};

// One rule set aside, with its reason.
struct Allowance {
  std::string rule, reason;
  std::optional<Date> until;
  Span where;  // the rule's name
};
using Allowances = std::vector<Allowance>;

// The fields that differ, and when: its `years`, `frames` and `market` stand among them.
struct Variant {
  Fields fields;
  Span where;
};
using Variants = std::vector<Variant>;

// What a text means; nothing, where it means itself. Never changed, so copies share it; of the size of what
// it holds, for a run holds many.
class Meaning {
 public:
  Meaning() = default;
  template <typename T>
  explicit Meaning(T value) : value_(std::make_shared<const T>(std::move(value))), type_(type_of<T>()) {}

  template <typename T>
  const T* as() const {
    return type_ == type_of<T>() ? static_cast<const T*>(value_.get()) : nullptr;
  }
  const void* address() const { return value_.get(); }

 private:
  template <typename T, typename... Types>
  static constexpr std::uint8_t place_among() {
    std::uint8_t place = 0;
    const bool found = ((++place, std::is_same_v<T, Types>) || ...);
    return found ? place : 0;
  }
  // From 1; 0 is nothing.
  template <typename T>
  static constexpr std::uint8_t type_of() {
    constexpr auto place = place_among<T, bool, int, Date, Years, Frames, Count, Interval, Address, Pattern,
                                       sheaf::Number, sheaf::Statement, sheaf::Thread, sheaf::Drive,
                                       sheaf::Size, sheaf::Bearing, Fields, Allowances, Variants>();
    static_assert(place > 0, "no value of a sheet means that");
    return place;
  }

  std::shared_ptr<const void> value_;
  std::uint8_t type_ = 0;
};

struct Value {
  std::string text;  // canonical; of a record and its like: empty
  Meaning meaning;
  Span where;

  template <typename T>
  const T* as() const {
    return meaning.as<T>();
  }
};

struct Field {
  const sheaf::FieldDeclaration* declaration = nullptr;
  Span key_place;
  std::vector<Value> values;  // one, or several where the declaration allows many; never none

  std::string_view key() const { return declaration->key; }
};

// Here, so that a key's mark is computed where it is written.
inline const Value* Fields::value(std::string_view key) const {
  const Field* field = find(key);
  return field ? &field->values.front() : nullptr;
}

inline const std::vector<Value>& Fields::values(std::string_view key) const {
  static const std::vector<Value> none;
  const Field* field = find(key);
  return field ? field->values : none;
}

inline std::string_view Fields::text(std::string_view key) const {
  const Value* found = value(key);
  return found ? std::string_view(found->text) : std::string_view{};
}

template <typename T>
const T* Fields::as(std::string_view key) const {
  const Value* found = value(key);
  return found ? found->as<T>() : nullptr;
}

}  // namespace sheafc
