// SPDX-License-Identifier: GPL-2.0-or-later
// Entries of one address that differ by year are one thing to buy: the largest of them, and it says so.
#include "query/answer/kit.h"

#include <algorithm>
#include <array>
#include <map>

#include "query/answer/fields.h"
#include "query/answer/kit_picks.h"
#include "query/answer/text.h"
#include "query/library/vocabulary.h"
#include "query/quantity/arithmetic.h"
#include "query/quantity/exact.h"
#include "query/trade/oil_volume.h"
#include "query/trade/reckoned.h"

namespace sheaf {
namespace {

constexpr std::array<std::string_view, 4> fill_fields = {"volume", "dry-fill", "after-drain", "with-filter"};
constexpr double millilitres_in_a_cubic_metre = 1e6;

double millilitres(const Quantity& volume) {
  return approximate(volume.value) * static_cast<double>(volume.unit->factor.numerator) /
         static_cast<double>(volume.unit->factor.denominator) * millilitres_in_a_cubic_metre;
}

std::optional<Quantity> times(const Quantity& quantity, int count) {
  Number value = quantity.value;
  if (__builtin_mul_overflow(value.digits, static_cast<std::int64_t>(count), &value.digits))
    return std::nullopt;
  if (value.digits >= max_digits) return std::nullopt;
  return Quantity{value, quantity.unit};
}

std::optional<Quantity> sum(const Quantity& left, const Quantity& right) {
  std::optional<Number> other = right.value;
  if (left.unit != right.unit) {
    Figure figure;
    figure.nominal = right.value;
    figure.unit = right.unit;
    const auto converted = convert(figure, *left.unit);
    other = converted ? converted->figure.nominal : std::nullopt;
  }
  const auto total = other ? add(left.value, *other) : std::nullopt;
  return total ? std::optional(Quantity{*total, left.unit}) : std::nullopt;
}

// A fill that the entry states, for the whole machine.
struct Fill {
  Quantity volume;
  std::string words;
  bool is_whole = true;
};

std::optional<Fill> fill_of(const EntryRecord& entry, std::string_view key) {
  const auto statement = statement_of(entry.fields, key, Dimension::volume);
  if (!statement) return std::nullopt;
  const Figure& figure = statement->figure();
  const auto& most = figure.most ? figure.most : figure.nominal ? figure.nominal : figure.least;
  const auto places = places_per(statement->per);
  const auto whole = times({*most, figure.unit}, static_cast<int>(std::max<std::size_t>(places.size(), 1)));
  if (!whole) return std::nullopt;
  const std::string label = key == "volume" ? "" : in_words(key) + " ";
  return Fill{*whole, label + shown(*statement), !places.empty()};
}

// Whichever is stated, the job may need the most.
std::optional<Fill> largest_fill(const EntryRecord& entry) {
  std::optional<Fill> largest;
  for (const auto key : fill_fields) {
    auto fill = fill_of(entry, key);
    if (fill && (!largest || millilitres(fill->volume) > millilitres(largest->volume)))
      largest = std::move(fill);
  }
  return largest;
}

bool has_caution(const EntryRecord& entry, std::string_view name) {
  return std::ranges::find(entry.cautions, name, &CautionRecord::name) != entry.cautions.end();
}

// None for what is not bought for the job: a fastener that goes back, a tool, a figure.
std::optional<Need> need_of(const EntryRecord& entry) {
  const auto& kind = entry.kind;
  if (kind == "fluid") return largest_fill(entry) ? std::optional(Need::fluid) : std::nullopt;
  if (kind == "fastener") {
    if (says(entry.fields, "reuse", "no")) return Need::used_up;
    return says(entry.fields, "reuse", "inspect") ? std::optional(Need::if_worn) : std::nullopt;
  }
  const bool is_bought = kind == "seal" || kind == "o-ring" || kind == "bearing" || kind == "bushing" ||
                         kind == "spring" || kind == "part";
  if (!is_bought) return std::nullopt;
  const bool said_so = text_or_none(entry.fields, "description").find("fit new") != std::string::npos;
  if (has_caution(entry, "fit-new") || has_caution(entry, "split-pin") || said_so) return Need::used_up;
  return kind == "seal" || kind == "o-ring" ? Need::when_apart : Need::if_worn;
}

// What describes the thing at the counter, as the sheet has it.
std::string detail_of(const SheetRecord& sheet, const EntryRecord& entry) {
  const Answer answer = build_answer(sheet, entry);
  const auto* kind = kind_named(entry.kind);
  std::vector<std::string> parts;
  const bool is_measured = entry.kind == "bushing" || entry.kind == "spring";
  for (const auto& value : answer.figures) {
    const bool describes = value.key == "size" || value.key == "designation" || is_measured;
    if (describes) parts.push_back((is_measured ? value.label + " " : "") + value.lead);
  }
  for (const std::string_view key : {"thread", "length", "class", "grade", "viscosity", "material", "use"}) {
    const bool is_said =
        (key == "use" && entry.kind == "seal") || (key == "length" && entry.kind == "bushing");
    for (const auto& field : entry.fields) {
      if (field.key != key || is_said) continue;
      const Value value = say(field, kind ? field_of(*kind, key) : nullptr, {});
      const std::string words = value.conditions.empty() ? value.lead : value.lead + " " + value.conditions;
      parts.push_back(key == "class" ? "class " + words : key == "length" ? words + " long" : words);
    }
  }
  return joined(parts, " · ");
}

// What makes two wants one purchase: the number that is ordered, else everything that describes it.
std::string key_of(const Purchase& purchase) {
  if (!purchase.number.numbers.empty()) return "number " + purchase.number.order();
  const std::string name = purchase.need == Need::fluid && !purchase.detail.empty() ? "" : purchase.name;
  return purchase.kind + "|" + name + "|" + purchase.detail;
}

class KitBuilder {
 public:
  explicit KitBuilder(const KitRequest& request) : request_(request), picks_(request.crib, request.today) {}

