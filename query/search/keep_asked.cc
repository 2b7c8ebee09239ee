// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/keep_asked.h"

#include <algorithm>
#include <functional>

#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/search/digits.h"
#include "query/search/measures.h"
#include "query/search/meets.h"

namespace sheaf {
namespace {

// Only machines of which some hit states frames of the series asked, if any does.
void keep_machines_of_frame(std::vector<Hit>& hits, const QuestionReading& reading) {
  if (reading.frame.empty() || !reading.machines.empty()) return;
  std::set<std::string> machines;
  for (const auto& hit : hits)
    for (const auto& fit : hit.entry->fits)
      if (states_frame(fit, reading)) machines.insert(machine_body(fit.make, fit.model));
  if (machines.empty()) return;
  std::erase_if(hits, [&](const Hit& hit) {
    return std::ranges::none_of(hit.entry->fits, [&](const FitRecord& fit) {
      return machines.contains(machine_body(fit.make, fit.model));
    });
  });
}

// "head bolts 60 + 60 deg": those whose torque is reached so, if any is.
void keep_stages(std::vector<Hit>& hits, const std::vector<std::string>& stages) {
  const auto has_all = [&](const Hit& hit) { return has_stages(*hit.entry, stages); };
  if (stages.empty() || std::ranges::none_of(hits, has_all)) return;
  std::erase_if(hits, std::not_fn(has_all));
}

// "head bolts 1-4-2-3": those that are tightened in that order, if any are.
void keep_pattern(std::vector<Hit>& hits, const std::string& pattern) {
  const auto has_it = [&](const Hit& hit) { return has_pattern(*hit.entry, pattern); };
  if (pattern.empty() || std::ranges::none_of(hits, has_it)) return;
  std::erase_if(hits, std::not_fn(has_it));
}

// "chain stretch over 15 links": what is called after another number is another's.
void keep_numbered(std::vector<Hit>& hits, const std::vector<PartAsked>& parts) {
  for (const auto& part : parts)
    for (const auto& word : part.words) {
      if (!is_digits(word)) continue;
      const auto is_called_so = [&](const Hit& hit) { return is_called(*hit.entry, word); };
      if (std::ranges::any_of(hits, is_called_so))
        std::erase_if(hits, std::not_fn(is_called_so));
      else if (part.words.size() > 1)
        std::erase_if(hits, [](const Hit& hit) { return is_numbered(*hit.entry); });
    }
}

// "the bolt is in, what does the nut get": no bolt, where some nut is called so.
void keep_fastener_asked(std::vector<Hit>& hits, const QuestionReading& reading) {
  std::string asked, beside;
  for (const auto& part : reading.parts)
    if (const std::string said = fastener_named(part.words); !said.empty())
      (part.is_context ? beside : asked) = said;
  const auto is_so = [&](const Hit& hit) { return stems_of_name(*hit.entry).contains(asked); };
  if (asked.empty() || beside.empty() || asked == beside || std::ranges::none_of(hits, is_so)) return;
  std::erase_if(hits, std::not_fn(is_so));
}

void keep_general_fastener(std::vector<Hit>& hits, const QuestionReading& reading) {
  std::erase_if(hits, [&](const Hit& hit) { return is_other_general_fastener(*hit.entry, reading); });
}

// "LH nut": those with such a thread, if any has.
void keep_hand(std::vector<Hit>& hits, const std::string& hand) {
  const auto has_it = [&](const Hit& hit) { return has_hand(*hit.entry, hand); };
  if (hand != "left" || std::ranges::none_of(hits, has_it)) return;
  std::erase_if(hits, std::not_fn(has_it));
}

}  // namespace

bool is_other_general_fastener(const EntryRecord& entry, const QuestionReading& reading) {
  std::string asked;
  for (const auto& part : reading.parts)
    if (const std::string said = fastener_named(part.words); !said.empty()) asked = said;
  if (asked.empty() || std::ranges::find(reading.parts, "general", &PartAsked::typed) == reading.parts.end())
    return false;
  const auto stems = stems_of_name(entry);
  const bool is_bolt = asked != "nut" && (stems.contains("bolt") || stems.contains("screw"));
  return !is_bolt && !stems.contains(asked);
}

std::string fastener_named(const std::vector<std::string>& words) {
  constexpr std::string_view fasteners[] = {"nut", "bolt", "screw", "stud", "plug"};
  const std::string last = words.empty() ? std::string() : stem_of(words.back());
  return std::ranges::find(fasteners, std::string_view(last)) == std::end(fasteners) ? std::string() : last;
}

std::set<std::string> stems_of_name(const EntryRecord& entry) {
  std::set<std::string> stems;
  for (const auto& word : words_of(fold(entry.name))) stems.insert(stem_of(word));
  return stems;
}

// "front axle nut", where no machine was named: of one whose axle has no nut, it is none beside the others'.
bool is_other_fastener(const EntryRecord& entry, const EntryRecord& best, const QuestionReading& reading) {
  const std::string asked =
      reading.parts.size() == 1 ? fastener_named(reading.parts.front().words) : std::string();
  if (asked.empty() || !stems_of_name(best).contains(asked)) return false;
  const auto is_called_so = [&](const FieldRecord& field) {
    return field.key == "also" && fastener_named(words_of(fold(field.text))) == asked;
  };
  return !stems_of_name(entry).contains(asked) && std::ranges::none_of(entry.fields, is_called_so);
}

std::size_t keep_asked(std::vector<Hit>& hits, const QuestionReading& reading) {
  const std::size_t found = hits.size();
  keep_machines_of_frame(hits, reading);
  keep_stages(hits, reading.stages);
  keep_pattern(hits, reading.pattern);
  keep_hand(hits, reading.hand);
  keep_numbered(hits, reading.parts);
  keep_fastener_asked(hits, reading);
  keep_general_fastener(hits, reading);
  return found - hits.size();
}

}  // namespace sheaf
