// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/evidence.h"

#include <algorithm>
#include <limits>
#include <numeric>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/digits.h"
#include "query/search/draft.h"
#include "query/search/figures.h"
#include "query/search/measures.h"
#include "query/search/part_names.h"
#include "query/search/short_form.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

constexpr double share_of_context = 0.4;  // of a word that is said beside what is asked

template <typename Counted>
std::size_t at(Counted counted) {
  return static_cast<std::size_t>(counted);
}

// "chain slack, what gap": the one measure that it states, if that is of such a figure.
bool is_itself(const Hit& hit, const std::string& figure) {
  const auto dimension = dimension_of_figure(figure);
  return may_be_its_value(figure) && is_measure(hit.entry->kind) &&
         (!dimension || states(*hit.entry, *dimension));
}

// "size" and the like are asked of what has none, and "how much" of anything.
bool is_said_loosely(const std::string& figure) {
  constexpr std::array<std::string_view, 16> loose = {
      "size",  "count", "length", "height",   "change-every", "setting", "bore",    "stage",
      "state", "order", "number", "quantity", "rate",         "step",    "pattern", "reuse"};
  return std::ranges::find(loose, figure) != loose.end();
}

void leave_designations_aside(QuestionReading& reading) {
  auto& aside = reading.left_aside;
  for (const auto& thread : reading.threads) aside.push_back(to_text(thread));
  for (const auto& drive : reading.drives) aside.push_back(to_text(drive));
  for (const auto& size : reading.sizes) aside.push_back(to_text(size));
  for (const auto& bearing : reading.bearings) aside.push_back(to_text(bearing));
  for (const auto* list : {&reading.codes, &reading.labels})
    aside.insert(aside.end(), list->begin(), list->end());
  reading.threads.clear();
  reading.drives.clear();
  reading.sizes.clear();
  reading.bearings.clear();
  reading.codes.clear();
  reading.labels.clear();
}

std::size_t kind_of(const std::string& kind) {
  constexpr std::array<std::string_view, 3> told = {"step", "tool", "part"};
  return static_cast<std::size_t>(std::ranges::find(told, kind) - told.begin());
}

Said said_of(const PartAsked& part, const std::string& word, Lexicon& lexicon) {
  if (part.is_aspect || part.is_context) return Said::around;
  if (names_a_part(part)) return Said::part;
  if (!part.groups.empty()) return Said::kind;
  if (is_ordinary(word)) return Said::around;
  return lexicon.names_with(word) ? Said::free : Said::unknown;  // that stands in notes alone
}

// Whether an unknown word may be short for one of a name.
bool may_be_short(const PartAsked* part, Said said) { return !part || said == Said::unknown; }

}  // namespace

bool has_designation_but_length(const QuestionReading& reading) {
  return !reading.threads.empty() || !reading.drives.empty() || !reading.sizes.empty() ||
         !reading.bearings.empty() || !reading.codes.empty() || !reading.labels.empty();
}

bool Witness::Terms::hold(const Asked& asked) const {
  return stems.contains(asked.stem) ||
         std::ranges::any_of(asked.groups, [&](const std::string& group) { return groups.contains(group); });
}

void Witness::Terms::add(const std::string& text, Lexicon& lexicon) {
  const NameRead& read = lexicon.read_name(text);
  stems.insert(read.stems.begin(), read.stems.end());
  for (const auto& match : read.groups) groups.insert(match.group);
}

Witness::Witness(const QuestionReading& reading, Lexicon& lexicon, const std::vector<Hit>& entries,
                 std::set<std::pair<std::size_t, EntryId>> having)
    : reading_(reading),
      lexicon_(lexicon),
      having_(std::move(having)),
      first_phrase_(std::numeric_limits<std::size_t>::max()) {
  for (const auto& part : reading.parts) {
    for (std::size_t i = 0; i < part.words.size(); ++i)
      add_word(said_of(part, part.words[i], lexicon), part.words[i], i, &part);
    if (!part.groups.empty() && !part.is_aspect && !part.is_context)
      first_phrase_ = std::min(first_phrase_, part.phrase);
  }
  for (const auto& word : reading.unread)
    add_word(is_ordinary(word) ? Said::around : Said::unknown, word, 0, nullptr);
  for (const auto& asked : asked_) {
    stems_.insert({asked.stem, asked.word});
    groups_.insert(asked.groups.begin(), asked.groups.end());
  }
  for (const auto& figure : reading.figures) groups_.insert("kind-" + figure);
  for (const auto& side : reading.sides) groups_.insert("side-" + side);
  for (const auto& hit : entries) {
    Terms& names = names_of_sheets_[hit.sheet->name];
    names.add(hit.entry->name, lexicon);
    for (const auto& field : hit.entry->fields)
      if (field.key == "also") names.add(field.text, lexicon);
  }
}

