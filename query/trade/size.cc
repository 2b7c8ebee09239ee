// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/size.h"

#include "query/trade/reader.h"

namespace sheaf {
namespace {

void skip_diameter_sign(Reader& reader) {
  reader.skip_spaces();
  for (std::string_view sign : {"ø", "dia.", "dia ", "d="}) {
    if (reader.take(sign)) break;
  }
  reader.skip_spaces();
}

// What parts two dimensions: x, "by", at a prompt a space. Taken only if a number follows.
enum class Parting { marked, spaced };
bool take_parting(Reader& reader, Parting parting) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  const bool marked = reader.take("x") || reader.take("by ");
  const bool spaced = parting == Parting::spaced && reader.mark() > start;
  skip_diameter_sign(reader);
  if ((marked || spaced) && reader.at_digit()) return true;
  reader.back_to(start);
  return false;
}

// "9.5/10.5" are two heights: fractions are inches, whole numbers with a power of two below.
bool take_step(Reader& reader) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  if (reader.take("/")) {
    reader.skip_spaces();
    if (reader.at_digit()) return true;
  }
  reader.back_to(start);
  return false;
}

// "mm", "in" or nothing; mm may touch the next x ("41mmx54mm").
std::string take_unit(Reader& reader) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  if (reader.take("mm") && (reader.at_word_end() || reader.at("x"))) return "mm";
  reader.back_to(start);
  reader.skip_spaces();
  for (std::string_view inch : {"inches", "inch", "in.", "in"}) {
    if (reader.take_word(inch)) return "in";
  }
  if (reader.take("\"")) return "in";
  reader.back_to(start);
  return "";
}

// The heights of one stepped seal are near each other; 1/4 and 1/2 are fractions gone astray.
bool are_two_heights(const Number& first, const Number& second) {
  const double ratio = approximate(first) / approximate(second);
  return approximate(first) >= 2 && approximate(second) >= 2 && ratio >= 0.5 && ratio <= 2;
}

// In "43x55x9/10" no other dimension is a fraction and 9 is near 10, so these are two heights in mm.
// With inches named, or another fraction beside it, the last is a fraction too.
void settle_last(Size& size, std::string_view last_as_written, bool other_fractions, bool in_inches) {
  Number& last = size.value[static_cast<std::size_t>(size.count - 1)];
  const bool mixed = last_as_written.find_first_of("- ") != std::string_view::npos;
  if (last.denominator == 1 || mixed || size.count < 3 || in_inches || other_fractions) return;
  const Number first{last.digits, 0, 1}, second{last.denominator, 0, 1};
  if (!are_two_heights(first, second)) return;
  size.step = second;
  last = first;
}

// Inches that nobody named: some dimension is a fraction and none is larger than such parts are.
bool could_be_inches(const Size& size) {
  for (int i = 0; i < size.count; ++i) {
    if (approximate(size.value[static_cast<std::size_t>(i)]) > 12) return false;
  }
  return true;
}

bool has_fraction(const Size& size, int count) {
  for (int i = 0; i < count; ++i) {
    if (size.value[static_cast<std::size_t>(i)].denominator > 1) return true;
  }
  return false;
}

Result<Size> read_dimensions(Reader& reader, Parting parting, Input input) {
  Size size;
  std::string unit;
  std::string_view last;
  skip_diameter_sign(reader);
  do {
    const std::string_view before = reader.rest();
    // Spaced dimensions are plain numbers: "1 1/2" would be one number or two.
    auto number = parting == Parting::spaced ? reader.take_decimal(input) : reader.take_mixed(input);
    if (!number) return number.failure();
    if (number->digits == 0) return reader.failure("a dimension is more than 0");
    last = before.substr(0, before.size() - reader.rest().size());
    size.value[static_cast<std::size_t>(size.count++)] = *number;
    if (size.count >= 3 && take_step(reader)) {
      auto step = reader.take_decimal(input);
      if (!step) return step.failure();
      if (!are_two_heights(*number, *step))
        return reader.failure("the two heights of one seal are near each other");
      size.step = *step;
    }
    const std::string named = take_unit(reader);
    if (!unit.empty() && !named.empty() && named != unit)
      return reader.failure("one size, one unit: mm or in");
    if (!named.empty()) unit = named;
  } while (!size.step && size.count < 4 && take_parting(reader, parting));

  const bool other_fractions = has_fraction(size, size.count - 1);
  settle_last(size, last, other_fractions, unit == "in");
  const bool fractions = has_fraction(size, size.count);
  if (unit.empty() && input == Input::prompt && fractions && could_be_inches(size)) unit = "in";
  if (unit != "in" && fractions) {
    return reader.failure("fractions are for inches: write in after them, or decimals of mm");
  }
  const auto is_whole = [](const Number& number) { return number.places == 0; };
  if (unit == "in" && size.step &&
      (is_whole(size.value[static_cast<std::size_t>(size.count - 1)]) || is_whole(*size.step)))
    return reader.failure("of inches a whole number over another is a fraction: write it without spaces");
  size.unit = unit == "in" ? "in" : "mm";
  return size;
}

bool says_it_is_a_size(std::string_view text, const Size& size) {
  if (size.count > 1 || size.unit == "in") return true;
  return text.find("mm") != std::string_view::npos || text.find("ø") != std::string_view::npos ||
         text.find("Ø") != std::string_view::npos || text.find("⌀") != std::string_view::npos;
}

std::string joined(const Size& size, std::string (*spell)(const Number&)) {
  std::string text;
  for (int i = 0; i < size.count; ++i) {
    if (i > 0) text += "x";
    text += spell(size.value[static_cast<std::size_t>(i)]);
  }
  if (size.step) text += "/" + spell(*size.step);
  return text;
}

}  // namespace

Result<Size> parse_size(std::string_view text, Input input) {
  auto read = [&](Parting parting) {
    return read_whole(text, "size", [&](Reader& reader) { return read_dimensions(reader, parting, input); });
  };
  auto size = read(Parting::marked);
  if (!size && input == Input::prompt) {
    if (auto spaced = read(Parting::spaced)) size = spaced;
  }
  if (size && !says_it_is_a_size(text, *size)) {
    return Failure{"one number alone is no size: 41x54x11, ø43 and 43 mm are"};
  }
  return size;
}

std::optional<Found<Size>> size_at(std::string_view text, Input input) {
  Reader reader(text);
  auto size = read_dimensions(reader, Parting::marked, input);
  if (!size || size->count < 2 || !reader.at_word_end()) return std::nullopt;
  return Found<Size>{*size, reader.source_offset()};
}

std::string to_text(const Size& size) {
  const std::string text = joined(size, [](const Number& number) { return to_text(number); });
  if (size.unit == "in") return text + " in";
  return size.count == 1 ? text + " mm" : text;
}

std::string size_key(const Size& size) {
  return joined(size, [](const Number& number) { return plain(number); }) + (size.unit == "in" ? "in" : "");
}

double dimension_mm(const Size& size, int index) {
  const double value = approximate(size.value[static_cast<std::size_t>(index)]);
  return size.unit == "in" ? value * mm_per_inch : value;
}

}  // namespace sheaf
