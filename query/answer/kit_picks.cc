// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/kit_picks.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "query/answer/fields.h"
#include "query/answer/text.h"
#include "query/answer/tool_words.h"
#include "query/answer/wrench.h"

namespace sheaf {
namespace {

bool is_turned_on(const Statement& torque) {
  return std::ranges::any_of(torque.stages, [](const Stage& stage) {
    return stage.act == Act::turn_further && stage.figure.unit &&
           stage.figure.unit->dimension == Dimension::angle;
  });
}

}  // namespace

void PickList::put(Tool tool, std::string name, std::string detail, const std::string& use, double size) {
  const auto found = std::ranges::find_if(all_, [&](const Sorted& each) {
    return each.pick.tool == tool && each.pick.name == name && each.pick.detail == detail;
  });
  auto& uses = found == all_.end()
                   ? all_.emplace_back(Sorted{{tool, std::move(name), std::move(detail), {}}, size}).pick.uses
                   : found->pick.uses;
  if (!use.empty() && std::ranges::find(uses, use) == uses.end()) uses.push_back(use);
}

void PickList::add(const EntryRecord& entry) {
  if (entry.kind == "fastener") add_fastener(entry);
  if (entry.kind == "tool") {
    const bool used_up = says(entry.fields, "consumable", "yes");
    put(used_up ? Tool::material : Tool::special, entry.name, text_or_none(entry.fields, "description"), "");
  }
  const bool has_volume = text_of(entry.fields, "volume") || text_of(entry.fields, "dry-fill") ||
                          text_of(entry.fields, "after-drain") || text_of(entry.fields, "with-filter");
  if (entry.kind == "fluid" && !has_volume)
    put(Tool::material, entry.name, text_or_none(entry.fields, "grade"), "");
}

void PickList::add_fastener(const EntryRecord& entry) {
  add_drive(entry);
  for (const auto& state : texts_of(entry.fields, "state"))
    if (const auto stuff = stuff_for(state); !stuff.empty())
      put(Tool::material, std::string(stuff), "", entry.name);
  if (const auto* strength = text_of(entry.fields, "threadlocker"))
    put(Tool::material, choice_words("threadlocker", *strength), "", entry.name);
  const auto torque = statement_of(entry.fields, "torque", Dimension::torque);
  if (torque && is_turned_on(*torque))
    put(Tool::special, "angle gauge", "or a mark on each head", entry.name);
  if (crib_) add_wrenches(entry);
}

void PickList::add_drive(const EntryRecord& entry) {
  const auto drive = parse_drive(text_or_none(entry.fields, "drive"), Input::sheet);
  if (!drive) return;
  put(Tool::socket, tool_for(*drive), "", entry.name, across_flats_mm(*drive).value_or(0));
  if (!crib_) return;
  for (const auto& adapter : crib_->adapters) {
    const auto fits = parse_drive(adapter.drive, Input::sheet);
    const bool is_hook = drive->shape == Drive::Shape::castellated;  // no socket fits over it
    if (fits && is_hook && drive_key(*fits) == drive_key(*drive))
      put(Tool::wrench, adapter.name,
          shown(adapter.offset) + " long: see sheaf wrench --adapter " + entry_part(adapter.address),
          entry.name);
  }
}

void PickList::add_wrenches(const EntryRecord& entry) {
  const auto answer = choose_wrench(entry, {*crib_, today_});
  if (!answer || !*answer) return;
  for (const auto& stage : (*answer)->stages)
    if (stage.can_be_set())
      put(Tool::wrench, stage.choices.front().wrench.name, doubts_of(stage.choices.front()), entry.name);
}

std::vector<Pick> PickList::take() {
  std::ranges::stable_sort(all_, [](const Sorted& left, const Sorted& right) {
    return std::tuple(left.pick.tool, left.size) < std::tuple(right.pick.tool, right.size);
  });
  std::vector<Pick> picks;
  for (auto& each : all_) picks.push_back(std::move(each.pick));
  all_.clear();
  return picks;
}

std::string_view in_words(Tool tool) {
  constexpr std::array<std::string_view, 4> words = {"sockets and bits", "wrenches", "tools", "materials"};
  return words[static_cast<std::size_t>(tool)];
}

}  // namespace sheaf
