// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/set_aside.h"

#include <algorithm>

#include "query/library/fold.h"
#include "query/search/measures.h"
#include "query/search/part_names.h"

namespace sheaf {
namespace {

// Whether some field of the entry says these words, in this order: "below the rim", "at 5000 rpm".
bool states_words(const EntryRecord& entry, const std::vector<std::string>& words) {
  return std::ranges::any_of(entry.fields, [&](const FieldRecord& field) {
    const auto said = words_of(fold(field.text));
    return std::search(said.begin(), said.end(), words.begin(), words.end()) != said.end();
  });
}

std::string_view without_end(std::string_view assembly) {
  for (const std::string_view end : {"front-", "rear-"})
    if (assembly.starts_with(end)) return assembly.substr(end.size());
  return assembly;
}

class SetAside {
 public:
  SetAside(Findings& findings, Searcher& searcher) : findings_(findings), searcher_(searcher) {}

  bool run() {
    const QuestionReading& asked = findings_.reading;
    if (!asked.numbers.empty()) return answer_by_number();
    if (answer_without_description() || answer_by_designation()) return true;
    if (asked.machines.size() != 1 || asked.machine_is_guess) return false;
    if (answer_by_unit()) return true;
    QuestionReading rest = asked;
    std::vector<std::string> aside;
    std::erase_if(rest.parts, [&](const PartAsked& part) {
      const bool is_loose = !part.is_aspect && part.groups.empty() && !tells_another(part, asked);
      if (is_loose) aside.push_back(part.typed);
      return is_loose;
    });
    if (std::ranges::none_of(rest.parts, names_a_part) || exists_elsewhere()) return false;
    if (!aside.empty() && take(rest, called_so(rest), aside)) return true;
    if (answer_with_other_fastener() || answer_apart()) return true;
    const bool is_near = !searcher_.search(rest, {.sides_stated = false, .names_whole = false}).hits.empty();
    return !is_near && take_without_place(rest, aside);
  }

  // "class 8.8 tensile strength", "6205 bore": the row of a table, whatever its columns are called.
  bool answer_by_designation() {
    const auto& asked = findings_.reading;
    const bool is_thread_alone = !asked.threads.empty() && !asked.threads.front().length;
    const bool names_thread = is_thread_alone && std::ranges::none_of(asked.parts, names_a_part);  // "drill before an M5 tap"
    const bool is_designated = !asked.codes.empty() || !asked.bearings.empty() || !asked.sizes.empty() || names_thread;
    if (!asked.machines.empty() || !is_designated) return false;
    QuestionReading rest = asked;
    std::vector<std::string> aside;
    for (const auto& part : rest.parts) aside.push_back(part.typed);
    rest.parts.clear();
    rest.figures.clear();
    rest.sides.clear();
    auto hits = searcher_.search(rest, {}).hits;
    std::erase_if(hits, [](const Hit& hit) { return !hit.entry.fits.empty(); });
    return take(rest, std::move(hits), aside);
  }

 private:
  // A part number says all that there is to say: "HX359-WH what is it off".
  bool answer_by_number() {
    QuestionReading rest = findings_.reading;
    std::vector<std::string> aside;
    for (const auto& part : rest.parts) aside.push_back(part.typed);
    rest.parts.clear();
    rest.figures.clear();
    rest.sides.clear();
    return take(rest, searcher_.search(rest, {.figures_named = false, .sides_stated = false}).hits, aside);
  }

  // "tensioner plug, the little one with the spring": what stands behind only describes it. Where no machine is
  // named, it must be all of the name of one part.
  bool answer_without_description() {
    QuestionReading rest = findings_.reading;
    std::vector<std::string> aside;
    std::erase_if(rest.parts, [&](const PartAsked& part) {
      if (part.describes) aside.push_back(part.typed);
      return part.describes;
    });
    if (aside.empty() || !is_name_enough(rest) || describes_another()) return false;
    return take(rest, called_so(rest), aside);
  }

