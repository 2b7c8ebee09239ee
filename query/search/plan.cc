// SPDX-License-Identifier: GPL-2.0-or-later
// What is the answer is decided on the entries themselves (rank.cc), so the index gives no weights: nothing
// is scored, and where more match than are read, a search ends at the first of them.
#include "query/search/plan.h"

#include <algorithm>
#include <limits>
#include <set>

#include "query/library/fold.h"
#include "query/library/index_terms.h"
#include "query/library/vocabulary.h"
#include "query/search/figures.h"
#include "query/search/measures.h"
#include "query/search/reach.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

using Query = Xapian::Query;
using Queries = std::vector<Query>;

constexpr std::size_t most_machines = 16;  // beyond, the make and the year stand for all of its models
constexpr int most_years = 12;             // of a range of years asked for

Query any_of(const Queries& queries) { return Query(Query::OP_OR, queries.begin(), queries.end()); }
Query all_of(const Queries& queries) { return Query(Query::OP_AND, queries.begin(), queries.end()); }

template <typename List, typename Make>
void add_any(Queries& all, const List& list, Make make) {
  Queries any;
  for (const auto& each : list) any.push_back(make(each));
  if (!any.empty()) all.push_back(any_of(any));
}

// --- machine and year ---------------------------------------------------------------------------

Query fits_years(const std::string& machine, int from, int to, KnownTerms& terms) {
  Queries any;
  for (int year = from; year <= std::min(to, from + most_years); ++year)
    for (const auto& text : year_terms(machine, year)) any.push_back(terms.has(text));
  return any.empty() ? Query::MatchNothing : any_of(any);
}

Query fits_machine(const QuestionReading& reading, const Machine& machine, bool with_year,
                   KnownTerms& terms) {
  const std::string body = machine_body(machine.make, machine.model);
  if (!with_year) return terms.has(Prefix::machine, body);
  return fits_years(body, reading.year, reading.year_to, terms);
}

// What fits no machine in particular (a published table) answers a thread or a size of any machine.
void add_machine(Queries& all, const QuestionReading& reading, const Demand& demand, KnownTerms& terms) {
  const bool with_year = demand.year && reading.year != 0;
  const bool with_machine = demand.machine && !reading.machines.empty();
  if (!with_year && !with_machine) return;
  Queries any;
  if (!with_machine) {
    any.push_back(fits_years("", reading.year, reading.year_to, terms));
  } else if (reading.machines.size() > most_machines) {
    Queries make = {terms.has(Prefix::make, fold(reading.machines.front().make))};
    if (with_year) make.push_back(fits_years("", reading.year, reading.year_to, terms));
    any.push_back(all_of(make));
  } else {
    for (const auto& machine : reading.machines)
      any.push_back(fits_machine(reading, machine, with_year, terms));
  }
  if (reading.has_designation()) any.push_back(terms.has(Prefix::machine, "any"));
  all.push_back(any_of(any));
}

// --- sides --------------------------------------------------------------------------------------

// Of that side by its own word, by its name or by its assembly.
Query is_of_side(std::string_view side, KnownTerms& terms) {
  const std::string name(side);
  Queries any = {terms.has(Prefix::side, side), terms.has(Prefix::group, "side-" + name)};
  for (const auto assembly : all_assemblies())
    if (end_of_assembly(assembly) == side) any.push_back(terms.has(Prefix::assembly, assembly));
  return any_of(any);
}

void add_sides(Queries& all, Queries& never, const QuestionReading& reading, const Demand& demand,
               KnownTerms& terms) {
  for (const auto& axis : side_axes) {
    const auto is_wanted = [&](std::string_view side) {
      return std::ranges::find(reading.sides, side) != reading.sides.end();
    };
    if (std::ranges::none_of(axis, is_wanted)) continue;
    const bool is_stated = demand.sides_stated || &axis == &side_axes.front();
    Queries some;  // of the sides that are wanted, or of those that are not
    for (const auto side : axis)
      if (is_wanted(side) == is_stated) some.push_back(is_of_side(side, terms));
    if (!some.empty()) (is_stated ? all : never).push_back(any_of(some));
  }
}

// --- what is asked ------------------------------------------------------------------------------

