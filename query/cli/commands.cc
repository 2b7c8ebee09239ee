// SPDX-License-Identifier: GPL-2.0-or-later
#include <algorithm>
#include <array>

#include "query/cli/command.h"

namespace sheaf {
namespace {

constexpr std::array<CommandInfo, 11> commands = {{
    {"find", "WORDS…", "Answer a question in plain words",
     "Words in any order and case: a part, a machine, a year, a size, a thread, a tool, a figure. An entry\n"
     "that does not fit the named machine and year is never the answer. WORDS of - are read from standard\n"
     "input, one question a line.",
     "sheaf find top plug muleback 2013       the torque of the fork's top plug\n"
     "sheaf find 43x55x9.5                    who takes this seal\n"
     "sheaf find --drive 12mm --machine muleback   every fastener a 12 mm spanner fits",
     make_find},
    {"show", "ADDRESS…", "Show an entry or a whole sheet",
     "An address is sheet/entry, as every answer names it; a sheet alone is listed whole. Earlier addresses\n"
     "still lead to the entry.",
     "sheaf show sorvane-41-rod/top-plug      one entry, with every detail\n"
     "sheaf show sorvane-41-rod               all that the sheet holds",
     make_show},
    {"convert", "QUANTITY [to UNIT]", "Convert a quantity, keeping within its tolerance",
     "Without a unit, every useful unit of its kind answers. QUANTITY of - reads standard input, one a "
     "line;\n"
     "bad lines are marked and the rest is answered.",
     "sheaf convert 35 N·m to lbf·ft          25.8 lbf·ft\n"
     "sheaf convert 35±3 Nm ftlb --step 1     the value to set on a scale of whole pounds-feet\n"
     "sheaf convert 10..60 N·m lbf·ft --every 5    a table for the wall",
     make_convert},
    {"card", "ASSEMBLY", "Everything one assembly's job needs, on a card to print and fill in",
     "ASSEMBLY is a sheet's name, or words with a machine and a year. With --record the card is filled in:\n"
     "what is entered is kept in FILE, checked against the sheet, and printed by --with. It ends with 1 while\n"
     "anything is open or wrong.",
     "sheaf card fork muleback 2013           the card as text\n"
     "sheaf card sorvane-41-rod --html >card.html    for print, on A4 or Letter\n"
     "sheaf card sorvane-41-rod --record job.json --found preload=5 --done top-plug/left",
     make_card},
    {"kit", "JOB[, JOB…]", "What to buy and lay out for one job or a whole service",
     "Jobs are sheets' names, or words parted by commas. A machine alone takes all of its assemblies. It is\n"
     "counted and merged, in whole bottles and pairs, by the numbers that are ordered today.",
     "sheaf kit fork, front brake --machine muleback --year 2013\n"
     "sheaf kit --machine muleback --year 2013 --csv    a whole service, for the clerk",
     make_kit},
    {"wrench", "TORQUE | ADDRESS", "Say what to set on which of the workshop's wrenches",
     "The wrenches, their accuracy and the adapters are those of the crib: a sheet of its own, in any of the\n"
     "libraries. The wrench is chosen that keeps setting ± accuracy inside the band, best margin first.",
     "sheaf wrench 35±3 N·m                   the wrench, and the number to set on its scale\n"
     "sheaf wrench sorvane-41-rod/top-plug    the same for an entry\n"
     "sheaf wrench 35±3 N·m --adapter open-17 --angle 0   with an adapter that lengthens it",
     make_wrench},
    {"match", "SIZE | DESIGNATION", "Say which parts have a measured size, or are so designated",
     "Seals, O-rings, bearings, bushings and threads, of the fleet and of the published tables. What is the\n"
     "same, what is within the caliper's uncertainty and what is NOT the same are told apart. A part named\n"
     "before the size narrows it: fork seal, shaft seal, o-ring, bearing, bushing, thread. --csv reads rows\n"
     "from standard input, with or without a first row of names (part, size, inside, outside, height).",
     "sheaf match 41.1 x 54 x 11              any ring of this size\n"
     "sheaf match fork seal id 43 od 55       by two dimensions\n"
     "sheaf match 6203-2RS                    a bearing, and what its designation says\n"
     "sheaf match 6203 vs 6302                the second beside the first, and what differs\n"
     "sheaf match --csv < measured.csv        row for row, faults marked",
     make_match},
    {"reckon", "TOPIC GIVEN…", "Do the trade's arithmetic: torque, oil, springs, fits",
     "Alone it lists the topics; a topic alone says what it is given, by name and in any order. Every answer\n"
     "names its formula and the formula's source. A computed torque never replaces the maker's.",
     "sheaf reckon torque M8 class 8.8 state oiled     torque for three quarters of the proof load\n"
     "sheaf reckon viscosity 32 mm²/s at 40 °C and 6.1 mm²/s at 100 °C for 0 °C\n"
     "sheaf reckon level bore 37.4 mm length 580 mm volume 512 mL --svg leg.svg    drawn as well",
     make_reckon},
    {"dump", "", "Print everything that the library holds, for other programs",
     "One JSON object a line, each a record as the library keeps it: nothing converted, nothing left out. With --csv\n"
     "one of these tables: sheets, sheet-fields, entries, fields, fits, cautions, former-addresses, machines, words.\n"
     "Whoever shows a figure from it shows its state, its cautions, its source and whether it is withdrawn, too.",
     "sheaf dump >library.jsonl               every record\n"
     "sheaf dump --csv fields >fields.csv     every value of every entry",
     make_dump},
    {"serve", "", "Show the library as a page for a phone or tablet in the shop",
     "It answers on this machine alone unless --listen says otherwise, reads only, and goes on with a new library\n"
     "when the file is replaced. Every page works without scripting. Control-C ends it.",
     "sheaf serve                             a page at http://127.0.0.1:8427/\n"
     "sheaf serve --listen 0.0.0.0 --host bench.local   for the shop's own network\n"
     "sheaf serve --certificate shop.pem --key shop.key    by https, so that it works offline",
     make_serve},
    {"about", "", "Say which library answers, and what is in it", "",
     "sheaf about                             name, date, size, digest\n"
     "sheaf about --verify                    read and check every byte of it",
     make_about},
}};

}  // namespace

std::span<const CommandInfo> all_commands() { return commands; }

const CommandInfo* command_named(std::string_view name) {
  const auto* found = std::ranges::find(commands, name, &CommandInfo::name);
  return found == commands.end() ? nullptr : found;
}

void declare_library(Flags& flags, Common& common) {
  flags.texts("--library", common.libraries, "FILE",
              "Ask this library; again for several, the first going first");
}

void declare_output(Flags& flags, Common& common) {
  flags.flag("--json", common.json, "Answer with one JSON document");
  const auto set = [&common](const std::string& when) {
    common.colour = when == "always" ? Colour::always : when == "never" ? Colour::never : Colour::automatic;
  };
  flags.one_of("--color", set, {"auto", "always", "never"}, "WHEN", "auto, always or never");
  flags.action(
      "--no-color", [&common] { common.colour = Colour::never; }, "As --color never");
}

}  // namespace sheaf
