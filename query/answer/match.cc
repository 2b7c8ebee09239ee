// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "query/answer/match_designation.h"
#include "query/answer/match_row.h"
#include "query/library/fold.h"
#include "query/search/measures.h"
#include "query/search/of_kind.h"
#include "query/search/of_size.h"
#include "query/trade/measured.h"

namespace sheaf {
namespace {

constexpr std::size_t most_compared = 2000;  // entries of a kind that the index finds near the size
constexpr double o_ring_near_mm = 1;         // sections differ by less than seals do

constexpr std::string_view same_size_caution = "Same size is not same part: lip, material and use differ.";
constexpr std::string_view shaft_caution =
    "A shaft seal is made for a turning shaft, a fork seal for a sliding tube: one never replaces the other.";

// The kinds that hold a part, and whether the index has their dimensions: a published table is read whole.
struct PartKind {
  Part part;
  std::string_view kind;
  bool is_table;
};
constexpr std::array<PartKind, 8> part_kinds = {{{Part::seal, "seal", false},
                                                 {Part::seal, "fork-seal-size", true},
                                                 {Part::seal, "shaft-seal-size", true},
                                                 {Part::o_ring, "o-ring", false},
                                                 {Part::o_ring, "o-ring-size", true},
                                                 {Part::bearing, "bearing", false},
                                                 {Part::bearing, "bearing-size", true},
                                                 {Part::bushing, "bushing", false}}};

struct PartWord {
  std::string_view words;
  Part part;
  std::optional<SealUse> use;
};
// Longer ones stand before those that begin them.
constexpr std::array<PartWord, 20> part_words = {{{"fork oil seal", Part::seal, SealUse::fork},
                                                  {"fork dust seal", Part::seal, SealUse::fork},
                                                  {"fork seals", Part::seal, SealUse::fork},
                                                  {"fork seal", Part::seal, SealUse::fork},
                                                  {"shaft seal", Part::seal, SealUse::shaft},
                                                  {"oil seal", Part::seal, {}},
                                                  {"dust seal", Part::seal, {}},
                                                  {"seals", Part::seal, {}},
                                                  {"seal", Part::seal, {}},
                                                  {"o-rings", Part::o_ring, {}},
                                                  {"o-ring", Part::o_ring, {}},
                                                  {"o ring", Part::o_ring, {}},
                                                  {"oring", Part::o_ring, {}},
                                                  {"ball bearing", Part::bearing, {}},
                                                  {"bearings", Part::bearing, {}},
                                                  {"bearing", Part::bearing, {}},
                                                  {"bushings", Part::bushing, {}},
                                                  {"bushing", Part::bushing, {}},
                                                  {"bush", Part::bushing, {}},
                                                  {"thread", Part::thread, {}}}};

// Two dimensions of an O-ring are its inside and its section, where nobody says otherwise.
Measured read_for(Part part, const Measured& measured) {
  Measured read = measured;
  const bool unnamed = read.roles.empty() && read.mm.size() == 2;
  if (part == Part::o_ring && unnamed && read.mm[1] < read.mm[0] / 2)
    read.roles = {Role::inside, Role::height};
  return read;
}

// What the index can sieve by: an O-ring's outside is in no index, since it follows from the others.
std::vector<LengthSpan> spans_of(Part part, const Measured& measured, double near_mm) {
  std::vector<LengthSpan> spans;
  for (std::size_t i = 0; i < measured.mm.size(); ++i) {
    const bool may_be_outside = measured.roles.empty() || measured.roles[i] == Role::outside;
    if (part == Part::o_ring && may_be_outside) continue;
    spans.push_back({measured.mm[i] - near_mm, measured.mm[i] + near_mm});
  }
  return spans;
}

Result<SizedEntries> candidates(Library& library, const PartKind& kind, const Measured& measured,
                                double near_mm) {
  if (!kind.is_table)
    return entries_measuring(library, kind.kind, spans_of(kind.part, measured, near_mm), most_compared);
  auto rows = entries_of_kind(library, kind.kind, most_compared);
  if (!rows) return rows.failure();
  return SizedEntries{std::move(rows).value(), false};
}

std::string difference_words(const SizeMatch& match, double beyond, Part part) {
  std::string words;
  for (const auto& difference : match.differences) {
    if (std::abs(difference.by()) <= beyond + 1e-6) continue;
    const bool section = part == Part::o_ring && difference.role == Role::height;
    words += (words.empty() ? "" : ", ") +
             (section ? std::string("section") : std::string(name_of(difference.role))) + " " +
             signed_amount(-difference.by(), "mm");
  }
  return words;
}

std::string within_words(const SizeMatch& match, double uncertainty) {
  std::string words;
  for (const auto& difference : match.differences)
    if (std::abs(difference.by()) > 1e-6)
      words += (words.empty() ? "measured " : ", ") + mm_text(difference.measured) +
               " is within a caliper's " + brief(uncertainty) + " mm of " + mm_text(difference.row);
  return words;
}

class Matcher {
 public:
  Matcher(const Measured& measured, const PartNamed& named, MatchLimits limits)
      : measured_(measured), named_(named), limits_(limits) {}

