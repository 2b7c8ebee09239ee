// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/strength.h"

#include "query/trade/band.h"
#include "query/trade/reader.h"

namespace sheaf {
namespace {

// "8.8": both halves have to be digits, the first one or two of them, the second one.
std::optional<NominalStrength> read_metric_class(Reader& reader) {
  const std::optional<int> hundreds = reader.take_integer();
  if (!hundreds || *hundreds < 1 || *hundreds > 19 || !reader.take(".")) return std::nullopt;
  const std::optional<int> tenths = reader.take_integer();
  if (!tenths || *tenths < 1 || *tenths > 9 || !reader.at_word_end()) return std::nullopt;
  return NominalStrength{*hundreds * 100.0, *hundreds * 10.0 * *tenths};
}

// "8.8", "10.9": as most are written already.
bool is_metric_class(std::string_view text) {
  const auto digit = [&](std::size_t at) { return text[at] >= '1' && text[at] <= '9'; };
  if (text.size() == 4) return text[0] == '1' && (digit(1) || text[1] == '0') && text[2] == '.' && digit(3);
  return text.size() == 3 && digit(0) && text[1] == '.' && digit(2);
}

bool take_prefix(Reader& reader, std::initializer_list<std::string_view> words) {
  for (std::string_view word : words) {
    if (reader.take(word)) {
      reader.skip_spaces();
      return true;
    }
  }
  return false;
}

// "A2-70", "A4 80": a steel group of ISO 3506-1 and a tenth of its strength.
std::string stainless_name(Reader& reader) {
  const char letter = reader.peek();
  if (letter != 'a' && letter != 'c' && letter != 'f') return "";
  reader.back_to(reader.mark() + 1);
  const std::optional<int> group = reader.take_integer();
  reader.take("-") || reader.take(" ");
  const std::optional<int> strength = reader.take_integer();
  if (!group || *group > 8 || !strength || *strength < 45 || *strength > 110 || !reader.done()) return "";
  return std::string(1, static_cast<char>(letter - 'a' + 'A')) + std::to_string(*group) + "-" +
         std::to_string(*strength);
}

std::string grade_name(Reader& reader) {
  auto number = reader.take_decimal(Input::sheet);
  const bool is_grade =
      number && number->places <= 1 && approximate(*number) >= 1 && approximate(*number) < 9;
  return is_grade && reader.done() ? "SAE " + plain(*number) : "";
}

// Each once, for a message.
std::string names_of(std::span<const PropertyClass> rows) {
  std::string names;
  for (const PropertyClass& row : rows) {
    if (names.find(row.name) == std::string::npos && names.size() < 200)
      names += (names.empty() ? "" : ", ") + row.name;
  }
  return names;
}

}  // namespace

Result<PropertyClass> class_for(std::string_view name, double diameter_mm,
                                std::span<const PropertyClass> rows) {
  bool name_known = false;
  for (const PropertyClass& row : rows) {
    if (row.name != name) continue;
    if (diameter_mm > row.over_mm && diameter_mm <= row.up_to_mm) return row;
    name_known = true;
  }
  const std::string which(name);
  if (name_known) return Failure{"class " + which + " is not made at " + brief(diameter_mm) + " mm"};
  return Failure{"there is no property class " + which + "; the tables have " + names_of(rows)};
}

std::string class_name(std::string_view text) {
  if (is_metric_class(text)) return std::string(text);
  Reader reader(text);
  reader.skip_spaces();
  if (take_prefix(reader, {"grade", "gr.", "gr ", "sae"})) {
    take_prefix(reader, {"j429", "grade", "gr."});
    return grade_name(reader);
  }
  take_prefix(reader, {"property class", "class", "cl."});
  const std::size_t start = reader.mark();
  if (read_metric_class(reader) && reader.done()) return std::string(reader.source_since(start));
  reader.back_to(start);
  return stainless_name(reader);
}

std::optional<NominalStrength> nominal_strength(std::string_view name) {
  Reader reader(name);
  auto strength = read_metric_class(reader);
  return reader.done() ? strength : std::nullopt;
}

Result<double> proof_load_n(const ThreadGeometry& geometry, const PropertyClass& property_class) {
  if (!property_class.proof) {
    return Failure{"class " + property_class.name + " has no proof stress in its standard"};
  }
  if (auto failure = outside_range({{"proof stress", *property_class.proof, {1, 3000}, "MPa"}}))
    return *failure;
  return geometry.load_area * *property_class.proof;
}

Result<double> tensile_load_n(const ThreadGeometry& geometry, const PropertyClass& property_class) {
  if (auto failure = outside_range({{"tensile strength", property_class.tensile, {1, 4000}, "MPa"}}))
    return *failure;
  return geometry.load_area * property_class.tensile;
}

}  // namespace sheaf
