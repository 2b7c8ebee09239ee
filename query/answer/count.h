// SPDX-License-Identifier: GPL-2.0-or-later
// How many of a thing there are on the machine, and where: "2 per leg" is four, two on the left and two on
// the right.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sheaf {

struct PlaceCount {
  int number = 1;   // at each place
  std::string per;  // "leg"; empty if the number is the whole
  // "left" and "right" for what is per leg or side, "front" and "rear" for what is per wheel, one empty place
  // for the whole. None where nothing here knows how many of such places a machine has ("per cylinder").
  std::vector<std::string> places = {""};

  bool is_known() const { return !places.empty(); }
  int total() const { return number * static_cast<int>(places.empty() ? 1 : places.size()); }
};

// "4", "1 per leg"; what is not stated is one.
PlaceCount count_of(std::string_view text);
// The places of what is per "leg": as above.
std::vector<std::string> places_per(std::string_view per);

// How many that is on the machine: "2 for both legs"; where nothing here knows, as the sheet says: "4 of
// them".
std::string count_words(std::string_view text);

}  // namespace sheaf