void Witness::add_word(Said said, const std::string& word, std::size_t place, const PartAsked* part) {
  Asked asked{said, word, stem_of(word), {}, part};
  if (part) {
    asked.groups = part->groups;
    if (place < part->groups_of_words.size())
      asked.groups.insert(asked.groups.end(), part->groups_of_words[place].begin(),
                          part->groups_of_words[place].end());
  }
  asked_.push_back(std::move(asked));
}

const Witness::Terms& Witness::place_of(const SheetRecord& sheet) {
  const auto [known, is_new] = places_.try_emplace(sheet.title + '/' + sheet.assembly);
  if (is_new) known->second.add(sheet.assembly, lexicon_);
  if (is_new) known->second.add(sheet.title, lexicon_);
  return known->second;
}

Witness::About Witness::about(const Hit& hit) {
  About about;
  about.names.add(hit.entry->name, lexicon_);
  about.names.groups.insert(hit.entry->kind);
  for (const auto& field : hit.entry->fields) {
    if (field.key == "also" || field.key == "load") about.names.add(field.text, lexicon_);
    for (const auto& word : words_of(fold(field.text))) about.told.stems.insert(stem_of(word));
  }
  for (const auto& caution : hit.entry->cautions) {
    const auto words = words_of(caution.name);
    for (const auto& word : words) about.told.stems.insert(stem_of(word));
    for (const auto& match : lexicon_.groups_in(words))
      if (match.count == words.size()) about.names.groups.insert(match.group);  // "split-pin": it has one
  }
  return about;
}

Held Witness::where(const Asked& asked, const About& about, const Hit& hit) {
  if (about.names.hold(asked)) return Held::name;
  if (may_be_short(asked.part, asked.said) && !short_for(asked.word, words_of(fold(hit.entry->name))).empty())
    return Held::brief;
  if (place_of(*hit.sheet).hold(asked)) return Held::place;
  if (about.told.hold(asked) || names_of_sheets_.at(hit.sheet->name).hold(asked)) return Held::told;
  return Held::nowhere;
}

void Witness::add_words(const Hit& hit, const About& about, Evidence& into) {
  for (const auto& asked : asked_) {
    const Held held = where(asked, about, hit);
    into.words[at(asked.said)][at(held)] += asked.part && asked.part->is_context ? share_of_context : 1;
    if (held == Held::name || held == Held::brief || !asked.part) continue;
    const std::size_t is_nowhere = held == Held::nowhere ? 1 : 0;
    if (asked.part->says_whose)
      into.whose[is_nowhere] += 1;
    else if (!asked.part->describes && asked.part->phrase == first_phrase_)
      into.first[is_nowhere] += 1;
  }
}

