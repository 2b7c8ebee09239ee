// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/tool_words.h"

#include "query/quantity/figure.h"

namespace sheaf {
namespace {

std::string size_words(const Drive& drive) {
  return drive.size ? shown(*drive.size) + (drive.unit.empty() ? "" : "\u00A0" + drive.unit) : std::string();
}

std::string sized(const Drive& drive, std::string_view tool) {
  const std::string size = size_words(drive);
  return size.empty() ? std::string(tool) : size + " " + std::string(tool);
}

std::string numbered(std::string_view letter, const Drive& drive, std::string_view tool) {
  return std::string(letter) + (drive.size ? to_text(*drive.size) : "") + " " + std::string(tool);
}

}  // namespace

std::string tool_for(const Drive& drive) {
  switch (drive.shape) {
    case Drive::Shape::hexagon:
      return sized(drive, "socket");
    case Drive::Shape::hex_socket:
      return sized(drive, "hex key");
    case Drive::Shape::six_lobe:
      return numbered("T", drive, "bit");
    case Drive::Shape::six_lobe_external:
      return numbered("E", drive, "socket");
    case Drive::Shape::square:
      return sized(drive, "square key");
    case Drive::Shape::cross:
      return numbered(drive.unit, drive, "screwdriver");
    case Drive::Shape::slot:
      return sized(drive, "flat screwdriver");
    case Drive::Shape::peg:
      return sized(drive, "peg spanner");
    case Drive::Shape::twelve_point:
      return sized(drive, "twelve-point socket");
    case Drive::Shape::castellated:
      return "hook spanner" + (drive.size ? ", " + size_words(drive) : std::string());
    case Drive::Shape::knurled:
      return "by hand";
  }
  return to_text(drive);
}

std::string_view stuff_for(std::string_view state) {
  if (state == "oiled") return "clean oil";
  if (state == "greased") return "grease";
  if (state == "anti-seize") return "anti-seize paste";
  return {};
}

}  // namespace sheaf
