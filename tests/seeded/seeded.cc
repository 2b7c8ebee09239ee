// SPDX-License-Identifier: GPL-2.0-or-later
// How many of the mistakes that writers make does the compiler see? Puts one at a time into the good
// sheets, compiles, and counts. Prints a table; ends with 1 where the reach is not what is asked.
//
//   seeded [--each N] [--seed N] [--keep FILE] FOLDER    N mistakes of each kind (default 50, seed 20261125)
#include <algorithm>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <set>
#include <thread>

#include "compiler/check/check.h"
#include "compiler/sheet/workspace.h"
#include "tests/seeded/seeding.h"

namespace {

using namespace sheafc;
using namespace seeded;

struct Options {
  int each = 50;
  unsigned seed = 20261125;
  std::string folder;
  std::string kept;  // where the table goes besides the terminal
};

// Good sheets, and what is said of them as they are.
struct Fleet {
  Workspace workspace;
  LinkedSheets linked;
  std::multiset<std::string> said;
  Diagnostics reports;
};

std::string key_of(const Diagnostic& report) { return std::string(report.rule) + "|" + report.message; }

Fleet read_fleet(const std::string& folder) {
  Fleet fleet;
  auto read = read_workspace(std::vector<std::string>{folder}, fleet.reports);
  if (!read) {
    std::fprintf(stderr, "seeded: %s\n", read.failure().message.c_str());
    std::exit(2);
  }
  fleet.workspace = std::move(read).value();
  fleet.linked = link_sheets(fleet.workspace.sheets, {}, fleet.reports, fleet.workspace.unread);
  run_rules(fleet.linked, {.today = {}, .threads = 1}, fleet.reports);
  fleet.reports.sort();
  for (const Diagnostic& report : fleet.reports.all()) fleet.said.insert(key_of(report));
  return fleet;
}

// The sheet's text with the mistake in it.
std::string sown(std::string_view text, std::vector<Edit> edits) {
  std::ranges::sort(edits, std::greater<>(), &Edit::at);
  std::string changed(text);
  for (const Edit& edit : edits) changed.replace(edit.at, edit.length, edit.text);
  return changed;
}

// What is said of the sheets with one mistake, and was not said without it.
Diagnostics new_reports(Fleet& fleet, const LinkedSheet& sheet, const Seeding& seeding) {
  const SourceFile& file = *sheet.sheet->file;
  Diagnostics sink;
  const SheetText text{sheet.sheet->path, sown(file.bytes(), seeding.edits)};
  Workspace own = read_texts({&text, 1}, sink);
  auto& sheets = fleet.workspace.sheets;
  const auto at = std::ranges::find_if(sheets, [&](const auto& each) { return each.get() == sheet.sheet; });
  std::shared_ptr<Sheet> good = std::move(*at);
  if (!own.sheets.empty())
    *at = std::move(own.sheets.front());
  else
    sheets.erase(at);
  {
    const LinkedSheets linked = link_sheets(sheets, {}, sink, own.unread);
    run_rules(linked, {.today = {}, .threads = 1}, sink);
    sink.sort();
  }
  if (own.sheets.empty())
    sheets.insert(std::ranges::find_if(sheets, [&](const auto& each) { return each->name > good->name; }),
                  std::move(good));
  else
    *at = std::move(good);
  Diagnostics fresh;
  auto said = fleet.said;
  for (const Diagnostic& report : sink.all()) {
    if (const auto found = said.find(key_of(report)); found != said.end())
      said.erase(found);
    else
      fresh.report(report);
  }
  return fresh;
}

struct Tally {
  int sown = 0, error = 0, warning = 0, note = 0, missed = 0, slips_asked = 0, slips_named = 0;
};

void count(Tally& tally, const Diagnostics& fresh, const Seeding& seeding) {
  ++tally.sown;
  const bool any_note = !fresh.all().empty();
  if (fresh.errors())
    ++tally.error;
  else if (fresh.warnings())
    ++tally.warning;
  else if (any_note)
    ++tally.note;
  else
    ++tally.missed;
  if (seeding.slip.empty()) return;
  ++tally.slips_asked;
  tally.slips_named += std::ranges::any_of(fresh.all(), [&](const Diagnostic& report) {
    return report.message.find(seeding.slip) != std::string::npos;
  });
}

// The same number of each kind: entries that offer a place, taken in an order that the seed fixes, and
// taken again with other chances where there are fewer.
Tally sow_kind(Fleet& fleet, const Mistake& mistake, const Options& options, unsigned salt) {
  Random random(options.seed + salt);
  std::vector<const LinkedEntry*> entries;
  for (const LinkedSheet& sheet : fleet.linked.own()) {
    if (sheet.assembly().empty()) continue;
    for (const LinkedEntry& entry : sheet.entries) entries.push_back(&entry);
  }
  std::ranges::shuffle(entries, random);
  Tally tally;
  for (int round = 0; round < options.each && tally.sown < options.each; ++round) {
    const int before = tally.sown;
    for (const LinkedEntry* entry : entries) {
      if (tally.sown == options.each) break;
      const auto seeding = mistake.sow(*entry, random);
      if (!seeding) continue;
      const Diagnostics fresh = new_reports(fleet, *entry->sheet, *seeding);
      if (std::getenv("SEEDED_SHOW_MISSES") && fresh.errors() + fresh.warnings() == 0) {
        std::fprintf(stderr, "missed: %s: %s %s -> %s\n", std::string(mistake.name).c_str(),
                     entry->address.c_str(), entry->variant.c_str(), seeding->edits.front().text.c_str());
      }
      count(tally, fresh, *seeding);
    }
    if (tally.sown == before) break;
  }
  return tally;
}

std::vector<Tally> sow_all(const Options& options) {
  const auto& mistakes = all_mistakes();
  std::vector<Tally> tallies(mistakes.size());
  const unsigned workers = std::max(1u, std::thread::hardware_concurrency());
  std::vector<std::thread> threads;
  for (unsigned worker = 0; worker < workers; ++worker) {
    threads.emplace_back([&, worker] {
      Fleet fleet = read_fleet(options.folder);
      for (std::size_t i = worker; i < mistakes.size(); i += workers)
        tallies[i] = sow_kind(fleet, mistakes[i], options, static_cast<unsigned>(i));
    });
  }
  for (std::thread& thread : threads) thread.join();
  return tallies;
}

double caught_share(const Mistake& mistake, const Tally& tally) {
  const int caught = tally.error + tally.warning + (mistake.asked == Asked::note ? tally.note : 0);
  return tally.sown ? static_cast<double>(caught) / tally.sown : 0;
}

// What is printed and, if so wished, kept.
class Table {
 public:
  [[gnu::format(printf, 2, 3)]] void add(const char* form, ...) {
    std::va_list values;
    va_start(values, form);
    char line[400];
    std::vsnprintf(line, sizeof line, form, values);
    va_end(values);
    text_ += line;
  }
  bool show_and_keep(const std::string& path) const {
    std::fputs(text_.c_str(), stdout);
    return path.empty() || (std::ofstream(path) << text_).flush().good();
  }

