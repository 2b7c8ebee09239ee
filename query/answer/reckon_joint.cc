// SPDX-License-Identifier: GPL-2.0-or-later
// Screwed joints: torque for a preload, preload of a torque, and what a thread is.
#include <algorithm>
#include <array>

#include "query/answer/picture.h"
#include "query/answer/picture_parts.h"
#include "query/answer/reckon_tables.h"
#include "query/answer/reckon_work.h"
#include "query/trade/tightening.h"

namespace sheaf {
namespace {

constexpr std::string_view k_formula = "T = K · F · d";
constexpr std::string_view k_source = "Shigley, Mechanical Engineering Design, Eq. 8-27";
constexpr std::string_view long_formula =
    "T = F · [d2/2 · (tan λ + μ sec α)/(1 − μ tan λ sec α) + μ · 1.25 d/2]";
constexpr std::string_view long_source = "Shigley, Mechanical Engineering Design, Eq. 8-26";
constexpr double usual_share = 0.75;

const Unit& torque_unit() { return unit_named("N·m"); }
const Unit& force_unit() { return unit_named("N"); }
const Unit& kilonewton() { return unit_named("kN"); }

// The thread with the pitch that a bare "M8" leaves to the table.
struct Screw {
  Thread thread;
  ThreadGeometry geometry;
};
Screw read_screw(Given& given, const OpenTables& open, Work& work) {
  Screw screw;
  const std::string text = given.text("thread");
  if (given.fault()) return screw;
  screw.thread = work.of(parse_thread(text, Input::prompt));
  if (work.failed()) return screw;
  if (!pitch_mm(screw.thread)) {
    const auto libraries = work.of(open());
    if (work.failed()) return screw;
    const auto rows = work.of(thread_rows(libraries));
    if (work.failed()) return screw;
    screw.thread = work.of(completed(screw.thread, rows));
    if (work.failed()) return screw;
    work.taken(text + " without a pitch is " + to_text(screw.thread) + ", by the table of threads");
  }
  screw.geometry = work.of(geometry_of(screw.thread));
  return screw;
}

// Nut factor and friction, as given or as the published rows have them for the state of the thread. Under the
// head the friction is that of the thread, unless it is given.
struct Rubbing {
  std::optional<Band> nut_factor;
  std::optional<Band> friction;
  std::optional<Band> head;