void Witness::add_unasked(const Hit& hit, Evidence& into) {
  const NameRead& name = lexicon_.read_name(hit.entry->name);
  std::vector<bool> is_asked(name.words.size());
  for (std::size_t i = 0; i < name.words.size(); ++i)
    is_asked[i] = stems_.contains(name.stems[i]) || stems_.contains(name.words[i]);
  for (const auto& match : name.groups)
    if (groups_.contains(match.group))
      std::fill_n(is_asked.begin() + static_cast<std::ptrdiff_t>(match.first), match.count, true);
  for (const auto& asked : asked_)
    if (may_be_short(asked.part, asked.said))
      for (const std::size_t i : short_for(asked.word, name.words)) is_asked[i] = true;
  for (std::size_t i = 0; i < name.words.size(); ++i) {
    if (is_asked[i]) continue;
    const std::string& word = name.words[i];
    const auto names = [&](auto is_so) {
      return std::ranges::any_of(name.groups, [&](const GroupMatch& match) {
        return match.count == 1 && match.first == i && is_so(match.group);
      });
    };
    const auto is_of_figure = [&](const GroupMatch& match) {
      return match.first <= i && i < match.first + match.count &&
             (match.group.starts_with("kind-") || says_what_of_it(match.group));
    };
    Unasked unasked = Unasked::other;
    if (has_digit(word) || word == "mm" || word.size() < 3 || is_noise(word))
      unasked = Unasked::measure;
    else if (names([](const std::string& group) { return group.starts_with("side-"); }))
      unasked = Unasked::side;
    else if (is_measure(hit.entry->kind) &&
             (is_aspect(word) || std::ranges::any_of(name.groups, is_of_figure)))
      unasked = Unasked::figure;
    else if (i >= name.thing)
      unasked = Unasked::place;
    else if (names([](const std::string& group) { return group == "bolt" || group == "nut"; }))
      unasked = Unasked::fastener;
    else if (place_of(*hit.sheet).stems.contains(name.stems[i]))
      unasked = Unasked::context;
    else if (names([](const std::string& group) { return group == "oil"; }))
      unasked = Unasked::fluid;
    into.unasked[at(unasked)] += 1;
  }
}

bool Witness::states_figure(const Hit& hit, const About& about, const std::string& figure) const {
  const auto has_field = [&](std::string_view key) {
    return std::ranges::any_of(hit.entry->fields, [&](const FieldRecord& field) {
      return field.key == key || field.key.starts_with(std::string(key) + ".");
    });
  };
  return std::ranges::any_of(fields_of_figure(figure), has_field) || hit.entry->kind == figure ||
         about.names.groups.contains("kind-" + figure) || is_itself(hit, figure);
}

void Witness::add_figures(const Hit& hit, const About& about, Evidence& into) {
  for (const auto& figure : reading_.figures) {
    const bool is_stated = states_figure(hit, about, figure);
    into.figures[is_stated && is_itself(hit, figure) ? 1
                 : is_stated                         ? 0
                 : is_said_loosely(figure)           ? 2
                                                     : 3] += 1;
  }
}

// 1: it is of that side; -1: of the other; 0: nothing says.
int Witness::side(const Hit& hit, const std::string& asked) {
  const auto opposite = opposite_of(asked);
  for (const auto& field : hit.entry->fields)
    if (field.key == "side" && (field.text == asked || field.text == opposite))
      return field.text == asked ? 1 : -1;
  for (const auto& match : lexicon_.groups_in(words_of(fold(hit.entry->name))))
    if (const auto named = side_of_group(match.group);
        !named.empty() && (named == asked || named == opposite))
      return named == asked ? 1 : -1;
  const auto end = end_of_assembly(hit.sheet->assembly);
  return end.empty() ? 0 : end == asked ? 1 : end == opposite ? -1 : 0;
}

bool Witness::is_opposite(const Hit& hit) {
  return std::ranges::any_of(reading_.sides, [&](const std::string& asked) { return side(hit, asked) < 0; });
}

