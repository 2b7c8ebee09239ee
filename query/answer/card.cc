// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/card.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <limits>
#include <utility>

#include "query/answer/fields.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr int most_boxes = 8;  // of one fastener at one place: more are ticked together

std::vector<std::string> places_of(const PlaceCount& count) {
  return count.places.empty() ? std::vector<std::string>{""} : count.places;
}

std::string item_id(const std::string& name, Deed deed, const std::vector<std::string>& parts) {
  std::string id = name + "/" + std::string(in_words(deed));
  for (const auto& part : parts)
    if (!part.empty()) id += "/" + part;
  return id;
}

// A box for every fastener, place and stage.
void add_tightenings(CardEntry& entry) {
  const auto torque = statement_of(entry.answer.entry.fields, "torque", Dimension::torque);
  if (!torque || !entry.answer.entry.withdrawn.empty()) return;
  const int stages = static_cast<int>(torque->stages.size());
  const int boxes = entry.count.number > most_boxes ? 1 : entry.count.number;
  for (int stage = 1; stage <= stages; ++stage) {
    for (const auto& place : places_of(entry.count)) {
      for (int box = 1; box <= boxes; ++box) {
        const std::string at_stage = stages > 1 ? "stage-" + std::to_string(stage) : "";
        const std::string number = boxes > 1 ? std::to_string(box) : "";
        entry.items.push_back({item_id(entry.name, Deed::tightened, {at_stage, place, number}),
                               Deed::tightened, place, stages > 1 ? stage : 0, boxes > 1 ? box : 0, ""});
      }
    }
  }
}

void add_for_places(CardEntry& entry, Deed deed, const std::string& unit) {
  for (const auto& place : places_of(entry.count))
    entry.items.push_back({item_id(entry.name, deed, {place}), deed, place, 0, 0, unit});
}

std::string unit_of(const EntryRecord& entry, std::initializer_list<std::string_view> keys) {
  for (const auto key : keys)
    if (const auto statement = statement_of(entry.fields, key, std::nullopt))
      if (statement->figure().unit) return std::string(statement->figure().unit->symbol);
  return {};
}

// The places of a fluid's own statement: it has no count.
PlaceCount fluid_count(const EntryRecord& entry) {
  for (const std::string_view key : {"volume", "dry-fill", "after-drain", "with-filter", "level"}) {
    const auto statement = statement_of(entry.fields, key, std::nullopt);
    if (statement && !statement->per.empty()) return count_of("1 per " + statement->per);
  }
  return {};
}

int order_of(const EntryRecord& entry) {
  int order = std::numeric_limits<int>::max();  // what has no place in the order comes after what has
  if (const auto* text = text_of(entry.fields, "order"))
    std::from_chars(text->data(), text->data() + text->size(), order);
  return order;
}

void sort_by_order(std::vector<CardEntry>& entries) {
  std::ranges::stable_sort(entries, std::less<>(),
                           [](const CardEntry& each) { return order_of(each.answer.entry); });
}

class CardBuilder {
 public:
  CardBuilder(SheetRecord sheet, const CardRequest& request) : request_(request) {
    card_.sheet = std::move(sheet);
    card_.machine = request.machine;
    card_.library = request.libraries[request.library]->facts();
    if (request.crib) {
      card_.shop = request.crib->shop;
      asked_.units = request.crib->units;
    }
  }

  Result<Card> build() {
    auto kit = build_kit({card_.sheet}, {request_.libraries, request_.crib, request_.today});
    if (!kit) return kit.failure();
    card_.kit = std::move(kit).value();
    add_identification();
    entries_ = std::exchange(card_.sheet.entries, {});
    for (std::size_t i = 0; i < entries_.size(); ++i) {
      const bool differs = i > 0 && entries_[i].address == entries_[i - 1].address;
      if (differs && (card_.open.empty() || card_.open.back() != entries_[i].name))
        card_.open.push_back(entries_[i].name);
      add(entries_[i]);
    }
    if (failure_) return *failure_;
    sort_by_order(card_.fasteners);
    sort_by_order(card_.steps);
    return std::move(card_);
  }

 private:
  void add_identification() {
    card_.identify_texts = texts_of(card_.sheet.fields, "identify");
    for (std::size_t i = 1; i <= card_.identify_texts.size(); ++i)
      card_.identify.push_back({"identify/" + std::to_string(i), Deed::made_sure, "", 0, 0, ""});
  }

  void add(const EntryRecord& entry) {
    if (entry.kind == "setting") add_setting(make(entry));
    if (entry.kind == "step") add_step(make(entry));
    if (entry.kind == "fastener" && text_of(entry.fields, "torque")) add_fastener(make(entry));
    if (entry.kind == "fluid") add_fluid(make(entry));
    if (entry.kind == "limit" || entry.kind == "clearance" || entry.kind == "pressure")
      add_measure(make(entry));
  }

  CardEntry make(const EntryRecord& entry) {
    CardEntry made;
    made.name = entry_part(entry.address);
    if (is_open(entry.address)) made.name += ":" + entry.variant;
    std::ranges::replace(made.name, ' ', '-');
    made.answer = answer_of(entry);
    made.count = count_of(text_or_none(entry.fields, "count"));
    return made;
  }