 private:
  std::string text_;
};

void print_row(Table& table, const Mistake& mistake, const Tally& tally) {
  table.add("| %d | %s | %d | %d | %d | %d | %d | %.0f %% |", mistake.number,
            std::string(mistake.name).c_str(), tally.sown, tally.error, tally.warning, tally.note,
            tally.missed, 100 * caught_share(mistake, tally));
  if (tally.slips_asked)
    table.add(" %.0f %% |\n", 100.0 * tally.slips_named / tally.slips_asked);
  else
    table.add(" |\n");
}

int report(Table& table, const Options& options, const std::vector<Tally>& tallies) {
  const auto& mistakes = all_mistakes();
  table.add(
      "| # | mistake | sown | error | warning | note | missed | caught | slip named |\n|--|--|--|--|--|--|--|--|--|\n");
  int total = 0, impossible = 0, impossible_caught = 0, kinds = 0;
  double shares = 0;
  for (std::size_t i = 0; i < mistakes.size(); ++i) {
    if (mistakes[i].asked == Asked::peers) continue;
    print_row(table, mistakes[i], tallies[i]);
    total += tallies[i].sown;
    shares += caught_share(mistakes[i], tallies[i]);
    ++kinds;
    if (mistakes[i].asked != Asked::impossible) continue;
    impossible += tallies[i].sown;
    impossible_caught += tallies[i].error + tallies[i].warning;
  }
  table.add("\nSeen only among five or more of their like:\n\n");
  for (std::size_t i = 0; i < mistakes.size(); ++i) {
    if (mistakes[i].asked == Asked::peers) print_row(table, mistakes[i], tallies[i]);
  }
  const Fleet fleet = read_fleet(options.folder);
  std::size_t entries = 0;
  for (const LinkedSheet& sheet : fleet.linked.own())
    entries += sheet.assembly().empty() ? 0 : sheet.entries.size();
  const double impossible_share = impossible ? static_cast<double>(impossible_caught) / impossible : 0;
  table.add("\n%d mistakes of %d kinds. Impossible figures caught: %.1f %%. Mean over kinds: %.1f %%.\n",
            total, kinds, 100 * impossible_share, 100 * shares / kinds);
  table.add("On the untouched sheets (%zu entries): %d errors, %d warnings.\n", entries,
            fleet.reports.errors(), fleet.reports.warnings());
  const bool quiet =
      fleet.reports.errors() == 0 && static_cast<std::size_t>(fleet.reports.warnings()) * 300 <= entries;
  const bool none_missing = std::ranges::all_of(tallies, [](const Tally& tally) { return tally.sown > 0; });
  return impossible_share >= 0.98 && shares / kinds >= 0.90 && quiet && none_missing ? 0 : 1;
}

}  // namespace

int main(int count, char** words) {
  Options options;
  for (int i = 1; i < count; ++i) {
    if (!std::strcmp(words[i], "--each") && i + 1 < count)
      options.each = std::atoi(words[++i]);
    else if (!std::strcmp(words[i], "--seed") && i + 1 < count)
      options.seed = static_cast<unsigned>(std::atoi(words[++i]));
    else if (!std::strcmp(words[i], "--keep") && i + 1 < count)
      options.kept = words[++i];
    else
      options.folder = words[i];
  }
  if (options.folder.empty() || options.each < 1) {
    std::fprintf(stderr, "usage: seeded [--each N] [--seed N] [--keep FILE] FOLDER\n");
    return 2;
  }
  Table table;
  const int reached = report(table, options, sow_all(options));
  if (table.show_and_keep(options.kept)) return reached;
  std::fprintf(stderr, "seeded: error: cannot write %s\n", options.kept.c_str());
  return 2;
}
