// SPDX-License-Identifier: GPL-2.0-or-later
// Which parts of the fleet and which published sizes have what was measured, or are what is designated.
// What is the same, what is the same within the caliper's uncertainty, and what is NOT the same are three
// lists, never one. Written as text, JSON (match_text.h) and CSV (match_csv.h).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/answer/picture.h"
#include "query/answer/supersession.h"
#include "query/library/library.h"
#include "query/trade/bearing.h"
#include "query/trade/size_match.h"

namespace sheaf {

enum class Part { seal, o_ring, bearing, bushing, thread };
enum class SealUse { fork, shaft, other };  // other: a piston's, a hose's

struct MatchRequest {
  std::string text;  // "41.1 x 54 x 11", "fork seal id 43 od 55", "6203-2RS", "-214", "M8", "thread 7.9
                     // x 1.25", or two of them with "vs" between
  MatchLimits limits;
};

struct MatchedPart {
  std::string size;         // "41 × 54 × 11", or the designation
  std::string differs;      // "inside +2 mm"; empty if nothing does
  std::string within;       // "measured 41.1 is within 0.1 mm of 41"; empty if equal
  std::string count;        // "2 for both legs"; empty for a published size
  std::string details;      // of a thread: "coarse, stress area 36.6 mm², …"
  NumberChain number;       // which to order today
  bool usual_order = true;  // false: it fits only in another order of the dimensions
  std::optional<SizeRow> dimensions;
  RingShape shape = RingShape::lip_seal;
  EntryRecord entry;
};

struct Matches {
  std::string typed, read_as;  // "seal, inside × outside × height, mm: 41.1 × 54 × 11"
  std::vector<MatchedPart> same, within, near;
  std::vector<MatchedPart> other_use;  // the size is the same, but they are not for what was named
  std::vector<Meaning> meanings;       // of a bearing's designation
  std::vector<std::string> cautions;
  bool more = false;  // the libraries hold more of it than is listed

  bool found() const { return !same.empty() || !within.empty(); }
};

class Shelf;

// Fails on what is neither a size nor a designation.
Result<Matches> match(const MatchRequest& request, Shelf& shelf);
Result<Matches> match(const MatchRequest& request, const std::vector<Library*>& libraries);

// What was named before or behind the size: "fork seal", "o-ring". Words that name no part stay in the text.
struct PartNamed {
  std::optional<Part> part;
  std::optional<SealUse> use;
  std::string rest;
};
PartNamed take_part(std::string_view text);

// A measured ring against entries of its parts; for a batch, whose columns name the dimensions.
Result<Matches> match_measured(const Measured& measured, const PartNamed& named, const MatchLimits& limits,
                               Shelf& shelf);

}  // namespace sheaf