  // A card is worked with the tools of the shop: lengths and volumes stay in the unit of the sheet.
  Answer answer_of(const EntryRecord& entry) const {
    Answer answer = build_answer(card_.sheet, entry, asked_);
    const auto is_unwanted = [&](const Derived& derived) {
      const bool set_on_a_tool =
          derived.unit->dimension == Dimension::torque || derived.unit->dimension == Dimension::pressure;
      return !set_on_a_tool && std::ranges::find(asked_.units, derived.unit) == asked_.units.end();
    };
    for (auto* values : {&answer.figures, &answer.details})
      for (auto& value : *values) std::erase_if(value.derived, is_unwanted);
    return answer;
  }

  bool is_open(const std::string& address) const {
    return std::ranges::count(entries_, address, &EntryRecord::address) > 1;
  }

  void add_setting(CardEntry entry) {
    const std::string unit = unit_of(entry.answer.entry, {"standard", "range"});
    add_for_places(entry, Deed::found, unit);
    add_for_places(entry, Deed::set, unit);
    card_.settings.push_back(std::move(entry));
  }

  void add_step(CardEntry entry) {
    entry.items.push_back({item_id(entry.name, Deed::done, {}), Deed::done, "", 0, 0, ""});
    for (const auto& address : texts_of(entry.answer.entry.fields, "uses"))
      if (!failure_) failure_ = add_used(entry, address);
    card_.steps.push_back(std::move(entry));
  }

  // From this sheet, as it fits; from another one, as it stands there.
  std::optional<Failure> add_used(CardEntry& step, const std::string& address) {
    for (const auto& entry : entries_)
      if (entry.address == address) step.uses.push_back(answer_of(entry));
    if (sheet_part(address) == card_.sheet.name) return std::nullopt;
    for (Library* library : request_.libraries) {
      auto entries = library->entries_at(address);
      if (!entries) return entries.failure();
      for (const auto& entry : *entries) step.uses.push_back(answer_of(entry));
      if (!step.uses.empty() && step.uses.back().address == address) return std::nullopt;
    }
    return std::nullopt;
  }

  void add_fastener(CardEntry entry) {
    add_tightenings(entry);
    if (request_.crib) {
      auto chosen = choose_wrench(entry.answer.entry, {*request_.crib, request_.today});
      if (chosen) entry.wrench = std::move(chosen).value();
    }
    card_.fasteners.push_back(std::move(entry));
  }

  void add_fluid(CardEntry entry) {
    entry.count = fluid_count(entry.answer.entry);
    const bool is_filled =
        unit_of(entry.answer.entry, {"volume", "dry-fill", "after-drain", "with-filter"}).size() > 0;
    if (is_filled) add_for_places(entry, Deed::filled, "");
    if (text_of(entry.answer.entry.fields, "level"))
      add_for_places(entry, Deed::measured, unit_of(entry.answer.entry, {"level"}));
    card_.fluids.push_back(std::move(entry));
  }

  void add_measure(CardEntry entry) {
    add_for_places(entry, Deed::measured, unit_of(entry.answer.entry, {"limit", "value", "new"}));
    card_.measures.push_back(std::move(entry));
  }

  const CardRequest& request_;
  Asked asked_;
  Card card_;
  std::vector<EntryRecord> entries_;
  std::optional<Failure> failure_;
};

}  // namespace

CardMachine machine_of(const QuestionReading& reading) {
  CardMachine machine;
  machine.year = reading.year == reading.year_to || reading.year_to == 0 ? reading.year : 0;
  machine.frame = reading.frame;
  machine.market = reading.market;
  if (reading.machines.empty()) return machine;
  machine.make = reading.machines.front().make;
  if (reading.machines.size() == 1) machine.model = reading.machines.front().model;
  return machine;
}

Result<Card> build_card(SheetRecord sheet, const CardRequest& request) {
  return CardBuilder(std::move(sheet), request).build();
}

std::vector<const CardItem*> Card::items() const {
  std::vector<const CardItem*> all;
  for (const auto& item : identify) all.push_back(&item);
  for (const auto* section : {&settings, &steps, &fasteners, &fluids, &measures})
    for (const auto& entry : *section)
      for (const auto& item : entry.items) all.push_back(&item);
  return all;
}

const CardEntry* Card::entry_named(std::string_view name) const {
  for (const auto* section : {&settings, &steps, &fasteners, &fluids, &measures})
    for (const auto& entry : *section)
      if (entry.name == name) return &entry;
  return nullptr;
}

std::string in_words(const CardItem& item) {
  std::vector<std::string> parts;
  if (item.stage > 0) parts.push_back("stage " + std::to_string(item.stage));
  if (!item.place.empty()) parts.push_back(item.place);
  if (item.number > 0) parts.push_back(std::to_string(item.number));
  return joined(parts, ", ");
}

std::string_view in_words(Deed deed) {
  constexpr std::array<std::string_view, 7> words = {"made-sure", "found",    "done", "tightened",
                                                     "filled",    "measured", "set"};
  return words[static_cast<std::size_t>(deed)];
}

}  // namespace sheaf
