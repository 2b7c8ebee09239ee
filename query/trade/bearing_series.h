// SPDX-License-Identifier: GPL-2.0-or-later
// The names of bearing series and suffixes, and what they say: the vocabulary of bearing designations,
// common practice of the catalogues of ISO 15 and ISO 355 bearings. Internal to trade. What outside
// diameter and width a series means for a bore is a row of a table, not known here.
#pragma once

#include <string_view>

namespace sheaf::bearing_names {

struct Series {
  std::string_view name;
  std::string_view kind;
};

// Longer names stand before those that begin them.
inline constexpr Series numbered_series[] = {
    {"617", "deep groove ball, extra thin section"},
    {"618", "deep groove ball, extra thin section"},
    {"619", "deep groove ball, thin section"},
    {"622", "deep groove ball, medium section, wide"},
    {"623", "deep groove ball, heavy section, wide"},
    {"630", "deep groove ball, light section, wide"},
    {"160", "deep groove ball, light section, narrow"},
    {"161", "deep groove ball, light section, narrow"},
    {"67", "deep groove ball, extra thin section"},
    {"68", "deep groove ball, extra thin section"},
    {"69", "deep groove ball, thin section"},
    {"60", "deep groove ball, light section"},
    {"62", "deep groove ball, medium section"},
    {"63", "deep groove ball, heavy section"},
    {"64", "deep groove ball, extra heavy section"},
    {"302", "tapered roller"},
    {"303", "tapered roller"},
    {"313", "tapered roller, steep angle"},
    {"320", "tapered roller"},
    {"322", "tapered roller"},
    {"323", "tapered roller"},
    {"329", "tapered roller"},
    {"330", "tapered roller"},
    {"331", "tapered roller"},
    {"332", "tapered roller"},
    {"511", "thrust ball"},
    {"512", "thrust ball"},
    {"513", "thrust ball"},
    {"514", "thrust ball"},
    {"213", "spherical roller"},
    {"222", "spherical roller"},
    {"223", "spherical roller"},
    {"230", "spherical roller"},
    {"231", "spherical roller"},
    {"232", "spherical roller"},
    {"718", "angular contact ball"},
    {"719", "angular contact ball"},
    {"70", "angular contact ball"},
    {"72", "angular contact ball"},
    {"73", "angular contact ball"},
    {"32", "angular contact ball, two rows"},
    {"33", "angular contact ball, two rows"},
    {"52", "angular contact ball, two rows"},
    {"53", "angular contact ball, two rows"},
    {"12", "self-aligning ball"},
    {"13", "self-aligning ball"},
    {"22", "self-aligning ball"},
    {"23", "self-aligning ball"},
};

inline constexpr Series cylindrical_forms[] = {
    {"nup", "cylindrical roller, loose ring on the inner"},
    {"nu", "cylindrical roller, plain inner ring"},
    {"nj", "cylindrical roller, inner ring with one rib"},
    {"n", "cylindrical roller, plain outer ring"},
};
inline constexpr std::string_view cylindrical_series[] = {"10", "22", "23", "2", "3", "4"};

inline constexpr Series drawn_cups[] = {
    {"hk", "needle roller, drawn cup, open ends"},
    {"bk", "needle roller, drawn cup, one closed end"},
};

// Suffixes in the order in which the canonical spelling has them.
struct Suffix {
  std::string_view written;
  std::string_view canonical;
  std::string_view says;
};
inline constexpr Suffix suffixes[] = {
    {"2rs1", "2RS", "a contact seal on both sides"},
    {"2rsr", "2RS", "a contact seal on both sides"},
    {"2rsh", "2RS", "a contact seal on both sides"},
    {"2rs", "2RS", "a contact seal on both sides"},
    {"ddu", "2RS", "a contact seal on both sides"},
    {"llu", "2RS", "a contact seal on both sides"},
    {"2rz", "2RZ", "a low-friction seal on both sides"},
    {"2z", "2Z", "a metal shield on both sides"},
    {"zz", "2Z", "a metal shield on both sides"},
    {"rs1", "RS", "a contact seal on one side"},
    {"rsr", "RS", "a contact seal on one side"},
    {"rsh", "RS", "a contact seal on one side"},
    {"rs", "RS", "a contact seal on one side"},
    {"rz", "RZ", "a low-friction seal on one side"},
    {"z", "Z", "a metal shield on one side"},
    {"nr", "NR", "a snap ring groove with its ring"},
    {"n", "N", "a snap ring groove in the outer ring"},
    {"k", "K", "a tapered bore, 1 to 12"},
    {"x", "X", "outside dimensions of the current ISO plan"},
    {"tn9", "TN9", "a polyamide cage"},
    {"tn", "TN", "a polyamide cage"},
    {"m", "M", "a machined brass cage"},
    {"j", "J", "a pressed steel cage; on tapers, an outer ring of the ISO plan"},
    {"c1", "C1", "internal clearance less than C2"},
    {"c2", "C2", "internal clearance less than normal"},
    {"cn", "CN", "normal internal clearance"},
    {"c3", "C3", "internal clearance more than normal"},
    {"c4", "C4", "internal clearance more than C3"},
    {"c5", "C5", "internal clearance more than C4"},
    {"p6", "P6", "closer tolerances than normal"},
    {"p5", "P5", "closer tolerances than P6"},
};

}  // namespace sheaf::bearing_names
