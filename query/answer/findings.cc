// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/findings.h"

#include <algorithm>
#include <set>
#include <string_view>

#include "query/answer/text.h"
#include "query/library/vocabulary.h"
#include "query/search/figures.h"
#include "query/trade/measured.h"

namespace sheaf {
namespace {

std::string quoted(const std::string& text) { return "“" + text + "”"; }

std::string quoted_list(const std::vector<std::string>& words) {
  std::vector<std::string> quotes;
  for (const auto& word : words) quotes.push_back(quoted(word));
  return joined(quotes, ", ");
}

// A kind of entry that is asked for says its own figure first; only fields have to be looked for.
Asked asked_of(const QuestionReading& reading, const PreferredUnits& preferred) {
  Asked asked;
  for (const auto& figure : reading.figures) {
    if (kind_named(figure)) continue;
    const auto fields = fields_of_figure(figure);
    asked.figures.push_back({in_words(figure), {fields.begin(), fields.end()}});
  }

  asked.units = reading.units;
  asked.units.insert(asked.units.end(), preferred.begin(), preferred.end());
  if (reading.machines.size() == 1) {
    asked.make = reading.machines.front().make;
    asked.model = reading.machines.front().model;
  }
  return asked;
}

// "28 thou ≈ 0.711 mm."
void add_in_millimetres(std::vector<std::string>& notices, const LengthAsked& length) {
  const Unit* millimetre = readings("mm", Dimension::length).front();
  if (length.figure.unit == millimetre) return;
  if (const auto metric = convert(length.figure, *millimetre))
    notices.push_back(length.typed + (metric->exact ? " = " : " ≈ ") + shown(metric->figure) + ".");
}

// "17.5 oz is 17.5 US fl oz or 17.5 imp fl oz: both were looked for."
void add_readings(std::vector<std::string>& notices, const QuantityAsked& quantity) {
  if (quantity.figures.size() < 2) return;
  std::vector<std::string> meanings;
  for (const auto& figure : quantity.figures) {
    std::string meaning = shown(figure);
    const auto useful = useful_units(*figure.unit);
    const auto metric = useful.empty() ? Result<Converted>(Failure{}) : convert(figure, *useful.front());
    if (metric) meaning += " (" + shown(metric->figure) + ")";
    meanings.push_back(meaning);
  }
  notices.push_back(quantity.typed + " may be " + joined(meanings, " or ") + ": each was looked for.");
}

std::vector<std::string> notices_of(const QuestionReading& reading, bool answered) {
  std::vector<std::string> notices;
  for (const auto& correction : reading.corrections)
    notices.push_back(quoted(correction.typed) + " is not known here; read as " + quoted(correction.read) +
                      ".");
  if (answered && !reading.unread.empty())
    notices.push_back("Left out, as nothing here knows it: " + quoted_list(reading.unread) + ".");
  if (!reading.left_aside.empty())
    notices.push_back(
        "Left aside, as nothing holds it together with the rest: " + quoted_list(reading.left_aside) + ".");
  notices.insert(notices.end(), reading.doubts.begin(), reading.doubts.end());
  for (const auto& length : reading.lengths) add_in_millimetres(notices, length);
  for (const auto& quantity : reading.quantities) add_readings(notices, quantity);
  return notices;
}

// "22 nm in ft lbs", "120 in-lb", "28 thou": a quantity and nothing that an entry could be found by.
bool is_conversion(const QuestionReading& reading) {
  QuestionReading rest = reading;
  const bool one_length = reading.lengths.size() == 1 && reading.quantities.empty() &&
                          (!reading.units.empty() || reading.lengths.front().figure.unit->symbol != "mm");
  const bool one_quantity =
      reading.quantities.size() == 1 && reading.lengths.empty() && !reading.quantities.front().is_range;
  if (!one_length && !one_quantity) return false;
  rest.lengths.clear();
  rest.quantities.clear();
  rest.figures.clear();  // the words of a unit also ask for what it measures
  return rest.names_nothing() && reading.unread.empty();
}

// "gauge shows 32 psi, how many bar is that": one figure, and one other unit of the same, where nothing else
// was found; of a torque, newtons are newton metres.
std::optional<Conversion> conversion_of_figure(const QuestionReading& reading) {
  auto units = reading.units;
  if (units.empty() && reading.parts.size() == 1)
    units = readings(reading.parts.front().typed);  // "140 mm inch", which is a word of names too
  const auto names_same =
      [&](const QuantityAsked& asked) {  // "how many litres are 1.5 quarts", US and imperial
        return [&](const Unit* unit) {
          return std::ranges::any_of(asked.figures,
                                     [&](const Figure& figure) { return figure.unit == unit; });
        };
      };
  if (units.size() > 1 && reading.quantities.size() == 1)
    std::erase_if(units, names_same(reading.quantities.front()));
  if (!reading.machines.empty() || units.size() != 1 ||
      reading.quantities.size() + reading.lengths.size() != 1)
    return std::nullopt;
  if (!reading.quantities.empty() ? reading.quantities.front().is_range : reading.lengths.front().bare)
    return std::nullopt;
  const Unit* from = reading.quantities.empty() ? reading.lengths.front().figure.unit
                                                : reading.quantities.front().figures.front().unit;
  const Unit* to = units.front();
  const bool is_torque_in_newtons = from->dimension == Dimension::torque && to->dimension == Dimension::force;
  if (from == to || (!is_torque_in_newtons && from->dimension != to->dimension)) return std::nullopt;
  const std::string& typed =
      reading.quantities.empty() ? reading.lengths.front().typed : reading.quantities.front().typed;
  auto conversion =
      convert_line(typed + " in " + std::string(is_torque_in_newtons ? "N·m" : to->symbol), std::nullopt);
  return conversion.failure ? std::nullopt : std::optional(std::move(conversion));
}

// "the sheet says 45 newton metres, what's that in foot pounds": whatever words stand around it, none names a
// part.
bool only_says_figure(const QuestionReading& reading) {
  const auto is_named = [](const PartAsked& part) { return !part.groups.empty() && !part.is_aspect; };
  QuestionReading rest = reading;
  rest.lengths.clear();
  return reading.is_spoken && !reading.units.empty() && std::ranges::none_of(reading.parts, is_named) &&
         !rest.has_designation();
}

// "what's 88 Nm in ft-lb, my wrench is American": whatever is said around it, where no machine is named.
Conversion conversion_said(const std::string& question, const QuestionReading& reading) {
  constexpr std::size_t most_words = 7, fewest_words = 3;  // "88 Nm in ft-lb", "90 in lb in newton metres"
  const std::string& typed =
      reading.quantities.empty() ? reading.lengths.front().typed : reading.quantities.front().typed;
  const std::size_t begin = question.find(typed);
  Conversion conversion;
  conversion.failure = Failure{"no conversion"};
  if (!reading.machines.empty() || begin == std::string::npos) return conversion;
  std::vector<std::size_t> ends;
  for (std::size_t i = begin; i <= question.size() && ends.size() < most_words; ++i)
    if (i == question.size() || question[i] == ' ') ends.push_back(i);
  for (std::size_t words = ends.size(); words >= fewest_words; --words) {
    std::string line = question.substr(begin, ends[words - 1] - begin);
    while (!line.empty() && std::string_view(",.?!;").find(line.back()) != std::string_view::npos)
      line.pop_back();
    auto converted = convert_line(line, std::nullopt);
    if (!converted.failure && converted.readings.front().derived.size() == 1) return converted;
  }
  return conversion;
}

// A line that names both units ("36 psi in bar") is a conversion whatever else its words could mean.
std::optional<Conversion> conversion_asked(const std::string& question, const QuestionReading& reading) {
  const bool may_be = !reading.quantities.empty() || !reading.lengths.empty();
  if (!may_be) return std::nullopt;
  auto conversion = convert_line(question, std::nullopt);
  const bool says_into =
      question.find(" to ") != std::string::npos || question.find(" in ") != std::string::npos;
  if (!conversion.failure && says_into && conversion.readings.front().derived.size() == 1)
    return conversion;  // "85 c to f"
  if (conversion.failure) conversion = conversion_said(question, reading);
  if (conversion.failure) return std::nullopt;
  const bool names_both = !reading.units.empty() && conversion.readings.front().derived.size() == 1;
  if (!names_both && !is_conversion(reading)) return std::nullopt;
  return conversion;
}

// "138 N/mm": a spring is known by its rate, which nobody has a tool in other units for.
bool names_springs(const Findings& findings) {
  constexpr std::size_t most = 3;
  const auto& reading = findings.reading;
  const bool is_rate = reading.units.empty() && reading.quantities.size() == 1 &&
                       reading.quantities.front().figures.front().unit->dimension == Dimension::spring_rate;
  return is_rate && !findings.answers.empty() && findings.answers.size() <= most;
}

std::string fits_of(const EntryRecord& entry, const QuestionReading& reading) {
  std::vector<std::string> years;
  for (const auto& fit : entry.fits)
    for (const auto& machine : reading.machines)
      if (fit.make == machine.make && fit.model == machine.model)
        years.push_back(years_text(fit.year_from, fit.year_to));
  return joined(years, ", ");
}

std::string machines_of(const EntryRecord& entry) {
  std::vector<std::string> machines;
  for (const auto& fit : entry.fits) machines.push_back(machine_line(fit));
  return machines.empty() ? "any machine" : joined(machines, "; ");
}

std::string difference_of(const Hit& hit, const Findings& findings) {
  switch (findings.why_near) {
    case Near::other_years:
      return fits_of(*hit.entry, findings.reading);
    case Near::other_sizes:
      return hit.differs;
    default:
      return machines_of(*hit.entry);
  }
}

// The library named first goes first, and says so where another answers too.
void note_libraries(FoundAnswers& found) {
  if (found.answers.empty() || found.answers.front().library.empty()) return;
  std::vector<std::string> others;
  for (const auto& answer : found.answers)
    if (answer.library != found.answers.front().library &&
        std::ranges::find(others, answer.library) == others.end())
      others.push_back(answer.library);
  if (!others.empty())
    found.notices.push_back(found.answers.front().library + " goes first; " + joined(others, " and ") +
                            " answers too.");
}

// "no length recorded", of what is of a kind that has no length.
void miss(Answer& answer, const std::string& figure) {
  const auto is_it = [&](const FieldRecord& field) {
    const auto fields = fields_of_figure(figure);
    return std::ranges::find(fields, field.key) != fields.end();
  };
  const bool is_said = std::ranges::find(answer.missing, in_words(figure)) != answer.missing.end();
  if (!is_said && std::ranges::none_of(answer.entry.fields, is_it))
    answer.missing.push_back(in_words(figure));
}

// Each library has one of them.
bool is_one_of_each_library(const std::vector<Answer>& answers) {
  std::set<std::string_view> libraries;
  return std::ranges::all_of(answers,
                             [&](const Answer& answer) { return libraries.insert(answer.library).second; });
}

}  // namespace

FoundAnswers say_findings(Findings findings, std::string question, const PreferredUnits& preferred) {
  const Asked asked = asked_of(findings.reading, preferred);
  const auto say = [&](const Hit& hit) { return build_answer(*hit.sheet, *hit.entry, asked); };
  FoundAnswers found;
  found.question = std::move(question);
  found.shelf = std::move(findings.shelf);
  if (!names_springs(findings))
    found.conversion = conversion_asked(with_leading_zeros(found.question), findings.reading);
  const bool names_nothing_else = findings.answers.empty() || only_says_figure(findings.reading) ||
                                  (!findings.reading.units.empty() && is_conversion(findings.reading));
  if (!found.conversion && names_nothing_else && !names_springs(findings))
    found.conversion = conversion_of_figure(findings.reading);
  if (found.conversion) {
    found.reading = std::move(findings.reading);
    return found;
  }
  for (auto& hit : findings.answers) found.answers.push_back(say(hit));
  for (const auto& figure : findings.reading.unstated)
    for (auto& answer : found.answers) miss(answer, figure);
  for (auto& hit : findings.also) found.also.push_back(say(hit));
  for (auto& hit : findings.near) {
    std::string differs = difference_of(hit, findings);
    found.near.push_back({say(hit), std::move(differs)});
  }
  found.notices = notices_of(findings.reading, !found.answers.empty());
  note_libraries(found);
  found.why_near = findings.why_near;
  found.total = findings.total;
  found.total_is_exact = findings.total_is_exact;
  found.counts = std::move(findings.counts);
  if (!findings.dropped.empty())
    found.notices.push_back("Nothing holds all of it; without " + quoted_list(findings.dropped) +
                            " there is:");
  found.reading = std::move(findings.reading);
  return found;
}

std::string nothing_found(const FoundAnswers& found) {
  const auto& reading = found.reading;
  if (!reading.unread.empty()) return "Nothing here knows " + quoted_list(reading.unread) + ".";
  std::string sentence = found.why_near == Near::figure_not_stated ? "That is not stated" : "No figure";
  if (!reading.machine.empty()) {
    sentence += " for the " + reading.machine;
    if (reading.year != 0) sentence += " of " + std::to_string(reading.year);
  } else if (reading.year != 0) {
    sentence += " for " + std::to_string(reading.year);
  } else {
    sentence += " for this";
  }
  return sentence + ".";
}

std::string which_one(const FoundAnswers& found) {
  const Answer& first = found.answers.front();
  const auto all_share = [&](auto member) {
    return std::ranges::all_of(found.answers,
                               [&](const Answer& answer) { return answer.*member == first.*member; });
  };
  if (all_share(&Answer::address))
    return is_one_of_each_library(found.answers) ? ""
                                                 : "It differs by year, frame number or market: name yours.";
  if (found.reading.machines.size() != 1 && !all_share(&Answer::machines))
    return "Name the machine and the year.";
  return {};
}

std::string near_heading(Near why) {
  switch (why) {
    case Near::other_years:
      return "recorded for other years, not for this one:";
    case Near::other_machines:
      return "recorded for other machines, not for this one:";
    case Near::other_sides:
      return "recorded for another side, not for this one:";
    case Near::figure_not_stated:
      return "recorded, without what was asked:";
    case Near::other_sizes:
      return "near, but NOT the same:";
    case Near::fewer_words:
      return "recorded nearest to it:";
    case Near::unknown_words:
      return "without that word there would be:";
    case Near::none:
      break;
  }
  return {};
}

}  // namespace sheaf