Evidence Witness::of(const Hit& hit) {
  Evidence evidence;
  const About known = about(hit);
  add_words(hit, known, evidence);
  add_unasked(hit, evidence);
  add_figures(hit, known, evidence);
  for (const auto& asked : reading_.sides) evidence.sides[side(hit, asked) > 0 ? 0 : 1] += 1;
  const auto said = [&](const auto& each) {
    const std::string number =
        each.typed.substr(0, each.typed.find_first_not_of("0123456789.,"));  // of "5000rpm"
    return (!number.empty() && known.told.stems.contains(number)) ||
           std::ranges::all_of(words_of(fold(each.typed)), [&](const std::string& word) {
             return known.told.stems.contains(stem_of(word));
           });
  };
  if (!reading_.lengths.empty() || !reading_.quantities.empty()) {
    const Meeting meeting = meet_measures(*hit.entry, reading_);
    const bool is_said =
        std::ranges::all_of(reading_.lengths, said) && std::ranges::all_of(reading_.quantities, said);
    evidence.measures[meeting.meets ? 0 : is_said ? 2 : meeting.is_near ? 1 : 3] = 1;
  }
  const bool has_it = having_.contains({hit.library, hit.id});
  const auto speaks_of = [&](const Bearing& bearing) {
    return known.told.stems.contains(stem_of(fold(bearing.basic)));
  };
  const bool is_spoken_of = !reading_.bearings.empty() &&
                            std::ranges::all_of(reading_.bearings, speaks_of);  // "a 32006 is NOT the same"
  const auto& part_words = evidence.words[at(Said::part)];
  const bool names_all = !reading_.machines.empty() && part_words[at(Held::name)] > 0 &&
                         std::accumulate(part_words.begin() + 1, part_words.end(), 0.0) == 0;
  const bool is_doubted = is_spoken_of || names_all;  // "clutch fluid, dot 4 ok?"
  if (has_designation_but_length(reading_) && (has_it || !is_doubted))
    evidence.designations[has_it ? 0 : 1] = 1;
  if (!reading_.units.empty()) {
    const bool is_stated = std::ranges::any_of(
        reading_.units, [&](const Unit* unit) { return states(*hit.entry, unit->dimension); });
    evidence.units[is_stated ? 0 : 1] = 1;
  }
  auto& kind = reading_.figures.empty() ? evidence.kind : evidence.kind_of_figure;
  kind[kind_of(hit.entry->kind)] = 1;
  evidence.row[0] = hit.entry->fits.empty() ? 1 : 0;
  return evidence;
}

Doubt Witness::doubt() const {
  Doubt doubt;
  doubt.always[0] = 1;
  doubt.open[0] = reading_.machines.size() != 1 ? 1 : 0;
  const auto any = [](const auto& list) { return list.empty() ? 0.0 : 1.0; };
  doubt.designated[0] = any(reading_.threads) + any(reading_.drives) + any(reading_.sizes) +
                        any(reading_.bearings) + any(reading_.codes) + any(reading_.lengths) +
                        any(reading_.quantities);
  for (const auto& asked : asked_) doubt.words[at(asked.said)] += 1;
  doubt.spoken[0] = reading_.is_spoken ? 1 : 0;
  return doubt;
}

bool Witness::names(const Hit& hit, const std::string& word) {
  const auto it = std::ranges::find(asked_, word, &Asked::word);
  return it != asked_.end() && about(hit).names.hold(*it);
}

void Witness::tell_reading(const Hit& hit, QuestionReading& into) {
  const About known = about(hit);
  const auto name = words_of(fold(hit.entry->name));
  std::vector<std::string> nowhere;
  for (const auto& asked : asked_) {
    const Held held = where(asked, known, hit);
    if (held == Held::nowhere && asked.part) nowhere.push_back(asked.word);
    if (held != Held::brief) continue;
    std::string whole;
    for (const std::size_t i : short_for(asked.word, name)) whole += (whole.empty() ? "" : " ") + name[i];
    std::erase(into.unread, asked.word);
    into.corrections.push_back({asked.word, whole});
  }
  const auto is_nowhere = [&](const std::string& word) {
    return std::ranges::find(nowhere, word) != nowhere.end();
  };
  std::erase_if(into.parts,
                [&](const PartAsked& part) { return std::ranges::all_of(part.words, is_nowhere); });
  auto& aside = into.left_aside;
  aside.insert(aside.end(), nowhere.begin(), nowhere.end());
  if (has_designation_but_length(into) && !having_.contains({hit.library, hit.id}))
    leave_designations_aside(into);
  if (!meet_measures(*hit.entry, into).meets) {
    for (const auto& length : into.lengths) aside.push_back(length.typed);
    for (const auto& quantity : into.quantities) aside.push_back(quantity.typed);
    into.lengths.clear();
    into.quantities.clear();
  }
  for (const auto& figure : reading_.figures)
    if (!states_figure(hit, known, figure)) into.unstated.push_back(figure);
}

}  // namespace sheaf