// "valve clearance", "spark plug gap": an entry that is named after what is asked. No part is named after
// its torque, but steps and tools are.
bool may_name_an_entry(std::string_view figure) {
  return figure != "torque" && figure != "stage" && figure != "angle";
}

// "load", "bore": the name of a field, which may as well stand in the name of an entry.
bool is_plain_word(std::string_view figure) { return figure.find('-') == std::string_view::npos; }

Query answers_figure(const std::string& figure, bool named, KnownTerms& terms) {
  Queries any;
  if (!named && may_be_its_value(figure))
    for (const auto kind : {"limit", "clearance", "setting", "pressure"})
      any.push_back(terms.has(Prefix::kind, kind));
  if (!named && is_plain_word(figure))  // "front pair first, until no gap is left"
    any.push_back(
        all_of({terms.has(Prefix::other_stem, stem_of(figure)), terms.has(Prefix::kind, "fastener")}));
  if (figure == "stage") any.push_back(terms.has(Prefix::kind, "setting"));  // its standard step
  if (!named && figure == "length") any.push_back(terms.has(Prefix::field, "free-length"));  // of a spring
  if (!named && figure == "threadlocker") any.push_back(terms.has(Prefix::field, "state"));
  if (may_name_an_entry(figure)) any.push_back(terms.has(Prefix::group, "kind-" + figure));
  for (const auto field : fields_of_figure(figure)) any.push_back(terms.has(Prefix::field, field));
  if (kind_named(figure)) any.push_back(terms.has(Prefix::kind, figure));
  if (is_plain_word(figure) && may_name_an_entry(figure))
    any.push_back(terms.has(Prefix::stem, stem_of(figure)));
  if (figure == "pattern" || figure == "order")  // "left pinch bolt first"
    any.push_back(
        all_of({terms.has(Prefix::other_stem, stem_of("first")), terms.has(Prefix::kind, "fastener")}));
  if (figure == "limit") any.push_back(terms.has(Prefix::kind, "clearance"));
  if (figure == "new") any.push_back(terms.has(Prefix::field, "reuse"));  // of a nut: whether it must be
  if (figure == "setting")
    for (const auto kind : {"clearance", "pressure"}) any.push_back(terms.has(Prefix::kind, kind));
  if (figure == "drive")
    for (const auto tool : {"wrench", "socket", "hex-key"}) any.push_back(terms.has(Prefix::group, tool));
  if (figure == "threadlocker") any.push_back(terms.has(Prefix::choice, "state=threadlocker"));
  return any_of(any);
}

// --- words --------------------------------------------------------------------------------------

// Where the words of a part stand; each place holds those before it.
enum class Where { name, name_or_group, anywhere };

Query has_stems(Prefix prefix, const std::vector<std::string>& words, KnownTerms& terms) {
  Queries all;
  for (const auto& word : words) all.push_back(terms.has(prefix, stem_of(word)));
  return all_of(all);
}

// Those words in a name; by a group that they name; or elsewhere on the sheet.
Queries stand_in(Where where, const std::vector<std::string>& words, const std::vector<std::string>& groups,
                 KnownTerms& terms) {
  Queries any = {has_stems(Prefix::stem, words, terms)};
  if (where == Where::name) return any;
  for (const auto& group : groups) any.push_back(terms.has(Prefix::group, group));
  if (where == Where::anywhere) {
    any.push_back(has_stems(Prefix::other_stem, words, terms));
    for (const auto& group : groups)  // "sidestand": in a note, its "side stand"
      any.push_back(has_stems(Prefix::other_stem, words_of(group), terms));
  }
  return any;
}

// Each word by itself.
Query holds_words(const PartAsked& part, Where where, KnownTerms& terms) {
  Queries all;
  for (std::size_t i = 0; i < part.words.size(); ++i)
    all.push_back(any_of(stand_in(where, {part.words[i]}, part.groups_of_words[i], terms)));
  return all_of(all);
}

