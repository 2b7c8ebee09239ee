// SPDX-License-Identifier: GPL-2.0-or-later
// What was found, ticked, measured and set on one job, kept as a small JSON file: card-record.schema.json
// describes it. A record belongs to a card by the names of its items; it is never trusted to be whole, or
// to be of the sheet as it is today (record_check.h).
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>

#include "query/answer/card.h"

namespace sheaf {

struct CardRecord {
  std::string sheet, library, digest;
  CardMachine machine;
  std::map<std::string, std::string> job;      // by, second, on, number, frame, distance, note
  std::set<std::string> ticked;                // items
  std::map<std::string, std::string> written;  // items, and what was written in
  std::map<std::string, std::string> figures;  // names of entries, and their figure when the item was filled
};

inline constexpr int record_schema = 1;
inline constexpr std::size_t longest_record = 1 << 20;  // bytes

// What a job is known by, and the words for it.
struct JobField {
  std::string_view key, words;
};
std::span<const JobField> job_fields();

// An empty record of that card.
CardRecord new_record(const Card& card);

// Fails on what is no record, naming the member at fault; what it does not know is refused, as it would be
// lost on writing.
Result<CardRecord> parse_record(std::string_view json);
std::string to_json(const CardRecord& record);

// The figure of an entry as a record keeps it: "28 ± 3 N·m". Empty if it states none.
std::string figure_text(const CardEntry& entry);

}  // namespace sheaf
