// SPDX-License-Identifier: GPL-2.0-or-later
// One entry as it is said to a person: built once from its records, then written as text, JSON, CSV or
// Markdown (answer_text.h and its neighbours). Nothing here prints.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "query/answer/value.h"
#include "query/library/record.h"

namespace sheaf {

// One thing that the reader asks for, by any of the fields that may hold it.
struct AskedFigure {
  std::string label;                // "volume"
  std::vector<std::string> fields;  // "volume", "dry-fill", ...
};

// What the reader wants of the entry.
struct Asked {
  std::vector<AskedFigure> figures;  // said first, and missed aloud if the entry has none of its fields
  PreferredUnits units;
  std::string make, model;  // the machine named, so that it stands first among many
};

struct Answer {
  std::string address, variant, kind, name;
  std::string sheet_title, assembly, library;
  std::vector<Value> figures;         // said large: the asked ones first
  std::vector<std::string> missing;   // labels of what was asked and is not stated
  std::vector<std::string> acts;      // what changes the act: "fit new", "left-hand thread", "3 stages"
  std::vector<std::string> marks;     // what identifies it: "hexagon 27 mm", "M36x1.5"
  std::vector<std::string> machines;  // "Haldrek Muleback 380, 2011–2015"
  std::vector<Value> details;         // all else that it states, in declared order
  std::vector<std::string> disputes;  // "32 N·m by Pellmarrow bulletin 7"
  std::vector<std::string> set;       // what to set on which wrench (wrench.h), where there is a crib
  bool unit_wanted = false;           // the reader named a unit: it is shown wherever the figure is
  EntryRecord entry;                  // whole, for the forms that machines read
  bool invented = false;
};

Answer build_answer(const SheetRecord& sheet, EntryRecord entry, const Asked& asked = {});

// "Sorvane fork service leaflet 41, ed. 2 (2012), p. 5; checked 2026-10-02 by workshop against source"
std::string source_line(const EntryRecord& entry);

// "Haldrek Muleback 380, 2011–2015, frames HK4-000100–HK4-004999"
std::string machine_line(const FitRecord& fit);
std::string years_text(int from, int to);  // "2011–2015", "2016 on", "to 2010", "all years"

// The first figure, short, for a list: "28 N·m (25–31)"; and under what conditions it holds.
std::string short_figure(const Answer& answer);
std::string conditions_of(const Answer& answer);

inline constexpr std::string_view invented_notice = "Invented demonstration figure.";
inline constexpr std::string_view authority_notice = "The maker's current manual comes first.";

}  // namespace sheaf
