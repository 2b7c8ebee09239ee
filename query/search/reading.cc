// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/reading.h"

#include <algorithm>

namespace sheaf {
namespace {

class Sentence {
 public:
  void say(std::string_view what, std::string_view value) {
    if (value.empty()) return;
    if (!text_.empty()) text_ += ", ";
    text_ += what;
    text_ += ' ';
    text_ += value;
  }
  template <typename List, typename Show>
  void say_each(std::string_view what, const List& list, Show show) {
    std::string values;
    for (const auto& each : list) {
      if (!values.empty()) values += " and ";
      values += show(each);
    }
    say(what, values);
  }
  std::string take() { return std::move(text_); }

 private:
  std::string text_;
};

std::string quoted(std::string_view text) { return "“" + std::string(text) + "”"; }
std::string spaced(std::string text) {
  for (char& sign : text)
    if (sign == '-') sign = ' ';
  return text;
}
std::string as_is(const std::string& text) { return text; }

std::string years_asked(const QuestionReading& reading) {
  if (reading.year == 0) return {};
  std::string years = std::to_string(reading.year);
  if (reading.year_to > reading.year) years += "–" + std::to_string(reading.year_to);
  return years;
}

std::string_view meaning_of(LengthOf of) {
  switch (of) {
    case LengthOf::across_flats:
      return " across flats";
    case LengthOf::diameter:
      return " thread";
    case LengthOf::outside:
      return " outside";
    case LengthOf::inside:
      return " inside";
    default:
      return "";
  }
}

std::string length_words(const LengthAsked& length) {
  return length.typed + std::string(meaning_of(length.of));
}

}  // namespace

bool is_generic_fastener(const PartAsked& part) { return part.words.size() == 1 && part.has_group("bolt"); }

bool PartAsked::has_group(std::string_view group) const {
  return std::ranges::find(groups, group) != groups.end();
}

bool QuestionReading::asks(std::string_view figure) const {
  return std::ranges::find(figures, figure) != figures.end();
}

bool QuestionReading::has_designation() const {
  return !threads.empty() || !drives.empty() || !sizes.empty() || !bearings.empty() || !codes.empty() ||
         !numbers.empty() || !lengths.empty() || !labels.empty();
}

bool QuestionReading::names_nothing() const {
  return !has_designation() && machine.empty() && year == 0 && frame.empty() && market.empty() &&
         sides.empty() && assemblies.empty() && kinds.empty() && parts.empty() && figures.empty() &&
         choices.empty() && quantities.empty() && stages.size() < 2;
}

std::string in_words(const QuestionReading& reading) {
  Sentence sentence;
  sentence.say_each("part", reading.parts, [](const PartAsked& part) { return quoted(part.typed); });
  sentence.say_each("asking for", reading.figures, spaced);
  sentence.say_each("with", reading.choices, spaced);
  sentence.say_each("side", reading.sides, spaced);
  sentence.say_each("thread", reading.threads, [](const Thread& thread) { return to_text(thread); });
  sentence.say("hand", reading.hand);
  sentence.say_each("drive", reading.drives, [](const Drive& drive) { return to_text(drive); });
  sentence.say_each("size", reading.sizes, [](const Size& size) { return to_text(size); });
  sentence.say_each("bearing", reading.bearings, [](const Bearing& bearing) { return to_text(bearing); });
  sentence.say_each("code", reading.codes, as_is);
  sentence.say_each("label", reading.labels, as_is);
  sentence.say_each("number", reading.numbers, as_is);
  sentence.say_each("measure", reading.lengths, length_words);
  sentence.say_each("figure", reading.quantities, [](const QuantityAsked& asked) { return asked.typed; });
  sentence.say_each("stage", reading.stages, as_is);
  sentence.say("pattern", reading.pattern);
  sentence.say_each("in", reading.units, [](const Unit* unit) { return std::string(unit->symbol); });
  sentence.say_each("kind", reading.kinds, as_is);
  sentence.say_each("assembly", reading.assemblies, spaced);
  sentence.say("machine", reading.machine);
  sentence.say("year", years_asked(reading));
  sentence.say("frame", reading.frame);
  sentence.say("market", reading.market);
  return sentence.take();
}

}  // namespace sheaf
