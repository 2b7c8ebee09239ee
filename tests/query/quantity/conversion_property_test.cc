// SPDX-License-Identifier: GPL-2.0-or-later
// What holds for every conversion, tried on random figures against exact rational arithmetic of GMP.
#include <doctest/doctest.h>

#include "query/quantity/convert.h"
#include "tests/query/quantity/random_figure.h"
#include "tests/query/quantity/rational.h"

using namespace sheaf;
using test::rational;

namespace {

constexpr int tries = 200'000;

mpq_class half_step(const Number& number) { return test::power_of_ten(-number.places) / 2; }

// What the exact value is when rounded to the places of the number shown, a half away from zero.
mpq_class rounded_to_nearest(const mpq_class& value, int places) {
  const mpq_class scaled = abs(value) * test::power_of_ten(places) + mpq_class(1, 2);
  const mpz_class whole = scaled.get_num() / scaled.get_den();
  const mpq_class result = mpq_class(whole) * test::power_of_ten(-places);
  return value < 0 ? mpq_class(-result) : result;
}

// Everything one conversion must keep to.
void check_conversion(const Figure& source, const Unit& unit, const Converted& converted) {
  const Figure& shown = converted.figure;
  const auto exact_of = [&](const Number& number) {
    return test::converted(rational(number), *source.unit, unit);
  };

  // Nothing is invented, nothing is lost.
  CHECK(shown.nominal.has_value() == source.nominal.has_value());
  CHECK(shown.least.has_value() == source.least.has_value());
  CHECK(shown.most.has_value() == source.most.has_value());

  bool all_exact = true;
  if (source.least) {
    const mpq_class exact = exact_of(*source.least), least = rational(*shown.least);
    CHECK(least >= exact);                               // inward
    CHECK(least - exact < 2 * half_step(*shown.least));  // and by less than a step
    all_exact = all_exact && least == exact;
  }
  if (source.most) {
    const mpq_class exact = exact_of(*source.most), most = rational(*shown.most);
    CHECK(most <= exact);
    CHECK(exact - most < 2 * half_step(*shown.most));
    all_exact = all_exact && most == exact;
  }
  if (source.nominal) {
    const mpq_class exact = exact_of(*source.nominal), nominal = rational(*shown.nominal);
    const mpq_class nearest = rounded_to_nearest(exact, shown.nominal->places);
    const bool stepped_up = shown.least && nearest < rational(*shown.least);
    const bool stepped_down = shown.most && nearest > rational(*shown.most);
    CHECK(nominal == (stepped_up ? rational(*shown.least) : stepped_down ? rational(*shown.most) : nearest));
    all_exact = all_exact && nominal == exact;
    if (!source.least && !source.most && source.nominal->denominator == 1) {
      const mpq_class half =
          half_step(*source.nominal) * rational(source.unit->factor) / rational(unit.factor);
      const bool round_interval =
          source.unit->dimension == Dimension::distance || source.unit->dimension == Dimension::time;
      if (!round_interval) CHECK(abs(nominal - exact) <= half);
    }
  }
  if (shown.least && shown.most) CHECK(compare(*shown.least, *shown.most) <= 0);
  const bool same_size = source.unit->exact == unit.exact;
  CHECK(converted.exact == (all_exact && same_size));
}

}  // namespace

TEST_CASE("every conversion is the exact value, rounded once: to nearest, or into the band") {
  test::RandomFigures random(1);
  int refused = 0;
  for (int i = 0; i < tries; ++i) {
    const Figure source = random.figure();
    const Unit& unit = random.other_unit(*source.unit);
    const auto converted = convert(source, unit);
    if (!converted) {
      ++refused;
      continue;
    }
    INFO(to_text(source) << " in " << unit.symbol << " is " << to_text(converted->figure));
    if (&unit == source.unit) {
      CHECK(converted->figure == source);
    } else {
      check_conversion(source, unit, *converted);
    }
  }
  MESSAGE(refused << " of " << tries << " had more digits than fit");
  CHECK(refused < tries / 50);
}

TEST_CASE("a figure comes back to its own digits from any unit") {
  test::RandomFigures random(2);
  for (int i = 0; i < tries; ++i) {
    const Unit& unit = random.unit();
    const Unit& other = random.other_unit(unit);
    const bool round = unit.dimension == Dimension::distance || unit.dimension == Dimension::time;
    const Number number = random.number(7);
    if (number.denominator != 1 || round) continue;
    const auto there = convert(Figure{Form::nominal, number, {}, {}, {}, &unit}, other);
    if (!there) continue;
    const auto back = convert_to_places({*there->figure.nominal, &other}, unit, number.places);
    INFO(to_text(number) << " " << unit.symbol << " by " << to_text(there->figure));
    REQUIRE(back);
    CHECK(*back == number);
  }
}

TEST_CASE("conversion keeps the order of figures") {
  test::RandomFigures random(3);
  for (int i = 0; i < tries; ++i) {
    const Unit& unit = random.unit();
    const Unit& other = random.other_unit(unit);
    const Number left = random.number(), right = random.number();
    const int places = random.below(7);
    const auto a = convert_to_places({left, &unit}, other, places);
    const auto b = convert_to_places({right, &unit}, other, places);
    if (!a || !b) continue;
    INFO(to_text(left) << " and " << to_text(right) << " " << unit.symbol << " in " << other.symbol);
    const int order = compare(left, right), converted_order = compare(*a, *b);
    CHECK((converted_order == 0 || converted_order == order));
  }
}

TEST_CASE("a random figure reads back equal from what is typed and from what is shown") {
  test::RandomFigures random(4);
  FigureBuffer buffer;
  for (int i = 0; i < tries; ++i) {
    const Figure figure = random.figure();
    for (const std::string& text :
         {std::string(to_text(figure, buffer)), std::string(shown(figure, buffer))}) {
      INFO(text);
      const auto again = parse_figure(text, figure.unit->dimension, Input::sheet);
      REQUIRE(again);
      CHECK(*again == figure);
    }
  }
}
