// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/cli/card_entering.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>

#include "query/answer/answer_json.h"
#include "query/answer/record_check.h"
#include "query/answer/text.h"
#include "query/cli/flags.h"
#include "query/library/near_word.h"
#include "query/library/whole_file.h"

namespace sheaf {
namespace {

using Fault = std::optional<Failure>;

bool is_box(const CardItem& item) {
  return item.deed == Deed::made_sure || item.deed == Deed::done || item.deed == Deed::tightened ||
         item.deed == Deed::filled;
}

std::string entry_of(const CardItem& item) { return item.id.substr(0, item.id.find('/')); }

// Puts into a record what a person names; each change says what it is of.
class Enterer {
 public:
  Enterer(const Card& card, CardRecord& record) : card_(card), record_(record) {}

  // "top-plug", "top-plug/left", "head-bolts/stage-2", or an item's whole name.
  Fault tick(const std::string& named, bool ticked) {
    bool any = false;
    for (const CardItem* item : card_.items()) {
      if (!is_box(*item) || !is_meant(*item, named)) continue;
      any = true;
      ticked ? (void)record_.ticked.insert(item->id) : (void)record_.ticked.erase(item->id);
      remember_figure(*item);
    }
    return any ? Fault() : unknown(named);
  }

  // "preload/left=4 turns"; without a place, every place.
  Fault write(const std::string& typed, Deed deed) {
    const auto split = typed.find('=');
    if (split == std::string::npos)
      return Failure{"'" + typed + "' is not ENTRY=VALUE, as in preload/left=4 turns"};
    const std::string named = typed.substr(0, split), value = typed.substr(split + 1);
    bool any = false;
    for (const CardItem* item : card_.items()) {
      if (item->deed != deed || !is_meant(*item, named)) continue;
      any = true;
      if (auto fault = write(*item, value)) return fault;
    }
    return any ? Fault() : unknown(named);
  }

  Fault write(const CardItem& item, const std::string& value) {
    const CardEntry* entry = card_.entry_named(entry_of(item));
    if (value.empty()) {
      record_.written.erase(item.id);
      return std::nullopt;
    }
    if (entry && judge(*entry, value) == Judgement::unreadable)
      return Failure{name_of(card_, item) + ": '" + value + "' is no figure in " + item.unit};
    record_.written[item.id] = value;
    remember_figure(item);
    return std::nullopt;
  }

  Fault write_job(const std::string& typed) {
    const auto split = typed.find('=');
    const std::string key = typed.substr(0, split);
    const auto fields = job_fields();
    if (split == std::string::npos || std::ranges::find(fields, key, &JobField::key) == fields.end())
      return Failure{"'" + typed + "' is not FIELD=VALUE with one of " + field_names()};
    record_.job[key] = typed.substr(split + 1);
    if (record_.job[key].empty()) record_.job.erase(key);
    return std::nullopt;
  }

 private:
  static std::string field_names() {
    std::vector<std::string> names;
    for (const auto& field : job_fields()) names.emplace_back(field.key);
    return joined(names, ", ");
  }

  static bool is_meant(const CardItem& item, const std::string& named) {
    if (item.id == named || item.id.starts_with(named + "/")) return true;
    const std::string entry = entry_of(item), rest = item.id.substr(item.id.find('/') + 1);
    const auto after_deed = rest.find('/');
    if (after_deed == std::string::npos) return named == entry;
    const std::string short_name = entry + rest.substr(after_deed);
    return short_name == named || short_name.starts_with(named + "/");
  }

  // So that a figure changed later is noticed.
  void remember_figure(const CardItem& item) {
    const CardEntry* entry = card_.entry_named(entry_of(item));
    if (entry) record_.figures[entry->name] = figure_text(*entry);
  }

  Fault unknown(const std::string& named) const {
    std::vector<std::string> names;
    for (const CardItem* item : card_.items()) names.push_back(entry_of(*item));
    const std::vector<std::string_view> views(names.begin(), names.end());
    const auto near = near_word(named.substr(0, named.find('/')), views);
    return Failure{"nothing on the card is called '" + named + "'" +
                   (near.empty() ? "" : "; did you mean '" + std::string(near) + "'?")};
  }