  // "the thing on the fork top that sticks out": what describes may be what is meant.
  bool describes_another() {
    return std::ranges::any_of(findings_.reading.parts, [&](const PartAsked& part) {
      if (!part.describes || !names_a_part(part)) return false;
      QuestionReading alone = findings_.reading;
      alone.parts = {part};
      return !called_so(alone).empty();
    });
  }

  static bool is_name_enough(const QuestionReading& rest) {
    if (rest.machine_is_guess || std::ranges::none_of(rest.parts, names_a_part)) return false;
    if (!rest.machines.empty()) return true;
    std::size_t words = 0;
    for (const auto& part : rest.parts) words += part.words.size();
    return words > 1 && rest.unread.empty();
  }

  // "spring scale on the bar end, how many newtons": the one thing so called that is stated in such a unit.
  bool answer_by_unit() {
    const auto& units = findings_.reading.units;
    const auto tells = [](const Unit* unit) { return unit->dimension != Dimension::length && unit->dimension != Dimension::torque; };
    if (std::ranges::none_of(units, tells)) return false;
    QuestionReading rest = findings_.reading;
    std::vector<std::string> aside;
    std::erase_if(rest.parts, [&](const PartAsked& part) {
      if (!names_a_part(part)) aside.push_back(part.typed);
      return !names_a_part(part);
    });
    if (aside.empty() || rest.parts.empty()) return false;
    auto hits = searcher_.search(rest, {.figures = false, .sides_stated = false}).hits;
    std::erase_if(hits, [&](const Hit& hit) {
      return !hit.by_name || std::ranges::none_of(units, [&](const Unit* unit) { return tells(unit) && states(hit.entry, unit->dimension); });
    });
    return hits.size() == 1 && take(rest, std::move(hits), aside);
  }

  // "fork oil torque": what is called so is there, and states none.
  bool is_there_without_figure() {
    const auto hits = searcher_.search(findings_.reading, {.figures = false, .sides_stated = false}).hits;
    return !findings_.reading.figures.empty() && !hits.empty() && hits.front().by_name && hits.front().cost <= called_just_so;
  }

  // "clip of the fork seal" of what is called "oil seal snap ring": each word by itself, if one entry holds them
  // all and no other comes near it.
  bool answer_apart() {
    constexpr double called_much_so = 1.6, far_behind = 0.5;
    if (is_there_without_figure()) return false;
    auto hits = searcher_.search(findings_.reading, {.figures_named = false, .figures_all = false, .sides_stated = false, .names_whole = false}).hits;
    std::erase_if(hits, [](const Hit& hit) { return !hit.by_name; });
    if (hits.empty() || hits.front().cost > called_much_so) return false;
    if (hits.size() > 1 && hits[1].cost < hits.front().cost + far_behind) return false;
    hits.resize(1);
    return take(findings_.reading, std::move(hits), {});
  }

  // "cylinder base nuts", which are bolts here.
  bool answer_with_other_fastener() {
    QuestionReading rest = findings_.reading;
    const auto is = [](const PartAsked& part, std::string_view group) {
      return part.words.size() == 1 && std::ranges::find(part.groups, group) != part.groups.end();
    };
    const auto found = std::ranges::find_if(rest.parts, [&](const PartAsked& part) { return is(part, "nut") || is(part, "bolt"); });
    if (found == rest.parts.end() || std::ranges::none_of(rest.parts, names_a_part)) return false;
    const std::string other = is(*found, "nut") ? "bolt" : "nut";
    const std::string typed = found->typed;
    found->words = {other};
    found->groups = {other};
    found->groups_of_words = {{other}};
    auto hits = called_so(rest);
    std::erase_if(hits, [](const Hit& hit) { return hit.entry.kind != "fastener"; });
    if (!take(rest, std::move(hits), {})) return false;
    findings_.reading.doubts.push_back("“" + typed + "” is read as “" + other + "”.");
    return true;
  }

  // Another machine has what is called so: this one has not.
  bool exists_elsewhere() {
    auto hits =
        searcher_.search(findings_.reading, {.machine = false, .year = false, .sides_stated = false}).hits;
    return std::ranges::any_of(hits, [](const Hit& hit) { return hit.by_name && !is_another_thing(hit); });
  }

