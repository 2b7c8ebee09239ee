// SPDX-License-Identifier: GPL-2.0-or-later
// Goes through a sheet as RowWriter does.
#include "compiler/emit/row_shape.h"

#include <algorithm>

namespace sheafc {
namespace {

using namespace sheaf;

template <typename Record>
void note(const Record& record, std::vector<Record>& known) {
  if (!(record == Record{}) && std::ranges::find(known, record) == known.end()) known.push_back(record);
}

class Shaper {
 public:
  template <typename Record>
  void take(const Record& record) {
    note(record.source, sources_);
    note(record.checked, readings_);
    note(record.fits, fit_sets_);
    note(record.cautions, caution_sets_);
    take(record.place);
    for (const FieldRecord& field : record.fields) take(field.place);
  }
  void take_machines(const EntryRecord& entry) {
    for (const FitRecord& fit : entry.fits) shape_.machines.emplace_back(fit.make, fit.model, fit.year_from, fit.year_to);
  }
  RowShape shape(std::size_t entries) {
    shape_.entries = entries;
    shape_.numbered = {sources_.size(), readings_.size(), fit_sets_.size(), caution_sets_.size()};
    return std::move(shape_);
  }

 private:
  void take(const Place& place) {
    if (std::ranges::find(shape_.files, place.file) == shape_.files.end()) shape_.files.push_back(place.file);
  }

  RowShape shape_;
  std::vector<SourceRecord> sources_;
  std::vector<CheckRecord> readings_;
  std::vector<std::vector<FitRecord>> fit_sets_;
  std::vector<std::vector<CautionRecord>> caution_sets_;
};

}  // namespace

RowShape row_shape_of(const SheetRecord& sheet) {
  Shaper shaper;
  shaper.take(sheet);
  for (const EntryRecord& entry : sheet.entries) {
    shaper.take(entry);
    shaper.take_machines(entry);
  }
  return shaper.shape(sheet.entries.size());
}

}  // namespace sheafc
