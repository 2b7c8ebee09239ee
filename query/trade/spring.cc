// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/trade/spring.h"

namespace sheaf {
namespace {

constexpr Band rates{1e-4, 1e6};  // N/mm

std::optional<Failure> check(const CoilSpring& spring) {
  return outside_range(
      {{"wire", spring.wire_mm, {0.1, 50}, "mm"},
       {"mean diameter", spring.mean_diameter_mm, {spring.wire_mm * 2.5, spring.wire_mm * 30}, "mm"},
       {"active coils", spring.active_coils, {1, 500}, ""}});
}

std::optional<Failure> check_rates(double first, double second) {
  return outside_range({{"rate of the first spring", first, rates, "N/mm"},
                        {"rate of the second spring", second, rates, "N/mm"}});
}

}  // namespace

double mean_from_outside(double outside_mm, double wire_mm) { return outside_mm - wire_mm; }
double mean_from_inside(double inside_mm, double wire_mm) { return inside_mm + wire_mm; }

double spring_index(const CoilSpring& spring) { return spring.mean_diameter_mm / spring.wire_mm; }

Result<double> spring_rate(const CoilSpring& spring, double shear_modulus_mpa) {
  if (auto failure = check(spring)) return *failure;
  if (auto failure = outside_range({{"shear modulus", shear_modulus_mpa, {1e3, 1.2e5}, "MPa"}}))
    return *failure;
  const double d = spring.wire_mm, mean = spring.mean_diameter_mm;
  return shear_modulus_mpa * d * d * d * d / (8 * mean * mean * mean * spring.active_coils);
}

Result<Band> spring_rate(const CoilSpring& spring, Band shear_modulus_mpa) {
  const auto least = spring_rate(spring, shear_modulus_mpa.least);
  const auto most = spring_rate(spring, shear_modulus_mpa.most);
  if (!least) return least.failure();
  if (!most) return most.failure();
  if (*least > *most) return Failure{"a band's least is more than its most"};
  return Band{*least, *most};
}

Result<double> series_rate(double first, double second) {
  if (auto failure = check_rates(first, second)) return *failure;
  return first * second / (first + second);
}

Result<double> parallel_rate(double first, double second) {
  if (auto failure = check_rates(first, second)) return *failure;
  return first + second;
}

Result<double> spring_force(double rate, double shortening_mm) {
  if (auto failure =
          outside_range({{"rate", rate, rates, "N/mm"}, {"shortening", shortening_mm, {0, 2000}, "mm"}}))
    return *failure;
  return rate * shortening_mm;
}

Result<double> shortening_for(double rate, double force_n) {
  if (auto failure = outside_range({{"rate", rate, rates, "N/mm"}, {"force", force_n, {0, 1e7}, "N"}}))
    return *failure;
  return force_n / rate;
}

double solid_length(double wire_mm, double all_coils) { return wire_mm * all_coils; }

}  // namespace sheaf
