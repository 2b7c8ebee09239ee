// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/measured.h"

#include <algorithm>

#include "query/trade/reader.h"

namespace sheaf {
namespace {

constexpr double most_mm = 10'000;

struct RoleWord {
  std::string_view word;
  Role role;
};
// Longer words stand before those that begin them.
constexpr RoleWord role_words[] = {
    {"inside diameter", Role::inside},
    {"inside", Role::inside},
    {"inner", Role::inside},
    {"id", Role::inside},
    {"i.d.", Role::inside},
    {"shaft", Role::inside},
    {"tube", Role::inside},
    {"outside diameter", Role::outside},
    {"outside", Role::outside},
    {"outer", Role::outside},
    {"od", Role::outside},
    {"o.d.", Role::outside},
    {"bore", Role::outside},
    {"housing", Role::outside},
    {"height", Role::height},
    {"high", Role::height},
    {"width", Role::height},
    {"wide", Role::height},
    {"thick", Role::height},
    {"deep", Role::height},
};

std::optional<Role> take_role(Reader& reader) {
  reader.skip_spaces();
  for (const RoleWord& known : role_words) {
    if (reader.take_word(known.word)) return known.role;
  }
  return std::nullopt;
}

// One number with its unit, mm unless inches are said.
Result<double> take_length(Reader& reader, Input input) {
  reader.skip_spaces();
  reader.take("ø");
  reader.skip_spaces();
  auto number = reader.take_mixed(input);
  if (!number) return number.failure();
  reader.skip_spaces();
  const bool inches = reader.take("\"") || reader.take_word("in") || reader.take_word("inch");
  if (!inches) reader.take_word("mm");
  return approximate(*number) * (inches ? mm_per_inch : 1);
}

// "id 43 od 55.3" or "43 id, 55.3 od": every number has its role, before it or after it.
Result<Measured> read_named(Reader& reader, Input input) {
  Measured measured;
  while (!reader.done()) {
    std::optional<Role> role = take_role(reader);
    auto length = take_length(reader, input);
    if (!length) return length.failure();
    if (!role) role = take_role(reader);
    if (!role) return reader.failure("which dimension is this: inside, outside or height?");
    if (std::find(measured.roles.begin(), measured.roles.end(), *role) != measured.roles.end()) {
      return reader.failure("the " + std::string(name_of(*role)) + " is given twice");
    }
    measured.mm.push_back(*length);
    measured.roles.push_back(*role);
    reader.skip_spaces();
    reader.take(",") || reader.take("x");
    reader.skip_spaces();
  }
  return measured;
}

Result<Measured> lone_number(std::string_view text, Input input) {
  return read_whole(text, "measured size", [&](Reader& reader) -> Result<Measured> {
    auto length = take_length(reader, input);
    if (!length) return length.failure();
    return Measured{{*length}, {}, {}};
  });
}

Result<Measured> bounded(Result<Measured> measured) {
  if (!measured) return measured;
  for (double mm : measured->mm) {
    if (!(mm > 0 && mm <= most_mm)) return Failure{"a measured size is more than 0 and at most 10 m"};
  }
  return measured;
}

}  // namespace

std::string_view name_of(Role role) {
  switch (role) {
    case Role::inside:
      return "inside";
    case Role::outside:
      return "outside";
    case Role::height:
      return "height";
  }
  return "";
}

Result<Measured> measured_from(const Size& size) {
  if (size.count < 1 || size.count > 3)
    return Failure{"a ring has three dimensions: inside, outside, height"};
  Measured measured;
  for (int i = 0; i < size.count; ++i) measured.mm.push_back(dimension_mm(size, i));
  if (size.step) measured.second_height = approximate(*size.step) * (size.unit == "in" ? mm_per_inch : 1);
  return measured;
}

Result<Measured> parse_measured(std::string_view text, Input input) {
  auto size = parse_size(text, input);
  if (size) return bounded(measured_from(*size));
  if (auto named =
          read_whole(text, "measured size", [&](Reader& reader) { return read_named(reader, input); })) {
    return bounded(named);
  }
  if (auto lone = lone_number(text, input)) return bounded(lone);
  return size.failure();
}

}  // namespace sheaf
