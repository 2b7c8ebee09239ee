// SPDX-License-Identifier: GPL-2.0-or-later
// Two states of the sheets compared by what they say, not by their lines: laying a sheet out anew changes
// nothing, and an entry that was renamed is the same entry.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "query/library/record.h"

namespace sheafc {

struct FieldChange {
  std::string key;
  std::string before, after;      // canonical; empty where the field was not there
  bool figure = false;            // a quantity, on both sides
  std::optional<double> percent;  // of the middle of the band; absent if it cannot be told
};

struct Change {
  enum class Kind { withdrawn, changed, removed, renamed, added };
  Kind kind = Kind::changed;
  bool sheet = false;          // of a sheet as a whole; else of an entry
  std::string address;         // now; of what was removed: as it was
  std::string before_address;  // where it is another
  std::string variant;
  std::string name;
  std::string reason;  // of a withdrawal
  std::vector<FieldChange> fields;
  std::vector<sheaf::FitRecord> fits;  // the machines it touches
  bool critical = false;
  bool source_changed = false;  // source or page say something else than before
  sheaf::Place place;

  bool changes_figure() const;
};

// The heaviest first: withdrawals, then safety-critical figures, then figures whose source is the same as
// before, then other figures, the further they moved the sooner; then what went, was renamed, came, and
// words.
std::vector<Change> compare(std::span<const sheaf::SheetRecord> before,
                            std::span<const sheaf::SheetRecord> after);

// A line or two for each; nothing if there is none.
std::string changes_text(std::span<const Change> changes);
// For a pull request.
std::string changes_markdown(std::span<const Change> changes);
// {"schema":1,"changes":[...]}
std::string changes_json(std::span<const Change> changes);

}  // namespace sheafc
