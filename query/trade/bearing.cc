// SPDX-License-Identifier: GPL-2.0-or-later
// A basic designation is a series and a bore code, and each series fixes how many digits follow it.
// The series names and bore code rule are those of the ISO 15 / ISO 355 catalogues, common practice;
// what outside diameter and width a series means for a bore is a row of a table, not known here.
#include "query/trade/bearing.h"

#include <algorithm>

#include "query/trade/reader.h"

namespace sheaf {
namespace {

struct Series {
  std::string_view name;
  std::string_view kind;
};

// Longer names stand before those that begin them.
constexpr Series numbered_series[] = {
    {"617", "deep groove ball, extra thin section"},
    {"618", "deep groove ball, extra thin section"},
    {"619", "deep groove ball, thin section"},
    {"622", "deep groove ball, medium section, wide"},
    {"623", "deep groove ball, heavy section, wide"},
    {"630", "deep groove ball, light section, wide"},
    {"160", "deep groove ball, light section, narrow"},
    {"161", "deep groove ball, light section, narrow"},
    {"67", "deep groove ball, extra thin section"},
    {"68", "deep groove ball, extra thin section"},
    {"69", "deep groove ball, thin section"},
    {"60", "deep groove ball, light section"},
    {"62", "deep groove ball, medium section"},
    {"63", "deep groove ball, heavy section"},
    {"64", "deep groove ball, extra heavy section"},
    {"302", "tapered roller"},
    {"303", "tapered roller"},
    {"313", "tapered roller, steep angle"},
    {"320", "tapered roller"},
    {"322", "tapered roller"},
    {"323", "tapered roller"},
    {"329", "tapered roller"},
    {"330", "tapered roller"},
    {"331", "tapered roller"},
    {"332", "tapered roller"},
    {"511", "thrust ball"},
    {"512", "thrust ball"},
    {"513", "thrust ball"},
    {"514", "thrust ball"},
    {"213", "spherical roller"},
    {"222", "spherical roller"},
    {"223", "spherical roller"},
    {"230", "spherical roller"},
    {"231", "spherical roller"},
    {"232", "spherical roller"},
    {"718", "angular contact ball"},
    {"719", "angular contact ball"},
    {"70", "angular contact ball"},
    {"72", "angular contact ball"},
    {"73", "angular contact ball"},
    {"32", "angular contact ball, two rows"},
    {"33", "angular contact ball, two rows"},
    {"52", "angular contact ball, two rows"},
    {"53", "angular contact ball, two rows"},
    {"12", "self-aligning ball"},
    {"13", "self-aligning ball"},
    {"22", "self-aligning ball"},
    {"23", "self-aligning ball"},
};

constexpr Series cylindrical_forms[] = {
    {"nup", "cylindrical roller, loose ring on the inner"},
    {"nu", "cylindrical roller, plain inner ring"},
    {"nj", "cylindrical roller, inner ring with one rib"},
    {"n", "cylindrical roller, plain outer ring"},
};
constexpr std::string_view cylindrical_series[] = {"10", "22", "23", "2", "3", "4"};

constexpr Series drawn_cups[] = {
    {"hk", "needle roller, drawn cup, open ends"},
    {"bk", "needle roller, drawn cup, one closed end"},
};

// Suffixes in the order in which the canonical spelling has them.
struct Suffix {
  std::string_view written;
  std::string_view canonical;
  std::string_view says;
};
constexpr Suffix suffixes[] = {
    {"2rs1", "2RS", "a contact seal on both sides"},
    {"2rsr", "2RS", "a contact seal on both sides"},
    {"2rsh", "2RS", "a contact seal on both sides"},
    {"2rs", "2RS", "a contact seal on both sides"},
    {"ddu", "2RS", "a contact seal on both sides"},
    {"llu", "2RS", "a contact seal on both sides"},
    {"2rz", "2RZ", "a low-friction seal on both sides"},
    {"2z", "2Z", "a metal shield on both sides"},
    {"zz", "2Z", "a metal shield on both sides"},
    {"rs1", "RS", "a contact seal on one side"},
    {"rsr", "RS", "a contact seal on one side"},
    {"rsh", "RS", "a contact seal on one side"},
    {"rs", "RS", "a contact seal on one side"},
    {"rz", "RZ", "a low-friction seal on one side"},
    {"z", "Z", "a metal shield on one side"},
    {"nr", "NR", "a snap ring groove with its ring"},
    {"n", "N", "a snap ring groove in the outer ring"},
    {"k", "K", "a tapered bore, 1 to 12"},
    {"x", "X", "outside dimensions of the current ISO plan"},
    {"tn9", "TN9", "a polyamide cage"},
    {"tn", "TN", "a polyamide cage"},
    {"m", "M", "a machined brass cage"},
    {"j", "J", "a pressed steel cage; on tapers, an outer ring of the ISO plan"},
    {"c1", "C1", "internal clearance less than C2"},
    {"c2", "C2", "internal clearance less than normal"},
    {"cn", "CN", "normal internal clearance"},
    {"c3", "C3", "internal clearance more than normal"},
    {"c4", "C4", "internal clearance more than C3"},
    {"c5", "C5", "internal clearance more than C4"},
    {"p6", "P6", "closer tolerances than normal"},
    {"p5", "P5", "closer tolerances than P6"},
};

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

std::string upper(std::string_view text) {
  std::string result(text);
  for (char& letter : result) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  }
  return result;
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
      if (reader.take(series) && read_bore(reader, upper(form.name) + std::string(series), bearing))
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
      bearing.basic = upper(cup.name) + two_digits(*digits / 100) + two_digits(*digits % 100);
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

// 1200 and 2300 are as often engine sizes; after them only a suffix tells.
bool could_be_a_plain_number(const Bearing& bearing) {
  return bearing.suffix.empty() && bearing.basic.size() == 4 &&
         (bearing.basic[0] == '1' || bearing.basic[0] == '2');
}

bool begins(std::string_view text, std::string_view start) { return upper(text).starts_with(upper(start)); }

std::string millimetres(double mm) {
  const auto tenths = static_cast<std::int64_t>(mm * 100 + 0.5);
  return plain(Number{tenths, 2, 1}) + " mm";
}

std::string bore_meaning(const Bearing& bearing) {
  return bearing.bore_mm ? "bore " + millimetres(*bearing.bore_mm) : "bore code without a rule";
}

void explain_basic(const Bearing& bearing, std::vector<Meaning>& meanings) {
  const std::string& basic = bearing.basic;
  auto tell = [&](std::size_t length, std::string_view kind) {
    meanings.push_back({basic.substr(0, length), std::string(kind)});
    meanings.push_back({basic.substr(length), bore_meaning(bearing)});
  };
  for (const Series& cup : drawn_cups) {
    if (begins(basic, cup.name) && basic.size() == 6) {
      tell(4, cup.kind);
      meanings.front().part = basic.substr(0, 2);
      meanings[1].part = basic.substr(2, 2);
      meanings.push_back({basic.substr(4), "width " + basic.substr(4) + " mm"});
      return;
    }
  }
  for (const Series& form : cylindrical_forms) {
    if (begins(basic, form.name)) {
      const std::size_t slash = basic.find('/');
      return tell(slash != std::string::npos ? slash : basic.size() - 2, form.kind);
    }
  }
  if (basic.size() == 3 && basic.find('/') == std::string::npos)
    return tell(2, "deep groove ball, miniature");
  for (const Series& series : numbered_series) {
    const bool whole = basic.size() == series.name.size() + 2 || basic[series.name.size()] == '/';
    if (basic.starts_with(series.name) && whole) return tell(series.name.size(), series.kind);
  }
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
  const bool sealed = bearing.suffix.find_first_of("SZ") != std::string::npos;
  return bearing.basic + (sealed ? "-" : " ") + bearing.suffix;
}

std::vector<Meaning> explain(const Bearing& bearing) {
  std::vector<Meaning> meanings;
  explain_basic(bearing, meanings);
  std::string_view rest = bearing.suffix;
  while (!rest.empty()) {
    const std::string_view part = rest.substr(0, rest.find(' '));
    for (const Suffix& suffix : suffixes) {
      if (suffix.canonical == part) {
        meanings.push_back({std::string(part), std::string(suffix.says)});
        break;
      }
    }
    rest.remove_prefix(std::min(part.size() + 1, rest.size()));
  }
  return meanings;
}

}  // namespace sheaf