  std::optional<Failure> look(Library& library, const PartKind& kind) {
    const Measured measured = read_for(kind.part, measured_);
    MatchLimits limits = limits_;
    if (kind.part == Part::o_ring)
      limits.near_mm = std::max(std::min(limits.near_mm, o_ring_near_mm), limits.uncertainty_mm);
    auto found = candidates(library, kind, measured, limits.near_mm);
    if (!found) return found.failure();
    matches_.more = matches_.more || found->more;
    std::vector<SizeRow> rows;
    std::vector<EntryRecord> entries;
    for (const auto& entry : found->entries)
      if (const auto row = size_row(entry)) rows.push_back(*row), entries.push_back(entry);
    const auto matched = match_size(measured, rows, limits);
    if (!matched) return matched.failure();
    for (const auto& match : matched->exact) add(match, entries[match.row], matches_.same);
    for (const auto& match : matched->within) add(match, entries[match.row], matches_.within);
    for (const auto& match : matched->near) add_near(match, entries[match.row], kind.part);
    return std::nullopt;
  }

  Matches finish() && {
    std::ranges::stable_sort(near_, {}, &Near::sum);
    for (auto& near : near_) matches_.near.push_back(std::move(near.part));
    matches_.cautions.emplace_back(same_size_caution);
    const auto for_shaft = [](const MatchedPart& part) { return use_of(part.entry) == SealUse::shaft; };
    if (std::ranges::any_of(matches_.same, for_shaft) || std::ranges::any_of(matches_.within, for_shaft) ||
        std::ranges::any_of(matches_.other_use, for_shaft))
      matches_.cautions.emplace_back(shaft_caution);
    return std::move(matches_);
  }

 private:
  struct Near {
    double sum;
    MatchedPart part;
  };

  bool is_for_another_use(const EntryRecord& entry) const {
    const auto use = use_of(entry);
    return named_.use && use && *use != *named_.use;
  }

  void add(const SizeMatch& match, const EntryRecord& entry, std::vector<MatchedPart>& list) {
    MatchedPart part = part_from(entry);
    part.usual_order = match.usual_order;
    part.within = within_words(match, limits_.uncertainty_mm);
    if (!entry.withdrawn.empty()) {
      part.differs = "withdrawn: " + entry.withdrawn.front().reason;
      near_.push_back({0, std::move(part)});
    } else {
      (is_for_another_use(entry) ? matches_.other_use : list).push_back(std::move(part));
    }
  }

  void add_near(const SizeMatch& match, const EntryRecord& entry, Part part) {
    if (is_for_another_use(entry) || !entry.withdrawn.empty()) return;
    Near near{0, part_from(entry)};
    for (const auto& difference : match.differences) near.sum += std::abs(difference.by());
    near.part.differs = difference_words(match, limits_.uncertainty_mm, part);
    near_.push_back(std::move(near));
  }

  const Measured& measured_;
  const PartNamed& named_;
  MatchLimits limits_;
  Matches matches_;
  std::vector<Near> near_;
};

std::string read_words(const Measured& measured, const PartNamed& named) {
  static constexpr std::array<std::string_view, 5> names = {"seal", "O-ring", "bearing", "bushing", "thread"};
  std::string words = named.use ? (*named.use == SealUse::fork ? "fork " : "shaft ") : "";
  words += named.part ? std::string(names[static_cast<std::size_t>(*named.part)]) + ", " : "any ring, ";
  for (std::size_t i = 0; i < measured.mm.size(); ++i) {
    words += i == 0 ? "" : measured.roles.empty() ? " × " : ", ";
    if (!measured.roles.empty()) words += std::string(name_of(measured.roles[i])) + " ";
    words += mm_text(measured.mm[i]);
  }
  if (measured.second_height) words += "/" + mm_text(*measured.second_height);
  return words + " mm";
}

}  // namespace

PartNamed take_part(std::string_view text) {
  PartNamed named{{}, {}, std::string(text)};
  const std::string folded = fold(text);
  if (folded.size() != text.size()) return named;  // words of ours fold to their own length
  for (const auto& word : part_words) {
    const bool whole = folded.size() == word.words.size() ||
                       (folded.size() > word.words.size() && folded[word.words.size()] == ' ');
    if (!folded.starts_with(word.words) || !whole) continue;
    named.part = word.part;
    named.use = word.use;
    named.rest = std::string(text.substr(std::min(word.words.size() + 1, text.size())));
    return named;
  }
  return named;
}

Result<Matches> match_measured(const Measured& measured, const PartNamed& named, const MatchLimits& limits,
                               const Libraries& libraries) {
  Matcher matcher(measured, named, limits);
  for (const auto& kind : part_kinds) {
    const bool too_many = kind.part == Part::o_ring && measured.mm.size() > 2;
    if ((named.part && *named.part != kind.part) || too_many) continue;
    for (Library* library : libraries)
      if (auto fault = matcher.look(*library, kind)) return *fault;
  }
  Matches matches = std::move(matcher).finish();
  matches.read_as = read_words(measured, named);
  return matches;
}

Result<Matches> match(const MatchRequest& request, const Libraries& libraries) {
  const PartNamed named = take_part(request.text);
  auto designated = match_designation(named, libraries);
  if (!designated) return designated.failure();
  if (*designated) {
    Matches matches = **std::move(designated);
    matches.typed = request.text;
    return matches;
  }
  const auto measured = parse_measured(named.rest, Input::prompt);
  if (!measured)
    return Failure{"'" + named.rest + "' is neither a size nor a designation: " + measured.failure().message};
  auto matches = match_measured(*measured, named, request.limits, libraries);
  if (!matches) return matches.failure();
  Matches result = std::move(matches).value();
  result.typed = request.text;
  return result;
}

}  // namespace sheaf
