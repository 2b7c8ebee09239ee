// SPDX-License-Identifier: GPL-2.0-or-later
// What a job uses up and what it needs laid out: one list for one assembly or for a whole service, counted
// and merged, in whole bottles and whole pairs, by the number that is ordered today.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/answer/answer.h"
#include "query/answer/count.h"
#include "query/answer/crib.h"
#include "query/answer/supersession.h"

namespace sheaf {

// Why something is on the buying list.
enum class Need { fluid, used_up, when_apart, if_worn };

struct BottleCount {
  Quantity size;
  int count = 0;
};

struct Purchase {
  Need need = Need::if_worn;
  std::string kind, name;
  std::string detail;  // "41 × 54 × 11 mm", "M10x1.25 · class 10.9", "DOT 4"
  NumberChain number;
  int pieces = 0;           // how many the job takes
  bool all_counted = true;  // false: some are per something that nobody counted ("per cylinder")
  bool in_pairs = false;    // one number buys two
  int packs = 0;            // how many to order: pairs, or pieces

  std::optional<Quantity> volume;    // of a fluid, in all
  std::vector<std::string> fills;    // "dry fill 540 mL per leg"
  std::vector<BottleCount> bottles;  // none where no size is stated
  std::optional<Quantity> left_over;

  std::vector<std::string> addresses;  // that want it
  std::vector<std::string> names;      // what each of them calls it
  std::vector<std::string> libraries;  // that they are in, each once; none where one alone was asked
  std::vector<std::string> notes;
  std::vector<CautionRecord> cautions;
};

enum class Tool { socket, wrench, special, material };

struct Pick {
  Tool tool = Tool::socket;
  std::string name, detail;
  std::vector<std::string> uses;  // "fork top plug"
};

struct KitSheet {
  std::string name, title, assembly;
  std::vector<std::string> machines;
  bool invented = false;
  std::string library = {};
};

struct Kit {
  std::vector<KitSheet> sheets;
  std::vector<Purchase> buy;  // by need, then as the sheets have them
  std::vector<Pick> pick;     // by tool, sockets from small to large
  std::vector<std::string> notices;
};

struct KitRequest {
  std::vector<Library*> libraries;
  const Crib* crib = nullptr;  // the wrenches are chosen from it, if there is one
  std::string today;
};

// Sheets as find_sheets() gives them: with the entries that fit. Fails on a damaged library.
Result<Kit> build_kit(const std::vector<SheetRecord>& sheets, const KitRequest& request);

// "fluids", "fit new", "fit new if taken out", "if worn"
std::string_view in_words(Need need);
std::string_view in_words(Tool tool);
// "1 × 1 L + 2 × 500 mL"
std::string in_words(const std::vector<BottleCount>& bottles);
// "2", "1 pair", "1 × 1 L": what is asked for at the counter.
std::string amount_words(const Purchase& purchase);
// "1080 mL in all: dry fill 540 mL per leg; 420 mL stay over". Empty if it is no fluid.
std::string volume_words(const Purchase& purchase);
// The sheets that want it, each once.
std::vector<std::string> sheets_of(const Purchase& purchase);

}  // namespace sheaf