Query is_called(const PartAsked& part, bool whole, Where where, KnownTerms& terms) {
  if (!whole && part.words.size() > 1) return holds_words(part, where, terms);
  Queries any = stand_in(where, part.words, part.groups, terms);
  if (where == Where::anywhere) {
    for (const auto& group : part.groups)
      if (kind_named(group)) any.push_back(terms.has(Prefix::kind, group));
    if (is_generic_fastener(part)) any.push_back(terms.has(Prefix::kind, "fastener"));
    for (const auto assembly : part.assemblies) any.push_back(terms.has(Prefix::assembly, assembly));
  }
  return any_of(any);
}

std::string in_order(const std::vector<std::string>& words) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

// What is called just what was typed, with or without the side before it.
Query is_named(const QuestionReading& reading, KnownTerms& terms) {
  std::string all;
  for (const auto& part : reading.parts) all += (all.empty() ? "" : " ") + in_order(part.words);
  Queries any = {terms.has(Prefix::exact_name, all)};
  for (const auto& side : reading.sides) any.push_back(terms.has(Prefix::exact_name, side + " " + all));
  return any_of(any);
}

// --- sizes and figures --------------------------------------------------------------------------

Query has_thread(const Thread& thread, const Demand& demand, KnownTerms& terms) {
  const bool says_pitch = thread.pitch || thread.per_inch;
  if (says_pitch && demand.sizes_exact) return terms.has(Prefix::thread, thread_key(thread));
  return terms.has(Prefix::diameter, diameter_body(thread));
}

Query has_drive(const Drive& drive, KnownTerms& terms) {
  Queries any = {terms.has(Prefix::drive, drive_key(drive))};
  const auto across = across_flats_mm(drive);
  const bool is_outside = drive.shape == Drive::Shape::hexagon || drive.shape == Drive::Shape::twelve_point;
  if (across && is_outside) {
    Drive other = drive;
    other.shape = drive.shape == Drive::Shape::hexagon ? Drive::Shape::twelve_point : Drive::Shape::hexagon;
    any.push_back(terms.has(Prefix::drive, drive_key(other)));
  }
  return any_of(any);
}

Query has_near_dimensions(const Size& size, double reach, SizeTerms& sizes) {
  Queries all;
  for (int i = 0; i < size.count; ++i) {
    const double mm = dimension_mm(size, i);
    all.push_back(sizes.dimension(mm - reach, mm + reach));
  }
  return all_of(all);
}

// The same dimensions in any order; by their numbers too, so that a seal whose height has a step is found
// by its first height alone. One or two dimensions are part of a size.
Query has_size(const Size& size, const Demand& demand, KnownTerms& terms, SizeTerms& sizes) {
  if (!demand.sizes_exact) return has_near_dimensions(size, near_size, sizes);
  if (size.unit != "mm") return has_near_dimensions(size, caliper, sizes);
  return any_of({terms.has(Prefix::size, size_key(size)), terms.has(Prefix::any_order, any_order_body(size)),
                 has_near_dimensions(size, same_length, sizes)});
}

// By the steps that its figures may lie in, so that few values are looked at.
Query states_between(Dimension dimension, double least, double most, KnownTerms& terms) {
  Queries all;
  add_any(all, figure_bodies(dimension, least, most),
          [&](const std::string& body) { return terms.has(Prefix::figure, body); });
  all.emplace_back(Query::OP_VALUE_LE, least_slot(dimension), Xapian::sortable_serialise(most));
  all.emplace_back(Query::OP_VALUE_GE, most_slot(dimension), Xapian::sortable_serialise(least));
  return all_of(all);
}

