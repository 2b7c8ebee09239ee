// SPDX-License-Identifier: GPL-2.0-or-later
// "fork springs measure 396, still usable?": what somebody measured is held against the limit; it is not what
// is sought.
#include "query/library/fold.h"
#include "query/search/draft.h"
#include "query/search/part_names.h"

namespace sheaf {
namespace {

// What is bought by its size.
bool is_sized(const PartAsked& part) {
  constexpr std::string_view sized[] = {"seal",   "bearing", "ring",  "thread", "bolt", "nut", "washer",
                                        "gasket", "socket",  "screw", "tyre",   "tire", "oil"};
  return std::ranges::any_of(part.words, [&](const std::string& word) {
    return std::ranges::find(sized, std::string_view(stem_of(word))) != std::end(sized);
  });
}

}  // namespace

void read_measured(Draft& draft) {
  auto& reading = draft.reading;
  if (reading.lengths.size() != 1 || counts_teeth(reading.lengths.front())) return;
  QuestionReading rest = reading;
  rest.lengths.clear();
  if (rest.has_designation()) return;
  if (std::ranges::none_of(reading.parts, names_a_part) || std::ranges::any_of(reading.parts, is_sized))
    return;
  const bool is_measured = draft.says_any_stem({"measur", "mike", "micd", "mic"});
  constexpr std::string_view judged[] = {"usable", "tired", "keep", "bin", "scrap", "throw", "knackered"};
  const auto is_judgement = [&](const std::string& word) {
    return std::ranges::find(judged, std::string_view(word)) != std::end(judged);
  };
  const bool is_fine = reading.lengths.front().typed.find_first_of(".,") != std::string::npos;  // "95.90 ok"
  const bool is_judged = draft.says_any(judged) || (is_fine && draft.says_any_stem({"ok", "okay"}));
  if ((!is_measured && !is_judged) || names_chain(reading.lengths.front())) return;
  std::erase_if(reading.parts, [&](const PartAsked& part) {
    return part.groups.empty() && std::ranges::all_of(part.words, is_judgement);
  });
  reading.doubts.push_back("“" + reading.lengths.front().typed +
                           "” was read as what was measured, to be held against the limit.");
  reading.lengths.clear();
  std::erase_if(reading.figures, [](const std::string& figure) {
    return figure == "size" || figure == "reuse" || figure == "count" || figure == "length";
  });
  add_new(reading.figures, "limit");
}

}  // namespace sheaf
