// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/slip.h"

#include <array>
#include <cmath>
#include <vector>

#include "compiler/check/measure.h"

namespace sheafc {
namespace {

constexpr double lbf_ft_in_nm = 1.3558179483314004;  // exact: 0.45359237 kg · 9.80665 m/s² · 0.3048 m
constexpr double kgf_m_in_nm = 9.80665;

struct Candidate {
  double factor;  // written / meant
  std::string_view words;
};

// The likeliest first, by the unit in which the figure stands.
std::vector<Candidate> candidates(std::string_view unit) {
  const Candidate decimal{10, "a slipped decimal"}, down{0.1, "a slipped decimal"};
  const Candidate inches{12, "inch-pounds written as foot-pounds"},
      feet{1.0 / 12, "foot-pounds written as inch-pounds"};
  const Candidate kilograms{1 / kgf_m_in_nm, "kgf·m written as N·m"},
      newtons{kgf_m_in_nm, "N·m written as kgf·m"};
  const Candidate hundred{100, "a decimal slipped twice"}, hundredth{0.01, "a decimal slipped twice"};
  if (unit == "lbf·ft") return {inches, decimal, down, hundred, hundredth};
  if (unit == "lbf·in") return {feet, decimal, down, hundred, hundredth};
  if (unit == "kgf·m") return {newtons, decimal, down, hundred, hundredth};
  return {decimal, down, inches, kilograms, hundred, hundredth};
}

bool is_near(double ratio, double factor) { return std::abs(std::log(ratio / factor)) < std::log(1.15); }

}  // namespace

std::string suspected_torque_slip(double written_nm, const sheaf::Figure& figure, sheaf::Band plausible_nm) {
  const auto own = middle_in(figure, "N·m");
  const auto in_unit = middle_in(figure, figure.unit->symbol);
  if (!own || !in_unit || *own == 0) return {};
  for (const Candidate& slip : candidates(figure.unit->symbol)) {
    if (!plausible_nm.holds(written_nm / slip.factor)) continue;
    return "; " + std::string(slip.words) + "? " + about(*in_unit / slip.factor, figure.unit->symbol, 3) +
           " fits";
  }
  return {};
}

std::string slip_of_ratio(double ratio) {
  // 10 and 9.81 cannot be told apart by a ratio; a decimal slips far oftener.
  constexpr std::array<Candidate, 8> slips = {{{10, "a slipped decimal?"},
                                               {0.1, "a slipped decimal?"},
                                               {12, "inch-pounds written as foot-pounds?"},
                                               {1.0 / 12, "foot-pounds written as inch-pounds?"},
                                               {100, "a decimal slipped twice?"},
                                               {0.01, "a decimal slipped twice?"},
                                               {lbf_ft_in_nm, "N·m and lbf·ft mixed up?"},
                                               {1 / lbf_ft_in_nm, "N·m and lbf·ft mixed up?"}}};
  const Candidate* best = nullptr;
  for (const Candidate& slip : slips) {
    if (!is_near(ratio, slip.factor)) continue;
    if (!best || std::abs(std::log(ratio / slip.factor)) < std::abs(std::log(ratio / best->factor)))
      best = &slip;
  }
  return best ? std::string(best->words) : std::string();
}

}  // namespace sheafc
