// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "query/answer/match_designation.h"
#include "query/answer/match_row.h"
#include "query/answer/match_shelf.h"
#include "query/answer/match_two.h"
#include "query/library/fold.h"
#include "query/search/measures.h"
#include "query/trade/measured.h"

namespace sheaf {
namespace {

// Entries of one kind and size that are read: a fleet may hold thousands of one bearing, and nobody reads
// them all.
constexpr std::size_t most_of_a_size = 30;
constexpr std::size_t most_of_a_near_size = 6;
constexpr std::size_t most_near = 100;  // of all near sizes of a kind
constexpr double o_ring_near_mm = 1;    // sections differ by less than seals do

constexpr std::string_view same_size_caution = "Same size is not same part: lip, material and use differ.";
constexpr std::string_view shaft_caution =
    "A shaft seal is made for a turning shaft, a fork seal for a sliding tube: one never replaces the other.";

// The kinds that hold a part, and how they are looked through: a published table is read whole; of a fleet
// the sizes that occur are compared, or, where dimensions stand in fields of their own, what is near them.
enum class Through { table, sizes, dimensions };
struct PartKind {
  Part part;
  RingShape shape;
  std::string_view kind;
  Through through;
};
constexpr std::array<PartKind, 8> part_kinds = {
    {{Part::seal, RingShape::lip_seal, "seal", Through::sizes},
     {Part::seal, RingShape::lip_seal, "fork-seal-size", Through::table},
     {Part::seal, RingShape::lip_seal, "shaft-seal-size", Through::table},
     {Part::o_ring, RingShape::o_ring, "o-ring", Through::sizes},
     {Part::o_ring, RingShape::o_ring, "o-ring-size", Through::table},
     {Part::bearing, RingShape::bearing, "bearing", Through::sizes},
     {Part::bearing, RingShape::bearing, "bearing-size", Through::table},
     {Part::bushing, RingShape::bushing, "bushing", Through::dimensions}}};

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

std::vector<LengthSpan> spans_of(const Measured& measured, double near_mm) {
  std::vector<LengthSpan> spans;
  for (const double mm : measured.mm) spans.push_back({mm - near_mm, mm + near_mm});
  return spans;
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
    if (mm_text(difference.measured) != mm_text(difference.row))
      words += (words.empty() ? "measured " : ", ") + mm_text(difference.measured) +
               " is within a caliper's " + brief(uncertainty) + " mm of " + mm_text(difference.row);
  return words;
}

class Matcher {
 public:
  Matcher(const Measured& measured, const PartNamed& named, MatchLimits limits, Shelf& shelf)
      : measured_(measured), named_(named), limits_(limits), shelf_(shelf) {}

