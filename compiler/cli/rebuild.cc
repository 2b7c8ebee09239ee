// SPDX-License-Identifier: GPL-2.0-or-later
// Of a sheet that nothing reached, only what others need is right here: that it lacks what it speaks of
// itself is no fault, for it was built without one.
#include "compiler/cli/rebuild.h"

#include <algorithm>
#include <set>
#include <unordered_map>

#include "compiler/sheet/common_sheets.h"
#include "query/library/hash.h"
#include "query/library/row_body.h"

namespace sheafc {
namespace {

using Numbers = std::set<std::uint32_t>;

class Again {
 public:
  Again(const SecondLook& look, Stamp& stamp, KeptBuild& build) : look_(look), stamp_(stamp), build_(build) {
    for (std::size_t i = 0; i < look.files.size(); ++i) files_.emplace(look.files[i].opened, i);
  }

  std::optional<Rebuilt> compile() {
    if (!find_changed() || !read(changed_) || !describe_changed()) return std::nullopt;
    find_examined();
    Diagnostics ruled;
    if (!examine(ruled)) return std::nullopt;
    for (const std::uint32_t number : examined_) {
      build_.sheets[number].faults = workspace_.faults[read_at_.at(build_.sheets[number].file)];
    }
    for (const KeptSheet& sheet : build_.sheets) out_.found.take(sheet.faults);
    if (out_.found.errors() > 0) return std::nullopt;
    out_.found.take(std::move(ruled));
    out_.found.sort();
    if (out_.found.errors() == 0) bring_up_to_date();
    out_.workspace = std::move(workspace_);
    return std::move(out_);
  }

 private:
  void bring_up_to_date() {
    record();
    for (std::size_t i = 0; i < look_.files.size(); ++i) stamp_.inputs[i].state = look_.states[i];
    for (const auto& [file, at] : read_at_) {
      stamp_.inputs[file].state = workspace_.states[at];
      stamp_.inputs[file].hash = sheaf::hash_of(workspace_.files[at]->bytes());
    }
    stamp_.found = out_.found;
  }

  bool find_changed() {
    std::vector<std::uint32_t> sheet_in(look_.files.size());
    for (std::uint32_t i = 0; i < build_.sheets.size(); ++i) sheet_in.at(build_.sheets[i].file) = i;
    for (const std::size_t file : look_.changed) changed_.insert(sheet_in[file]);
    return std::ranges::none_of(changed_,
                                [&](std::uint32_t number) { return build_.sheets[number].is_common; });
  }

  // What is not read yet. False if a file is no sheet, or not what it was when it was looked at.
  bool read(const Numbers& numbers) {
    std::vector<SheetFile> places;
    for (const std::uint32_t number : numbers) {
      if (const std::uint32_t file = build_.sheets[number].file; !read_at_.contains(file)) {
        read_at_.emplace(file, workspace_.files.size() + places.size());
        places.push_back(look_.files[file]);
      }
    }
    Diagnostics reported;  // each file's are in the workspace
    auto more = read_sheets(places, reported);
    if (!more || more->sheets.size() != places.size()) return false;
    for (const auto& file : more->files) {
      const std::size_t place = files_.at(std::string(file->name()));
      const bool is_changed = std::ranges::binary_search(look_.changed, place);
      if (!is_changed && sheaf::hash_of(file->bytes()) != stamp_.inputs[place].hash) return false;
    }
    workspace_.take(std::move(more).value());
    return true;
  }

  // Whom the changed sheets speak of now.
  bool describe_changed() {
    for (const auto& sheet : workspace_.sheets) {
      const auto number = build_.number_of(sheet->name);
      if (!number || !changed_.contains(*number)) return false;
      if (!describe_references(*sheet, build_.names, build_.sheets[*number])) return false;
    }
    return true;
  }

