// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_row.h"

#include <cmath>

#include "query/answer/count.h"
#include "query/answer/fields.h"
#include "query/answer/value.h"
#include "query/quantity/unit.h"
#include "query/trade/band.h"

namespace sheaf {
namespace {

constexpr double mm_per_metre = 1000;

// A length, by its middle where a tolerance stands with it.
std::optional<double> length_mm(const EntryRecord& entry, std::string_view key) {
  const auto statement = statement_of(entry.fields, key, Dimension::length);
  if (!statement) return std::nullopt;
  Figure figure = statement->figure();
  if (figure.nominal) figure = Figure{Form::nominal, figure.nominal, {}, {}, {}, figure.unit};
  const BaseBand band = base_band(figure);
  return (band.least + band.most) / 2 * mm_per_metre;
}

std::optional<SizeRow> row_from_lengths(const EntryRecord& entry) {
  const bool is_bearing = entry.kind == "bearing-size";
  const auto inside = length_mm(entry, is_bearing ? "bore" : "inside");
  if (const auto section = length_mm(entry, "section"); inside && section)
    return SizeRow{*inside, *inside + 2 * *section, *section};
  const auto outside = length_mm(entry, "outside");
  // A taper bearing is as wide as cup and cone together; its inner ring alone is not its width.
  const char* const height_keys[] = {is_bearing ? "assembled" : "length", is_bearing ? "width" : "length"};
  auto height = length_mm(entry, height_keys[0]);
  if (!height) height = length_mm(entry, height_keys[1]);
  if (!inside || !outside || !height) return std::nullopt;
  return SizeRow{*inside, *outside, *height};
}

}  // namespace

std::optional<SizeRow> row_from_size(const Size& size, RingShape shape) {
  const auto at = [&](int index) { return dimension_mm(size, index); };
  if (shape == RingShape::o_ring)
    return size.count == 2 ? std::optional(SizeRow{at(0), at(0) + 2 * at(1), at(1)}) : std::nullopt;
  if (size.count != 3) return std::nullopt;
  SizeRow row{at(0), at(1), at(2)};
  if (size.step) {
    Size stepped = size;
    stepped.value[2] = *size.step;
    row.second_height = dimension_mm(stepped, 2);
  }
  return row;
}

RingShape shape_of(const EntryRecord& entry) {
  if (entry.kind == "o-ring" || entry.kind == "o-ring-size") return RingShape::o_ring;
  if (entry.kind == "bearing" || entry.kind == "bearing-size") return RingShape::bearing;
  return entry.kind == "bushing" ? RingShape::bushing : RingShape::lip_seal;
}

std::optional<SizeRow> size_row(const EntryRecord& entry) {
  const std::string* text = text_of(entry.fields, "size");
  if (!text) return row_from_lengths(entry);
  const auto size = parse_size(*text, Input::sheet);
  return size ? row_from_size(*size, shape_of(entry)) : std::nullopt;
}

std::optional<SealUse> use_of(const EntryRecord& entry) {
  const std::string use = text_or_none(entry.fields, "use");
  if (entry.kind == "fork-seal-size" || use.starts_with("fork")) return SealUse::fork;
  if (entry.kind == "shaft-seal-size" || use == "shaft") return SealUse::shaft;
  if (entry.kind == "seal" && !use.empty()) return SealUse::other;
  return std::nullopt;
}

std::string mm_text(double mm) { return brief(std::round(mm * 1000) / 1000); }

std::string shown_size(const SizeRow& row, RingShape shape) {
  if (shape == RingShape::o_ring) return mm_text(row.inside) + " × " + mm_text(row.height);
  std::string text = mm_text(row.inside) + " × " + mm_text(row.outside) + " × " + mm_text(row.height);
  if (row.second_height) text += "/" + mm_text(*row.second_height);
  return text;
}

MatchedPart part_from(EntryRecord entry) {
  MatchedPart part;
  part.shape = shape_of(entry);
  part.dimensions = size_row(entry);
  if (part.dimensions) part.size = shown_size(*part.dimensions, part.shape);
  part.count = count_words(text_or_none(entry.fields, "count"));
  part.entry = std::move(entry);
  return part;
}

std::optional<Failure> add_numbers(std::vector<MatchedPart>& parts, const std::vector<Library*>& libraries) {
  for (auto& part : parts) {
    auto chain = number_chain(part.entry, libraries);
    if (!chain) return chain.failure();
    part.number = std::move(chain).value();
  }
  return std::nullopt;
}

}  // namespace sheaf
