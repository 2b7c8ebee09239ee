// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <array>

#include "query/answer/fields.h"
#include "query/answer/kit.h"
#include "query/answer/text.h"

namespace sheaf {

std::string_view in_words(Need need) {
  constexpr std::array<std::string_view, 4> words = {"fluids", "fit new", "fit new if taken out",
                                                     "have at hand, if worn"};
  return words[static_cast<std::size_t>(need)];
}

std::string in_words(const std::vector<BottleCount>& bottles) {
  std::vector<std::string> parts;
  for (const auto& each : bottles)
    parts.push_back(std::to_string(each.count) + "\u00A0×\u00A0" + shown(each.size));
  return joined(parts, " + ");
}

std::string amount_words(const Purchase& purchase) {
  if (purchase.volume) return purchase.bottles.empty() ? shown(*purchase.volume) : in_words(purchase.bottles);
  const std::string number = std::to_string(purchase.packs);
  if (!purchase.all_counted) return number + " each";
  return purchase.in_pairs ? number + (purchase.packs == 1 ? " pair" : " pairs") : number;
}

std::string volume_words(const Purchase& purchase) {
  if (!purchase.volume) return {};
  std::vector<std::string> fills = purchase.fills;
  for (std::size_t i = 0; fills.size() > 1 && i < fills.size(); ++i)
    fills[i] = purchase.names[i] + " " + fills[i];
  std::string words = shown(*purchase.volume) + " in all: " + joined(fills, " + ");
  if (purchase.left_over && purchase.left_over->value.digits > 0)
    words += "; " + shown(*purchase.left_over) + " stay over";
  if (purchase.bottles.empty()) words += "; the sheet names no bottle sizes";
  return words;
}

std::vector<std::string> sheets_of(const Purchase& purchase) {
  std::vector<std::string> sheets;
  for (const auto& address : purchase.addresses) {
    const std::string sheet = sheet_part(address);
    if (std::ranges::find(sheets, sheet) == sheets.end()) sheets.push_back(sheet);
  }
  return sheets;
}

}  // namespace sheaf
