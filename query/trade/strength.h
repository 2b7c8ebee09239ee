// SPDX-License-Identifier: GPL-2.0-or-later
// What a screw bears, from its property class.
//
//   proof load    Fp = As · Sp     ISO 898-1:2013, SAE J429 (printed loads differ by up to 0.5 %)
//   tensile load  Fm = As · Rm     the same
//
// Stresses in MPa (= N/mm²), areas in mm², forces in N, diameters in mm.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "query/quantity/result.h"
#include "query/trade/thread_geometry.h"

namespace sheaf {

// One row of a published table of classes. Stainless classes of ISO 3506-1 have no proof stress; their
// 0.2 % stress stands in `yield` and is never passed off as one.
struct PropertyClass {
  std::string name;             // "8.8", "A2-70", "SAE 5"
  double over_mm = 0;           // holds for diameters over this ...
  double up_to_mm = 1000;       // ... up to this
  std::optional<double> proof;  // Sp
  double yield = 0;             // minimum ReL, Rp0.2 or Rpf
  double tensile = 0;           // minimum Rm
};

// The row of that class for that diameter. Fails, naming the classes there are, when the class is
// unknown, and when no row of it holds for the diameter.
Result<PropertyClass> class_for(std::string_view name, double diameter_mm,
                                std::span<const PropertyClass> rows);

// "8.8", "class 10.9", "cl. 12.9", "a2-70", "grade 8", "SAE 5", "gr.5": the name as the tables have it. Empty
// when it is no spelling of a class; whether the class exists is for the tables to say.
std::string class_name(std::string_view text);

// What the two numbers of an ISO 898-1 class name promise: 8.8 is Rm 800 and 0.8 of it. MPa.
struct NominalStrength {
  double tensile = 0;
  double yield = 0;
};
std::optional<NominalStrength> nominal_strength(std::string_view class_name);

Result<double> proof_load_n(const ThreadGeometry& geometry, const PropertyClass& property_class);
Result<double> tensile_load_n(const ThreadGeometry& geometry, const PropertyClass& property_class);

}  // namespace sheaf
