// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/own_crib.h"

#include "query/quantity/arithmetic.h"

namespace sheaf {
namespace {

constexpr std::size_t most_wrenches = 12;

struct WrenchGiven {
  std::string_view range, step, accuracy, name, length;
};

Result<CribWrench> wrench_from(const WrenchGiven& given) {
  const auto read = parse_readings(given.range, Dimension::torque);
  if (!read || read->size() != 1 || !read->front().figure().least || !read->front().figure().most)
    return Failure{"the wrench's range is no range of torque, such as 10..60 N·m"};
  const Figure& scale = read->front().figure();
  const auto step = parse_number(given.step, Input::prompt);
  const auto per_cent = parse_number(given.accuracy.empty() ? "4" : given.accuracy, Input::prompt);
  if (!step || compare(*step, Number{0, 0, 1}) <= 0)
    return Failure{"the wrench's step is no number above 0, in the unit of its range"};
  if (!per_cent || approximate(*per_cent) < 0 || approximate(*per_cent) >= 50)
    return Failure{"the wrench's accuracy is no percentage below 50"};
  CribWrench wrench;
  wrench.name = given.name.empty() ? "wrench in hand" : std::string(given.name);
  wrench.scale = {*scale.least, *scale.most, *step, scale.unit, approximate(*per_cent)};
  if (!given.length.empty()) {
    const auto length = length_from(given.length, "the wrench's length");
    if (!length) return length.failure();
    wrench.length = *length;
  }
  return wrench;
}

std::string_view nth(const std::vector<std::string_view>& values, std::size_t index) {
  return index < values.size() ? values[index] : std::string_view();
}

}  // namespace

Result<Quantity> length_from(std::string_view typed, std::string_view what) {
  const auto read = parse_readings(typed, Dimension::length);
  if (read && read->size() == 1) {
    const Figure& figure = read->front().figure();
    const bool is_one_length = figure.nominal && !figure.least && !figure.most;
    if (is_one_length && compare(*figure.nominal, Number{0, 0, 1}) > 0)
      return Quantity{*figure.nominal, figure.unit};
  }
  return Failure{std::string(what) + " is no length above 0, such as 300 mm"};
}

Result<std::optional<Crib>> own_crib(const HttpRequest& request, const Crib* shop) {
  const auto ranges = request.all("range"), steps = request.all("step"), accuracies = request.all("accuracy"),
             names = request.all("wrench"), lengths = request.all("length");
  Crib crib;
  crib.shop = "this device";
  if (shop) {
    crib.adapters = shop->adapters;
    crib.units = shop->units;
    crib.tolerance = shop->tolerance;
  }
  for (std::size_t i = 0; i < std::max(ranges.size(), steps.size()); ++i) {
    const WrenchGiven given{nth(ranges, i), nth(steps, i), nth(accuracies, i), nth(names, i),
                            nth(lengths, i)};
    if (given.range.empty() && given.step.empty()) continue;  // an empty form
    if (crib.wrenches.size() == most_wrenches) return Failure{"more wrenches are named than are compared"};
    auto wrench = wrench_from(given);
    if (!wrench) return wrench.failure();
    crib.wrenches.push_back(std::move(wrench).value());
  }
  return crib.wrenches.empty() ? std::optional<Crib>() : std::optional(std::move(crib));
}

}  // namespace sheaf
