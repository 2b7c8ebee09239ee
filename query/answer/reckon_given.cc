// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/reckon_given.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "query/library/fold.h"
#include "query/library/near_word.h"

namespace sheaf {
namespace {

bool is_name(std::string_view word, std::span<const GivenName> names) {
  return std::ranges::find(names, word, &GivenName::name) != names.end();
}

// A line that a shell handed over in one piece is parted; a piece of several, "music wire", is one value.
std::vector<std::string> parted(const std::vector<std::string>& words) {
  if (words.size() != 1) return words;
  std::vector<std::string> pieces;
  for (std::string_view rest = words.front(); !rest.empty();) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    if (end > 0) pieces.emplace_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return pieces;
}

// "wire=4.5" is "wire 4.5".
std::vector<std::string> pieces_of(const std::vector<std::string>& words, std::span<const GivenName> names) {
  std::vector<std::string> pieces;
  for (const auto& word : parted(words)) {
    const auto equals = word.find('=');
    const bool named = equals != std::string::npos && is_name(word.substr(0, equals), names);
    if (named) pieces.push_back(word.substr(0, equals));
    if (!named || equals + 1 < word.size()) pieces.push_back(named ? word.substr(equals + 1) : word);
  }
  return pieces;
}

// 100 L is 100 000 mL, not 100 000.000 000 000 01: a bottle more would be bought for it.
double without_rounding_noise(double value) {
  constexpr int kept_digits = 12;
  if (value == 0 || !std::isfinite(value)) return value;
  const double scale = std::pow(10, kept_digits - 1 - std::floor(std::log10(std::abs(value))));
  return std::isfinite(scale) ? std::round(value * scale) / scale : value;
}

double from_base(double base, const Unit& unit) {
  const auto value = [](const Rational& number) {
    return static_cast<double>(number.numerator) / static_cast<double>(number.denominator);
  };
  return without_rounding_noise((base - value(unit.offset)) / value(unit.factor));
}

// "music" of "material music wire": a name that stands behind it again is the rest of it.
bool is_words(std::string_view text) {
  return !text.empty() && text.find_first_of("0123456789") == std::string_view::npos;
}

// The name that a word nearly is, one slip away; units and most values are shorter or further off.
std::string misspelt(std::string_view word, std::span<const GivenName> names) {
  constexpr std::size_t shortest = 4;
  if (word.size() < shortest || !is_words(word) || is_name(word, names)) return {};
  for (const auto& name : names)
    if (name.name.size() > shortest && slips_between(word, name.name) == 1) return std::string(name.name);
  return {};
}

bool is_bare_number(const std::string& text) { return bool(parse_number(text, Input::prompt)); }

}  // namespace

const Unit& unit_named(std::string_view symbol) {
  const auto units = all_units();
  const auto found = std::ranges::find(units, symbol, &Unit::symbol);
  assert(found != units.end());
  return *found;
}

const Unit& unit_named(std::string_view symbol, Dimension dimension) {
  const auto units = units_of(dimension);
  const auto found = std::ranges::find(units, symbol, &Unit::symbol);
  assert(found != units.end());
  return *found;
}

Band in_unit(const Figure& figure, const Unit& unit) {
  const BaseBand base = base_band(figure);
  return {from_base(base.least, unit), from_base(base.most, unit)};
}

Given::Given(const std::vector<std::string>& words, std::span<const GivenName> names) {
  std::string name(names.front().name);
  for (const auto& piece : pieces_of(words, names)) {
    const std::string word = fold(piece);
    if (is_name(word, names) && !(texts_.contains(word) && is_words(texts_[name]))) {
      name = word;
      if (texts_.contains(name)) refuse("'" + name + "' is given twice");
      texts_[name];
    } else {
      if (const auto meant = misspelt(word, names); !meant.empty())
        refuse("nothing is called '" + piece + "' here; did you mean '" + meant + "'?");
      std::string& text = texts_[name];
      text += text.empty() ? piece : ' ' + piece;
    }
  }
  for (const auto& [each, text] : texts_)
    if (text.empty()) refuse("'" + each + "' has no value");
  for (const auto& each : names)
    if (each.required && !has(each.name))
      refuse("'" + std::string(each.name) + "' is missing: " + std::string(each.help));
}

void Given::refuse(std::string message) {
  if (!fault_) fault_ = Failure{std::move(message)};
}

void Given::note(std::string_view name, std::string text) {
  if (std::ranges::find(understood_, name, &Labelled::label) == understood_.end())
    understood_.push_back({std::string(name), std::move(text)});
}

std::string Given::text(std::string_view name) { return text_if(name).value_or(""); }

std::optional<std::string> Given::text_if(std::string_view name) {
  const auto found = texts_.find(std::string(name));
  if (found == texts_.end() || found->second.empty()) return std::nullopt;
  note(name, found->second);
  return found->second;
}

std::optional<Figure> Given::read(const std::string& name, const std::string& text, const Unit& unit) {
  const std::string whole = is_bare_number(text) ? text + ' ' + std::string(unit.symbol) : text;
  auto figure = parse_figure(whole, unit.dimension, Input::prompt);
  if (!figure) {
    refuse(name + " '" + text + "': " + figure.failure().message);
    return std::nullopt;
  }
  return *figure;
}

std::optional<Figure> Given::figure_if(std::string_view name, const Unit& unit) {
  const auto found = texts_.find(std::string(name));
  if (found == texts_.end() || found->second.empty()) return std::nullopt;
  auto figure = read(found->first, found->second, unit);
  if (figure) note(name, shown(*figure));
  return figure;
}

std::optional<Band> Given::band_if(std::string_view name, const Unit& unit) {
  const auto figure = figure_if(name, unit);
  if (!figure) return std::nullopt;
  const Band band = in_unit(*figure, unit);
  if (std::isfinite(band.least) && std::isfinite(band.most)) return band;
  refuse(std::string(name) + " needs both its ends");
  return std::nullopt;
}

std::optional<double> Given::amount_if(std::string_view name, const Unit& unit) {
  const auto band = band_if(name, unit);
  if (!band) return std::nullopt;
  if (band->least != band->most) refuse(std::string(name) + " wants one value, not a range");
  return band->least;
}

double Given::amount(std::string_view name, const Unit& unit) { return amount_if(name, unit).value_or(0); }

std::optional<Band> Given::numbers_if(std::string_view name) {
  const auto found = texts_.find(std::string(name));
  if (found == texts_.end() || found->second.empty()) return std::nullopt;
  const std::string& text = found->second;
  const auto dots = text.find("..");
  const auto least = parse_number(text.substr(0, dots), Input::prompt);
  const auto most = dots == std::string::npos ? least : parse_number(text.substr(dots + 2), Input::prompt);
  if (!least || !most || compare(*least, *most) > 0) {
    refuse(found->first + " wants a number or a range of them (0.08..0.16), not '" + text + "'");
    return std::nullopt;
  }
  note(name, dots == std::string::npos ? shown(*least) : shown(*least) + "–" + shown(*most));
  return Band{approximate(*least), approximate(*most)};
}

std::optional<double> Given::number_if(std::string_view name) {
  const auto band = numbers_if(name);
  if (!band) return std::nullopt;
  if (band->least != band->most) refuse(std::string(name) + " wants one number, not a range");
  return band->least;
}

std::optional<Statement> Given::statement_if(std::string_view name, Dimension dimension) {
  const auto found = texts_.find(std::string(name));
  if (found == texts_.end() || found->second.empty()) return std::nullopt;
  auto statement = parse_statement(found->second, dimension, Input::prompt);
  if (!statement) {
    refuse(found->first + " '" + found->second + "': " + statement.failure().message);
    return std::nullopt;
  }
  note(name, shown(*statement));
  return std::move(statement).value();
}

std::vector<Figure> Given::list(std::string_view name, const Unit& unit) {
  const auto found = texts_.find(std::string(name));
  std::vector<Figure> figures;
  if (found == texts_.end()) return figures;
  std::string all;
  for (std::string_view rest = found->second; !rest.empty();) {
    const auto end = std::min(rest.find(','), rest.size());
    const auto figure = read(found->first, std::string(rest.substr(0, end)), unit);
    if (!figure) return figures;
    all += (all.empty() ? "" : ", ") + shown(*figure);
    figures.push_back(*figure);
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  note(name, std::move(all));
  return figures;
}

}  // namespace sheaf