  Friction least() const { return {friction->least, head ? head->least : friction->least}; }
  Friction most() const { return {friction->most, head ? head->most : friction->most}; }
  const char* note() const { return head ? "" : "the same friction at thread and head"; }
};
Rubbing read_rubbing(Given& given, const OpenTables& open, Work& work) {
  Rubbing rubbing{given.numbers_if("factor"), given.numbers_if("friction"), given.numbers_if("head")};
  const auto state = given.text_if("state");
  if (!state) {
    if (!rubbing.nut_factor && !rubbing.friction)
      given.refuse(
          "what state is the thread in: dry, oiled, greased, anti-seize? Or give factor or friction");
    return rubbing;
  }
  const auto libraries = work.of(open());
  if (work.failed()) return rubbing;
  const auto use = [&](std::optional<Band>& band, const Result<PublishedRange>& published) {
    if (band || !published) return;
    band = Band{published->least, published->most};
    work.table(published->table);
  };
  const auto factors = nut_factors(libraries, *state);
  const auto frictions = friction(libraries, *state);
  use(rubbing.nut_factor, factors);
  use(rubbing.friction, frictions);
  if (!rubbing.nut_factor && !rubbing.friction) work.of(factors);
  return rubbing;
}

std::optional<ClassFound> read_class(Given& given, const OpenTables& open, Work& work, double diameter) {
  const auto name = given.text_if("class");
  if (!name || work.failed()) return std::nullopt;
  const auto libraries = work.of(open());
  if (work.failed()) return std::nullopt;
  auto found = work.of(find_class(libraries, *name, diameter));
  if (!work.failed()) work.table(found.table);
  return found;
}

// What the class bears without lasting stretch: its proof load, or for stainless the load at 0.2 %.
struct Bears {
  double load_n = 0;
  std::string of;  // "proof load"
};
Bears bears(const ClassFound& found, const ThreadGeometry& geometry) {
  const double stress = found.row.proof.value_or(found.row.yield);
  return {stress * geometry.load_area, found.row.proof ? "proof load" : "load at 0.2 % strain"};
}

double wanted_preload(Given& given, Work& work, const std::optional<ClassFound>& found,
                      const ThreadGeometry& geometry) {
  const auto preload = given.amount_if("preload", force_unit());
  const auto share = given.amount_if("share", unit_named("%"));
  if (preload) return *preload;
  if (!found) {
    given.refuse("a preload, or the class of the screw, is needed");
    return 0;
  }
  const Bears screw = bears(*found, geometry);
  const double part = share ? *share / 100 : usual_share;
  if (auto fault = outside_range({{"share", part * 100, {1, 100}, "%"}})) given.refuse(fault->message);
  work.taken("preload " + said(part * screw.load_n / 1000, kilonewton()) + ", " + brief(part * 100) +
             " % of the " + screw.of +
             (share ? "" : "; the usual share for joints that are opened again, Shigley ch. 8"));
  return part * screw.load_n;
}

constexpr int digits = 2;  // no friction is known better

TorqueBar bar_of(std::string name, Band band) {
  return {std::move(name), band, picture_number(band.least, digits),
          picture_number(band.most, digits) + " " + std::string(torque_unit().symbol)};
}

std::vector<TorqueBar> add_torques(Work& work, const Rubbing& rubbing, double preload,
                                   const ThreadGeometry& geometry) {
  std::vector<TorqueBar> bars;
  if (rubbing.nut_factor) {
    const Band band = work.of(torque_band(Band{preload, preload}, *rubbing.nut_factor, geometry.diameter));
    work.figure("by nut factor", band, torque_unit(), {"lbf·ft"}, "over its published range", digits);
    work.formula(std::string(k_formula), std::string(k_source));
    bars.push_back(bar_of("by nut factor", band));
  }
  if (rubbing.friction) {
    const auto at = [&](Friction friction) {
      return work.of(torque_long_form(preload, geometry, friction, mean_head_diameter(geometry)));
    };
    const Band band{at(rubbing.least()), at(rubbing.most())};
    work.figure("by friction", band, torque_unit(), {"lbf·ft"}, rubbing.note(), digits);
    work.formula(std::string(long_formula), std::string(long_source));
    bars.push_back(bar_of("by friction", band));
  }
  return bars;
}

void work_torque(Given& given, const OpenTables& open, Work& work) {
  const Screw screw = read_screw(given, open, work);
  const auto found = read_class(given, open, work, screw.geometry.diameter);
  const auto rubbing = read_rubbing(given, open, work);
  const auto scale = given.figure_if("scale", torque_unit());
  if (work.failed()) return;
  const double preload = wanted_preload(given, work, found, screw.geometry);
  if (work.failed()) return;
  const auto bars = add_torques(work, rubbing, preload, screw.geometry);
  work.caution(torque_caution);
  if (!work.failed())
    work.picture(torque_picture({"Computed torque for " + to_text(screw.thread),
                                 std::string(torque_caution),
                                 bars,
                                 &torque_unit(),
                                 scale,
                                 {}}));
}

void add_share(Work& work, const std::optional<ClassFound>& found, Band preload,
               const ThreadGeometry& geometry) {
  if (!found) return;
  const Bears screw = bears(*found, geometry);
  const Band share{preload.least / screw.load_n * 100, preload.most / screw.load_n * 100};
  work.figure("of the " + screw.of, share, unit_named("%"), {},
              share.most > 100 ? "the screw may be stretched for good" : "", 2);
}

void work_preload(Given& given, const OpenTables& open, Work& work) {
  const Screw screw = read_screw(given, open, work);
  const auto torque = given.band_if("torque", torque_unit());
  const auto found = read_class(given, open, work, screw.geometry.diameter);
  const auto rubbing = read_rubbing(given, open, work);
  if (work.failed() || !torque) return;
  const auto& geometry = screw.geometry;
  if (rubbing.nut_factor) {
    const Band band = work.of(preload_band(*torque, *rubbing.nut_factor, geometry.diameter));
    work.figure("by nut factor", {band.least / 1000, band.most / 1000}, kilonewton(), {"lbf"},
                "over its published range", 2);
    work.formula("F = T/(K · d)", std::string(k_source));
    add_share(work, found, band, geometry);
  }
  if (rubbing.friction) {
    const Band band = work.of(
        preload_band(*torque, geometry, rubbing.least(), rubbing.most(), mean_head_diameter(geometry)));
    work.figure("by friction", {band.least / 1000, band.most / 1000}, kilonewton(), {"lbf"}, rubbing.note(),
                2);
    work.formula(std::string(long_formula), std::string(long_source));
    add_share(work, found, band, geometry);
  }
  work.caution(torque_caution);
}

void work_thread(Given& given, const OpenTables& open, Work& work) {
  const Screw screw = read_screw(given, open, work);
  const auto found = read_class(given, open, work, screw.geometry.diameter);
  if (work.failed()) return;
  const ThreadGeometry& g = screw.geometry;
  const Unit& mm = unit_named("mm");
  work.words("thread", to_text(screw.thread));
  work.figure("pitch", g.pitch, mm, {}, "", 4);
  work.figure("pitch diameter", g.pitch_diameter, mm, {"in"}, "d2 = d − 0.649519 P", 4);
  work.figure("minor diameter, nut", g.minor_nut, mm, {"in"}, "D1 = d − 1.082532 P", 4);
  work.figure("minor diameter, screw", g.minor_screw, mm, {"in"}, "d3 = d − 1.226869 P", 4);
  work.figure("stress area", g.stress_area, unit_named("mm²"), {"in²"}, "", 3);
  work.figure("tapping drill", tap_drill_mm(g), mm, {"in"}, "d − P, common practice", 3);
  work.formula("d2, D1, d3 from the basic profile", "ISO 68-1 and ISO 724; ASME B1.1");
  work.formula("stress area from the mean of d2 and d3, inch threads π/4 · (d − 0.9743 P)²",
               "ISO 898-1; ASME B1.1");
  if (!found) return;
  const Bears screw_bears = bears(*found, g);
  work.figure(screw_bears.of, screw_bears.load_n / 1000, kilonewton(), {"lbf"},
              "printed loads differ by up to 0.5 %");
  work.figure("tensile load", found->row.tensile * g.load_area / 1000, kilonewton(), {"lbf"});
}

constexpr std::string_view thread_help = "the thread, M8x1.25 or 5/16-18 UNC";
constexpr std::string_view class_help = "the screw's class, 8.8 or SAE 5 or A2-70";
constexpr std::string_view state_help = "of the thread: dry, oiled, greased, anti-seize";
constexpr std::string_view factor_help = "nut factor instead of a state, 0.2 or 0.15..0.25";
constexpr std::string_view friction_help = "friction instead of a state, 0.12 or 0.08..0.16";

constexpr std::string_view head_help = "friction under the head, where it is another than at the thread";

constexpr std::array<GivenName, 9> torque_names = {
    {{"thread", thread_help, true},
     {"class", class_help},
     {"state", state_help},
     {"factor", factor_help},
     {"friction", friction_help},
     {"head", head_help},
     {"share", "of the proof load, 75 % if it is not given"},
     {"preload", "instead of a share of the proof load, 15 kN"},
     {"scale", "of a wrench, for the drawing, 20..100 N·m"}}};
constexpr std::array<GivenName, 7> preload_names = {{{"thread", thread_help, true},
                                                     {"torque", "25 N·m, or a band", true},
                                                     {"class", class_help},
                                                     {"state", state_help},
                                                     {"factor", factor_help},
                                                     {"friction", friction_help},
                                                     {"head", head_help}}};
constexpr std::array<GivenName, 2> thread_names = {{{"thread", thread_help, true}, {"class", class_help}}};

const std::array<TopicEntry, 3> topics = {
    {{{"torque", "Torque for a preload", torque_names, "torque M8x1.25 class 8.8 state oiled"}, work_torque},
     {{"preload", "Preload that a torque gives", preload_names,
       "preload M8x1.25 torque 25 N·m state oiled class 8.8"},
      work_preload},
     {{"thread", "Diameters, areas and loads of a thread", thread_names, "thread M8 class 8.8"},
      work_thread}}};

}  // namespace

std::span<const TopicEntry> joint_topics() { return topics; }

}  // namespace sheaf