  std::optional<Failure> look(const PartKind& kind) {
    const Measured measured = read_for(kind.part, measured_);
    MatchLimits limits = limits_;
    if (kind.part == Part::o_ring)
      limits.near_mm = std::max(std::min(limits.near_mm, o_ring_near_mm), limits.uncertainty_mm);
    if (kind.through == Through::table) return look_through_table(kind, measured, limits);
    for (Library* library : shelf_.libraries()) {
      auto fault = kind.through == Through::sizes ? look_through_sizes(*library, kind, measured, limits)
                                                  : look_near(*library, kind, measured, limits);
      if (fault) return fault;
    }
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
  struct OfSize {
    std::span<const EntryRecord> entries;
    bool more = false;
  };

  std::optional<Failure> look_through_table(const PartKind& kind, const Measured& measured,
                                            MatchLimits limits) {
    const auto table = shelf_.table(kind.kind);
    if (!table) return table.failure();
    const Shelf::Table& rows = **table;
    return take(measured, rows.sizes, limits, kind.part, [&](std::size_t i, std::size_t) -> Result<OfSize> {
      return OfSize{{&rows.rows[rows.row_of_size[i]], 1}};
    });
  }

  std::optional<Failure> look_through_sizes(Library& library, const PartKind& kind, const Measured& measured,
                                            MatchLimits limits) {
    const auto sizes = shelf_.sizes(library, kind.shape);
    if (!sizes) return sizes.failure();
    return take(measured, (*sizes)->rows, limits, kind.part,
                [&](std::size_t i, std::size_t most) -> Result<OfSize> {
                  const auto found = shelf_.entries(library, kind.kind, (*sizes)->keys[i], most);
                  if (!found) return found.failure();
                  return OfSize{(*found)->entries, (*found)->more};
                });
  }

  std::optional<Failure> look_near(Library& library, const PartKind& kind, const Measured& measured,
                                   MatchLimits limits) {
    auto found = entries_measuring(library, kind.kind, spans_of(measured, limits.near_mm), most_near);
    if (!found) return found.failure();
    matches_.more = matches_.more || found->more;
    std::vector<SizeRow> rows;
    std::vector<const EntryRecord*> entries;
    for (const auto& entry : found->entries)
      if (const auto row = size_row(entry)) rows.push_back(*row), entries.push_back(&entry);
    return take(measured, rows, limits, kind.part, [&](std::size_t i, std::size_t) -> Result<OfSize> {
      return OfSize{{entries[i], 1}};
    });
  }

  // The entries of every row that matches; `entries_of` reads them, and only of those.
  template <typename EntriesOf>
  std::optional<Failure> take(const Measured& measured, std::span<const SizeRow> rows, MatchLimits limits,
                              Part part, EntriesOf entries_of) {
    const auto matched = match_size(measured, rows, limits);
    if (!matched) return matched.failure();
    const std::size_t near_before = near_.size();
    for (const auto* list : {&matched->exact, &matched->within, &matched->near}) {
      for (const auto& match : *list) {
        if (list == &matched->near && near_.size() - near_before > most_near) return std::nullopt;
        auto found = entries_of(match.row, list == &matched->near ? most_of_a_near_size : most_of_a_size);
        if (!found) return found.failure();
        matches_.more = matches_.more || found->more;
        for (const auto& entry : found->entries) {
          if (list == &matched->exact) add(match, entry, matches_.same);
          if (list == &matched->within) add(match, entry, matches_.within);
          if (list == &matched->near) add_near(match, entry, part);
        }
      }
    }
    return std::nullopt;
  }

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
  Shelf& shelf_;
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

Result<Matches> match_as_size(const PartNamed& named, const MatchLimits& limits, Shelf& shelf) {
  const auto measured = parse_measured(named.rest, Input::prompt);
  if (measured) return match_measured(*measured, named, limits, shelf);
  return Failure{"'" + named.rest + "' is neither a size nor a designation: " + measured.failure().message};
}

}  // namespace

PartNamed take_part(std::string_view text) {
  PartNamed named{{}, {}, std::string(text)};
  const std::string folded = fold(text);
  if (folded.size() != text.size()) return named;  // words of ours fold to their own length
  for (const auto& word : part_words) {
    const std::size_t size = word.words.size(), rest = folded.size() - std::min(size, folded.size());
    const bool before = folded.starts_with(word.words) && (rest == 0 || folded[size] == ' ');
    const bool behind = folded.ends_with(word.words) && rest > 0 && folded[rest - 1] == ' ';
    if (!before && !behind) continue;
    named.part = word.part;
    named.use = word.use;
    named.rest = before ? text.substr(std::min(size + 1, text.size())) : text.substr(0, rest - 1);
    return named;
  }
  return named;
}

Result<Matches> match_measured(const Measured& measured, const PartNamed& named, const MatchLimits& limits,
                               Shelf& shelf) {
  Matcher matcher(measured, named, limits, shelf);
  for (const auto& kind : part_kinds) {
    const bool too_many = kind.part == Part::o_ring && measured.mm.size() > 2;
    if ((named.part && *named.part != kind.part) || too_many) continue;
    if (auto fault = matcher.look(kind)) return *fault;
  }
  Matches matches = std::move(matcher).finish();
  matches.read_as = read_words(measured, named);
  return matches;
}

static Result<Matches> match_one(std::string_view text, const MatchLimits& limits, Shelf& shelf) {
  const PartNamed named = take_part(with_leading_zeros(text));
  const auto designated = match_designation(named, limits, shelf);
  if (!designated) return designated.failure();
  return *designated ? Result<Matches>(**designated) : match_as_size(named, limits, shelf);
}

static Result<Matches> match_two(const std::string& first, const std::string& second,
                                 const MatchLimits& limits, Shelf& shelf) {
  auto left = match_one(first, limits, shelf);
  if (!left) return left;
  auto right = match_one(second, limits, shelf);
  if (!right) return right;
  return beside(std::move(left).value(), std::move(right).value());
}

Result<Matches> match(const MatchRequest& request, Shelf& shelf) {
  const auto two = two_sides(request.text);
  const auto answer = two ? match_two(two->first, two->second, request.limits, shelf)
                          : match_one(request.text, request.limits, shelf);
  if (!answer) return answer.failure();
  Matches matches = *answer;
  matches.typed = request.text;
  for (auto* list : {&matches.same, &matches.within, &matches.other_use})
    if (auto fault = add_numbers(*list, shelf.libraries())) return *fault;
  return matches;
}

Result<Matches> match(const MatchRequest& request, const std::vector<Library*>& libraries) {
  Shelf shelf(libraries);
  return match(request, shelf);
}

}  // namespace sheaf
