// SPDX-License-Identifier: GPL-2.0-or-later
// The table itself: what may stand on an entry, in the order in which `sheafc format` writes it.
#include "query/library/vocabulary.h"

#include <algorithm>
#include <array>

namespace sheaf {
namespace {

using enum ValueType;
using Dim = Dimension;
using Fields = std::span<const FieldDeclaration>;
using Words = std::string_view;

constexpr std::array<Words, 19> assemblies = {
    "fork",          "shock",     "linkage",     "front-wheel", "rear-wheel", "front-brake", "rear-brake",
    "steering-head", "swingarm",  "chain-drive", "engine",      "cooling",    "exhaust",     "controls",
    "transmission",  "electrics", "fuel-system", "frame",       "bodywork"};

constexpr std::array<RowKind, 18> row_kinds = {{{"thread-size", "thread"},
                                                {"property-class", "property class"},
                                                {"nut-factor", "nut factor"},
                                                {"shaft-seal-size", "radial shaft seal"},
                                                {"fork-seal-size", "fork seal size"},
                                                {"o-ring-size", "O-ring"},
                                                {"bearing-size", "bearing"},
                                                {"viscosity-grade", "viscosity grade"},
                                                {"engine-oil-grade", "engine oil grade"},
                                                {"gear-oil-grade", "gear oil grade"},
                                                {"brake-fluid-class", "brake fluid class"},
                                                {"coolant-mixture", "coolant mixture"},
                                                {"tolerance-grade", "tolerance grade"},
                                                {"limit-deviation", "limit deviation"},
                                                {"spring-material", "spring material"},
                                                {"friction-range", "friction range"},
                                                {"o-ring-gland", "O-ring groove"},
                                                {"viscosity-index", "basis of the viscosity index"}}};

constexpr std::array<Words, 12> sides = {"front", "rear",  "left",   "right",   "upper",       "lower",
                                         "inner", "outer", "intake", "exhaust", "clutch-side", "brake-side"};
constexpr std::array<Words, 4> statuses = {"maker-paper", "measured", "second-hand", "disputed"};
constexpr std::array<Words, 11> joints = {"ordinary", "pinch", "axle", "plug",     "hollow", "cap",
                                          "stem",     "pivot", "rod",  "sprocket", "spoke"};
constexpr std::array<Words, 7> bases = {"steel",   "cast-iron", "aluminium", "magnesium",
                                        "plastic", "insert",    "brass"};
constexpr std::array<Words, 2> each_or_total = {"each", "total"};
constexpr std::array<Words, 6> states = {"dry",          "oiled",      "greased",
                                         "threadlocker", "anti-seize", "source-silent"};
constexpr std::array<Words, 3> strengths = {"low", "medium", "high"};
constexpr std::array<Words, 3> reuses = {"yes", "no", "inspect"};
constexpr std::array<Words, 2> hands = {"right", "left"};
constexpr std::array<Words, 13> purposes = {
    "fork-oil", "damper-oil",     "engine-oil", "gear-oil",  "brake-fluid", "clutch-fluid", "coolant",
    "grease",   "assembly-paste", "fuel",       "chain-oil", "sealant",     "threadlocker"};
constexpr std::array<Words, 5> families = {"glycol", "silicone", "mineral", "synthetic-ester", "synthetic"};
constexpr std::array<Words, 7> seal_uses = {"fork-oil",   "fork-dust", "shaft", "brake-piston",
                                            "valve-stem", "pivot",     "other"};
constexpr std::array<Words, 7> rubbers = {"NBR", "HNBR", "FKM", "EPDM", "VMQ", "PTFE", "source-silent"};
constexpr std::array<Words, 2> sold = {"single", "pair"};
constexpr std::array<Words, 2> wears = {"grows", "shrinks"};
constexpr std::array<Words, 2> wrench_types = {"setting", "indicating"};

constexpr std::array<FieldDeclaration, 6> source = {
    {{.key = "title",
      .help = "The paper's own title.",
      .example = "Sorvane fork service leaflet 41",
      .required = true},
     {.key = "publisher", .help = "Who issued it."},
     {.key = "edition", .help = "Its edition or revision.", .example = "2"},
     {.key = "year", .type = integer, .help = "The year it was issued.", .example = "2012"},
     {.key = "page", .help = "Page, table or clause.", .example = "5"},
     {.key = "note", .help = "What a reader must know of it: copy, translation, from memory."}}};

constexpr std::array<FieldDeclaration, 4> check = {
    {{.key = "on",
      .type = date,
      .help = "The day it was read against the source.",
      .example = "2026-10-02",
      .required = true},
     {.key = "by", .help = "Who read it.", .example = "workshop", .required = true},
     {.key = "against", .help = "What it was read against: source, or measured part.", .example = "source"},
     {.key = "second", .help = "A second reader, for brakes, steering and wheels."}}};

constexpr std::array<FieldDeclaration, 6> fit = {
    {{.key = "make", .help = "The machine's maker.", .example = "Haldrek", .required = true},
     {.key = "model",
      .help = "The model, as its papers write it.",
      .example = "Muleback 380",
      .required = true},
     {.key = "years", .type = years, .help = "Model years.", .example = "2011..2015", .required = true},
     {.key = "market", .help = "The market, where it decides.", .example = "north"},
     {.key = "frames",
      .type = frames,
      .help = "Frame numbers, where a year is split.",
      .example = "HK4-000100..HK4-004999"},
     {.key = "note", .help = "What else tells it apart."}}};

constexpr std::array<FieldDeclaration, 3> when = {
    {{.key = "years", .type = years, .help = "Model years for which these figures hold."},
     {.key = "frames", .type = frames, .help = "Frame numbers for which these figures hold."},
     {.key = "market", .help = "The market for which these figures hold."}}};

constexpr std::array<FieldDeclaration, 3> withdrawal = {
    {{.key = "on", .type = date, .help = "The day it was withdrawn.", .required = true},
     {.key = "reason", .help = "What was wrong with it.", .required = true},
     {.key = "instead", .type = reference, .help = "The entry that holds the right figure."}}};

constexpr std::array<FieldDeclaration, 3> successor = {
    {{.key = "number", .help = "The new part number.", .required = true},
     {.key = "interchangeable",
      .type = flag,
      .help = "Whether the new part replaces the old in every respect.",
      .required = true},
     {.key = "note", .help = "What differs."}}};

constexpr std::array<FieldDeclaration, 2> other_number = {
    {{.key = "supplier", .help = "Whose number it is.", .required = true},
     {.key = "number", .help = "The number.", .required = true}}};

constexpr std::array<FieldDeclaration, 3> rival = {
    {{.key = "field", .help = "Which field is disputed.", .example = "torque", .required = true},
     {.key = "value", .help = "What the other source states.", .example = "32 N·m", .required = true},
     {.key = "source", .type = record, .help = "The other source.", .required = true, .fields = source}}};

constexpr std::array<FieldDeclaration, 25> common = {
    {{.key = "name", .help = "What the part is called in the shop.", .example = "fork top plug"},
     {.key = "also", .help = "Other names people use for it.", .example = "[top cap]", .many = true},
     {.key = "side",
      .type = choice,
      .help = "Where it sits.",
      .example = "front",
      .choices = sides,
      .many = true},
     {.key = "like",
      .type = reference,
      .help = "An entry whose fields hold here too, unless given.",
      .example = "common/m8-flange"},
     {.key = "without",
      .help = "Keys of the base's entry, or of the one it is like, that do not hold here.",
      .example = "[threadlocker]",
      .many = true},
     {.key = "count", .type = count, .help = "How many there are.", .example = "1 per leg"},
     {.key = "order", .type = integer, .help = "Its place in the order of the job.", .example = "2"},
     {.key = "part-number", .help = "The maker's number.", .example = "HX117-WH"},
     {.key = "supersedes", .help = "Numbers that this one replaces.", .many = true},
     {.key = "superseded-by",
      .type = record,
      .help = "The number that replaces this one.",
      .fields = successor},
     {.key = "other-numbers",
      .type = record,
      .help = "The same part's numbers elsewhere.",
      .many = true,
      .fields = other_number},
     {.key = "notes", .help = "What else the reader must know.", .many = true},
     {.key = "cautions",
      .help = "Cautions shown beside the figure, by their names.",
      .example = "[spring-load]",
      .many = true},
     {.key = "status", .type = choice, .help = "How sure the figure is.", .choices = statuses},
     {.key = "also-stated",
      .type = record,
      .help = "What another source states, where they differ.",
      .many = true,
      .fields = rival},
     {.key = "same-as",
      .type = reference,
      .help = "An entry of another sheet whose figures are the same on purpose."},
     {.key = "fits",
      .type = record,
      .help = "Machines, where the entry is for fewer than its sheet.",
      .many = true,
      .fields = fit},
     {.key = "source",
      .type = record,
      .help = "Its own source, where it is not the sheet's.",
      .fields = source},
     {.key = "page", .help = "The page in the sheet's source, where it is another.", .example = "7"},
     {.key = "checked",
      .type = record,
      .help = "When and by whom it was checked, where it is not as the sheet.",
      .fields = check},
     {.key = "formerly", .help = "Earlier names of this entry; their addresses still resolve.", .many = true},
     {.key = "withdrawn",
      .type = record,
      .help = "Says that the figure was found wrong.",
      .fields = withdrawal},
     {.key = "allow", .type = allowances, .help = "Rules set aside here, each with its reason."},
     {.key = "variants",
      .type = variants,
      .help = "Figures that differ by year, frame number or market.",
      .fields = when},
     {.key = "critical",
      .type = flag,
      .help =
          "Whether a wrong figure can let brakes, steering or a wheel go; brakes, steering and wheels are so unless this says no."}}};

constexpr std::array<FieldDeclaration, 15> fastener = {
    {{.key = "thread", .type = thread, .help = "The thread.", .example = "M8x1.25"},
     {.key = "length",
      .type = figure,
      .help = "Length under the head.",
      .example = "25 mm",
      .dimension = Dim::length},
     {.key = "class", .help = "Property class.", .example = "8.8"},
     {.key = "drive", .type = drive, .help = "What the tool grips.", .example = "hexagon 27 mm"},
     {.key = "joint",
      .type = choice,
      .help = "What kind of joint it is, where not an ordinary one.",
      .example = "pinch",
      .choices = joints},
     {.key = "into",
      .type = choice,
      .help = "What it is screwed into.",
      .example = "aluminium",
      .choices = bases},
     {.key = "torque",
      .type = torque,
      .help = "How tight, stage by stage.",
      .example = "28 ± 3 N·m",
      .dimension = Dim::torque},
     {.key = "torque-is",
      .type = choice,
      .help = "Whether the figure is for each fastener or for all together.",
      .choices = each_or_total},
     {.key = "state",
      .type = choice,
      .help = "What is on the thread; source-silent if the source does not say.",
      .example = "dry",
      .choices = states,
      .many = true},
     {.key = "threadlocker", .type = choice, .help = "Strength of the threadlocker.", .choices = strengths},
     {.key = "reuse",
      .type = choice,
      .help = "Whether it may be fitted again: no means fit new.",
      .choices = reuses},
     {.key = "hand", .type = choice, .help = "Hand of the thread.", .choices = hands},
     {.key = "pattern",
      .type = pattern,
      .help = "Order in which a group is tightened.",
      .example = "1-4-2-3"},
     {.key = "retighten", .help = "When it is tightened again.", .example = "after 50 km"},
     {.key = "gap",
      .type = figure,
      .help = "What must show between the clamped faces.",
      .dimension = Dim::length}}};

constexpr std::array<FieldDeclaration, 13> fluid = {
    {{.key = "purpose",
      .type = choice,
      .help = "What it is for.",
      .example = "fork-oil",
      .choices = purposes,
      .required = true},
     {.key = "grade", .help = "The grade the source names.", .example = "SAE 10W-40"},
     {.key = "family",
      .type = choice,
      .help = "What it is made of, where mixing matters.",
      .choices = families},
     {.key = "viscosity",
      .type = figure,
      .help = "Viscosity at a temperature.",
      .example = "32 mm²/s at 40 °C",
      .dimension = Dim::kinematic_viscosity,
      .many = true},
     {.key = "label-only", .type = flag, .help = "Yes, if the source gives a label and no viscosity."},
     {.key = "volume",
      .type = figure,
      .help = "How much.",
      .example = "512 mL per leg",
      .dimension = Dim::volume},
     {.key = "dry-fill",
      .type = figure,
      .help = "How much after the assembly was apart and dry.",
      .dimension = Dim::volume},
     {.key = "after-drain", .type = figure, .help = "How much after draining.", .dimension = Dim::volume},
     {.key = "with-filter",
      .type = figure,
      .help = "How much after draining and a new filter.",
      .dimension = Dim::volume},
     {.key = "level",
      .type = figure,
      .help = "Level, from where and in what condition.",
      .example = "118 mm below the rim, spring out, fork compressed",
      .dimension = Dim::length},
     {.key = "mixture",
      .type = figure,
      .help = "Share of concentrate.",
      .example = "50 %",
      .dimension = Dim::ratio},
     {.key = "bottles",
      .type = figure,
      .help = "Sizes it is bought in.",
      .example = "[500 mL, 1 L]",
      .dimension = Dim::volume,
      .many = true},
     {.key = "change-every",
      .type = interval,
      .help = "When it is changed.",
      .example = "10 000 km or 12 months"}}};

constexpr std::array<FieldDeclaration, 7> seal = {
    {{.key = "size",
      .type = size,
      .help = "Inside × outside × height.",
      .example = "41x54x11",
      .required = true},
     {.key = "use",
      .type = choice,
      .help = "What it seals.",
      .example = "fork-oil",
      .choices = seal_uses,
      .required = true},
     {.key = "tube",
      .type = figure,
      .help = "Diameter of the tube or shaft it runs on.",
      .example = "41 mm",
      .dimension = Dim::length},
     {.key = "bore",
      .type = figure,
      .help = "Diameter of the bore it sits in.",
      .example = "54 mm",
      .dimension = Dim::length},
     {.key = "lip", .help = "Which way it faces.", .example = "towards the oil"},
     {.key = "material", .type = choice, .help = "Its rubber.", .choices = rubbers},
     {.key = "sold-as", .type = choice, .help = "Whether one number buys one or a pair.", .choices = sold}}};

constexpr std::array<FieldDeclaration, 4> o_ring = {
    {{.key = "size", .type = size, .help = "Inside × section.", .example = "36.2x2.4", .required = true},
     {.key = "code", .help = "Its number in a published table.", .example = "-128"},
     {.key = "material", .type = choice, .help = "Its rubber.", .choices = rubbers},
     {.key = "use", .help = "What it seals."}}};

constexpr std::array<FieldDeclaration, 3> bearing_fields = {
    {{.key = "designation", .type = bearing, .help = "What is marked on it.", .example = "6203-2RS C3"},
     {.key = "size",
      .type = size,
      .help = "Bore × outside × width.",
      .example = "17x40x12",
      .required = true},
     {.key = "grease", .help = "How it is greased."}}};

constexpr std::array<FieldDeclaration, 4> bushing = {
    {{.key = "inside", .type = figure, .help = "Inside diameter.", .dimension = Dim::length},
     {.key = "outside", .type = figure, .help = "Outside diameter.", .dimension = Dim::length},
     {.key = "length", .type = figure, .help = "Length.", .dimension = Dim::length},
     {.key = "material", .help = "What it is made of."}}};

constexpr std::array<FieldDeclaration, 7> spring = {
    {{.key = "rate",
      .type = figure,
      .help = "Spring rate.",
      .example = "8.5 N/mm",
      .dimension = Dim::spring_rate,
      .many = true},
     {.key = "free-length", .type = figure, .help = "Length without load.", .dimension = Dim::length},
     {.key = "installed-length", .type = figure, .help = "Length as fitted.", .dimension = Dim::length},
     {.key = "wire", .type = figure, .help = "Wire diameter.", .dimension = Dim::length},
     {.key = "outside", .type = figure, .help = "Outside diameter.", .dimension = Dim::length},
     {.key = "active-coils", .help = "Active coils.", .example = "42.5"},
     {.key = "direction", .help = "Which way up it stands.", .example = "close coils up"}}};

constexpr std::array<FieldDeclaration, 3> setting = {
    {{.key = "standard",
      .type = figure,
      .help = "The setting the maker gives.",
      .example = "12 clicks out",
      .required = true},
     {.key = "range", .type = figure, .help = "How far it goes.", .example = "0..20 clicks"},
     {.key = "count-from", .help = "Where counting starts.", .example = "fully in", .required = true}}};

constexpr std::array<FieldDeclaration, 3> limit = {
    {{.key = "new", .type = figure, .help = "The size when new.", .example = "4.5 mm"},
     {.key = "limit",
      .type = figure,
      .help = "The size at which it is replaced.",
      .example = "min 4.0 mm",
      .required = true},
     {.key = "wear", .type = choice, .help = "Whether wear makes it grow or shrink.", .choices = wears}}};

constexpr std::array<FieldDeclaration, 2> clearance = {
    {{.key = "value",
      .type = figure,
      .help = "The clearance and its conditions.",
      .example = "0.10..0.15 mm, cold",
      .dimension = Dim::length,
      .required = true},
     {.key = "check-every", .type = interval, .help = "When it is checked.", .example = "12 000 km"}}};

constexpr std::array<FieldDeclaration, 2> pressure = {
    {{.key = "value",
      .type = figure,
      .help = "The pressure and its conditions.",
      .example = "2.2 bar, cold",
      .dimension = Dim::pressure,
      .required = true},
     {.key = "load", .help = "The load it is for.", .example = "rider alone"}}};

constexpr std::array<FieldDeclaration, 3> part = {
    {{.key = "description", .help = "What it is."},
     {.key = "size", .help = "Its size, in words."},
     {.key = "change-every", .type = interval, .help = "When it is replaced."}}};

constexpr std::array<FieldDeclaration, 3> tool = {
    {{.key = "description", .help = "What it is and does."},
     {.key = "drive", .type = drive, .help = "What it grips.", .example = "hex socket 14 mm"},
     {.key = "consumable", .type = flag, .help = "Whether it is used up."}}};

constexpr std::array<FieldDeclaration, 2> step = {
    {{.key = "do", .help = "What is done, in one or two sentences.", .required = true},
     {.key = "uses",
      .type = reference,
      .help = "The entries this step needs.",
      .example = "[top-plug]",
      .many = true}}};

constexpr std::array<FieldDeclaration, 7> wrench = {
    {{.key = "range",
      .type = figure,
      .help = "From the least to the most its scale shows.",
      .example = "20..100 N·m",
      .dimension = Dim::torque,
      .required = true},
     {.key = "step",
      .type = figure,
      .help = "What one mark on the scale is.",
      .example = "1 N·m",
      .dimension = Dim::torque,
      .required = true},
     {.key = "accuracy",
      .type = figure,
      .help = "What its certificate says.",
      .example = "4 %",
      .dimension = Dim::ratio,
      .required = true},
     {.key = "type",
      .type = choice,
      .help = "Whether it is set to a figure or shows one.",
      .choices = wrench_types},
     {.key = "drive", .type = drive, .help = "Its own square.", .example = "square 1/2 in"},
     {.key = "length",
      .type = figure,
      .help = "From the middle of the grip to the square.",
      .example = "420 mm",
      .dimension = Dim::length},
     {.key = "calibration-due", .type = date, .help = "When its next calibration is due."}}};

constexpr std::array<FieldDeclaration, 2> adapter = {
    {{.key = "drive", .type = drive, .help = "What it grips.", .example = "hexagon 17 mm", .required = true},
     {.key = "offset",
      .type = figure,
      .help = "From the wrench's square to the fastener.",
      .example = "50 mm",
      .dimension = Dim::length,
      .required = true}}};

constexpr std::array<KindDeclaration, 16> kinds = {
    {{"fastener", "fasteners", "Anything tightened: bolts, screws, nuts, plugs, axles.", fastener},
     {"fluid", "fluids", "Oils, brake fluid, coolant, grease.", fluid},
     {"seal", "seals", "Seals with a lip: fork, dust and shaft seals.", seal},
     {"o-ring", "o-rings", "O-rings.", o_ring},
     {"bearing", "bearings", "Rolling bearings.", bearing_fields},
     {"bushing", "bushings", "Plain bushings and slide rings.", bushing},
     {"spring", "springs", "Springs.", spring},
     {"setting", "settings", "What is set in clicks, turns or lengths.", setting},
     {"limit", "limits", "Service limits and wear.", limit},
     {"clearance", "clearances", "Clearances and gaps.", clearance},
     {"pressure", "pressures", "Pressures of tyres, caps and pumps.", pressure},
     {"part", "parts", "Parts bought by number.", part},
     {"tool", "tools", "Tools and consumables beyond sockets.", tool},
     {"step", "steps", "The job, in order.", step},
     {"wrench", "wrenches", "The workshop's own torque wrenches.", wrench},
     {"adapter", "adapters", "Adapters that lengthen a wrench.", adapter}}};

const FieldDeclaration* find_field(Fields fields, Words key) {
  const auto found = std::ranges::find(fields, key, &FieldDeclaration::key);
  return found == fields.end() ? nullptr : &*found;
}

}  // namespace

std::span<const KindDeclaration> all_kinds() { return kinds; }

const KindDeclaration* kind_named(std::string_view name) {
  const auto* found = std::ranges::find(kinds, name, &KindDeclaration::name);
  return found == kinds.end() ? nullptr : found;
}

const KindDeclaration* kind_of_section(std::string_view section) {
  const auto* found = std::ranges::find(kinds, section, &KindDeclaration::section);
  return found == kinds.end() ? nullptr : found;
}

std::span<const FieldDeclaration> common_fields() { return common; }

const FieldDeclaration* field_of(const KindDeclaration& kind, std::string_view key) {
  const auto* own = find_field(kind.fields, key);
  return own ? own : find_field(common, key);
}

std::span<const FieldDeclaration> source_fields() { return source; }
std::span<const FieldDeclaration> check_fields() { return check; }
std::span<const FieldDeclaration> fit_fields() { return fit; }
std::span<const std::string_view> all_assemblies() { return assemblies; }
std::span<const RowKind> all_row_kinds() { return row_kinds; }

}  // namespace sheaf
