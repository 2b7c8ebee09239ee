// SPDX-License-Identifier: GPL-2.0-or-later
// Finding the unit that a text goes on with.
#include "query/quantity/figure_scan.h"

namespace sheaf {
namespace {

bool continues_word(std::string_view rest) {
  return !rest.empty() && (is_letter(rest.front()) || is_digit(rest.front()));
}

// A joint or bar that binds what follows to the unit before it, as the second dot of "N·m" does.
bool binds_onward(std::string_view rest) {
  if (rest.starts_with('/')) return rest.size() > 1 && is_letter(rest[1]);
  const std::size_t joint = joint_length(rest);
  if (joint == 0 || space_length(rest) != 0) return false;
  return rest.size() > joint && is_letter(rest[joint]);
}

// "ft." and "lbs.": the point of an abbreviation, not of a range.
bool abbreviation_point(std::string_view rest) {
  return rest.starts_with('.') && !rest.starts_with("..") && (rest.size() == 1 || !is_digit(rest[1]));
}

}  // namespace

UnitHit longest_unit(const Scanner& scanner, std::optional<Dimension> dimension) {
  UnitHit hit;
  Folded folded;
  std::string_view rest = scanner.rest();
  while (!rest.empty()) {
    // Digits belong to a unit only where they touch it ("mm2", "in^3"): "2 in - 3 in" is no volume.
    const std::size_t joint = joint_length(rest);
    if (joint > 0 && rest.size() > joint && is_digit(rest[joint])) break;
    if (rest.starts_with("..")) break;
    const std::size_t length = folded.add(rest);
    if (length == 0) break;
    rest.remove_prefix(length);
    if (joint > 0 || continues_word(rest) || binds_onward(rest)) continue;
    if (UnitChoices choices = find_units(folded, dimension); !choices.empty()) {
      hit = {choices, scanner.rest().size() - rest.size()};
      if (abbreviation_point(rest)) ++hit.length;
    }
  }
  return hit;
}

std::size_t word_length(const Scanner& scanner) {
  std::string_view rest = scanner.rest();
  std::size_t length = 0;
  while (length < rest.size() && space_length(rest.substr(length)) == 0 &&
         std::string_view(",;()[]@").find(rest[length]) == std::string_view::npos) {
    ++length;
  }
  return length;
}

}  // namespace sheaf
