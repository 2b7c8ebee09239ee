// SPDX-License-Identifier: GPL-2.0-or-later
// Sheets first, then entries, then words.
#include "compiler/link/link_rules.h"

namespace sheafc {
namespace {

constexpr Severity error = Severity::error;

// clang-format off
constexpr RuleInfo rules[] = {
    {rule::duplicate_sheet, error, "two sheets with one name",
     "A sheet's name is the first part of its addresses, whatever folder it lies in.",
     "# file: forks/plain-fork.yaml\nsheet: plain-fork\n# file: old/plain-fork.yaml\nsheet: plain-fork\n",
     "# file: forks/plain-fork.yaml\nsheet: plain-fork\n# file: old/plain-fork-2011.yaml\nsheet: plain-fork-2011\n"},
    {rule::unknown_base, error, "a base that is not there",
     "Everything that the sheet does not state itself would be missing.",
     "sheet: new-fork\nbased-on: old-fork\n", "sheet: new-fork\nbased-on: old-fork\n# file: old-fork.yaml\nsheet: old-fork\n"},
    {rule::circular_base, error, "a sheet that is based on itself, by way of others",
     "Each would have to be read before the other.",
     "sheet: new-fork\nbased-on: old-fork\n# file: old-fork.yaml\nsheet: old-fork\nbased-on: new-fork\n",
     "sheet: new-fork\nbased-on: old-fork\n# file: old-fork.yaml\nsheet: old-fork\n"},
    {rule::long_chain, error, "more than 16 sheets, or entries, based on one another",
     "Nobody can tell any more where a figure comes from.", "", ""},
    {rule::wrong_base, error, "a base that cannot be one, or that is used in a way that loses figures",
     "An assembly is based on an assembly. 'without' needs a base to leave something out of. Where the base's variants "
     "state a figure, one figure for all of them would be passed over in silence.",
     "sheet: new-fork\nwithout: [plug]\n",
     "sheet: new-fork\nbased-on: old-fork\nwithout: [plug]\n# file: old-fork.yaml\nsheet: old-fork\nfasteners:\n  plug: { name: plug }\n"},
    {rule::base_without_fits, error, "a sheet based on another that does not say which machines it is for",
     "The base's machines are the base's: the sheet would answer for them a second time, with other figures.",
     "sheet: new-fork\nbased-on: old-fork\n# file: old-fork.yaml\nsheet: old-fork\n"
     "fits: { make: Haldrek, model: Muleback 380, years: ..2015 }\n",
     "sheet: new-fork\nbased-on: old-fork\nfits: { make: Haldrek, model: Muleback 380, years: 2016.. }\n"
     "# file: old-fork.yaml\nsheet: old-fork\nfits: { make: Haldrek, model: Muleback 380, years: ..2015 }\n"},
    {rule::kind_differs, error, "an entry of another kind than the base's of the same name",
     "The two cannot be put together field by field. If the new one replaces the old, 'without' leaves the old one out.",
     "sheet: new-fork\nbased-on: old-fork\nparts:\n  plug: { name: plug }\n# file: old-fork.yaml\nsheet: old-fork\nfasteners:\n  plug: { name: plug }\n",
     "sheet: new-fork\nbased-on: old-fork\nwithout: [plug]\nparts:\n  plug: { name: plug }\n"
     "# file: old-fork.yaml\nsheet: old-fork\nfasteners:\n  plug: { name: plug }\n"},
    {rule::too_many_entries, error, "more than 20 000 entries on a sheet",
     "No assembly has so many; a table so long is better parted.", "", ""},
    {rule::unknown_entry, error, "an address that leads nowhere",
     "A card that follows it would be short of a figure.",
     "fasteners:\n  plug: { name: plug }\nsteps:\n  close: { name: close, do: Fit the plug., uses: [plugg] }\n",
     "fasteners:\n  plug: { name: plug }\nsteps:\n  close: { name: close, do: Fit the plug., uses: [plug] }\n"},
    {rule::circular_like, error, "an entry that is like itself, by way of others",
     "Each would have to be read before the other.",
     "fasteners:\n  left: { name: left screw, like: right }\n  right: { name: right screw, like: left }\n",
     "fasteners:\n  left: { name: left screw, like: right }\n  right: { name: right screw, torque: 10 N·m }\n"},
    {rule::wrong_like, error, "an entry like one of another kind",
     "The fields of the one mean nothing on the other.",
     "fasteners:\n  plug: { name: plug, like: cover }\nparts:\n  cover: { name: cover }\n",
     "parts:\n  plug: { name: plug, like: cover }\n  cover: { name: cover }\n"},
    {rule::former_name_taken, error, "a former address that another entry has",
     "An old link or a printed card would lead to the wrong figure.",
     "fasteners:\n  top-plug: { name: top plug, formerly: [plug] }\n  plug: { name: drain plug }\n",
     "fasteners:\n  top-plug: { name: top plug, formerly: [cap] }\n  plug: { name: drain plug }\n"},
    {rule::variant_outside_fits, error, "a variant for none of the machines of its sheet",
     "It would never be chosen; most often a year is mistyped, in the variant or on the sheet.",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011..2015 }\nfasteners:\n  nut:\n    name: axle nut\n    variants:\n"
     "      - { years: 2011..2015, torque: 64 N·m }\n      - { years: 2016.., torque: 70 N·m }\n",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011.. }\nfasteners:\n  nut:\n    name: axle nut\n    variants:\n"
     "      - { years: 2011..2015, torque: 64 N·m }\n      - { years: 2016.., torque: 70 N·m }\n"},
    {rule::variant_gap, error, "machines of the sheet that no variant is for",
     "For those the entry would have no figure at all. A variant must have both sides.",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011.. }\nfasteners:\n  nut:\n    name: axle nut\n    variants:\n"
     "      - { years: 2011..2014, torque: 64 N·m }\n      - { years: 2016.., torque: 70 N·m }\n",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011.. }\nfasteners:\n  nut:\n    name: axle nut\n    variants:\n"
     "      - { years: 2011..2015, torque: 64 N·m }\n      - { years: 2016.., torque: 70 N·m }\n"},
    {rule::variant_overlap, error, "two variants for one machine",
     "Two figures would answer one question.",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011.. }\nfasteners:\n  nut:\n    name: axle nut\n    variants:\n"
     "      - { years: 2011..2016, torque: 64 N·m }\n      - { years: 2016.., torque: 70 N·m }\n",
     "fits: { make: Haldrek, model: Muleback 380, years: 2011.. }\nfasteners:\n  nut:\n    name: axle nut\n    variants:\n"
     "      - { years: 2011..2015, torque: 64 N·m }\n      - { years: 2016.., torque: 70 N·m }\n"},
    {rule::unknown_caution, error, "a caution that no words sheet has",
     "The answer would stand there without it.",
     "cautions: [spring-laod]\n# file: cautions.yaml\nsheet: cautions\ncautions:\n  spring-load: { text: Spring under load. }\n",
     "cautions: [spring-load]\n# file: cautions.yaml\nsheet: cautions\ncautions:\n  spring-load: { text: Spring under load. }\n"},
    {rule::duplicate_caution, error, "two cautions with one name",
     "The words beside a figure must be the same in every answer.",
     "# file: one.yaml\nsheet: one\ncautions:\n  hot: { text: Hot. }\n# file: two.yaml\nsheet: two\ncautions:\n  hot: { text: Very hot. }\n",
     "# file: one.yaml\nsheet: one\ncautions:\n  hot: { text: Hot. }\n# file: two.yaml\nsheet: two\ncautions:\n  very-hot: { text: Very hot. }\n"},
    {rule::duplicate_words, error, "two groups of words with one name",
     "A group stands in one place, so that a writer sees all of it.",
     "# file: one.yaml\nsheet: one\nwords:\n  cap: { same: [fork cap] }\n# file: two.yaml\nsheet: two\nwords:\n  cap: { same: [top cap] }\n",
     "# file: one.yaml\nsheet: one\nwords:\n  cap: { same: [fork cap, top cap] }\n"},
};
// clang-format on

}  // namespace

std::span<const RuleInfo> link_rules() { return rules; }

}  // namespace sheafc
