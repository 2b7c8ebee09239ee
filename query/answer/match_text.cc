// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/match_text.h"

#include <algorithm>

namespace sheaf {
namespace {

constexpr std::string_view other_order = "in another order than written";

// Its address, and its library where several were asked.
std::string place_of(const MatchedPart& part) {
  return part.entry.address + (part.entry.library.empty() ? "" : " in " + part.entry.library);
}

// What the part is, how many there are, and its address.
Line about(const MatchedPart& part) {
  Line line(part.entry.name);
  if (!part.count.empty()) line.add(" · " + part.count, Tone::act);
  if (!part.details.empty()) line.add(" · " + part.details);
  if (const auto number = number_words(part.number); !number.empty()) line.add(" · number " + number);
  line.add(" · " + place_of(part), Tone::quiet);
  return line;
}

using Rows = std::vector<std::vector<Line>>;

void add_rows(Rows& rows, std::string_view label, const std::vector<MatchedPart>& parts) {
  bool first = true;
  for (const auto& part : parts) {
    rows.push_back({Line(first ? label : "", Tone::act), Line(part.size, Tone::figure), about(part)});
    if (!part.within.empty()) rows.push_back({Line(), Line(), Line(part.within, Tone::quiet)});
    if (!part.usual_order) rows.push_back({Line(), Line(), Line(other_order, Tone::caution)});
    if (!part.number.caveat.empty())
      rows.push_back({Line(), Line(), Line(part.number.caveat, Tone::caution)});
    first = false;
  }
}

void add_near(Rows& rows, const std::vector<MatchedPart>& parts, std::size_t most) {
  for (std::size_t i = 0; i < std::min(parts.size(), most); ++i)
    rows.push_back(
        {Line(i == 0 ? "NOT the same" : "", Tone::caution), Line(parts[i].size, Tone::figure),
         Line(parts[i].differs).add(" · " + parts[i].entry.name + " · " + place_of(parts[i]), Tone::quiet)});
  if (parts.size() > most)
    rows.push_back(
        {Line(), Line(),
         Line("and " + std::to_string(parts.size() - most) + " more; --all lists them", Tone::quiet)});
}

void write_meanings(Page& page, const Matches& matches) {
  for (std::size_t i = 0; i < matches.meanings.size(); ++i)
    page.labelled(i == 0 ? "says" : "", Line(matches.meanings[i].part).add("  " + matches.meanings[i].says));
}

// A published size comes from its table's source; a part of the fleet from its sheet's.
std::vector<std::string> sources_of(const Matches& matches) {
  std::vector<std::string> sources;
  for (const auto* list : {&matches.same, &matches.within})
    for (const auto& part : *list) {
      const auto& source = part.entry.source;
      std::string text = source.title + (source.note.empty() ? "" : ": " + source.note);
      if (!source.title.empty() && std::ranges::find(sources, text) == sources.end())
        sources.push_back(std::move(text));
    }
  return sources;
}

void write_sources(Page& page, const Matches& matches) {
  constexpr std::size_t most = 3;
  const auto sources = sources_of(matches);
  for (std::size_t i = 0; i < std::min(sources.size(), most); ++i)
    page.labelled(i == 0 ? "source" : "", Line(sources[i], Tone::quiet));
  if (sources.size() > most)
    page.labelled("",
                  Line("and " + std::to_string(sources.size() - most) + " more; sheaf show ADDRESS says each",
                       Tone::quiet));
}

void write_parts(JsonWriter& json, std::string_view key, const std::vector<MatchedPart>& parts) {
  json.key(key).begin_array();
  for (const auto& part : parts) {
    json.begin_object();
    json.member("size", part.size);
    json.member("name", part.entry.name);
    json.member("kind", part.entry.kind);
    json.member("address", part.entry.address);
    json.member_if("variant", part.entry.variant);
    json.member_if("library", part.entry.library);
    json.member_if("differs", part.differs);
    json.member_if("within", part.within);
    json.member_if("count", part.count);
    json.member_if("details", part.details);
    if (!part.number.numbers.empty()) {
      json.member("part-number", part.number.numbers.front());
      json.member("order", part.number.order());
    }
    json.member_if("caveat", part.number.caveat);
    json.key("usual-order").boolean(part.usual_order);
    json.member_if("source", part.entry.source.title);
    json.end_object();
  }
  json.end_array();
}

}  // namespace

void write_text(Page& page, const Matches& matches, std::size_t most_near) {
  if (!matches.found()) page.line(Line("Nothing matches this.", Tone::act), 2);
  page.labelled("read as", Line(matches.read_as));
  write_meanings(page, matches);
  Rows rows;
  add_rows(rows, "fits", matches.same);
  add_rows(rows, "within", matches.within);
  add_rows(rows, "other use", matches.other_use);
  add_near(rows, matches.near, most_near);
  page.rows(rows, 2);
  if (matches.more)
    page.labelled("note", Line("the libraries hold more of this size than is listed; give more dimensions, "
                               "or a machine to sheaf find"));
  for (const auto& caution : matches.cautions) page.labelled("caution", Line(caution, Tone::caution));
  write_sources(page, matches);
}

void write_json(JsonWriter& json, const Matches& matches) {
  json.begin_object();
  json.member("typed", matches.typed);
  json.member("read-as", matches.read_as);
  write_parts(json, "same", matches.same);
  write_parts(json, "within", matches.within);
  write_parts(json, "other-use", matches.other_use);
  write_parts(json, "not-the-same", matches.near);
  json.key("meanings").begin_array();
  for (const auto& meaning : matches.meanings) {
    json.begin_object();
    json.member("part", meaning.part);
    json.member("says", meaning.says);
    json.end_object();
  }
  json.end_array();
  json.key("cautions").begin_array();
  for (const auto& caution : matches.cautions) json.string(caution);
  json.end_array();
  json.key("more").boolean(matches.more);
  json.end_object();
}

}  // namespace sheaf
