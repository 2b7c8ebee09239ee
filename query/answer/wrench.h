// SPDX-License-Identifier: GPL-2.0-or-later
// What to set on which of the workshop's wrenches, so that a torque stays within its band. Built once from
// a torque and the crib, then written as text, JSON, one line, or a drawing.
//
// The choice itself, its formulae and their sources stand in query/trade/torque_wrench.h.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "query/answer/answer.h"
#include "query/answer/crib.h"

namespace sheaf {

// An adapter of the crib between square and fastener: 0° straight on, 90° across, 180° back to the hand.
struct AdapterUse {
  CribAdapter adapter;
  double degrees = 0;
};

// One wrench, and what setting it to `on_scale` gives.
struct WrenchChoice {
  CribWrench wrench;
  WrenchSetting setting;
  Quantity on_scale;  // to set, or to read off; of no meaning where the torque is beyond the scale
  Figure torque;      // at the fastener, over the accuracy; in the unit asked for, rounded outward
  std::optional<Quantity> margin;  // to the nearer end of the band, rounded down; none without a band
  bool overdue = false;            // its calibration was due before today
  std::string unusable;            // why it cannot be used with the adapter; empty if it can
};

enum class ToleranceOf { source, shop, nobody };

// What a wrench would have to be like, where none in the crib will do.
struct WrenchWanted {
  Number accuracy;             // ± per cent, of those that wrenches are sold with
  std::optional<Number> step;  // the coarsest scale that will do, in the unit asked for
};

// One stage that a wrench sets.
struct StageSetting {
  std::size_t number = 0;  // of the stage in the statement, from 1
  Figure asked;
  Figure band;  // what must be held: the source's, or the shop's own worked out
  ToleranceOf tolerance_of = ToleranceOf::source;
  std::vector<WrenchChoice> choices;   // every wrench of the crib, best first
  std::optional<WrenchWanted> wanted;  // where none holds the band

  bool is_held() const;     // the first choice keeps the whole of setting ± accuracy inside the band
  bool can_be_set() const;  // it holds, or the source states no tolerance and it reaches
};

struct WrenchAnswer {
  Statement torque;
  bool for_all_together = false;  // the figure is a sum: no wrench sets it
  bool left_hand = false;
  std::vector<StageSetting> stages = {};
  std::optional<AdapterUse> adapter = {};
};

struct WrenchRequest {
  const Crib& crib;
  std::string today;  // 2026-11-25
  std::optional<AdapterUse> adapter = {};
};

// Fails for impossible geometry, and for a torque that no arithmetic can hold.
Result<WrenchAnswer> choose_wrench(const Statement& torque, const WrenchRequest& request);
// The torque of an entry; none if it states none, or is withdrawn.
Result<std::optional<WrenchAnswer>> choose_wrench(const EntryRecord& entry, const WrenchRequest& request);

// "21 lbf·ft on the half-inch wrench; stays within 27.3–29.6 N·m": a line for each stage, to stand beside any
// torque under the label "set". None where there is no torque, or the crib has no wrench.
std::vector<std::string> set_lines(const EntryRecord& entry, const Crib& crib, std::string_view today);
std::vector<std::string> set_lines(const WrenchAnswer& answer);
std::string set_line(const StageSetting& stage);

// Gives every answer with a torque its lines (Answer::set). The crib is looked for only if there is one, and
// the day only if there is a crib. Fails on a damaged library, or without a day; the answers are then as they
// were.
std::optional<Failure> add_set_lines(std::vector<Answer>& answers, const std::vector<Library*>& libraries,
                                     const std::function<Result<std::string>()>& today);

// What a choice says beside its wrench's name, when the wrench should not be trusted: "its calibration was
// due 2026-12-15". Empty if it can be.
std::string doubts_of(const WrenchChoice& choice);

}  // namespace sheaf