  // The hits that are called just so; none if they are of several places.
  std::vector<Hit> called_so(const QuestionReading& rest) {
    auto hits = searcher_.search(rest, {.figures_named = false, .figures_all = false, .sides_stated = false}).hits;
    hits = called_just(std::move(hits), rest);
    return rest.numbers.empty() && !are_of_one_place(hits) ? std::vector<Hit>{} : hits;
  }

  bool take(const QuestionReading& rest, std::vector<Hit> hits, const std::vector<std::string>& aside) {
    if (hits.empty()) return false;
    const auto is_aside = [&](const Correction& each) {
      return std::ranges::find(aside, each.read) != aside.end();
    };
    std::erase_if(findings_.reading.corrections, is_aside);
    findings_.reading.left_aside.insert(findings_.reading.left_aside.end(), aside.begin(), aside.end());
    findings_.reading.parts = rest.parts;
    findings_.total = hits.size();
    findings_.total_is_exact = true;
    findings_.answers = std::move(hits);
    findings_.near.clear();
    findings_.why_near = Near::none;
    return true;
  }

  // "heat shield bolts silencer": without it something is called just so, and it says no more than where that
  // is: its figure says so too, or it names other things on the same sheet. Of several such, that names most
  // of them.
  bool take_without_place(const QuestionReading& asked, const std::vector<std::string>& aside) {
    std::size_t most = 0, place = 0;
    std::vector<Hit> found;
    for (std::size_t i = 0; i < asked.parts.size() && asked.parts.size() > 1; ++i) {
      const PartAsked& part = asked.parts[i];
      if (std::ranges::any_of(part.groups, says_little) || std::ranges::any_of(part.groups, says_what_of_it))
        continue;
      QuestionReading rest = without(asked, i);
      if (std::ranges::none_of(rest.parts, names_a_part)) continue;
      auto hits = called_so(rest);
      if (hits.empty()) continue;
      const std::size_t number =
          states_words(hits.front().entry, part.words) ? 1 : named_on(hits.front().sheet.name, part);
      if (number <= most) continue;
      most = number;
      place = i;
      found = std::move(hits);
    }
    if (most == 0) return false;
    findings_.reading.doubts.push_back("“" + asked.parts[place].typed + "” is taken for where it is.");
    return take(without(asked, place), std::move(found), aside);
  }

  static QuestionReading without(QuestionReading reading, std::size_t part) {
    reading.parts.erase(reading.parts.begin() + static_cast<std::ptrdiff_t>(part));
    return reading;
  }

  // How many things on that sheet the part's name is a name of.
  std::size_t named_on(const std::string& sheet, const PartAsked& part) {
    QuestionReading named = findings_.reading;
    named.parts = {part};
    named.figures.clear();
    named.sides.clear();
    const auto hits = searcher_.search(named, {.sides_stated = false}).hits;
    return static_cast<std::size_t>(
        std::ranges::count_if(hits, [&](const Hit& hit) { return hit.by_name && hit.sheet.name == sheet; }));
  }

  Findings& findings_;
  Searcher& searcher_;
};

}  // namespace

bool are_of_one_place(const std::vector<Hit>& hits) {
  return std::ranges::all_of(hits, [&](const Hit& hit) {
    return without_end(hit.sheet.assembly) == without_end(hits.front().sheet.assembly);
  });
}

std::vector<Hit> called_just(std::vector<Hit> hits, const QuestionReading& asked) {
  if (!asked.figures.empty()) std::erase_if(hits, [](const Hit& hit) { return hit.entry.kind == "step"; });
  if (hits.empty() || !hits.front().by_name || hits.front().cost > called_just_so) return {};
  const double limit = hits.front().cost + as_good;
  std::erase_if(hits, [&](const Hit& hit) { return hit.cost > limit; });
  return hits;
}

bool answer_by_designation(Findings& findings, Searcher& searcher) {
  return SetAside(findings, searcher).answer_by_designation();
}

bool answer_without_loose_words(Findings& findings, Searcher& searcher) {
  return SetAside(findings, searcher).run();
}

}  // namespace sheaf
