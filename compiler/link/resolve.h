// SPDX-License-Identifier: GPL-2.0-or-later
// Inheritance: what a sheet takes from its base, and an entry from the one it is like. Internal to link.
#pragma once

#include <deque>
#include <memory>
#include <optional>
#include <span>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "compiler/sheet/sheet.h"
#include "compiler/source/diagnostics.h"

namespace sheafc {

// Chains of bases, or of entries like entries, are at most so long.
inline constexpr int longest_chain = 16;
// A sheet has at most so many entries, its base's among them.
inline constexpr std::size_t most_entries = 20'000;

struct ResolvedEntry {
  std::string_view id;
  std::string_view kind;
  const sheaf::KindDeclaration* declaration = nullptr;
  Fields fields;
  const Sheet* stated_by = nullptr;  // whose source holds for it: the last sheet that says something of it
  Span where;
  bool carries_source = false;  // borrowed: see Entry
  bool own = true;              // its sheet says something of it
  bool own_variants = true;     // its variants, if it has any, are its sheet's own
  enum class Like { unread, reading, done } like = Like::unread;
  int like_depth = 0;
  bool like_missing = false;  // it names an entry that it could not be given: reported
};

struct ResolvedSheet {
  const Sheet* sheet = nullptr;
  ResolvedSheet* base = nullptr;
  int depth = 0;  // how many bases stand below it
  bool borrowed = false;
  bool done = false;
  Fields fields;
  std::vector<ResolvedEntry> entries;
  std::unordered_map<std::string_view, std::size_t> index;  // id to entry
  bool base_missing = false;  // it names a base that it could not be given: reported

  // An entry of that name may be meant that could not be read: it is not called missing.
  bool may_hold(std::string_view id) const;

  ResolvedEntry* find(std::string_view id);
};

class Resolver {
 public:
  // `unread`: names of sheets that are there but could not be read; `names`: of others that are there.
  Resolver(std::span<const std::string> unread, std::span<const std::string> names, Diagnostics& sink)
      : unread_(unread.begin(), unread.end()), names_(names), sink_(sink) {}

  // All sheets first, the borrowed ones last; a name that stands twice is reported and its second sheet
  // left out, but a run's own sheet may take a borrowed one's name.
  void add(const Sheet& sheet, bool borrowed);
  void resolve();

  std::deque<ResolvedSheet>& sheets() { return sheets_; }
  ResolvedSheet* find(std::string_view name);
  // The entry that a sheet means by that address; null, reported, if there is none.
  ResolvedEntry* look_up(ResolvedSheet& from, const Address& address, const Span& place);

 private:
  void resolve_base(ResolvedSheet& sheet);
  void find_base(ResolvedSheet& sheet);
  void inherit(ResolvedSheet& sheet);
  void inherit_entries(ResolvedSheet& sheet);
  void add_own_entry(ResolvedSheet& sheet, const Entry& entry);
  std::vector<std::string_view> left_out(const ResolvedSheet& sheet);
  Fields without(const Entry& entry, Fields base);
  void check_own_against_variants(const Entry& entry, const Fields& base);
  void resolve_like(ResolvedSheet& sheet, ResolvedEntry& entry);
  void take_from(ResolvedEntry& entry, const ResolvedEntry& other);

  bool may_suggest();
  std::string near_sheet(std::string_view name);
  std::string near_entry(const ResolvedSheet& sheet, std::string_view id);

  std::unordered_set<std::string> unread_;
  std::span<const std::string> names_;
  int suggestions_ = 0;
  std::deque<ResolvedSheet> sheets_;
  std::unordered_map<std::string_view, ResolvedSheet*> by_name_;
  Diagnostics& sink_;
};

}  // namespace sheafc