  const Card& card_;
  CardRecord& record_;
};

Fault enter(const Entering& entering, Enterer& enterer) {
  Fault fault;
  const auto each = [&](const std::vector<std::string>& list, auto put) {
    for (const auto& typed : list)
      if (!fault) fault = put(typed);
  };
  each(entering.job, [&](const std::string& typed) { return enterer.write_job(typed); });
  each(entering.done, [&](const std::string& typed) { return enterer.tick(typed, true); });
  each(entering.undo, [&](const std::string& typed) { return enterer.tick(typed, false); });
  each(entering.found, [&](const std::string& typed) { return enterer.write(typed, Deed::found); });
  each(entering.measured, [&](const std::string& typed) { return enterer.write(typed, Deed::measured); });
  each(entering.set, [&](const std::string& typed) { return enterer.write(typed, Deed::set); });
  return fault;
}

// One line of standard input; none at its end.
std::optional<std::string> read_line() {
  constexpr std::size_t longest = 4000;
  std::string line;
  for (char sign = 0;;) {
    const ssize_t got = ::read(STDIN_FILENO, &sign, 1);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return line.empty() ? std::nullopt : std::optional(line);
    if (sign == '\n') return line;
    if (line.size() < longest && sign != '\r') line += sign;
  }
}

// Asks for what is open, in the order of the card. An empty line leaves an item open; "quit" or the end of
// the input stops. What was answered is kept at once.
ExitStatus ask(const Card& card, CardRecord& record, const std::string& file) {
  Enterer enterer(card, record);
  print("Enter keeps an item open, y ticks a box, quit stops; every answer is kept at once.\n");
  for (const CardItem* item : card.items()) {
    if (record.ticked.contains(item->id) || record.written.contains(item->id)) continue;
    for (;;) {
      const CardEntry* entry = card.entry_named(entry_of(*item));
      std::string question = name_of(card, *item);
      if (entry && !figure_text(*entry).empty()) question += " [" + figure_text(*entry) + "]";
      print(question + (is_box(*item) ? " y? " : item->unit.empty() ? ": " : " in " + item->unit + ": "));
      flush_output();
      const auto line = read_line();
      if (!line || *line == "quit") return ExitStatus::done;
      if (line->empty()) break;
      const auto fault = is_box(*item) ? (*line == "y" || *line == "yes"
                                              ? enterer.tick(item->id, true)
                                              : Fault(Failure{"y ticks it, Enter leaves it open"}))
                                       : enterer.write(*item, *line);
      if (fault) {
        say(fault->message);
        continue;
      }
      if (auto failed = replace_file(file, to_json(record))) {
        say_error(failed->message);
        return ExitStatus::trouble;
      }
      break;
    }
  }
  return ExitStatus::done;
}

void print_findings(const std::vector<Finding>& findings, const EnteringStyle& style,
                    const std::string& file) {
  Page page(output_style(style.colour));
  for (const auto& finding : findings) {
    const auto label = finding.weight == Weight::wrong  ? "wrong"
                       : finding.weight == Weight::open ? "open"
                                                        : "note";
    page.labelled(label, Line(finding.text, finding.weight == Weight::wrong ? Tone::caution : Tone::plain));
  }
  if (findings.empty()) page.line(Line("Everything is filled in, and nothing is beyond its limit."), 2);
  page.labelled("kept in", Line(file));
  print(page.take());
}

void print_json(const std::vector<Finding>& findings, const CardRecord& record) {
  constexpr std::string_view weights[] = {"wrong", "open", "note"};
  JsonWriter json;
  json.begin_object();
  json.key("schema").number(json_schema);
  json.member("sheet", record.sheet);
  json.key("findings").begin_array();
  for (const auto& finding : findings) {
    json.begin_object();
    json.member("weight", weights[static_cast<std::size_t>(finding.weight)]);
    json.member_if("item", finding.id);
    json.member("text", finding.text);
    json.end_object();
  }
  json.end_array();
  json.end_object();
  print(json.text() + "\n");
}

}  // namespace

bool Entering::is_empty() const {
  return done.empty() && undo.empty() && found.empty() && measured.empty() && set.empty() && job.empty() &&
         !ask;
}

void declare_entering(Flags& flags, Entering& entering) {
  flags.texts("--done", entering.done, "ITEM", "Tick: top-plug, top-plug/left, identify/1");
  flags.texts("--undo", entering.undo, "ITEM", "Take a tick back");
  flags.texts("--found", entering.found, "ITEM=VALUE", "A setting as found: preload/left=4 turns");
  flags.texts("--measured", entering.measured, "ITEM=VALUE", "A measured value: tube-runout/left=0.05 mm");
  flags.texts("--set", entering.set, "ITEM=VALUE", "A setting as put back");
  flags.texts("--job", entering.job, "FIELD=VALUE", "number, frame, distance, on, by, second or note");
  flags.flag("--ask", entering.ask, "Ask for every open item, one by one");
}

Result<std::optional<CardRecord>> read_record(const std::string& file) {
  const auto text = read_file(file, longest_record);
  if (!text) return text.failure();
  if (!*text) return std::optional<CardRecord>();
  auto record = parse_record(**text);
  if (!record) return Failure{file + ": " + record.failure().message};
  return std::optional(std::move(record).value());
}

ExitStatus enter_and_check(const Card& card, const std::string& file, const Entering& entering,
                           const EnteringStyle& style) {
  const auto trouble = [](const std::string& message) {
    say_error(message);
    return ExitStatus::trouble;
  };
  auto kept = read_record(file);
  if (!kept) return trouble(kept.failure().message);
  CardRecord record = kept->value_or(new_record(card));
  if (record.sheet != card.sheet.name)
    return trouble(file + " is a record of " + record.sheet + ", not of " + card.sheet.name);
  Enterer enterer(card, record);
  if (auto fault = enter(entering, enterer)) return trouble(fault->message);
  record.job.try_emplace("on", style.today);
  if (!*kept || !entering.is_empty())
    if (auto fault = replace_file(file, to_json(record))) return trouble(fault->message);
  if (entering.ask)
    if (const auto status = ask(card, record, file); status != ExitStatus::done) return status;
  const auto findings = check_record(record, card);
  style.json ? print_json(findings, record) : print_findings(findings, style, file);
  const bool is_complete =
      std::ranges::all_of(findings, [](const Finding& each) { return each.weight == Weight::note; });
  return is_complete ? ExitStatus::done : ExitStatus::nothing;
}

}  // namespace sheaf