  void find_examined() {
    std::vector<std::vector<std::uint32_t>> based_on(build_.sheets.size());
    for (std::uint32_t i = 0; i < build_.sheets.size(); ++i) {
      for (const std::uint32_t base : build_.sheets[i].bases) based_on[base].push_back(i);
    }
    examined_ = reached_from(changed_, [&](std::uint32_t number) { return based_on[number]; });
    for (std::uint32_t i = 0; i < build_.sheets.size(); ++i) {
      if (build_.findings.sheets[i].allows) examined_.insert(i);
    }
  }

  template <typename Next>
  static Numbers reached_from(const Numbers& from, Next next) {
    Numbers reached = from;
    std::vector<std::uint32_t> waiting(from.begin(), from.end());
    while (!waiting.empty()) {
      const std::uint32_t at = waiting.back();
      waiting.pop_back();
      for (const std::uint32_t number : next(at)) {
        if (reached.insert(number).second) waiting.push_back(number);
      }
    }
    return reached;
  }

  Numbers with_bases(const Numbers& numbers) const {
    return reached_from(numbers, [&](std::uint32_t number) { return build_.sheets[number].bases; });
  }

  // Links more and more sheets until the rules miss none.
  bool examine(Diagnostics& ruled) {
    const Numbers stating = with_bases(examined_);  // what an examined sheet says stands on one of these
    Numbers wanted = stating;
    for (const std::uint32_t number : stating) {
      wanted.insert(build_.sheets[number].references.begin(), build_.sheets[number].references.end());
    }
    for (std::uint32_t i = 0; i < build_.sheets.size(); ++i) {
      if (build_.sheets[i].is_common) wanted.insert(i);
    }
    const std::vector<std::uint32_t> examined(examined_.begin(), examined_.end());
    constexpr int most_rounds = 5;
    for (int round = 0; round < most_rounds; ++round) {
      if (!read(with_bases(wanted))) return false;
      Diagnostics faults;
      linked_ = link_sheets(workspace_.sheets, {}, faults);
      if (has_fault_of(stating, faults) || offers_changed()) return false;
      const FewSheets few{linked_, build_.names, examined};
      const auto missing = run_rules_again(few, {.today = today()}, build_.findings, ruled);
      if (!build_.findings.told.is_sound()) return false;
      if (missing.empty()) return true;
      wanted.insert(missing.begin(), missing.end());
    }
    return false;
  }

  bool has_fault_of(const Numbers& sheets, const Diagnostics& faults) const {
    std::set<std::string_view> files;
    for (const std::uint32_t number : sheets) files.insert(look_.files[build_.sheets[number].file].opened);
    return std::ranges::any_of(faults.all(),
                               [&](const Diagnostic& fault) { return files.contains(fault.where.file); });
  }

  bool offers_changed() const {
    return std::ranges::any_of(examined_, [&](std::uint32_t number) {
      const LinkedSheet* sheet = linked_.sheet_named(build_.names[number]);
      return !sheet || is_common(*sheet->sheet) || offers_of(*sheet) != build_.sheets[number].offers;
    });
  }

  void record() {
    for (const std::uint32_t number : examined_) {
      sheaf::SheetRecord record = record_of(linked_, *linked_.sheet_named(build_.names[number]));
      const std::uint64_t hash = hash_of(record, sheaf::bodies_of(record));
      if (hash != build_.library.sheets[number].hash) out_.changed.push_back(std::move(record));
    }
  }

  const SecondLook& look_;
  Stamp& stamp_;
  KeptBuild& build_;
  std::unordered_map<std::string, std::size_t> files_;  // by the paths they are opened by: their places
  Numbers changed_;                                     // other bytes
  Numbers examined_;                                    // these, those based on them, those with allowances
  Workspace workspace_;
  std::map<std::uint32_t, std::size_t> read_at_;  // file -> place in workspace_
  LinkedSheets linked_;
  Rebuilt out_;
};

}  // namespace

std::optional<Rebuilt> compile_again(const SecondLook& look, Stamp& stamp, KeptBuild& build) {
  return Again(look, stamp, build).compile();
}

}  // namespace sheafc
