// SPDX-License-Identifier: GPL-2.0-or-later
// The trade's arithmetic as it is asked for at the bench: a topic, and what is given, by name.
//
//   reckon("torque", {"M8x1.25", "class", "8.8", "state", "dry"}, libraries)
//
// The formulae themselves stand in query/trade; here what is given is read, the published tables are
// looked up, and the results are said with the source of each formula. Nothing here prints.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/library.h"
#include "query/quantity/figure.h"

namespace sheaf {

// One thing that a topic is given: "wire 4.5 mm". The first of a topic may come without its name.
struct GivenName {
  std::string_view name;
  std::string_view help;
  bool required = false;
};

// One line of the answer: a figure, or words where there is none.
struct ReckonedLine {
  std::string label;
  std::optional<Figure> figure;
  std::string words;            // instead of the figure
  std::vector<Figure> derived;  // the same in the units of other tools
  std::string note;             // "of the proof load", "beyond the two points"
};

struct Formula {
  std::string text;    // "T = K · F · d"
  std::string source;  // "Shigley, Mechanical Engineering Design, Eq. 8-27"
};

struct Labelled {
  std::string label, text;
};

struct Reckoning {
  std::string topic;
  std::vector<ReckonedLine> results;
  std::vector<Labelled> given;     // as it was understood
  std::vector<std::string> taken;  // what was not given and is assumed, and by whose word
  std::vector<Formula> formulae;
  std::vector<std::string> tables;  // the rows used, with their sources
  std::vector<std::string> cautions;
  std::string picture;  // SVG; empty where there is nothing to draw
};

struct Topic {
  std::string_view name;
  std::string_view purpose;
  std::span<const GivenName> names;
  std::string_view example;
};
std::vector<Topic> all_topics();

using Libraries = std::vector<Library*>;

// Tables are asked for only when a topic needs one; `open` then opens the libraries.
using OpenTables = std::function<Result<Libraries>()>;

// Fails on an unknown topic, on what is missing, cannot be read or is beyond the formula's range.
Result<Reckoning> reckon(std::string_view topic, const std::vector<std::string>& words,
                         const OpenTables& open);

}  // namespace sheaf
