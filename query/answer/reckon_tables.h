// SPDX-License-Identifier: GPL-2.0-or-later
// The published tables of the libraries as the plain rows that the formulae take. Only the rows of the one
// kind are read, by the index; a table that no library holds is a Failure that says so. Internal to the
// reckoning.
#pragma once

#include "query/answer/reckon.h"
#include "query/trade/limits_fits.h"
#include "query/trade/oil_grade.h"
#include "query/trade/strength.h"
#include "query/trade/thread_series.h"
#include "query/trade/viscosity_index.h"

namespace sheaf {

Result<std::vector<ThreadRow>> thread_rows(const Libraries& libraries);

// The row of a class, and whose table it is.
struct ClassFound {
  PropertyClass row;
  std::string table;  // "ISO 898-1 (2013), Table 3: 8.8 to M16, proof stress 580 MPa"
};
Result<ClassFound> find_class(const Libraries& libraries, std::string_view name, double diameter_mm);

// The widest range that the published rows give for a state of the thread.
struct PublishedRange {
  double least = 0, most = 0;
  std::string table;  // "14 published nut factors for dry threads"
};
Result<PublishedRange> nut_factors(const Libraries& libraries, std::string_view state);
Result<PublishedRange> friction(const Libraries& libraries, std::string_view state);

// Of "viscosity-grade" at 40 °C, "engine-oil-grade" or "gear-oil-grade" at 100 °C.
Result<std::vector<GradeRow>> grade_rows(const Libraries& libraries, std::string_view kind);
Result<std::vector<IndexRow>> index_rows(const Libraries& libraries);

struct Modulus {
  double mpa = 0;
  std::string table;
};
Result<Modulus> shear_modulus(const Libraries& libraries, std::string_view material);

struct FitRows {
  std::vector<ToleranceRow> tolerances;
  std::vector<DeviationRow> deviations;
};
Result<FitRows> fit_rows(const Libraries& libraries);

}  // namespace sheaf