Query has_length(const LengthAsked& length, bool of_spring, const Demand& demand, KnownTerms& terms,
                 SizeTerms& sizes) {
  if (counts_teeth(length)) return terms.has(Prefix::word, length.typed.substr(0, length.typed.size() - 1));
  const double exact = exact_reach(length);
  const double reach = demand.sizes_exact ? exact : near_length;
  const double from = length.mm - reach, to = length.mm + reach;
  switch (length.of) {
    case LengthOf::across_flats:
      return sizes.across_flats(from, to);
    case LengthOf::diameter:
      return sizes.diameter(from, to);
    case LengthOf::outside:
      return sizes.dimension_at(1, from, to);
    case LengthOf::inside:
      return sizes.dimension_at(0, from, to);
    case LengthOf::dimension:
      return sizes.dimension(from, to);
    case LengthOf::anything:
      break;
  }
  const double stated = demand.sizes_exact ? exact : std::max(near_length, length.mm * near_share);
  Queries any = {
      terms.has(Prefix::word, fold(length.typed)), sizes.across_flats(from, to), sizes.diameter(from, to),
      sizes.dimension(from, to),
      states_between(Dimension::length, (length.mm - stated) / 1000, (length.mm + stated) / 1000, terms)};
  if (of_spring && length.bare)  // "shock spring 138": by its rate, of which a N/mm is 1000 N/m
    any.push_back(states_between(Dimension::spring_rate, (length.mm - length.half_digit) * 1000,
                                 (length.mm + length.half_digit) * 1000, terms));
  return any_of(any);
}

// One value is met by a band that holds it, within the last digit typed; a range by a band that meets it.
Query states_figure(const QuantityAsked& asked, const Demand& demand, KnownTerms& terms) {
  Queries any;
  if (const auto number = number_typed(asked);
      !asked.is_range && !number.empty() && number.find_first_of(".,") == std::string::npos)
    any.push_back(
        all_of({terms.has(Prefix::word, number), terms.has(Prefix::kind, "part")}));  // in its description
  for (const Figure& figure : asked.figures) {
    const BaseBand band = base_band(figure);
    const double exact = asked.is_range ? 0 : exact_reach(figure);
    const double reach = demand.sizes_exact ? exact : std::max(exact, std::abs(band.least) * near_share);
    any.push_back(states_between(figure.unit->dimension, band.least - reach, band.most + reach, terms));
  }
  return any_of(any);
}

// A stage of its torque may be that number, of newton metres or of degrees.
Query has_stage(const std::string& number, KnownTerms& terms) {
  const auto parsed = parse_number(number, Input::prompt);
  if (!parsed) return Query::MatchNothing;
  const double value = approximate(*parsed);
  return any_of({states_between(Dimension::torque, value, value, terms),
                 states_between(Dimension::angle, value, value, terms)});
}

Query has_number(const std::string& number, KnownTerms& terms) {
  return any_of({terms.has(Prefix::part_number, number), terms.has(Prefix::other_number, number)});
}

// What a bottle says is no scale: it is met by the damping oils that it may be compared with.
Query says_of_oil(const std::string& label, KnownTerms& terms) {
  const Query of_damping = any_of(
      {terms.has(Prefix::choice, "purpose=fork-oil"), terms.has(Prefix::choice, "purpose=damper-oil")});
  const Query compared =
      any_of({terms.has(Prefix::field, "viscosity"), terms.has(Prefix::field, "label-only")});
  return any_of({terms.has(Prefix::code, squeeze(label)), all_of({of_damping, compared})});
}

void add_designations(Queries& all, const QuestionReading& reading, const Demand& demand, KnownTerms& terms,
                      SizeTerms& sizes) {
  add_any(all, reading.threads, [&](const Thread& thread) { return has_thread(thread, demand, terms); });
  add_any(all, reading.drives, [&](const Drive& drive) { return has_drive(drive, terms); });
  add_any(all, reading.sizes, [&](const Size& size) { return has_size(size, demand, terms, sizes); });
  add_any(all, reading.bearings,
          [&](const Bearing& bearing) { return terms.has(Prefix::bearing, fold(bearing.basic)); });
  add_any(all, reading.codes, [&](const std::string& code) { return terms.has(Prefix::code, code); });
  add_any(all, reading.numbers, [&](const std::string& number) { return has_number(number, terms); });
  add_any(all, reading.labels, [&](const std::string& label) { return says_of_oil(label, terms); });
  const auto names_spring = [](const PartAsked& part) {
    return std::ranges::any_of(part.words, [](const std::string& word) { return stem_of(word) == "spring"; });
  };
  const bool of_spring = std::ranges::any_of(reading.parts, names_spring);
  for (const auto& length : reading.lengths)
    all.push_back(has_length(length, of_spring, demand, terms, sizes));
  for (const auto& quantity : reading.quantities) all.push_back(states_figure(quantity, demand, terms));
}