  Result<Kit> build(const std::vector<SheetRecord>& sheets) {
    for (const auto& sheet : sheets) {
      add_head(sheet);
      for (std::size_t i = 0; i < sheet.entries.size();) {
        std::size_t end = i + 1;
        while (end < sheet.entries.size() && sheet.entries[end].address == sheet.entries[i].address) ++end;
        if (auto fault = add(sheet, std::span(sheet.entries).subspan(i, end - i))) return *fault;
        i = end;
      }
    }
    finish();
    return std::move(kit_);
  }

 private:
  void add_head(const SheetRecord& sheet) {
    KitSheet head{sheet.name, sheet.title, sheet.assembly, {}, sheet.invented, sheet.library};
    for (const auto& fit : sheet.fits) head.machines.push_back(machine_line(fit));
    kit_.sheets.push_back(std::move(head));
  }

  // All variants of one entry.
  std::optional<Failure> add(const SheetRecord& sheet, std::span<const EntryRecord> variants) {
    std::optional<Purchase> largest;
    for (const auto& entry : variants) {
      if (!entry.withdrawn.empty()) continue;
      picks_.add(entry);
      auto purchase = purchase_of(sheet, entry);
      if (!purchase) return purchase.failure();
      if (*purchase && (!largest || is_more(**purchase, *largest))) largest = **std::move(purchase);
    }
    if (!largest) return std::nullopt;
    if (variants.size() > 1)
      largest->notes.push_back(variants.front().name +
                               ": differs by year, frame number or market; name yours");
    merge(std::move(*largest));
    return std::nullopt;
  }

  static bool is_more(const Purchase& left, const Purchase& right) {
    if (left.volume && right.volume) return millilitres(*left.volume) > millilitres(*right.volume);
    return left.pieces > right.pieces;
  }

  Result<std::optional<Purchase>> purchase_of(const SheetRecord& sheet, const EntryRecord& entry) {
    const auto need = need_of(entry);
    if (!need) return std::optional<Purchase>();
    Purchase purchase;
    purchase.need = *need;
    purchase.kind = entry.kind;
    purchase.name = entry.name;
    purchase.detail = detail_of(sheet, entry);
    purchase.in_pairs = says(entry.fields, "sold-as", "pair");
    purchase.addresses = {entry.address};
    purchase.names = {entry.name};
    if (!entry.library.empty()) purchase.libraries = {entry.library};
    purchase.cautions = entry.cautions;  // its own: those of the sheet are of the work
    std::erase_if(purchase.cautions, [&](const CautionRecord& each) {
      return std::ranges::find(sheet.cautions, each) != sheet.cautions.end();
    });
    auto chain = number_chain(entry, request_.libraries);
    if (!chain) return chain.failure();
    purchase.number = std::move(chain).value();
    if (*need == Need::fluid) {
      const auto fill = largest_fill(entry);
      purchase.volume = fill->volume;
      purchase.fills = {fill->words};
      purchase.all_counted = fill->is_whole;
      purchase.bottles = sizes_of(entry);
    } else {
      const PlaceCount count = count_of(text_or_none(entry.fields, "count"));
      purchase.pieces = count.total();
      purchase.all_counted = count.is_known();
    }
    return std::optional(std::move(purchase));
  }

