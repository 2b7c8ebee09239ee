// SPDX-License-Identifier: GPL-2.0-or-later
// Makes LinkedSheets of resolved sheets. Internal to link.
#pragma once

#include "compiler/link/linked_sheets.h"
#include "compiler/link/resolve.h"

namespace sheafc {

class Linker {
 public:
  Linker(std::span<const std::string> unread, std::span<const std::string> names, Diagnostics& sink)
      : unread_(unread), resolver_(unread, names, sink), sink_(sink) {}

  void add(const Sheet& sheet, bool borrowed);
  LinkedSheets link();

 private:
  void collect_glossary(const Sheet& sheet, bool borrowed);
  void link_sheet(ResolvedSheet& resolved, LinkedSheet& sheet);
  void link_entry(ResolvedSheet& resolved, ResolvedEntry& entry, LinkedSheet& sheet);
  void part_variants(const ResolvedSheet& resolved, const ResolvedEntry& entry, const Variants& variants,
                     const LinkedEntry& whole, LinkedSheet& sheet);
  void complete(LinkedEntry& entry, const ResolvedSheet& resolved_sheet, const ResolvedEntry& resolved);
  void check_references(ResolvedSheet& resolved, const Fields& fields);
  void require_entry(const LinkedEntry& entry);
  void add_cautions(const Fields& fields, std::vector<const Caution*>& cautions);
  std::vector<std::string> former_addresses(const LinkedEntry& entry);
  void index(LinkedSheet& sheet);

  std::span<const std::string> unread_;
  Resolver resolver_;
  Diagnostics& sink_;
  LinkedSheets out_;
  std::unordered_map<std::string_view, const WordGroup*> groups_;
};

}  // namespace sheafc
