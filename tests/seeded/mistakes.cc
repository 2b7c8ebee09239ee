// SPDX-License-Identifier: GPL-2.0-or-later
// The kinds of mistake writers make, each as they make it: one number, one word, one line.
#include <algorithm>
#include <cmath>

#include "compiler/check/joint.h"
#include "compiler/check/measure.h"
#include "tests/seeded/editing.h"

namespace seeded {
namespace {

using namespace sheafc;

int pick(Random& random, int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); }
double share(Random& random, double from, double to) {
  return std::uniform_real_distribution<double>(from, to)(random);
}

std::optional<Seeding> one(std::optional<Edit> edit, std::string slip = {}) {
  if (!edit) return {};
  return Seeding{{std::move(*edit)}, std::move(slip)};
}

std::optional<Seeding> rewritten(const LinkedEntry& entry, std::string_view key, const std::string& text,
                                 std::string slip = {}) {
  const Value* value = own_value(entry, key);
  if (!value || value->text == text) return {};
  return one(rewrite(entry, *value, text), std::move(slip));
}

// A torque of one stage in N·m, for kinds that rewrite the whole figure.
struct Torque {
  double nm;
  std::string text;
};
std::optional<Torque> single_torque(const LinkedEntry& entry) {
  const sheaf::Statement* torque = entry.kind == "fastener" ? entry.figure("torque") : nullptr;
  if (!torque || torque->stages.size() != 1 || torque->printed || !own_value(entry, "torque")) return {};
  const auto nm = middle_in(torque, "N·m");
  if (!nm || torque->figure().unit->symbol != "N·m") return {};
  return Torque{*nm, std::string(entry.text("torque"))};
}

// Joints whose strength a rule can judge.
bool is_ordinary(const LinkedEntry& entry) {
  const std::string_view joint = entry.choice("joint");
  return (joint.empty() || joint == "ordinary" || joint == "pinch" || joint == "sprocket") &&
         entry.has("thread");
}

Sow torque_sow(std::function<std::optional<std::string>(const Torque&, Random&)> change,
               std::string slip = {}, bool ordinary = true) {
  return [change, slip, ordinary](const LinkedEntry& entry, Random& random) -> std::optional<Seeding> {
    const auto torque = single_torque(entry);
    if (!torque || (ordinary && !is_ordinary(entry))) return {};
    const auto text = change(*torque, random);
    return text ? rewritten(entry, "torque", *text, slip) : std::nullopt;
  };
}

std::string nm(double value) { return written(value, value < 10 ? 1 : 0); }
double lbf_ft(double newton_metres) { return newton_metres / 1.3558179483314; }

Sow seal_sow(
    std::function<std::optional<std::string>(const sheaf::Size&, const LinkedEntry&, Random&)> change,
    std::string kind = "seal") {
  return [change, kind](const LinkedEntry& entry, Random& random) -> std::optional<Seeding> {
    const sheaf::Size* size = entry.kind == kind ? entry.size("size") : nullptr;
    if (!size || size->count < 3 || size->step || size->unit != "mm") return {};
    const auto text = change(*size, entry, random);
    return text ? rewritten(entry, "size", *text) : std::nullopt;
  };
}

std::string size_text(double a, double b, double c) {
  const auto plain = [](double value) {
    std::string text = written(value, 2);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
  };
  return plain(a) + "x" + plain(b) + "x" + plain(c);
}
double dim(const sheaf::Size& size, int i) { return sheaf::dimension_mm(size, i); }

Sow remove(std::string_view kind, std::string_view key, std::function<bool(const LinkedEntry&)> when) {
  return [=](const LinkedEntry& entry, Random&) -> std::optional<Seeding> {
    if (entry.kind != kind || !when(entry)) return {};
    return one(without(entry, key));
  };
}

// Exchanges the texts of two fields of one entry.
Sow swap(std::string_view kind, std::string_view left, std::string_view right,
         std::function<bool(const LinkedEntry&)> when) {
  return [=](const LinkedEntry& entry, Random&) -> std::optional<Seeding> {
    const Value* a = entry.kind == kind ? own_value(entry, left) : nullptr;
    const Value* b = own_value(entry, right);
    if (!a || !b || a->text == b->text || !when(entry)) return {};
    Seeding seeding{{rewrite(entry, *a, b->text), rewrite(entry, *b, a->text)}, {}};
    return seeding;
  };
}

Sow slip_of(std::string_view kind, std::string_view key, bool up,
            std::function<bool(const LinkedEntry&)> when, std::string slip = {}) {
  return [=](const LinkedEntry& entry, Random&) -> std::optional<Seeding> {
    const Value* value = entry.kind == kind ? own_value(entry, key) : nullptr;
    if (!value || !when(entry)) return {};
    return rewritten(entry, key, decimal_slipped(value->text, up), slip);
  };
}

bool always(const LinkedEntry&) { return true; }
bool is_fork_seal(const LinkedEntry& entry) {
  return entry.choice("use") == "fork-oil" || entry.choice("use") == "fork-dust";
}
bool is_fork_oil(const LinkedEntry& entry) { return entry.choice("purpose") == "fork-oil"; }
bool names(const LinkedEntry& entry, std::string_view word) {
  return entry.name.find(word) != std::string::npos;
}
int turns(const LinkedEntry& entry) {
  int count = 0;
  const sheaf::Statement* torque = entry.figure("torque");
  if (torque)
    for (const sheaf::Stage& stage : torque->stages) count += stage.act == sheaf::Act::turn_further;
  return count;
}

std::optional<Seeding> wrong_drive(const LinkedEntry& entry, Random& random) {
  const sheaf::Drive* drive = entry.kind == "fastener" && is_ordinary(entry) ? entry.drive("drive") : nullptr;
  const auto across = drive && drive->shape == sheaf::Drive::Shape::hexagon && drive->unit == "mm"
                          ? sheaf::across_flats_mm(*drive)
                          : std::nullopt;
  const sheaf::Thread* thread = entry.thread("thread");
  if (!across || !thread || sheaf::diameter_mm(*thread).value_or(0) > 12) return {};
  constexpr int widths[] = {7, 8, 10, 12, 13, 14, 17, 19, 22, 24};
  const auto at = std::ranges::find(widths, static_cast<int>(*across)) - widths;
  const auto there = at + (at >= 3 && pick(random, 0, 1) ? -3 : 3);
  if (there < 0 || there > 9) return {};
  return rewritten(entry, "drive", "hexagon " + std::to_string(widths[there]) + " mm");
}

std::optional<Seeding> wrong_pitch(const LinkedEntry& entry, Random& random) {
  const sheaf::Thread* thread = entry.kind == "fastener" ? entry.thread("thread") : nullptr;
  if (!thread || thread->system != sheaf::Thread::System::metric || !thread->pitch || thread->left_hand)
    return {};
  const double pitch = sheaf::approximate(*thread->pitch);
  return rewritten(entry, "thread",
                   "M" + thread->diameter + "x" +
                       std::string(pick(random, 0, 1) ? written(pitch * 2, 1) : written(pitch * 10, 0)));
}

std::optional<Seeding> soft_hole(const LinkedEntry& entry, Random& random) {
  const auto torque = single_torque(entry);
  if (!torque || !is_ordinary(entry) || entry.text("class") != "8.8" || entry.has("into")) return {};
  constexpr std::string_view soft[] = {"magnesium", "brass", "plastic"};
  return one(add_after(entry, "torque", "into: " + std::string(soft[pick(random, 0, 2)])));
}

std::optional<Seeding> unlike_bearing(const LinkedEntry& entry, Random& random) {
  const sheaf::Size* size =
      entry.kind == "bearing" && entry.has("designation") ? entry.size("size") : nullptr;
  if (!size || size->count != 3) return {};
  const double off = pick(random, 0, 1) ? 2 : -2;
  const bool outside = pick(random, 0, 1);
  return rewritten(
      entry, "size",
      size_text(dim(*size, 0) + (outside ? 0 : off), dim(*size, 1) + (outside ? off : 0), dim(*size, 2)));
}

std::optional<Seeding> unlike_count(const LinkedEntry& entry, Random& random) {
  const Count* count = entry.has("pattern") ? entry.count("count") : nullptr;
  if (!count || !count->per.empty()) return {};
  return rewritten(entry, "count", std::to_string(count->number + (pick(random, 0, 1) ? 1 : -1)));
}

std::optional<Seeding> broken_pattern(const LinkedEntry& entry, Random& random) {
  const Pattern* pattern = entry.pattern("pattern");
  if (!pattern || pattern->order.size() < 3) return {};
  std::vector<int> order = pattern->order;
  const auto at = static_cast<std::size_t>(pick(random, 1, static_cast<int>(order.size()) - 1));
  order[at] = order[at - 1];
  std::string text;
  for (const int place : order) text += (text.empty() ? "" : "-") + std::to_string(place);
  return rewritten(entry, "pattern", text);
}

std::optional<Seeding> stages_swapped(const LinkedEntry& entry, Random&) {
  const sheaf::Statement* torque = entry.figure("torque");
  if (!torque || torques_nm(*torque).size() < 2 || turns(entry) > 0) return {};
  std::string text;
  for (auto stage = torque->stages.rbegin(); stage != torque->stages.rend(); ++stage) {
    if (stage->act != sheaf::Act::tighten || stage->hand_tight) return {};
    text += (text.empty() ? "" : ", ") + sheaf::to_text(stage->figure);
  }
  return rewritten(entry, "torque", text);
}

std::optional<Seeding> dead_reference(const LinkedEntry& entry, Random&) {
  const Field* uses = entry.kind == "step" ? entry.find("uses") : nullptr;
  if (!uses || entry.inherited) return {};
  const Value& value = uses->values.front();
  return one(rewrite(entry, value, value.text + "x"));
}

std::optional<Seeding> level_moved(const LinkedEntry& entry, Random& random) {
  // Only a fork that is based on another has a level to be held against.
  if (!is_fork_oil(entry) || !entry.sheet->base || entry.inherited) return {};
  const auto mm = middle_in(entry.figure("level"), "mm");
  const Value* value = own_value(entry, "level");
  if (!mm || !value) return {};
  const double moved = *mm + (pick(random, 0, 1) ? 30 : -30);
  return rewritten(entry, "level", with_first_number(value->text, written(moved, 0)));
}

// The entry's variants as its own file states them.
const Variants* variants_of(const LinkedEntry& entry) {
  if (entry.inherited || entry.fits.empty()) return nullptr;
  for (const Entry& written : entry.sheet->sheet->entries) {
    const Value* variants = written.id == entry.id ? written.fields.value("variants") : nullptr;
    const auto* all = variants ? variants->as<Variants>() : nullptr;
    if (all && all->size() >= 2) return all;
  }
  return nullptr;
}

std::optional<Seeding> variant_dropped(const LinkedEntry& entry, Random&) {
  const Variants* all = variants_of(entry);
  const Value* years = all ? all->back().fields.value("years") : nullptr;
  const auto* span = years ? years->as<Years>() : nullptr;
  if (!span || span->from == 0 || span->to == span->from) return {};
  return one(rewrite(entry, *years,
                     std::to_string(span->from + 1) + (span->to ? ".." + std::to_string(span->to) : "..")));
}

std::optional<Seeding> years_widened(const LinkedEntry& entry, Random&) {
  const Variants* all = variants_of(entry);
  const Value* years = all ? all->front().fields.value("years") : nullptr;
  const auto* span = years ? years->as<Years>() : nullptr;
  if (!span || span->to == 0 || all->front().fields.has("frames")) return {};
  return one(rewrite(entry, *years,
                     (span->from ? std::to_string(span->from) : "") + ".." + std::to_string(span->to + 1)));
}

// The sheet's own cautions, which hold for each of its entries.
std::optional<Seeding> cautions_dropped(const LinkedEntry& entry, Random&) {
  constexpr std::string_view dangerous[] = {"front-brake", "rear-brake", "steering-head", "front-wheel",
                                            "rear-wheel"};
  if (std::ranges::find(dangerous, entry.sheet->assembly()) == std::end(dangerous)) return {};
  return one(line_removed(entry, entry.sheet->sheet->fields.find("cautions")));
}

std::optional<Seeding> superseded_in_circle(const LinkedEntry& entry, Random&) {
  const Fields* successor = entry.record("superseded-by");
  const Value* old = entry.value("supersedes");
  if (!successor || !old || entry.inherited) return {};
  const Value* number = successor->value("number");
  if (!number || number->where.file != entry.sheet->sheet->file->name()) return {};
  return one(rewrite(entry, *number, old->text));
}

std::optional<Seeding> silicone(const LinkedEntry& entry, Random&) {
  if (entry.choice("purpose") != "brake-fluid" || !entry.has("family")) return {};
  return rewritten(entry, "grade", "DOT 5");
}

std::optional<Seeding> same_name(const LinkedEntry& entry, Random& random) {
  // Takes the name of a neighbour of the same kind, written another way.
  if (entry.kind == "step" || !own_value(entry, "name")) return {};
  std::vector<const LinkedEntry*> others;
  for (const LinkedEntry& other : entry.sheet->entries) {
    if (other.kind == entry.kind && other.id != entry.id && other.text("side") == entry.text("side") &&
        other.text("load") == entry.text("load") && !other.inherited &&
        other.values("side").size() == entry.values("side").size())
      others.push_back(&other);
  }
  if (others.empty()) return {};
  std::string name =
      others[static_cast<std::size_t>(pick(random, 0, static_cast<int>(others.size()) - 1))]->name;
  std::ranges::replace(name, ' ', '-');
  return name.find(':') == std::string::npos && name.find(',') == std::string::npos
             ? rewritten(entry, "name", name)
             : std::nullopt;
}

std::vector<Mistake> list() {
  using enum Asked;
  return {
      {1, "decimal slip up", impossible,
       torque_sow([](const Torque& t, Random&) { return std::optional(decimal_slipped(t.text, true)); },
                  "slipped decimal")},
      {1, "decimal slip down", unlikely,
       torque_sow([](const Torque& t, Random&) { return std::optional(decimal_slipped(t.text, false)); },
                  "slipped decimal")},
      {2, "inch-pounds as foot-pounds", impossible,
       torque_sow([](const Torque& t, Random&)
                      -> std::optional<std::string> { return written(lbf_ft(t.nm) * 12, 0) + " lbf·ft"; },
                  "inch-pounds")},
      {3, "one number in both units", impossible,
       torque_sow([](const Torque& t,
                     Random&) { return std::optional(nm(t.nm) + " N·m (" + nm(t.nm) + " lbf·ft)"); },
                  "both units", false)},
      {4, "lbf·ft in a N·m field", peers,
       torque_sow([](const Torque& t, Random&) { return std::optional(nm(lbf_ft(t.nm)) + " N·m"); })},
      {5, "kgf·m read as N·m", unlikely,
       torque_sow([](const Torque& t, Random&) { return std::optional(written(t.nm / 9.80665, 1) + " N·m"); },
                  "slipped decimal")},
      {6, "stale converted number", impossible,
       torque_sow(
           [](const Torque& t, Random& r) {
             return std::optional(
                 nm(t.nm) + " N·m (" +
                 written(lbf_ft(t.nm) * (pick(r, 0, 1) ? share(r, 1.12, 1.3) : share(r, 0.75, 0.88)), 0) +
                 " lbf·ft)");
           },
           {}, false)},
      {8, "least over most", impossible,
       torque_sow([](const Torque& t,
                     Random&) { return std::optional(nm(t.nm * 1.15) + ".." + nm(t.nm * 0.9) + " N·m"); },
                  {}, false)},
      {9, "nominal outside its range", impossible,
       torque_sow(
           [](const Torque& t, Random&) {
             return std::optional(nm(t.nm) + " (" + nm(t.nm * 1.1 + 1) + ".." + nm(t.nm * 1.25 + 1) +
                                  ") N·m");
           },
           {}, false)},
      {10, "range too wide", impossible,
       torque_sow([](const Torque& t,
                     Random&) { return std::optional(nm(t.nm * 0.5) + ".." + nm(t.nm * 1.8) + " N·m"); },
                  {}, false)},
      {11, "tolerance meant in per cent", unlikely,
       torque_sow(
           [](const Torque& t, Random& r) {
             return std::optional(nm(t.nm) + " ± " + nm(t.nm * share(r, 0.32, 0.6)) + " N·m");
           },
           {}, false)},
      {12, "seal inside and outside swapped", impossible,
       seal_sow([](const sheaf::Size& s, const LinkedEntry&, Random&) {
         return std::optional(size_text(dim(s, 1), dim(s, 0), dim(s, 2)));
       })},
      {13, "seal height slipped", impossible,
       seal_sow([](const sheaf::Size& s, const LinkedEntry& e, Random&) -> std::optional<std::string> {
         if (!is_fork_seal(e)) return {};
         return size_text(dim(s, 0), dim(s, 1), dim(s, 2) * 10);
       })},
      {14, "seal inside unlike the tube", impossible,
       seal_sow([](const sheaf::Size& s, const LinkedEntry& e, Random& r) -> std::optional<std::string> {
         if (!is_fork_seal(e)) return {};
         return size_text(dim(s, 0) + (pick(r, 0, 1) ? 2 : -2), dim(s, 1), dim(s, 2));
       })},
      {15, "seal outside unlike the bore", impossible,
       seal_sow([](const sheaf::Size& s, const LinkedEntry& e, Random& r) -> std::optional<std::string> {
         if (e.choice("use") != "fork-oil") return {};
         return size_text(dim(s, 0), dim(s, 1) + (pick(r, 0, 1) ? 1 : -1), dim(s, 2));
       })},
      {16, "bearing number unlike its size", impossible, unlike_bearing},
      {17, "socket of another thread", unlikely, wrong_drive},
      {18, "pitch that does not exist", impossible, wrong_pitch},
      {19, "inch diameter with metric pitch", impossible,
       [](const LinkedEntry& e, Random&) {
         return e.kind == "fastener" && e.has("thread") ? rewritten(e, "thread", "5/16x1.25") : std::nullopt;
       }},
      {21, "class that does not exist", impossible,
       [](const LinkedEntry& e, Random& r) {
         constexpr const char* wrong[] = {"10.8", "88", "8.9", "9.10", "11.9"};
         return e.has("class") ? rewritten(e, "class", wrong[pick(r, 0, 4)]) : std::nullopt;
       }},
      {22, "steel torque in a soft hole", unlikely, soft_hole},
      {23, "state missing on a critical joint", impossible,
       remove("fastener", "state", [](const LinkedEntry& e) { return e.critical && e.has("torque"); })},
      {24, "oil under threadlocker", unlikely,
       [](const LinkedEntry& e, Random& r) {
         return e.text("state") == "threadlocker"
                    ? rewritten(e, "state",
                                pick(r, 0, 1) ? "[oiled, threadlocker]" : "[greased, threadlocker]")
                    : std::nullopt;
       }},
      {26, "one-time fastener not flagged", impossible,
       remove("fastener", "reuse",
              [](const LinkedEntry& e) {
                const auto* t = e.figure("torque");
                return t && turned_further_degrees(*t) > 45;
              })},
      {27, "stages out of order", unlikely, stages_swapped},
      {29, "pattern missing", note,
       remove("fastener", "pattern",
              [](const LinkedEntry& e) {
                const Count* c = e.count("count");
                return c && c->number >= 4;
              })},
      {30, "pattern names one twice", impossible, broken_pattern},
      {31, "count unlike the pattern", impossible, unlike_count},
      {33, "left-hand thread only in words", unlikely,
       remove("fastener", "hand", [](const LinkedEntry& e) { return e.text("hand") == "left"; })},
      {35, "variants overlap", impossible, years_widened},
      {37, "variant with one side", impossible, variant_dropped},
      {38, "dead reference", impossible, dead_reference},
      {39, "supersession in a circle", impossible, superseded_in_circle},
      {41, "name of a neighbour", unlikely, same_name},
      {42, "litres for millilitres", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const Value* v = e.kind == "fluid" ? own_value(e, "volume") : nullptr;
         const auto at = v ? v->text.find(" mL") : std::string::npos;
         if (at == std::string::npos) return {};
         std::string text = v->text;
         text.replace(at, 3, " L");
         return rewritten(e, "volume", text, "mL and L");
       }},
      {43, "the pair's oil for one leg", peers,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const auto* s = is_fork_oil(e) ? e.figure("volume") : nullptr;
         const auto ml = middle_in(s, "mL");
         const Value* v = own_value(e, "volume");
         if (!ml || !v || s->per != "leg") return {};
         return rewritten(e, "volume", with_first_number(v->text, written(*ml * 2, 0)));
       }},
      {44, "dry fill and refill swapped", impossible, swap("fluid", "after-drain", "with-filter", always)},
      {45, "level moved between years", unlikely, level_moved},
      {46, "level without its conditions", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const auto* s = is_fork_oil(e) ? e.figure("level") : nullptr;
         if (!s) return {};
         return rewritten(e, "level", sheaf::to_text(s->figure()) + " below the rim");
       }},
      {46, "level slipped", impossible, slip_of("fluid", "level", true, is_fork_oil)},
      {47, "label without viscosity", unlikely,
       remove("fluid", "viscosity",
              [](const LinkedEntry& e) { return is_fork_oil(e) && !e.flag("label-only"); })},
      {48, "silicone grade, glycol family", impossible, silicone},
      {49, "tyre pressure slipped", impossible,
       slip_of("pressure", "value", true,
               [](const LinkedEntry& e) {
                 return names(e, "tyre") && e.figure("value")->figure().unit->symbol == "bar";
               })},
      {49, "kPa written as bar", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const auto* s = e.kind == "pressure" && names(e, "tyre") ? e.figure("value") : nullptr;
         const auto bar = middle_in(s, "bar");
         const Value* v = own_value(e, "value");
         if (!bar || !v || s->figure().unit->symbol != "bar") return {};
         return rewritten(e, "value", with_first_number(v->text, written(*bar * 100, 0)));
       }},
      {50, "limit on the wrong side of new", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const Value* fresh = e.kind == "limit" ? own_value(e, "new") : nullptr;
         const auto* limit = e.figure("limit");
         const auto worn = limit && fresh ? middle_in(limit, limit->figure().unit->symbol) : std::nullopt;
         const auto was = worn ? middle_in(e.figure("new"), limit->figure().unit->symbol) : std::nullopt;
         if (!was || e.figure("new")->figure().form != sheaf::Form::nominal ||
             limit->figure().form == sheaf::Form::nominal || *was == *worn)
           return {};
         return rewritten(
             e, "new", written(*worn + (*worn - *was), 2) + " " + std::string(limit->figure().unit->symbol));
       }},
      {52, "decimal comma", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         for (const std::string_view key : {"torque", "value", "volume", "limit"}) {
           const Value* v = own_value(e, key);
           if (!v) continue;
           std::string text = v->text;
           const auto at = text.find('.');
           if (at == std::string::npos || at == 0 ||
               !std::isdigit(static_cast<unsigned char>(text[at - 1])) || at + 1 >= text.size() ||
               !std::isdigit(static_cast<unsigned char>(text[at + 1])))
             continue;
           text[at] = ',';
           return rewritten(e, key, text);
         }
         return {};
       }},
      {53, "a name that YAML reads as nothing", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const Value* v = own_value(e, "name");
         if (!v || e.declaration == nullptr) return {};
         auto edit = rewrite(e, *v, "#10 " + v->text);
         return edit.text.front() == '"' ? std::nullopt : one(edit);
       }},
      {54, "caution missing", impossible, cautions_dropped},
      {14, "tube unlike its seal", impossible,
       [](const LinkedEntry& e, Random& r) -> std::optional<Seeding> {
         const auto mm = e.kind == "seal" ? middle_in(e.figure("tube"), "mm") : std::nullopt;
         if (!mm) return {};
         return rewritten(e, "tube", written(*mm + (pick(r, 0, 1) ? 2 : -2), 0) + " mm");
       }},
      {1, "setting beyond its range", impossible,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         const Value* v = e.kind == "setting" && e.has("range") ? own_value(e, "standard") : nullptr;
         const auto* s = v ? e.figure("standard") : nullptr;
         const auto* range = v ? e.figure("range") : nullptr;
         const auto band = s ? band_in(range->figure(), s->figure().unit->symbol) : std::nullopt;
         if (!band || !std::isfinite(band->most)) return {};
         return rewritten(e, "standard", with_first_number(v->text, written(band->most + 4, 0)));
       }},
      {51, "valve clearances swapped", note,
       [](const LinkedEntry& e, Random&) -> std::optional<Seeding> {
         if (e.kind != "clearance" || e.text("side") != "intake" || !own_value(e, "value")) return {};
         for (const LinkedEntry& other : e.sheet->entries) {
           if (other.kind != "clearance" || other.text("side") != "exhaust" || !own_value(other, "value") ||
               other.text("value") == e.text("value"))
             continue;
           return Seeding{{rewrite(e, *own_value(e, "value"), std::string(other.text("value"))),
                           rewrite(other, *own_value(other, "value"), std::string(e.text("value")))},
                          {}};
         }
         return {};
       }},
      {1, "bushing turned inside out", impossible, swap("bushing", "inside", "outside", always)},
      {1, "valve clearance slipped", impossible,
       slip_of("clearance", "value", true, [](const LinkedEntry& e) { return names(e, "valve clearance"); })},
  };
}

}  // namespace

const std::vector<Mistake>& all_mistakes() {
  static const std::vector<Mistake> all = list();
  return all;
}

}  // namespace seeded