// All parts asked for, but the one that is left out.
Queries called(const QuestionReading& reading, const Demand& demand, Where where, KnownTerms& terms) {
  Queries all;
  const bool only_aspects =
      std::ranges::all_of(reading.parts, &PartAsked::is_aspect) && !reading.has_designation();
  for (std::size_t i = 0; i < reading.parts.size(); ++i)
    if (static_cast<int>(i) != demand.without_part && (only_aspects || !reading.parts[i].is_aspect))
      all.push_back(is_called(reading.parts[i], demand.names_whole, where, terms));
  return all;
}

// By the name of a group.
bool may_be_called_otherwise(const QuestionReading& reading) {
  return std::ranges::any_of(reading.parts, [](const PartAsked& part) {
    return !part.groups.empty() ||
           std::ranges::any_of(part.groups_of_words, [](const auto& groups) { return !groups.empty(); });
  });
}

}  // namespace

Plan plan_query(const QuestionReading& reading, const Demand& demand, KnownTerms& terms, SizeTerms& sizes) {
  if (reading.names_nothing()) return {};
  Queries filters, never;
  add_machine(filters, reading, demand, terms);
  add_sides(filters, never, reading, demand, terms);
  if (!demand.table_rows) never.push_back(terms.has(Prefix::machine, "any"));
  add_any(filters, reading.kinds, [&](const std::string& kind) { return terms.has(Prefix::kind, kind); });
  add_any(filters, reading.assemblies,
          [&](const std::string& name) { return terms.has(Prefix::assembly, name); });
  if (demand.figures) {
    Queries figures;
    for (const auto& figure : reading.figures)
      figures.push_back(answers_figure(figure, demand.figures_named, terms));
    if (!demand.figures_all && !figures.empty()) figures = {any_of(figures)};
    filters.insert(filters.end(), figures.begin(), figures.end());
  }
  for (const auto& choice : reading.choices) filters.push_back(terms.has(Prefix::choice, choice));
  add_designations(filters, reading, demand, terms, sizes);
  if (demand.stages)
    for (const auto& stage : reading.stages) filters.push_back(has_stage(stage, terms));

  const auto narrowed = [&](Queries all) {
    all.insert(all.end(), filters.begin(), filters.end());
    const Query query = all.empty() ? Query::MatchNothing : all_of(all);
    return never.empty() ? query : Query(Query::OP_AND_NOT, query, any_of(never));
  };
  const Queries words = called(reading, demand, Where::anywhere, terms);
  const bool walks_values =
      !reading.quantities.empty() ||
      std::ranges::find(reading.lengths, LengthOf::anything, &LengthAsked::of) != reading.lengths.end();
  Plan plan{walks_values, narrowed(words), {}};
  if (words.empty()) return plan;
  const auto add_likely = [&](const Queries& names) {
    const Query likely = all_of(names);
    if (!likely.empty()) plan.likely.push_back({likely, narrowed(names)});
  };
  add_likely({is_named(reading, terms), all_of(words)});
  add_likely(called(reading, demand, Where::name, terms));
  if (may_be_called_otherwise(reading)) add_likely(called(reading, demand, Where::name_or_group, terms));
  return plan;
}

std::vector<std::string> terms_of_words(const QuestionReading& reading) {
  std::set<std::string> terms;
  const auto add = [&](Prefix prefix, const std::string& body) { terms.insert(term(prefix, body)); };
  for (const auto& part : reading.parts) {
    for (const auto& word : part.words) {
      add(Prefix::stem, stem_of(word));
      add(Prefix::other_stem, stem_of(word));
    }
    for (const auto& group : part.groups) add(Prefix::group, group);
    for (const auto& groups : part.groups_of_words)
      for (const auto& group : groups) add(Prefix::group, group);
  }
  return {terms.begin(), terms.end()};
}

Query plan_terms(const QuestionReading& reading, const std::vector<std::string>& of_words,
                 KnownTerms& terms) {
  const Query words(Query::OP_OR, of_words.begin(), of_words.end());
  Queries filters;
  add_machine(filters, reading, {}, terms);
  return filters.empty() ? words : Query(Query::OP_FILTER, words, all_of(filters));
}

}  // namespace sheaf
