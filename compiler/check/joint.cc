// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/check/joint.h"

#include <algorithm>

#include "compiler/check/measure.h"

namespace sheafc {
namespace {

// A bored-through bolt has about this share of the section of a solid one: a 5 mm bore in M10
// (common practice, no source).
constexpr double hollow_share = 0.6;

double section_share(std::string_view joint) { return joint == "hollow" ? hollow_share : 1.0; }

}  // namespace

std::optional<Joint> joint_of(const LinkedEntry& fastener, const Shelf& shelf, std::string_view assumed) {
  const auto geometry = shelf.geometry_of(fastener);
  if (!geometry) return {};
  const std::string stated = sheaf::class_name(fastener.text("class"));
  const auto row = sheaf::class_for(stated.empty() ? assumed : stated, geometry->diameter, shelf.classes());
  if (!row) return {};
  const double proof = row->proof.value_or(row->yield);
  if (proof <= 0) return {};
  const std::string_view kind = fastener.choice("joint");
  Joint joint;
  joint.diameter_mm = geometry->diameter;
  joint.bears_nm = proof * geometry->stress_area * section_share(kind) * geometry->diameter / 1000;
  joint.class_stated = !stated.empty();
  joint.ordinary =
      (kind.empty() || kind == "ordinary" || kind == "pinch" || kind == "sprocket" || kind == "rod") &&
      fastener.choice("into") != "plastic";
  return joint;
}

std::string screw_of(const LinkedEntry& fastener) {
  const std::string stated = sheaf::class_name(fastener.text("class"));
  return sheaf::to_text(*fastener.thread("thread")) + (stated.empty() ? " of any class" : " class " + stated);
}

std::optional<double> torque_of_one_nm(const LinkedEntry& fastener) {
  const sheaf::Statement* torque = fastener.figure("torque");
  auto greatest = torque ? greatest_torque_nm(*torque) : std::nullopt;
  if (!greatest || fastener.choice("torque-is") != "total") return greatest;
  const Count* count = fastener.count("count");
  if (count && count->number > 0) *greatest /= count->number;
  return greatest;
}

}  // namespace sheafc
