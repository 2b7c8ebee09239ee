// SPDX-License-Identifier: GPL-2.0-or-later
// The prefixes, and the bodies that take more than folding.
#include "query/library/index_terms.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

#include "query/library/fold.h"
#include "query/library/hash.h"

namespace sheaf {
namespace {

constexpr std::array<PrefixDeclaration, 25> prefixes = {{
    {Prefix::word, "", "word of the name or of another name, folded", "plug"},
    {Prefix::stem, "Z", "English stem of such a word", "Zplug"},
    {Prefix::other_stem, "XO",
     "stem of a word elsewhere: id, title, maker, machine, notes, conditions, choices, source, marks",
     "XOleaflet"},
    {Prefix::exact_name, "XN", "whole name or other name, words parted by one space", "XNfork top plug"},
    {Prefix::group, "XG", "group of words that its names hold", "XGfork-cap"},
    {Prefix::kind, "XK", "kind, or kind of row", "XKfastener"},
    {Prefix::assembly, "XA", "assembly of its sheet", "XAfork"},
    {Prefix::machine, "XM", "make/model it fits; any, if it is for no machine in particular",
     "XMhaldrek/muleback 380"},
    {Prefix::make, "XMK", "make it fits", "XMKhaldrek"},
    {Prefix::years, "XY", "make/model/block of years it fits; without make and model, years alone",
     "XYhaldrek/muleback 380/2012-2015"},
    {Prefix::side, "XS", "side", "XSfront"},
    {Prefix::thread, "XT", "thread", "XTm8x1.25"},
    {Prefix::diameter, "XTD", "diameter of the thread", "XTDm8"},
    {Prefix::drive, "XD", "drive", "XDhexagon-27"},
    {Prefix::size, "XZ", "size, dimensions as written", "XZ41x54x11"},
    {Prefix::any_order, "XZA", "size, dimensions from small to large", "XZA11x41x54"},
    {Prefix::dimension, "XZD", "each dimension of the size alone", "XZD41"},
    {Prefix::dimension_at, "XZP", "the same behind its place in the size", "XZP1/41"},
    {Prefix::bearing, "XB", "basic designation of a bearing", "XB6203"},
    {Prefix::part_number, "P", "its own part number, letters and digits alone", "Phk4073220"},
    {Prefix::other_number, "XP", "number that it replaces, that replaces it, or that it has elsewhere",
     "XPhk4073210"},
    {Prefix::code, "XI", "class, grade or code, letters and digits alone", "XIdot4"},
    {Prefix::field, "XE", "key of a field that it has", "XEtorque"},
    {Prefix::figure, "XQ", "dimension/step of the least of its figures of that dimension", "XQtorque/22"},
    {Prefix::choice, "XV", "key=value of a choice or flag, a fit's market, a sheet's tube in mm",
     "XVhand=left"},
}};

constexpr std::size_t longest_body = 200;  // bytes; with the letters well within Xapian's 245

// The block of `size` years (a power of 2) that begins at `from`: "2013", "2012-2015".
std::string year_term(std::string_view machine, int from, int size) {
  std::string body = std::string(machine) + '/' + std::to_string(from);
  if (size > 1) body += '-' + std::to_string(from + size - 1);
  return term(Prefix::years, body);
}

constexpr int all_years = last_year - first_year + 1;

// size_key without its unit, and the dimensions in it: "1.5x2in" -> "1.5", "2" and "in".
struct KeyParts {
  std::vector<std::string> dimensions;
  std::string unit;
};

KeyParts parts_of(const Size& size) {
  std::string key = size_key(size);
  KeyParts parts;
  if (size.unit != "mm" && key.ends_with(size.unit)) {
    parts.unit = size.unit;
    key.resize(key.size() - size.unit.size());
  }
  for (std::size_t begin = 0; begin <= key.size();) {
    const std::size_t end = std::min(key.find('x', begin), key.size());
    parts.dimensions.push_back(key.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}

constexpr int most_steps = 16;  // asked for one by one

// Four to a doubling, by comparison alone, so that a step is the same on every machine.
int step_of(double positive) {
  constexpr std::array<double, 3> borders = {0.594603557501360533, 0.707106781186547524,
                                             0.840896415253714543};  // 2 to the -3/4, -1/2, -1/4
  int doublings = 0;
  const double share = std::frexp(positive, &doublings);
  const auto above = std::ranges::count_if(borders, [&](double border) { return share >= border; });
  return 4 * doublings + static_cast<int>(above);
}

std::string figure_body_at(Dimension dimension, std::string_view step) {
  return std::string(name_of(dimension)).append("/").append(step);
}

}  // namespace

std::span<const PrefixDeclaration> all_prefixes() { return prefixes; }

std::string_view letters_of(Prefix prefix) { return prefixes[static_cast<std::size_t>(prefix)].letters; }

std::string term(Prefix prefix, std::string_view body) {
  std::string text(letters_of(prefix));
  if (body.size() <= longest_body) return text.append(body);
  return text.append(body.substr(0, longest_body - 17)) + '~' + to_hexadecimal(hash_of(body));
}

std::string machine_body(std::string_view make, std::string_view model) {
  return fold(make) + '/' + fold(model);
}

std::string diameter_body(const Thread& thread) {
  Thread bare = thread;
  bare.pitch.reset();
  bare.per_inch.reset();
  bare.length.reset();
  if (thread.system == Thread::System::unified) bare.series.clear();
  return thread_key(bare);
}

std::string any_order_body(const Size& size) {
  const KeyParts parts = parts_of(size);
  std::vector<int> order(parts.dimensions.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::stable_sort(order, {}, [&](int index) { return dimension_mm(size, index); });
  std::string body;
  for (const int index : order) {
    if (!body.empty()) body += 'x';
    body += parts.dimensions[static_cast<std::size_t>(index)];
  }
  return body + parts.unit;
}

std::vector<std::string> dimension_bodies(const Size& size) {
  KeyParts parts = parts_of(size);
  for (std::string& dimension : parts.dimensions) dimension += parts.unit;
  return parts.dimensions;
}

std::string dimension_at_body(std::size_t place, std::string_view body) {
  return std::to_string(place + 1).append("/").append(body);
}

std::string figure_body(Dimension dimension, double least, double most) {
  const bool is_narrow = least > 0 && most <= 2 * least;
  return figure_body_at(dimension, is_narrow ? std::to_string(step_of(least)) : "wide");
}

std::vector<std::string> figure_bodies(Dimension dimension, double from, double to) {
  if (!(from > 0 && to >= from && std::isfinite(to))) return {};
  const int first = step_of(from / 2), last = step_of(to);
  if (last - first >= most_steps) return {};
  std::vector<std::string> bodies = {figure_body_at(dimension, "wide")};
  for (int step = first; step <= last; ++step)
    bodies.push_back(figure_body_at(dimension, std::to_string(step)));
  return bodies;
}

std::vector<std::string> year_terms(std::string_view machine, int year) {
  std::vector<std::string> terms;
  if (year < first_year || year > last_year) return terms;
  for (int size = 1; size <= all_years; size *= 2) {
    terms.push_back(year_term(machine, year - (year - first_year) % size, size));
  }
  return terms;
}

std::vector<std::string> year_range_terms(std::string_view machine, int from, int to) {
  from = from == 0 ? first_year : std::max(from, first_year);
  to = to == 0 ? last_year : std::min(to, last_year);
  std::vector<std::string> terms;
  while (from <= to) {  // the largest block that begins here and does not reach beyond
    int size = 1;
    while ((from - first_year) % (size * 2) == 0 && size * 2 <= all_years && from + size * 2 - 1 <= to) {
      size *= 2;
    }
    terms.push_back(year_term(machine, from, size));
    from += size;
  }
  return terms;
}

std::string tube_choice(double mm) {
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::round(mm * 10) / 10);
  return "tube=" + std::string(buffer.data(), end.ptr);
}

}  // namespace sheaf
