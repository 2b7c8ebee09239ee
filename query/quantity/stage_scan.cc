// SPDX-License-Identifier: GPL-2.0-or-later
// The stages of a tightening: "20 N·m, 40 N·m + 90°", "hand tight + 3/4 turn".
#include "query/quantity/statement_scan.h"

namespace sheaf {
namespace {

constexpr std::size_t most_stages = 16;

bool is_torque(const Figure& figure) {
  return figure.unit != nullptr && figure.unit->dimension == Dimension::torque;
}

}  // namespace

bool take_hand_tight(Scanner& scanner) {
  return scanner.take_word("hand tight") || scanner.take_word("hand-tight") ||
         scanner.take_word("finger tight") || scanner.take_word("finger-tight");
}

bool take_loosening(Scanner& scanner) {
  return scanner.take_word("loosen") || scanner.take_word("back off") || scanner.take_word("slacken");
}

bool take_turning(Scanner& scanner) {
  return scanner.take_word("turn") || scanner.take_word("further") || scanner.take_word("another") ||
         scanner.take_word("angle");
}

StatementScan::Fault StatementScan::read_stages() {
  scanner_.skip_spaces();
  if (scanner_.done()) return Failure{"nothing is written here"};
  if (auto fault = read_first_stage()) return fault;
  const Stage& first = statement_.stages.front();
  bool found = first.hand_tight || is_torque(first.figure);
  while (found) {
    if (auto fault = read_next_stage(found)) return fault;
    if (statement_.stages.size() > most_stages) {
      return scanner_.failure_since(0, "more stages than any fastener has");
    }
  }
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_first_stage() {
  const std::size_t from = scanner_.at;
  if (take_hand_tight(scanner_)) {
    if (dimension_ && *dimension_ != Dimension::torque) {
      return scanner_.failure_since(from, "hand tight is said of a torque only");
    }
    statement_.stages.push_back({Act::tighten, {}, true});
    return std::nullopt;
  }
  auto figure = read_figure(dimension_);
  if (!figure) return figure.failure();
  statement_.stages.push_back({Act::tighten, *figure});
  return std::nullopt;
}

bool StatementScan::take_stage_mark() {
  bool marked = false;
  while (true) {
    scanner_.skip_spaces();
    if (!scanner_.take(",") && !scanner_.take(";") && !scanner_.take_word("then")) return marked;
    marked = true;
  }
}

StatementScan::Fault StatementScan::read_next_stage(bool& found) {
  const Scanner before = scanner_;
  const bool marked = take_stage_mark();
  found = true;
  if (take_loosening(scanner_)) return read_loosening();
  if (scanner_.take("+") || take_turning(scanner_)) return read_turn();
  if (marked && take_hand_tight(scanner_)) {
    statement_.stages.push_back({Act::tighten, {}, true});
    return std::nullopt;
  }
  if (marked && is_digit(scanner_.peek())) return read_torque_or_angle();
  found = false;
  scanner_ = before;
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_torque_or_angle() {
  auto figure = read_figure(Dimension::torque, Dimension::angle);
  if (!figure) return figure.failure();
  statement_.stages.push_back({is_torque(*figure) ? Act::tighten : Act::turn_further, *figure});
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_loosening() {
  scanner_.skip_spaces();
  if (scanner_.take_word("fully") || scanner_.take_word("completely")) {
    statement_.stages.push_back({Act::loosen_fully, {}});
    return std::nullopt;
  }
  if (scanner_.take_word("by")) scanner_.skip_spaces();
  auto figure = read_figure(Dimension::angle);
  if (!figure) return figure.failure();
  statement_.stages.push_back({Act::loosen, *figure});
  return std::nullopt;
}

StatementScan::Fault StatementScan::read_turn() {
  scanner_.skip_spaces();
  if (scanner_.take_word("turn") || scanner_.take_word("further") || scanner_.take_word("by"))
    scanner_.skip_spaces();
  auto figure = read_figure(Dimension::angle);
  if (!figure) return figure.failure();
  statement_.stages.push_back({Act::turn_further, *figure});
  const Scanner before = scanner_;
  scanner_.skip_spaces();
  if (!scanner_.take_word("further") && !scanner_.take_word("more")) scanner_ = before;
  return std::nullopt;
}

}  // namespace sheaf
