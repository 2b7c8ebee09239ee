// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/answer_html.h"

#include <algorithm>

#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr int widest_huge = 7, widest_large = 18;  // signs
constexpr std::size_t machines_at_the_bench = 3;

// What follows from the source's own figure is marked, and says whether a digit was rounded.
std::string derived_words(const Derived& derived) { return (derived.exact ? "= " : "≈ ") + derived.lead; }

std::string with_band(const std::string& lead, const std::string& band) {
  return band.empty() ? lead : lead + " (" + band + ")";
}

std::string with_name(const Derived& derived) {
  const auto name = spelled_out(*derived.unit);
  return with_band(derived_words(derived), derived.band) + (name.empty() ? "" : " " + std::string(name));
}

std::string on_one_line(const Value& value, const PreferredUnits& units) {
  const ShownFigure shown = shown_figure(value, units);
  std::string words = with_band(shown.lead, shown.band);
  for (const auto& beside : shown.beside) words += ", " + beside;
  return shown.conditions.empty() ? words : words + ", " + shown.conditions;
}

std::string figure_html(const ShownFigure& shown) {
  return lead_html(shown.lead) + " " +
         (shown.band.empty() ? "" : "<span class=\"band\">" + escaped(shown.band) + "</span> ");
}

std::string name_html(const Answer& answer, const Asking& asking) {
  return link(address_of("/entry/" + answer.address, carried(asking.request)), answer.name);
}

// The figure and the name are one heading: they are heard together.
std::string head_html(const Answer& answer, const Asking& asking, bool whole) {
  const std::string name =
      "<span class=\"name\">" + (whole ? escaped(answer.name) : name_html(answer, asking)) + "</span>";
  if (!answer.entry.withdrawn.empty()) {
    const auto& withdrawal = answer.entry.withdrawn.front();
    return "<h1>" + name + "</h1>\n" +
           element("p", "caution", "Withdrawn " + withdrawal.on + ": " + withdrawal.reason);
  }
  std::string head;
  for (const auto& missing : answer.missing) head += element("p", "act", "no " + missing + " recorded");
  if (answer.figures.empty()) return head + "<h1>" + name + "</h1>\n";
  const ShownFigure shown = shown_figure(answer.figures.front(), units_of(asking.request));
  head += "<h1>" + figure_html(shown) + name + "</h1>\n";
  head += element("p", "beside", joined(shown.beside, "  "));
  std::vector<std::string> acts = answer.acts;
  if (!shown.conditions.empty()) acts.insert(acts.begin(), shown.conditions);
  return head + element("p", "act", joined(acts, " · "));
}

std::string machines_html(const Answer& answer, bool whole) {
  const std::size_t shown =
      whole ? answer.machines.size() : std::min(answer.machines.size(), machines_at_the_bench);
  std::string lines = element("p", "marks", joined(answer.marks, " · "));
  for (std::size_t i = 0; i < shown; ++i) lines += element("p", "machine", answer.machines[i]);
  if (const auto hidden = answer.machines.size() - shown)
    lines += element("p", "quiet", "and " + std::to_string(hidden) + " more machines");
  if (answer.machines.empty()) lines += element("p", "machine", answer.sheet_title);
  return lines;
}

bool is_said_at_the_bench(const std::string& key) {
  return key == "notes" || key == "part-number" || key.starts_with("supersede");
}

void add_doubts(Facts& facts, const Answer& answer) {
  for (const auto& dispute : answer.disputes)
    facts.add("disputed", "also stated: " + dispute + "; take no value between", "act");
  const auto& status = answer.entry.status;
  if (!status.empty() && status != "maker-paper") facts.add("status", in_words(status), "act");
}

std::string facts_html(const Answer& answer, const Asking& asking, bool whole) {
  Facts facts;
  const auto units = units_of(asking.request);
  const bool withdrawn = !answer.entry.withdrawn.empty();
  if (withdrawn) {
    const auto& instead = answer.entry.withdrawn.front().instead;
    if (instead.empty())
      facts.add("instead", "nothing recorded; take the maker's manual");
    else
      facts.add_markup("instead", link(address_of("/entry/" + instead, carried(asking.request)), instead));
  } else {
    for (std::size_t i = 1; i < answer.figures.size(); ++i)
      facts.add(answer.figures[i].label, on_one_line(answer.figures[i], units));
    for (const auto& line : answer.set) facts.add("set", line, "set");
    for (const auto& detail : answer.details)
      if (whole || is_said_at_the_bench(detail.key)) facts.add(detail.label, on_one_line(detail, units));
    add_doubts(facts, answer);
  }
  for (const auto& caution : answer.entry.cautions) facts.add("caution", caution.text, "caution");
  facts.add("source", source_line(answer.entry));
  facts.add("address", answer.address + (answer.variant.empty() ? "" : " for " + answer.variant) +
                           (answer.library.empty() ? "" : " in " + answer.library));
  if (whole && !answer.entry.place.file.empty())
    facts.add("written", answer.entry.place.file + ":" + std::to_string(answer.entry.place.line));
  return facts.finish();
}

}  // namespace

