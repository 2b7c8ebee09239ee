// SPDX-License-Identifier: GPL-2.0-or-later
// Everything one assembly's job needs, in the order of the job: is it the one, what to note, lay out, buy,
// do, tighten, fill, measure, set again and sign. Built once from a sheet, then laid out for print
// (card_document.cc), written as JSON, or filled in (card_record.h).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/answer/answer.h"
#include "query/answer/crib.h"
#include "query/answer/kit.h"
#include "query/answer/wrench.h"
#include "query/library/library.h"
#include "query/search/reading.h"

namespace sheaf {

// What a person does with one thing on the card, and so what is kept of it.
enum class Deed { made_sure, found, done, tightened, filled, measured, set };

// One box or blank. Its name never changes while the entry keeps its own: a record refers to it.
struct CardItem {
  std::string id;  // "top-plug/tightened/left", "head-bolts/tightened/stage-2/1", "identify/1"
  Deed deed = Deed::done;
  std::string place;  // "left"; empty where there is only one
  int stage = 0;      // of a tightening in stages, from 1
  int number = 0;     // of several at that place, from 1; 0 where the box is for all of them
  std::string unit;   // of what is written in; empty for a box
};

struct CardEntry {
  std::string name;  // "top-plug"; "axle-nut:2011..2015" while the card is open to several years
  Answer answer;
  PlaceCount count;
  std::vector<CardItem> items;
  std::optional<WrenchAnswer> wrench;  // of a torque, where there is a crib
  std::vector<Answer> uses;            // of a step: what it needs
};

// The machine that the card was asked for; empty where the sheet alone was.
struct CardMachine {
  std::string make, model, frame, market;
  int year = 0;
};

// The machine that was read from words or flags; only the make where several models were.
CardMachine machine_of(const QuestionReading& reading);

struct Card {
  SheetRecord sheet;  // without entries
  LibraryFacts library;
  CardMachine machine;
  std::string shop;                // whose crib the wrenches are from
  std::vector<std::string> open;   // names of entries that differ by year, frame number or market
  std::vector<CardItem> identify;  // in the order of the sheet's own sentences
  std::vector<std::string> identify_texts;
  std::vector<CardEntry> settings, steps, fasteners, fluids,
      measures;  // measures: limits, clearances, pressures
  Kit kit;

  // Every item of the card, in its order.
  std::vector<const CardItem*> items() const;
  const CardEntry* entry_named(std::string_view name) const;
};

struct CardRequest {
  std::vector<Library*> libraries;
  std::size_t library = 0;  // that holds the sheet
  CardMachine machine;
  const Crib* crib = nullptr;  // wrenches and units; may be absent
  std::string today;
};

// The sheet with the entries that fit. Fails on a damaged library.
Result<Card> build_card(SheetRecord sheet, const CardRequest& request);

std::string_view in_words(Deed deed);        // "found", "tightened"
std::string in_words(const CardItem& item);  // "stage 2, left, 1": which of an entry's items it is

}  // namespace sheaf
