// SPDX-License-Identifier: GPL-2.0-or-later
// How a question was understood: which of its words are a machine, a year, a part, a size. It is shown
// in one line, so that a misreading is seen.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/library.h"
#include "query/quantity/figure.h"
#include "query/trade/designation.h"

namespace sheaf {

// A word that nobody here knows, read as one that is known. Words with a digit are never corrected.
struct Correction {
  std::string typed, read;
};

// What the entry must be called, or be found by: a part by any of its names, or a free word.
struct PartAsked {
  std::string typed;
  std::vector<std::string> words;   // folded
  std::vector<std::string> groups;  // groups of words that mean the same; none for a free word
  bool is_aspect = false;           // "diameter", "type": what of it is meant, and need not be in its name
  std::vector<std::vector<std::string>> groups_of_words = {};  // groups that each word alone names
  std::size_t token = 0;                                       // of the question, where it begins
  std::size_t phrase = 0;                                      // words that stand together have the same
  bool says_whose = false;                                     // stands behind "of", "for"
  bool describes = false;   // stands behind "with", "that", a comma: may only say more of what stands before
  bool is_context = false;  // "axle nut is tight, which pinch bolt first": in a clause beside what asks
  std::vector<std::string_view> assemblies = {};  // that it is the name of

  bool has_group(std::string_view group) const;
};

// A quantity that the entry must state; absent ends are open.
struct QuantityAsked {
  std::string typed;
  std::vector<Figure> figures;  // several where the unit is ambiguous: 17.5 oz
  bool is_range = false;        // 20..30 N·m, over 40 N·m; otherwise one value, which may be near
};

// A bare length: what it measures depends on the entry. 46 mm may be across flats, a tube, a thread.
enum class LengthOf { anything, across_flats, diameter, dimension, outside, inside };
struct LengthAsked {
  std::string typed;
  double mm = 0;
  double half_digit = 0;  // half of its last digit, in mm
  Figure figure;          // as typed; millimetres where no unit was
  bool bare = false;      // no unit was typed
  LengthOf of = LengthOf::anything;
};

// "50T", of a sprocket: no length, but read in its description.
inline bool counts_teeth(const LengthAsked& length) { return length.typed.ends_with('T'); }

// "525": of a roller chain, as it is sold; common practice, no source.
inline bool names_chain(const LengthAsked& length) {
  constexpr std::string_view sizes[] = {"415", "420", "425", "428", "520", "525", "530", "532", "630"};
  return length.bare && std::find(std::begin(sizes), std::end(sizes), length.typed) != std::end(sizes);
}

// "21 inch tube": of a wheel, for no fork's tube is as wide; common practice, no source.
inline bool is_of_wheel(const LengthAsked& length) { return length.mm > 250; }

// "bolt" or "screw" alone: said of anything that is tightened.
bool is_generic_fastener(const PartAsked& part);

struct QuestionReading {
  std::vector<Machine> machines;  // the entry fits any of these; none: no machine was named
  std::string machine;            // "Haldrek Muleback 380", "Haldrek"
  bool machine_is_guess = false;  // only its number was named
  int year = 0, year_to = 0;      // 0: none was named
  std::string frame, market;
  std::vector<std::string> sides;       // "front", "left"
  std::vector<std::string> assemblies;  // from a filter, or by what is counted there
  std::vector<std::string> kinds;       // from a filter
  std::vector<PartAsked> parts;
  std::vector<std::string> figures;  // fields or kinds asked for: "torque", "level", "clearance"
  std::string hand;                  // "left": of the thread that is probably meant
  std::vector<std::string> choices;  // "hand=left"
  std::vector<Thread> threads;
  std::vector<Drive> drives;
  std::vector<Size> sizes;
  std::vector<Bearing> bearings;
  std::vector<std::string> codes;    // squeezed: "109" never, "10.9", "dot4"
  std::vector<std::string> numbers;  // part numbers, squeezed
  bool number_is_guess = false;      // the number typed was not whole
  std::vector<LengthAsked> lengths;
  std::vector<QuantityAsked> quantities;
  std::vector<std::string> stages;  // numbers of a torque's stages: "60" of "60 + 60 deg"
  std::string pattern;              // an order of tightening: "1-4-2-3"
  std::vector<const Unit*> units;   // in which the answer is wanted
  std::vector<std::string> labels;  // "10W", "5wt": what bottles say, which is no scale
  std::vector<Correction> corrections;
  std::vector<std::string> unread;  // words that nobody here knows
  bool names_another = false;  // one of them is a thing that tells what is sought from ours: "turbo oil pipe"
  std::vector<std::string> left_aside;  // words that nothing holds together with the others
  std::vector<std::string> excluded;    // words of what is not meant: "not the nut"
  std::vector<std::string> left_out;    // words that say nothing here
  bool is_spoken = false;               // typed as one speaks, in a sentence
  std::vector<std::string> doubts;      // sentences: what could also have been meant
  std::vector<std::string> unstated;    // figures that the answer does not state

  bool asks(std::string_view figure) const;
  bool names_nothing() const;    // nothing that an entry could be found by
  bool has_designation() const;  // a thread, drive, size, bearing, code or number
};

// "part “fork top plug”, machine Haldrek Muleback 380, year 2013"
std::string in_words(const QuestionReading& reading);

}  // namespace sheaf