ShownFigure shown_figure(const Value& value, const PreferredUnits& units) {
  ShownFigure shown{value.lead, value.band, value.conditions, {}};
  const auto wanted = std::ranges::find_if(value.derived, [&](const Derived& derived) {
    return std::ranges::find(units, derived.unit) != units.end();
  });
  if (wanted != value.derived.end()) {
    shown.lead = derived_words(*wanted);
    shown.band = wanted->band;
    const auto name = spelled_out(*wanted->unit);
    if (!name.empty()) shown.beside.emplace_back(name);
    shown.beside.push_back("as written " + with_band(value.lead, value.band));
  }
  for (auto derived = value.derived.begin(); derived != value.derived.end(); ++derived)
    if (derived != wanted) shown.beside.push_back(with_name(*derived));
  return shown;
}

std::string_view size_class(std::string_view lead) {
  const int width = display_width(lead);
  return width <= widest_huge ? "huge" : width <= widest_large ? "large" : "words";
}

std::string lead_html(const std::string& lead) {
  std::string markup = "<span class=\"figure " + std::string(size_class(lead)) + "\">";
  std::string_view rest = lead;
  for (const std::string_view mark : {"≈ ", "= "})
    if (rest.starts_with(mark)) {
      markup += "<span class=\"mark\">" + escaped(mark.substr(0, mark.size() - 1)) + "</span> ";
      rest.remove_prefix(mark.size());
    }
  return markup + escaped(rest) + "</span>";
}

std::string answer_html(const Answer& answer, const Asking& asking, bool whole) {
  return "<article class=\"answer\">\n" + head_html(answer, asking, whole) + machines_html(answer, whole) +
         facts_html(answer, asking, whole) + notice_html(answer.invented) + "</article>\n";
}

std::string answer_item_html(const Answer& answer, const Asking& asking) {
  std::string item = "<li>";
  const bool withdrawn = !answer.entry.withdrawn.empty();
  if (withdrawn)
    item += "<span class=\"figure words\">withdrawn</span> ";
  else if (!answer.figures.empty()) {
    const ShownFigure shown = shown_figure(answer.figures.front(), units_of(asking.request));
    item += figure_html(shown) + element("span", "beside", joined(shown.beside, "  "));
  }
  item += "<span class=\"name\">" + name_html(answer, asking) + "</span>\n";
  std::vector<std::string> acts = answer.acts;
  if (!withdrawn && !answer.figures.empty() && !answer.figures.front().conditions.empty())
    acts.insert(acts.begin(), answer.figures.front().conditions);
  item += element("p", "act", joined(acts, " · "));
  std::string machine = answer.machines.empty() ? answer.sheet_title : answer.machines.front();
  if (answer.machines.size() > 1) machine += " and " + std::to_string(answer.machines.size() - 1) + " more";
  item += element("p", "machine", machine + (answer.variant.empty() ? "" : " · for " + answer.variant));
  if (!answer.set.empty()) item += element("p", "set", "set " + joined(answer.set, "; "));
  return item + "</li>\n";
}

std::string notice_html(bool invented) {
  return element(
      "p", "notice",
      (invented ? std::string(invented_notice) + " " : std::string()) + std::string(authority_notice));
}

std::string report_html(const std::vector<Answer>& answers, const Asking& asking,
                        const std::string& read_as) {
  std::string lines = "A figure seems wrong.\n";
  if (!read_as.empty())
    lines += escaped("asked: " + asking.given("q")) + "\n" + escaped("read as: " + read_as) + "\n";
  for (const auto& answer : answers) {
    const std::string conditions = conditions_of(answer);
    lines +=
        escaped("address: " + answer.address + (answer.variant.empty() ? "" : " (" + answer.variant + ")")) +
        "\n";
    lines += escaped("reads: " + answer.name + ", " + short_figure(answer) +
                     (conditions.empty() ? "" : ", " + conditions)) +
             "\n";
    lines += escaped("source: " + source_line(answer.entry)) + "\n";
  }
  lines += escaped("library: " + asking.opened.name() + ", data of " + asking.opened.data_date() +
                   ", digest " + asking.opened.digest()) +
           "\nshould read: ";
  return "<details class=\"report\">\n<summary>Report this figure</summary>\n<label for=\"report\">Copy this to "
         "whoever keeps the sheets:</label>\n<textarea id=\"report\" rows=\"7\" readonly>" +
         lines + "</textarea>\n</details>\n";
}

}  // namespace sheaf