  static std::vector<BottleCount> sizes_of(const EntryRecord& entry) {
    std::vector<BottleCount> sizes;
    for (const auto& text : texts_of(entry.fields, "bottles")) {
      const auto statement = parse_statement(text, Dimension::volume, Input::sheet);
      if (statement && statement->figure().nominal)
        sizes.push_back({{*statement->figure().nominal, statement->figure().unit}, 0});
    }
    return sizes;
  }

  void merge(Purchase purchase) {
    const auto [found, is_new] = by_key_.try_emplace(key_of(purchase), kit_.buy.size());
    if (is_new) {
      kit_.buy.push_back(std::move(purchase));
      return;
    }
    Purchase& known = kit_.buy[found->second];
    known.need = std::min(known.need, purchase.need);
    known.pieces += purchase.pieces;
    known.all_counted = known.all_counted && purchase.all_counted;
    if (purchase.volume) add_volume(known, *purchase.volume);
    append_new(known.fills, purchase.fills, true);
    append_new(known.addresses, purchase.addresses, true);
    append_new(known.names, purchase.names, true);
    append_new(known.libraries, purchase.libraries, false);
    append_new(known.notes, purchase.notes, false);
    append_new(known.number.replaces, purchase.number.replaces, false);
    if (purchase.number.numbers.size() > known.number.numbers.size())
      known.number.numbers = purchase.number.numbers;
    for (const auto& caution : purchase.cautions)
      if (std::ranges::find(known.cautions, caution) == known.cautions.end())
        known.cautions.push_back(caution);
    for (const auto& size : purchase.bottles)
      if (std::ranges::find(known.bottles, size.size, &BottleCount::size) == known.bottles.end())
        known.bottles.push_back(size);
  }

  static void append_new(std::vector<std::string>& list, const std::vector<std::string>& more, bool repeats) {
    for (const auto& text : more)
      if (repeats || std::ranges::find(list, text) == list.end()) list.push_back(text);
  }

  static void add_volume(Purchase& known, const Quantity& volume) {
    const auto total = known.volume ? sum(*known.volume, volume) : std::nullopt;
    if (total)
      known.volume = *total;
    else
      known.notes.push_back("and " + shown(volume) + " more");
  }

  void finish() {
    for (auto& purchase : kit_.buy) {
      purchase.packs = purchase.in_pairs ? (purchase.pieces + 1) / 2 : purchase.pieces;
      if (purchase.in_pairs && purchase.pieces % 2 == 1)
        purchase.notes.push_back("one is left over from a pair");
      if (purchase.volume) fill_bottles(purchase);
    }
    std::ranges::stable_sort(kit_.buy, std::less<>(), &Purchase::need);
    kit_.pick = picks_.take();
  }

  static void fill_bottles(Purchase& purchase) {
    std::ranges::stable_sort(purchase.bottles, std::greater<>(),
                             [](const BottleCount& each) { return millilitres(each.size); });
    std::vector<double> sizes;
    for (const auto& each : purchase.bottles) sizes.push_back(millilitres(each.size));
    const auto bottles = bottles_for(millilitres(*purchase.volume), sizes);
    if (!bottles) {
      purchase.bottles.clear();
      return;
    }
    for (std::size_t i = 0; i < purchase.bottles.size(); ++i) purchase.bottles[i].count = bottles->counts[i];
    std::erase_if(purchase.bottles, [](const BottleCount& each) { return each.count == 0; });
    const auto left = reckoned_number(bottles->left_over_ml, 3);
    if (left) purchase.left_over = Quantity{*left, *unit_from("mL", Dimension::volume)};
  }

  const KitRequest& request_;
  Kit kit_;
  PickList picks_;
  std::map<std::string, std::size_t> by_key_;
};

}  // namespace

Result<Kit> build_kit(const std::vector<SheetRecord>& sheets, const KitRequest& request) {
  return KitBuilder(request).build(sheets);
}

}  // namespace sheaf
