// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/value.h"

#include <algorithm>
#include <array>

#include "query/answer/text.h"

namespace sheaf {
namespace {

// Which unit stands below the source's own, where the reader has not asked for one: the one that tools
// and bottles of the other system are marked in. Small torques are set in lbf·in.
struct Partner {
  std::string_view of, is;
};
constexpr std::array<Partner, 22> partners = {
    {{"N·m", "lbf·ft"},   {"lbf·ft", "N·m"},  {"lbf·in", "N·m"},  {"kgf·m", "N·m"}, {"kgf·cm", "N·m"},
     {"mm", "in"},        {"in", "mm"},       {"mL", "US fl oz"}, {"L", "US qt"},   {"US fl oz", "mL"},
     {"imp fl oz", "mL"}, {"US qt", "L"},     {"bar", "psi"},     {"kPa", "psi"},   {"psi", "bar"},
     {"N/mm", "lbf/in"},  {"kgf/mm", "N/mm"}, {"lbf/in", "N/mm"}, {"°C", "°F"},     {"°F", "°C"},
     {"N", "lbf"},        {"lbf", "N"}}};
constexpr double smallest_for_foot_pounds = 15;  // N·m; common practice, no source

bool is_small_torque(const Figure& figure) {
  return figure.unit->dimension == Dimension::torque && base_band(figure).most < smallest_for_foot_pounds;
}

const Unit* partner_of(const Figure& figure) {
  if (figure.unit->symbol == "N·m" && is_small_torque(figure)) return readings("lbf·in").front();
  const auto* found = std::ranges::find(partners, figure.unit->symbol, &Partner::of);
  if (found == partners.end()) return nullptr;
  const auto units = readings(found->is);
  return units.empty() ? nullptr : units.front();
}

// What the reader asked for, or else the usual partner.
std::vector<const Unit*> wanted_units(const Figure& figure, const PreferredUnits& preferred) {
  std::vector<const Unit*> units;
  for (const Unit* unit : preferred)
    if (unit->dimension == figure.unit->dimension && unit != figure.unit) units.push_back(unit);
  if (units.empty())
    if (const Unit* partner = partner_of(figure)) units.push_back(partner);
  return units;
}

// The first figure that is no angle: the one whose unit the reader's tools may not have.
const Figure* main_figure(const Statement& statement) {
  const auto is_quantity = [](const Stage& stage) { return stage.act == Act::tighten && !stage.hand_tight; };
  const auto found = std::ranges::find_if(statement.stages, is_quantity);
  return found == statement.stages.end() ? nullptr : &found->figure;
}

std::optional<Derived> derive(const Statement& statement, const Unit& unit) {
  auto converted = convert(statement, unit);
  if (!converted) return std::nullopt;
  const bool exact = converted->exact;
  return Derived{&unit, std::move(converted).value().statement, {}, {}, exact};
}

std::string conditions_of(const Statement& statement) {
  std::vector<std::string> parts;
  if (!statement.per.empty()) parts.push_back("per " + statement.per);
  if (statement.at) parts.push_back("at " + shown(*statement.at));
  parts.insert(parts.end(), statement.conditions.begin(), statement.conditions.end());
  return joined(parts, ", ");
}

// Only the stages: what the statement says of conditions stands apart.
std::string stages_of(const Statement& statement) {
  Statement bare;
  bare.stages = statement.stages;
  return shown(bare);
}

void fill_lead(const Statement& statement, std::string& lead, std::string& band) {
  if (statement.stages.size() > 1 || statement.stages.front().hand_tight) {
    lead = stages_of(statement);
    return;
  }
  lead = lead_of(statement.figure());
  band = band_of(statement.figure());
}

void say_quantity(Value& value, Statement statement, const PreferredUnits& preferred) {
  fill_lead(statement, value.lead, value.band);
  value.conditions = conditions_of(statement);
  if (const Figure* figure = main_figure(statement)) {
    for (const Unit* unit : wanted_units(*figure, preferred)) {
      auto derived = derive(statement, *unit);
      if (!derived) continue;
      fill_lead(derived->statement, derived->lead, derived->band);
      value.derived.push_back(std::move(*derived));
    }
  }
  value.statement = std::move(statement);
}

bool is_quantity(ValueType type) { return type == ValueType::figure || type == ValueType::torque; }

// "41x54x11" -> "41 × 54 × 11 mm"; "1.5x2.0 in" keeps its unit.
std::string shown_size(std::string_view text) {
  std::string result;
  for (const char sign : text) sign == 'x' ? result += " × " : result += sign;
  if (!text.ends_with("in")) result += "\u00A0mm";
  return result;
}

std::string shown_text(const FieldRecord& field, ValueType type) {
  switch (type) {
    case ValueType::size:
      return shown_size(field.text);
    case ValueType::choice:
    case ValueType::count:
      return choice_words(field.key, field.text);
    default:
      return field.text;
  }
}

struct Choice {
  std::string_view key, choice, words;
};
constexpr std::array<Choice, 11> choices = {
    {{"hand", "left", "left-hand thread"},
     {"hand", "right", "right-hand thread"},
     {"reuse", "no", "fit new"},
     {"reuse", "yes", "may be fitted again"},
     {"reuse", "inspect", "inspect before refitting"},
     {"torque-is", "total", "for all together"},
     {"state", "source-silent", "source does not state dry or oiled"},
     {"state", "anti-seize", "anti-seize"},
     {"material", "source-silent", "material not stated by the source"},
     {"sold-as", "pair", "one number buys a pair"},
     {"sold-as", "single", "one number buys one"}}};

}  // namespace

std::string lead_of(const Figure& figure) {
  if (!figure.nominal) return shown(figure);
  Figure nominal;
  nominal.form = figure.form == Form::about ? Form::about : Form::nominal;
  nominal.nominal = figure.nominal;
  nominal.unit = figure.unit;
  return shown(nominal);
}

std::string band_of(const Figure& figure) {
  if (!figure.nominal) return {};
  if (figure.least && figure.most) return shown(*figure.least) + "–" + shown(*figure.most);
  if (figure.least) return "min " + shown(*figure.least);
  if (figure.most) return "max " + shown(*figure.most);
  return {};
}

std::string choice_words(std::string_view key, std::string_view choice) {
  for (const auto& each : choices)
    if (each.key == key && each.choice == choice) return std::string(each.words);
  if (key == "count")
    return choice.find(' ') == std::string_view::npos ? std::string(choice) + " of them"
                                                      : std::string(choice);
  if (key == "threadlocker") return in_words(choice) + "-strength threadlocker";
  return in_words(choice);
}

std::string_view spelled_out(const Unit& unit) {
  return unit.symbol == "lbf·in" ? "inch-pounds, not foot-pounds" : "";
}

std::string in_words(std::string_view kebab) {
  std::string words(kebab);
  std::ranges::replace(words, '-', ' ');
  return words;
}

Value say(const FieldRecord& field, const FieldDeclaration* declaration, const PreferredUnits& preferred) {
  Value value;
  value.key = field.key;
  value.label = in_words(field.key);
  std::ranges::replace(value.label, '.', ' ');
  value.text = field.text;
  value.place = field.place;
  // A field without a declaration is a table's column, or stands in a record (its key is dotted). What a
  // record holds is text: the part number 43-2239-K must never be read as kelvins.
  const bool in_record = field.key.find('.') != std::string::npos;
  const bool may_be_quantity = declaration ? is_quantity(declaration->type) : !in_record;
  if (may_be_quantity) {
    const auto dimension = declaration ? declaration->dimension : std::nullopt;
    if (auto statement = parse_statement(field.text, dimension, Input::sheet)) {
      say_quantity(value, std::move(statement).value(), preferred);
      return value;
    }
  }
  value.lead = shown_text(field, declaration ? declaration->type : ValueType::text);
  return value;
}

}  // namespace sheaf
