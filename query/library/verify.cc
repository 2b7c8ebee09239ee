// SPDX-License-Identifier: GPL-2.0-or-later
// The whole examination of a library: what no look-up can afford.
#include <sstream>

#include "query/library/library_state.h"

namespace sheaf {

std::optional<Failure> Library::State::compare_digest() const {
  DigestOfBytes digest;
  const auto fault = file.read_content([&](std::string_view bytes) { digest.add(bytes); });
  if (fault) return fault;
  if (digest.finish() == file.trailer().digest) return std::nullopt;
  return damage({"its content does not have the digest that it was sealed with"});
}

// Every record, so that a damaged one is named; a damaged entry hides no other.
std::vector<std::string> Library::State::examine_records() {
  std::vector<std::string> faults;
  const auto note = [&](const Failure& failure) { faults.push_back(failure.message); };
  std::int64_t sheets = 0;
  std::int64_t entries = 0;
  const auto fault = rows.for_each_sheet([&](const SheetHead& head) {
    ++sheets;
    for (std::int64_t i = 0; i < head.entries; ++i, ++entries) {
      const auto entry = rows.entry(head.first_entry + static_cast<EntryId>(i));
      if (!entry) note({head.sheet.name + ": " + entry.failure().message});
    }
    return true;
  });
  if (fault) note(*fault);
  if (!fault && (sheets != facts.sheets || entries != facts.entries)) note({"it has lost sheets or entries"});
  const auto machines = rows.machines();
  if (!machines) note(machines.failure());
  const auto words = rows.words();
  if (!words) note(words.failure());
  return faults;
}

std::vector<std::string> Library::State::examine_index() const {
  FileDescriptor at_index = file.reopen_at_index();
  if (at_index.number() < 0) return {file.path() + " was replaced while it was examined"};
  std::ostringstream report;
  try {
    if (Xapian::Database::check(at_index.release(), 0, &report) == 0) return {};
    return {"Xapian finds its index damaged: " + report.str()};
  } catch (const Xapian::Error& error) {
    return {"its index cannot be examined: " + error.get_msg()};
  }
}

std::vector<std::string> Library::verify() {
  std::vector<std::string> faults;
  const auto digest_fault = state_->compare_digest();
  if (digest_fault) faults.push_back(digest_fault->message);
  const auto append = [&](std::vector<std::string> more) {
    faults.insert(faults.end(), more.begin(), more.end());
  };
  append(state_->rows.examine());
  append(state_->examine_records());
  // What is known to be damaged is not handed to Xapian's examination, which trusts what it reads.
  if (!digest_fault) append(state_->examine_index());
  return faults;
}

}  // namespace sheaf
