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

struct Length {
  double value = 0;
  std::string_view unit;  // "mm", "in", or empty
  double mm() const { return value * (unit == "in" ? mm_per_inch : 1); }
};

std::string_view take_unit(Reader& reader) {
  reader.skip_spaces();
  if (reader.take("\"") || reader.take_word("in") || reader.take_word("inch") || reader.take_word("inches"))
    return "in";
  return reader.take_word("mm") ? "mm" : "";
}

Result<Length> take_length(Reader& reader, Input input) {
  reader.skip_spaces();
  reader.take("ø");
  reader.skip_spaces();
  auto number = reader.take_mixed(input);
  if (!number) return number.failure();
  return Length{approximate(*number), take_unit(reader)};
}

// "id 43 od 55.3" or "43 id, 55.3 od": every number has its role, before it or after it. A unit that stands
// at the end alone is that of all: "id 1.61 od 2.13 in".
Result<Measured> read_named(Reader& reader, Input input) {
  Measured measured;
  std::vector<Length> lengths;
  while (!reader.done()) {
    std::optional<Role> role = take_role(reader);
    const auto read = take_length(reader, input);
    if (!read) return read.failure();
    Length length = *read;
    if (!role) role = take_role(reader);
    if (!role) return reader.failure("which dimension is this: inside, outside or height?");
    if (std::find(measured.roles.begin(), measured.roles.end(), *role) != measured.roles.end()) {
      return reader.failure("the " + std::string(name_of(*role)) + " is given twice");
    }
    if (length.unit.empty()) length.unit = take_unit(reader);  // "55.3 od mm"
    lengths.push_back(length);
    measured.roles.push_back(*role);
    reader.skip_spaces();
    reader.take(",") || reader.take("x");
    reader.skip_spaces();
  }
  const auto is_bare = [](const Length& length) { return length.unit.empty(); };
  const bool last_for_all = !lengths.empty() && std::all_of(lengths.begin(), lengths.end() - 1, is_bare);
  for (const Length& length : lengths)
    measured.mm.push_back(Length{length.value, last_for_all ? lengths.back().unit : length.unit}.mm());
  return measured;
}

Result<Measured> lone_number(std::string_view text, Input input) {
  return read_whole(text, "measured size", [&](Reader& reader) -> Result<Measured> {
    auto length = take_length(reader, input);
    if (!length) return length.failure();
    return Measured{{length->mm()}, {}, {}};
  });
}

Result<Measured> bounded(Result<Measured> measured) {
  if (!measured) return measured;
  for (double mm : measured->mm) {
    if (!(mm > 0 && mm <= most_mm)) return Failure{"a measured size is more than 0 and at most 10 m"};
  }
  return measured;
}

// A failure in the text with its leading zeros, marked in the text as it was typed.
Failure as_typed(Failure failure, std::string_view typed, std::string_view text) {
  const auto place = [&](std::size_t end) {
    std::size_t at = 0;
    for (std::size_t i = 0; i < end; ++i)
      if (at < typed.size() && text[i] == typed[at]) ++at;  // else a zero that nobody typed
    return static_cast<int>(at);
  };
  const auto begin = static_cast<std::size_t>(failure.at),
             end = begin + static_cast<std::size_t>(failure.length);
  failure.at = place(begin);
  failure.length = place(end) - failure.at;
  return failure;
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

std::string with_leading_zeros(std::string_view text) {
  const auto is_digit = [&](std::size_t at) {
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
  };
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_sign = i > 0 && (text[i - 1] == 'x' || text[i - 1] == '*');
    const bool begins = i == 0 || text[i - 1] == ' ' ||
                        (is_sign && (i == 1 || text[i - 2] == ' ' || is_digit(i - 2)));  // no "approx.50"
    if (text[i] == '.' && begins && is_digit(i + 1)) result += '0';
    result += text[i];
  }
  return result;
}

Result<Measured> measured_from(const Size& size) {
  if (size.count < 1 || size.count > 3)
    return Failure{"a ring has three dimensions: inside, outside, height"};
  Measured measured;
  for (int i = 0; i < size.count; ++i) measured.mm.push_back(dimension_mm(size, i));
  if (size.step) measured.second_height = approximate(*size.step) * (size.unit == "in" ? mm_per_inch : 1);
  return measured;
}

Result<Measured> parse_measured(std::string_view typed, Input input) {
  const std::string text = input == Input::prompt ? with_leading_zeros(typed) : std::string(typed);
  auto size = parse_size(text, input);
  if (size) return bounded(measured_from(*size));
  if (auto named =
          read_whole(text, "measured size", [&](Reader& reader) { return read_named(reader, input); })) {
    return bounded(named);
  }
  if (auto lone = lone_number(text, input)) return bounded(lone);
  return as_typed(size.failure(), typed, text);
}

}  // namespace sheaf
