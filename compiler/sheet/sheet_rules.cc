// SPDX-License-Identifier: GPL-2.0-or-later
// In the order in which a sheet is read: what it is, its keys, its values, its rows.
#include "compiler/sheet/sheet_rules.h"

namespace sheafc {
namespace {

constexpr Severity error = Severity::error;

// clang-format off
constexpr RuleInfo rules[] = {
    {rule::unknown_form, error, "a sheet that is neither assembly, table, words nor crib, or two of them",
     "The form says which keys may stand on the sheet and what becomes of them. Without it nothing else on the sheet "
     "can be judged.",
     "sheet: example\ntitle: A fork\n", "sheet: example\ntitle: A fork\nassembly: fork\n"
     "source: { title: Sorvane fork service leaflet 41 }\nchecked: { on: 2026-10-02, by: workshop }\n"},
    {rule::file_name, error, "a file whose name cannot be a sheet's name",
     "The file's name is the sheet's, and the first part of each of its addresses. It must stay the same in a link, on "
     "a printed card and on any disk, so it has lower-case letters, digits and hyphens.",
     "# file: Front Fork.yaml\nsheet: front-fork\n", "# file: front-fork.yaml\nsheet: front-fork\n"},
    {rule::sheet_name, error, "a sheet that calls itself otherwise than its file",
     "A copied file whose name was changed and whose first line was not would answer under the other's address.",
     "# file: rear-shock.yaml\nsheet: front-fork\n", "# file: rear-shock.yaml\nsheet: rear-shock\n"},
    {rule::unknown_key, error, "a key that this place does not have",
     "A misspelt key would be passed over in silence, and the figure under it with it.",
     "fasteners:\n  plug: { name: plug, torqe: 28 N·m }\n", "fasteners:\n  plug: { name: plug, torque: 28 N·m }\n"},
    {rule::missing_key, error, "a key that this place needs",
     "Some figures mean nothing without another: a setting without where counting starts, a source without a title.",
     "settings:\n  preload: { name: preload, standard: 4 turns }\n",
     "settings:\n  preload: { name: preload, standard: 4 turns, count-from: fully out }\n"},
    {rule::wrong_shape, error, "a list, a mapping or a single value where another is wanted",
     "A list where one value belongs leaves open which of them holds.",
     "fasteners:\n  plug: { name: plug, torque: [28 N·m, 31 N·m] }\n", "fasteners:\n  plug: { name: plug, torque: 28..31 N·m }\n"},
    {rule::bad_name, error, "a name that is not lower-case letters, digits and hyphens",
     "Names of entries are part of addresses, which stand in links and on cards, are typed by hand and compared letter "
     "by letter.",
     "fasteners:\n  Top Plug: { name: top plug }\n", "fasteners:\n  top-plug: { name: top plug }\n"},
    {rule::duplicate_entry, error, "one name for two entries of a sheet",
     "An address is the sheet and the entry, whatever its section; it must lead to one of them.",
     "fasteners:\n  plug: { name: plug }\nparts:\n  plug: { name: plug }\n",
     "fasteners:\n  plug: { name: plug }\nparts:\n  plug-cover: { name: plug }\n"},
    {rule::split_sentence, Severity::warning, "a sentence that its own comma cuts in two",
     "Inside [ ] a comma begins the next item. A note is then shown as two, and half a caution says something else than "
     "the whole. Quotes keep it whole, as does a line of its own.",
     "notes: [Hold it in soft jaws, not in a bare vice.]\n", "notes: ['Hold it in soft jaws, not in a bare vice.']\n"},
    {rule::repeated_value, error, "one value twice in a list",
     "The second is a slip: another value was meant, or it is too many.",
     "parts:\n  ring: { name: ring, supersedes: [41-2245, 41-2245] }\n", "parts:\n  ring: { name: ring, supersedes: [41-2245, 41-2246] }\n"},
    {rule::unreadable_text, error, "a text that is empty, too long or stands on several lines",
     "A text is shown on one line, beside its figure.",
     "parts:\n  ring: { name: \" \" }\n", "parts:\n  ring: { name: snap ring }\n"},
    {rule::not_a_choice, error, "a word that is none of the choices",
     "Where few answers are possible, a fixed word for each lets rules and searches know what is meant.",
     "fasteners:\n  plug: { name: plug, state: greasy }\n", "fasteners:\n  plug: { name: plug, state: greased }\n"},
    {rule::not_yes_or_no, error, "neither yes nor no",
     "true, on, 1 and y are read in different ways by different programs; a sheet says yes or no.",
     "fluids:\n  oil: { name: oil, purpose: fork-oil, label-only: true }\n", "fluids:\n  oil: { name: oil, purpose: fork-oil, label-only: yes }\n"},
    {rule::unreadable_number, error, "a number that cannot be read as one",
     "A number is taken as written, digit by digit: 1e3, 010 and 0x10 mean different things to different programs.",
     "fasteners:\n  plug: { name: plug, order: second }\n", "fasteners:\n  plug: { name: plug, order: 2 }\n"},
    {rule::decimal_comma, error, "a decimal written with a comma",
     "9,5 is nine and a half to one reader and two values to the next. A sheet has a point.",
     "fasteners:\n  plug: { name: plug, torque: \"9,5 N·m\" }\n", "fasteners:\n  plug: { name: plug, torque: 9.5 N·m }\n"},
    {rule::unreadable_figure, error, "a figure that cannot be read: no unit, a wrong or an ambiguous one, a band that is none",
     "A figure is worth what its unit says. lb is a mass or a force, oz and gal are of two countries, and 28 alone is "
     "whatever the reader expects.",
     "fasteners:\n  plug: { name: plug, torque: 28 }\n", "fasteners:\n  plug: { name: plug, torque: 28 N·m }\n"},
    {rule::unreadable_interval, error, "an interval that is neither a distance nor a time",
     "When something is due is a distance, a time, or whichever comes first.",
     "fluids:\n  oil: { name: oil, purpose: fork-oil, change-every: 12 000 }\n",
     "fluids:\n  oil: { name: oil, purpose: fork-oil, change-every: 12 000 km or 24 months }\n"},
    {rule::unreadable_count, error, "a count that is no whole number, alone or per something",
     "How many there are decides what is bought; 'a pair' may be one pack or two pieces.",
     "seals:\n  dust: { name: dust seal, size: 41x54x13, use: fork-dust, count: a pair }\n",
     "seals:\n  dust: { name: dust seal, size: 41x54x13, use: fork-dust, count: 1 per leg }\n"},
    {rule::unreadable_date, error, "a date that the calendar does not have, or in another order",
     "02.10.2026 is in February for some and in October for others.",
     "checked: { on: 02.10.2026, by: workshop }\n", "checked: { on: 2026-10-02, by: workshop }\n"},
    {rule::unreadable_years, error, "model years that cannot be read, or run backwards",
     "Years decide which machine a figure is for. An open end is written as one: 2016..",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011-2015 }\n", "fits: { make: Haldrek, model: Muleback 380, years: 2011..2015 }\n"},
    {rule::unreadable_frames, error, "frame numbers that cannot be put in order",
     "A year is split by frame number; both ends must be of one series and end in digits.",
     "fits: { make: Haldrek, model: Muleback 380, years: 2013, frames: HK4-000100..HK5-004999 }\n",
     "fits: { make: Haldrek, model: Muleback 380, years: 2013, frames: HK4-000100..HK4-004999 }\n"},
    {rule::unreadable_thread, error, "a thread that cannot be read",
     "A thread is a diameter and a pitch in the standard's own spelling. An inch screw that begins with # stands in "
     "quotes: YAML takes the rest of the line for a remark.",
     "fasteners:\n  plug: { name: plug, thread: M8x }\n", "fasteners:\n  plug: { name: plug, thread: M8x1.25 }\n"},
    {rule::unreadable_drive, error, "a drive that cannot be read",
     "The socket is laid out from it: its shape, its size and the size's unit.",
     "fasteners:\n  plug: { name: plug, drive: hexagon 27 }\n", "fasteners:\n  plug: { name: plug, drive: hexagon 27 mm }\n"},
    {rule::unreadable_size, error, "a size that cannot be read",
     "A size is its dimensions in the order of the trade, parted by x, so that it matches by number.",
     "seals:\n  oil: { name: oil seal, size: 41 54 11, use: fork-oil }\n", "seals:\n  oil: { name: oil seal, size: 41x54x11, use: fork-oil }\n"},
    {rule::unreadable_bearing, error, "a bearing's designation that cannot be read",
     "The number says what the bearing is; a wrong digit is another bearing.",
     "bearings:\n  hub: { name: hub bearing, designation: 2013, size: 17x40x12 }\n",
     "bearings:\n  hub: { name: hub bearing, designation: 6203, size: 17x40x12 }\n"},
    {rule::unreadable_address, error, "an address that is none",
     "An address is sheet/entry, or the entry's name alone on its own sheet.",
     "fasteners:\n  plug: { name: plug, same-as: the other plug }\n  other: { name: other }\n",
     "fasteners:\n  plug: { name: plug, same-as: other }\n  other: { name: other }\n"},
    {rule::unreadable_pattern, error, "a tightening pattern that cannot be read",
     "The pattern is the order in which the numbered fasteners are tightened.",
     "fasteners:\n  bolts: { name: head bolts, pattern: crosswise }\n", "fasteners:\n  bolts: { name: head bolts, pattern: 1-3-2-4 }\n"},
    {rule::variant_without_when, error, "a variant that does not say for which machines it holds",
     "A variant is chosen by year, frame number or market; one that names none of them can never be chosen.",
     "fasteners:\n  plug:\n    name: plug\n    variants: [{ torque: 28 N·m }]\n",
     "fasteners:\n  plug:\n    name: plug\n    variants: [{ years: 2011..2015, torque: 28 N·m }]\n"},
    {rule::bad_column, error, "a column whose type is unknown, or a key column that is not there",
     "A column's type is the unit of its cells, or thread, size, bearing, text, number or choice.",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: millimetrs }\nrows: [[M8x1.25, 1.25]]\n",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm }\nrows: [[M8x1.25, 1.25]]\n"},
    {rule::row_width, error, "a row with more or fewer cells than there are columns",
     "One cell too few moves every cell after it into the wrong column. A cell that is empty in print is written \"-\".",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm, hexagon: mm }\nrows: [[M8x1.25, 13]]\n",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm, hexagon: mm }\nrows: [[M8x1.25, 1.25, 13]]\n"},
    {rule::row_without_key, error, "a row without a name",
     "The cell of the key column names the row: it is its address and what people look it up by.",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm }\nrows: [[\"-\", 1.25], [M10x1.5, 1.5]]\n",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm }\nrows: [[M8x1.25, 1.25], [M10x1.5, 1.5]]\n"},
    {rule::duplicate_row, error, "two rows with one name",
     "A row typed twice, or two rows that only case or signs tell apart: an address must lead to one of them.",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm }\nrows: [[M8x1.25, 1.25], [M8x1.25, 1.5]]\n",
     "table: thread-size\nkey: thread\ncolumns: { thread: thread, pitch: mm }\nrows: [[M8x1.25, 1.25], [M10x1.5, 1.5]]\n"},
};
// clang-format on

}  // namespace

std::span<const RuleInfo> sheet_rules() { return rules; }

}  // namespace sheafc
