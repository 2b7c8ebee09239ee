// SPDX-License-Identifier: GPL-2.0-or-later
// A kit for programs and for the clerk's own lists.
#include "query/answer/csv.h"
#include "query/answer/kit_document.h"
#include "query/answer/text.h"

namespace sheaf {
namespace {

void write_strings(JsonWriter& json, std::string_view name, const std::vector<std::string>& texts) {
  json.key(name).begin_array();
  for (const auto& text : texts) json.string(text);
  json.end_array();
}

void write_quantity(JsonWriter& json, const Quantity& quantity) {
  json.key("value").number(quantity.value);
  json.member("unit", quantity.unit->symbol);
}

void write_volume(JsonWriter& json, const Purchase& purchase) {
  if (!purchase.volume) return;
  json.key("volume").begin_object();
  write_quantity(json, *purchase.volume);
  write_strings(json, "fills", purchase.fills);
  json.end_object();
  json.key("bottles").begin_array();
  for (const auto& bottle : purchase.bottles) {
    json.begin_object();
    json.key("count").number(bottle.count);
    write_quantity(json, bottle.size);
    json.end_object();
  }
  json.end_array();
  if (!purchase.left_over) return;
  json.key("left-over").begin_object();
  write_quantity(json, *purchase.left_over);
  json.end_object();
}

void write_purchase(JsonWriter& json, const Purchase& purchase) {
  json.begin_object();
  json.member("need", in_words(purchase.need));
  json.member("kind", purchase.kind);
  json.member("name", purchase.name);
  json.member("amount", amount_words(purchase));
  json.member_if("detail", purchase.detail);
  if (!purchase.number.numbers.empty()) {
    json.member("order", purchase.number.order());
    write_strings(json, "chain", purchase.number.numbers);
  }
  write_strings(json, "replaces", purchase.number.replaces);
  write_strings(json, "other-numbers", purchase.number.others);
  json.member_if("caveat", purchase.number.caveat);
  if (!purchase.volume) {
    json.key("pieces").number(purchase.pieces);
    json.key("packs").number(purchase.packs);
    json.key("in-pairs").boolean(purchase.in_pairs);
  }
  json.key("all-counted").boolean(purchase.all_counted);
  write_volume(json, purchase);
  write_strings(json, "addresses", purchase.addresses);
  if (!purchase.libraries.empty()) write_strings(json, "libraries", purchase.libraries);
  write_strings(json, "notes", purchase.notes);
  json.key("cautions").begin_array();
  for (const auto& caution : purchase.cautions) json.string(caution.text);
  json.end_array();
  json.end_object();
}

void write_pick(JsonWriter& json, const Pick& pick) {
  json.begin_object();
  json.member("tool", in_words(pick.tool));
  json.member("name", pick.name);
  json.member_if("detail", pick.detail);
  write_strings(json, "for", pick.uses);
  json.end_object();
}

std::vector<std::string> csv_cells(const Purchase& purchase) {
  std::vector<std::string> notes = purchase.notes;
  if (!purchase.number.caveat.empty()) notes.insert(notes.begin(), purchase.number.caveat);
  if (const auto volume = volume_words(purchase); !volume.empty()) notes.insert(notes.begin(), volume);
  const auto& number = purchase.number;
  return {"buy",
          std::string(in_words(purchase.need)),
          purchase.name,
          purchase.detail,
          number.numbers.empty() ? "" : number.order(),
          joined(number.numbers, " > "),
          joined(number.others, "; "),
          purchase.volume ? "" : std::to_string(purchase.pieces),
          amount_words(purchase),
          joined(sheets_of(purchase), "; "),
          joined(notes, "; "),
          joined(purchase.libraries, "; ")};
}

}  // namespace

void write_json(JsonWriter& json, const Kit& kit) {
  json.begin_object();
  json.key("sheets").begin_array();
  for (const auto& sheet : kit.sheets) {
    json.begin_object();
    json.member("sheet", sheet.name);
    json.member("title", sheet.title);
    json.member("assembly", sheet.assembly);
    json.member_if("library", sheet.library);
    write_strings(json, "machines", sheet.machines);
    json.key("invented").boolean(sheet.invented);
    json.end_object();
  }
  json.end_array();
  json.key("buy").begin_array();
  for (const auto& purchase : kit.buy) write_purchase(json, purchase);
  json.end_array();
  json.key("pick").begin_array();
  for (const auto& pick : kit.pick) write_pick(json, pick);
  json.end_array();
  write_strings(json, "notices", kit.notices);
  json.member("notice", authority_notice);
  json.end_object();
}

std::string csv_of(const Kit& kit) {
  std::string text = csv_row({"list", "group", "what", "detail", "order", "chain", "other numbers", "pieces",
                              "amount", "for", "notes", "library"});
  for (const auto& purchase : kit.buy) text += csv_row(csv_cells(purchase));
  for (const auto& pick : kit.pick)
    text += csv_row({"lay out", std::string(in_words(pick.tool)), pick.name, pick.detail, "", "", "", "", "",
                     joined(pick.uses, "; "), "", ""});
  return text;
}

}  // namespace sheaf
