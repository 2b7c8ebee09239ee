// SPDX-License-Identifier: GPL-2.0-or-later
// A basic designation is a series and a bore code, and each series fixes how many digits follow it.
#include "query/trade/bearing.h"

#include <algorithm>

#include "query/trade/bearing_series.h"
#include "query/trade/reader.h"

namespace sheaf {
namespace {

using namespace bearing_names;

// A bore code as ISO 15 catalogues have it: 00 10 mm, 01 12 mm, 02 15 mm, 03 17 mm, from 04 five times the
// code.
std::optional<double> bore_of_code(int code) {
  constexpr double smallest[] = {10, 12, 15, 17};
  if (code >= 0 && code <= 3) return smallest[code];
  if (code <= 96) return code * 5.0;
  return std::nullopt;
}

// "/22", "/28", "/2.5": the bore itself in mm, where the code cannot say it.
std::optional<Number> take_literal_bore(Reader& reader) {
  const std::size_t start = reader.mark();
  if (reader.take("/") && reader.at_digit()) {
    auto bore = reader.take_decimal(Input::sheet);
    if (bore && approximate(*bore) > 0 && approximate(*bore) <= 2000) return *bore;
  }
  reader.back_to(start);
  return std::nullopt;
}

std::optional<int> take_digits(Reader& reader, std::size_t count) {
  for (std::size_t i = 0; i < count; ++i) {
    if (!reader.at_digit(i)) return std::nullopt;
  }
  if (reader.at_digit(count)) return std::nullopt;
  return reader.take_integer();
}

std::string two_digits(int code) { return (code < 10 ? "0" : "") + std::to_string(code); }

// The bore code, or the literal bore, after a series: fills basic and bore_mm.
bool read_bore(Reader& reader, std::string series, Bearing& bearing) {
  if (auto literal = take_literal_bore(reader)) {
    bearing.basic = series + "/" + plain(*literal);
    bearing.bore_mm = approximate(*literal);
    return true;
  }
  const std::size_t start = reader.mark();
  if (auto code = take_digits(reader, 2)) {
    bearing.basic = series + two_digits(*code);
    bearing.bore_mm = bore_of_code(*code);
    if (bearing.bore_mm) return true;
  }
  reader.back_to(start);
  return false;
}

// "608", "623": the last digit is the bore in mm.
bool read_miniature(Reader& reader, Bearing& bearing) {
  const char section = reader.peek(1);
  const bool known = reader.at("6") && std::string_view("023789").find(section) != std::string_view::npos;
  if (!known || reader.peek(2) == '0') return false;
  const std::optional<int> number = take_digits(reader, 3);
  if (!number) return false;
  bearing.basic = std::to_string(*number);
  bearing.bore_mm = *number % 10;
  return true;
}

bool read_numbered(Reader& reader, Bearing& bearing) {
  const std::size_t start = reader.mark();
  for (const Series& series : numbered_series) {
    if (reader.take(series.name) && read_bore(reader, std::string(series.name), bearing)) return true;
    reader.back_to(start);
  }
  return false;
}

bool read_cylindrical(Reader& reader, Bearing& bearing) {
  const std::size_t start = reader.mark();
  for (const Series& form : cylindrical_forms) {
    if (!reader.take(form.name)) continue;
    reader.skip_spaces();
    const std::size_t after_form = reader.mark();
    for (std::string_view series : cylindrical_series) {
      if (reader.take(series) && read_bore(reader, upper_case(form.name) + std::string(series), bearing))
        return true;
      reader.back_to(after_form);
    }
    break;
  }
  reader.back_to(start);
  return false;
}

// "HK1612": the bore under the rollers and the width, both in mm.
bool read_drawn_cup(Reader& reader, Bearing& bearing) {
  const std::size_t start = reader.mark();
  for (const Series& cup : drawn_cups) {
    if (!reader.take(cup.name)) continue;
    reader.skip_spaces();
    if (auto digits = take_digits(reader, 4)) {
      bearing.basic = upper_case(cup.name) + two_digits(*digits / 100) + two_digits(*digits % 100);
      bearing.bore_mm = *digits / 100;
      if (*digits / 100 >= 3 && *digits % 100 >= 4) return true;
    }
    break;
  }
  reader.back_to(start);
  return false;
}

// One letter after a space may be anything ("6203 x 2") where the text goes on; at its end, or joined
// to the number, it is a suffix.
const Suffix* take_suffix(Reader& reader) {
  const std::size_t start = reader.mark();
  reader.skip_spaces();
  const bool spaced = reader.mark() > start;
  reader.take("-") || reader.take("/") || reader.take(".");
  for (const Suffix& suffix : suffixes) {
    const std::size_t before = reader.mark();
    if (!reader.take_word(suffix.written)) continue;
    const bool clear = !spaced || suffix.written.size() > 1 || suffix.written == "z" || reader.done();
    if (clear) return &suffix;
    reader.back_to(before);
  }
  for (const Suffix& suffix : suffixes) {  // "2RSC3": the next follows at once
    const std::size_t before = reader.mark();
    const bool joined = suffix.written.size() > 1 && reader.take(suffix.written) && reader.at("c");
    if (joined) return &suffix;
    reader.back_to(before);
  }
  reader.back_to(start);
  return nullptr;
}

void read_suffixes(Reader& reader, Bearing& bearing) {
  std::vector<const Suffix*> found;
  while (const Suffix* suffix = take_suffix(reader)) found.push_back(suffix);
  std::sort(found.begin(), found.end());  // table order
  for (const Suffix* suffix : found) {
    if (!bearing.suffix.empty()) bearing.suffix += " ";
    bearing.suffix += suffix->canonical;
  }
}

Result<Bearing> read_bearing(Reader& reader) {
  Bearing bearing;
  if (!read_numbered(reader, bearing) && !read_miniature(reader, bearing) &&
      !read_cylindrical(reader, bearing) && !read_drawn_cup(reader, bearing)) {
    return reader.failure("not a bearing number: 6203, 62/22, 32006, NU205 and 6203-2RS C3 are");
  }
  read_suffixes(reader, bearing);
  return bearing;
}

// A letter alone, with more behind it: it is read as a suffix only where no space parts it from the number.
bool has_letter_before_more(std::string_view suffixes) {
  for (std::size_t at = 0; at + 1 < suffixes.size(); ++at) {
    const bool begins = at == 0 || suffixes[at - 1] == ' ';
    if (begins && suffixes[at + 1] == ' ') return true;
  }
  return false;
}

// 1200 and 2300 are as often engine sizes; after them only a suffix tells.
bool could_be_a_plain_number(const Bearing& bearing) {
  return bearing.suffix.empty() && bearing.basic.size() == 4 &&
         (bearing.basic[0] == '1' || bearing.basic[0] == '2');
}

}  // namespace

Result<Bearing> parse_bearing(std::string_view text, Input) {
  return read_whole(text, "bearing", [](Reader& reader) { return read_bearing(reader); });
}

std::optional<Found<Bearing>> bearing_at(std::string_view text, Input) {
  Reader reader(text);
  auto bearing = read_bearing(reader);
  if (!bearing || !reader.at_word_end() || could_be_a_plain_number(*bearing)) return std::nullopt;
  return Found<Bearing>{*bearing, reader.source_offset()};
}

std::string to_text(const Bearing& bearing) {
  if (bearing.suffix.empty()) return bearing.basic;
  std::string suffix = bearing.suffix;
  const bool sealed = suffix.find_first_of("SZ") != std::string::npos;
  const bool joined = has_letter_before_more(suffix);
  if (joined) std::ranges::replace(suffix, ' ', '-');
  return bearing.basic + (sealed || joined ? "-" : " ") + suffix;
}

}  // namespace sheaf
