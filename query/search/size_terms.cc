// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/size_terms.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <limits>
#include <set>

#include "query/trade/designation.h"
#include "query/trade/reader.h"

namespace sheaf {
namespace {

using Query = Xapian::Query;

constexpr std::size_t most_read = 5000;  // terms; an index that has more is asked by its values
constexpr std::size_t most_asked = 100;  // terms of one question, or whole numbers that they begin with
constexpr unsigned most_dimensions = 4;

int whole_of(double length) { return static_cast<int>(std::clamp(length, 0.0, 1e6)); }

// Most are written plainly, and these are many.
std::optional<double> number_in(std::string_view text) {
  double value = 0;
  const auto [end, fault] =
      std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (fault == std::errc() && end == text.data() + text.size()) return value;
  const auto number = parse_number(text, Input::sheet);
  return number ? std::optional(approximate(*number)) : std::nullopt;
}

// "27", "1/2in"
std::optional<double> length_of(std::string_view body) {
  const bool is_inches = body.ends_with("in");
  if (is_inches) body.remove_suffix(2);
  const auto number = number_in(body);
  return number && is_inches ? *number * mm_per_inch : number;
}

// "41", "1.5in", "9.5/10.5" of a height with a step. What cannot be read is of any length.
double dimension_of(std::string_view body) {
  if (body.find('/') == std::string_view::npos)
    if (const auto mm = length_of(body)) return *mm;
  const auto size = parse_size("1x1x" + std::string(body), Input::sheet);
  return size ? dimension_mm(*size, 2) : std::numeric_limits<double>::quiet_NaN();
}

// "hexagon-27", "square-1/2in"
std::optional<double> width_of(std::string_view body) {
  Drive drive;
  for (const auto shape :
       {Drive::Shape::hexagon, Drive::Shape::hex_socket, Drive::Shape::square, Drive::Shape::twelve_point}) {
    drive.shape = shape;
    const std::string before = drive_key(drive) + "-";
    if (body.starts_with(before)) return length_of(body.substr(before.size()));
  }
  return std::nullopt;
}

// "m8", "5/16", "#10"; a pipe's is only a name.
std::optional<double> diameter_of(std::string_view body) {
  if (body.starts_with('m')) return number_in(body.substr(1));
  Thread thread;
  thread.system = Thread::System::unified;
  while (body.ends_with(' ')) body.remove_suffix(1);
  thread.diameter = body;
  const auto mm = diameter_mm(thread);
  return mm && *mm > 0 ? mm : std::nullopt;
}

}  // namespace

const std::vector<SizeTerms::Known>& SizeTerms::all(Prefix prefix, Read* read) {
  if (const auto found = known_.find(prefix); found != known_.end()) return found->second;
  auto& known = known_[prefix];
  const std::string letters(letters_of(prefix));
  for (auto at = database_.allterms_begin(letters); at != database_.allterms_end(letters); ++at) {
    const std::string text = *at;
    if (const auto mm = read(std::string_view(text).substr(letters.size()))) known.push_back({*mm, text});
    if (known.size() > most_read) break;
  }
  return known;
}

std::optional<Query> SizeTerms::within(Prefix prefix, Read* read, double from, double to) {
  const auto& known = all(prefix, read);
  if (known.size() > most_read) return std::nullopt;
  std::vector<Query> any;
  for (const auto& [mm, text] : known)
    if (mm >= from && mm <= to) any.emplace_back(text);
  if (any.size() > most_asked) return std::nullopt;
  return Query(Query::OP_OR, any.begin(), any.end());
}

// Terms are walked by the whole number that they begin with, in mm and in inches. A fraction that is no
// decimal (1/3 in) is so found by its whole size alone.
std::optional<Query> SizeTerms::dimensions(Prefix prefix, const std::string& place, double from, double to) {
  std::set<int> wholes;
  for (const double unit : {1.0, mm_per_inch})
    for (int whole = whole_of(from / unit); whole <= whole_of(to / unit) && wholes.size() <= most_asked;
         ++whole)
      wholes.insert(whole);
  if (wholes.size() > most_asked) return std::nullopt;
  std::vector<Query> any;
  const std::size_t before = letters_of(prefix).size() + place.size();
  for (const int whole : wholes) {
    const std::string start = term(prefix, place + std::to_string(whole));
    const auto add = [&](const std::string& text) {
      const double mm = dimension_of(std::string_view(text).substr(before));
      if (!(mm < from || mm > to)) any.emplace_back(text);
    };
    for (auto at = database_.allterms_begin(start); at != database_.allterms_end(start); ++at) {
      const std::string text = *at;
      if (text.size() > start.size() && std::isdigit(static_cast<unsigned char>(text[start.size()]))) break;
      add(text);  // "41", "41.5", "41/42", which stand before "410"
    }
    add(start + "in");
  }
  return Query(Query::OP_OR, any.begin(), any.end());
}

Query SizeTerms::dimension(double from, double to) {
  if (const auto query = dimensions(Prefix::dimension, "", from, to)) return *query;
  std::vector<Query> any;
  for (unsigned i = 0; i < most_dimensions; ++i) any.push_back(in_range(size_slot + i, from, to));
  return Query(Query::OP_OR, any.begin(), any.end());
}

Query SizeTerms::dimension_at(unsigned place, double from, double to) {
  return dimensions(Prefix::dimension_at, dimension_at_body(place, ""), from, to)
      .value_or(in_range(size_slot + place, from, to));
}

Query SizeTerms::across_flats(double from, double to) {
  return within(Prefix::drive, width_of, from, to).value_or(in_range(across_flats_slot, from, to));
}

Query SizeTerms::diameter(double from, double to) {
  return within(Prefix::diameter, diameter_of, from, to).value_or(in_range(diameter_slot, from, to));
}

Query in_range(unsigned slot, double from, double to) {
  return Query(Query::OP_VALUE_RANGE, slot, Xapian::sortable_serialise(from), Xapian::sortable_serialise(to));
}

}  // namespace sheaf
