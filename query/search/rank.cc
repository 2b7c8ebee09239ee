// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/search/rank.h"

#include <algorithm>
#include <array>
#include <limits>

#include "query/library/fold.h"
#include "query/library/vocabulary.h"
#include "query/search/draft.h"
#include "query/search/measures.h"
#include "query/search/part_names.h"
#include "query/search/sides.h"

namespace sheaf {
namespace {

// "loosen" says nothing in a question, but all in the name of a step; "the" and "and" say nothing there
// either.
constexpr std::size_t longest_article = 3;

// The scale on which names are compared: a word too many is 1.
constexpr double side_too_many = 0.1;      // "front axle nut" for "axle nut"
constexpr double context_too_many = 0.2;   // "engine oil drain plug" for "drain plug" on the engine's sheet
constexpr double fastener_too_many = 0.3;  // "lower yoke pinch bolts" for the torque of the lower yoke
constexpr double fastener_unasked = 0.7;   // where nothing was asked of it: most want what is tightened
constexpr double place_share = 0.4;        // of each word that only says where: "... at the caliper"
constexpr double other_thing = 0.5;        // "banjo bolt sealing washer" for "banjo bolt" is a washer
constexpr double other_part_too = 1;       // "cam cap bolts" for "cap bolt": it is another part's name too
constexpr double other_meaning = 0.6;      // what is called so by a word that may mean another part
constexpr double other_fluid = 4;          // "fork oil seal" for "fork oil"
constexpr double part_elsewhere = 1.2;     // a part asked for that only its notes hold,
constexpr double nameless = 2;         // "exhaust stud", of the head's studs whose notes speak of the exhaust
constexpr double part_of_sheet = 0.4;  // or that is the assembly of its sheet
constexpr double other_words = 0.05;   // the same by other words than were typed
constexpr double generic_elsewhere = 0.1;  // "bolt" of a caliper pin
constexpr double other_assembly = 0.6;     // a lever's pivot bolt, for the swingarm's
constexpr double side_of_place = 0.5;  // "front pinch bolts" of the steering, which is in front as a whole
constexpr double opposite_side = 0.4;  // the lower one, where "top" was part of the name asked
constexpr double other_hand = 0.2;     // a right-hand thread, where a left-hand one was named
constexpr double unstaged = 0.3;       // a torque in one go, where a stage was asked for
constexpr double table_row = 0.5;      // a row of a table comes after the parts of machines,
constexpr double unasked_table_row = 1.5;  // far after where no size was asked for
constexpr double other_kind = 0.2;         // a nut that is called after the bearing
constexpr double no_order = 0.5;        // what says nothing of an order of tightening, where that was asked
constexpr double no_limit = 1.5;        // a clearance that states no limit, where one was asked for
constexpr double name_of_sized = 0.6;   // a name's words say less where a size or a thread chooses,
constexpr double name_of_kind = 0.1;    // and hardly anything where only its kind was named: "bearing 6203"
constexpr double step_of_job = 1;       // a step is no figure
constexpr double tool = 0.3;            // nor is a tool, though it may bear the part's name
constexpr double unasked_wear = 0.3;    // how far it may wear, where nothing was asked of it
constexpr double no_bound = 0.5;        // a sleeve, where the least of something was asked for
constexpr double of_one_machine = 0.2;  // "M12 nut", of one that several have
constexpr double bought_part = 0.25;    // what is tightened comes before what is bought

// "swingarm-pivot" -> "swingarm"
std::string_view assembly_named_first(std::string_view group) {
  for (const auto assembly : all_assemblies())
    if (group.starts_with(assembly) && group.substr(assembly.size()).starts_with("-")) return assembly;
  return {};
}

template <typename List, typename Item>
bool contains(const List& list, const Item& item) {
  return std::ranges::find(list, item) != list.end();
}

bool is_assembly(std::string_view group) { return contains(all_assemblies(), group); }

// "fork" of what stands on the fork's sheet, "engine" of all that is in it.
bool is_of_sheet(const PartAsked& part, const SheetRecord& sheet, Context& context) {
  const auto in_context = [&](const std::string& word) { return context.holds(stem_of(word)); };
  const auto in_title = words_of(fold(sheet.title));
  const auto is_titled = [&](const std::string& word) {
    return std::ranges::any_of(in_title,
                               [&](const std::string& each) { return stem_of(each) == stem_of(word); });
  };
  return std::ranges::find(part.assemblies, sheet.assembly) != part.assemblies.end() ||
         std::ranges::all_of(part.words, in_context) || std::ranges::all_of(part.words, is_titled) ||
         part.has_group(sheet.assembly);
}

// "bolt", "standard nut": any of them.
bool names_fastener_alone(const PartAsked& part) {
  return is_generic_fastener(part) || part.has_group("nut");
}

// "bearing", "o-ring", "bolt": what the size that is asked for is the size of.
bool names_kind(const PartAsked& part) {
  return is_generic_fastener(part) || std::ranges::any_of(part.groups, kind_named);
}

double share_of_name(const QuestionReading& reading) {
  if (!reading.has_designation()) return 1;
  return std::ranges::all_of(reading.parts, names_kind) ? name_of_kind : name_of_sized;
}

// "exhaust" of the exhaust valve's clearance: it is of that side.
bool is_side_of(const EntryRecord& entry, const std::string& word) {
  return std::ranges::any_of(
      entry.fields, [&](const FieldRecord& field) { return field.key == "side" && field.text == word; });
}

// "piston diameter", of the piston: what its figure measures.
bool is_dimension(std::string_view word) {
  constexpr std::array<std::string_view, 3> dimensions = {"diameter", "thickness", "width"};
  return std::ranges::find(dimensions, word) != dimensions.end();
}

// "friction plate min": how far it may wear.
bool is_bound(std::string_view word) {
  constexpr std::array<std::string_view, 9> bounds = {"min",     "max",     "mini",      "maxi",  "minimal",
                                                      "maximal", "mindest", "allowable", "limits"};
  return std::ranges::find(bounds, word) != bounds.end();
}

// The size within a name: "hook spanner 45..50 mm".
bool is_size(std::string_view word) { return has_digit(word) || word == "mm"; }

}  // namespace

Ranker::Ranker(const QuestionReading& reading, Lexicon& lexicon)
    : reading_(reading), lexicon_(lexicon), share_of_name_(share_of_name(reading)) {
  for (const auto& part : reading.parts) {
    for (const auto& word : part.words) {
      stems_.insert(stem_of(word));
      for (const auto& match : lexicon.groups_in({word}))
        if (const auto side = side_of_group(match.group); !side.empty()) side_hints_.emplace_back(side);
    }
    groups_.insert(part.groups.begin(), part.groups.end());
    add_implied(part);
  }
  for (const auto& side : reading.sides) groups_.insert("side-" + side);
  for (const auto& figure : reading.figures) {
    groups_.insert("kind-" + figure);
    stems_.insert(stem_of(figure));
  }
  for (const auto figure :
       {"level", "volume", "viscosity", "grade", "after-drain", "with-filter", "dry-fill"})
    asks_of_fluid_ = asks_of_fluid_ || asks_for(figure);
  asks_least_or_most_ =
      std::ranges::any_of(reading.parts, [](const PartAsked& part) { return is_bound(part.typed); });
  asks_bound_ = std::ranges::any_of(
      reading.parts, [](const PartAsked& part) { return is_bound(part.typed) || is_dimension(part.typed); });
  const auto has_ending = [&](std::string_view ending) {
    return std::ranges::any_of(groups_, [&](const std::string& group) {
      return group == ending || group.ends_with("-" + std::string(ending));
    });
  };
  asks_oil_ = has_ending("oil") && !has_ending("seal");
  if (asks_for("drive")) groups_.insert({"wrench", "socket", "hex-key"});
}

bool Ranker::is_fastener_word(const std::string& word) const {
  const auto& matches = lexicon_.groups_in({word});
  return std::ranges::any_of(
      matches, [](const GroupMatch& match) { return match.group == "bolt" || match.group == "nut"; });
}

bool Ranker::is_fluid_word(const std::string& word) const {
  const auto& matches = lexicon_.groups_in({word});
  return word == "fluid" ||
         std::ranges::any_of(matches, [](const GroupMatch& match) { return match.group == "oil"; });
}

// "swing arm pivot" speaks of the swingarm, and "fork seal" of a seal: by the words within it, or by the
// name of its group.
void Ranker::add_implied(const PartAsked& part) {
  for (const auto& match : lexicon_.groups_in(part.words))
    if (is_assembly(match.group)) assemblies_.insert(match.group);
  for (const auto& group : part.groups) {
    if (const auto assembly = assembly_named_first(group); !assembly.empty()) assemblies_.emplace(assembly);
    const auto last = std::string_view(group).substr(group.rfind('-') + 1);
    if (kind_named(last)) kinds_.emplace(last);
  }
}

// Whether the words of the match are shared with another part's name that begins before it and ends
// within it, and that was not asked for: as "cap bolts" in "cam cap bolts", but not "plug gap" in "spark
// plug gap", which is all one name of what was asked.
bool Ranker::crosses_another(const GroupMatch& match, const std::vector<GroupMatch>& all) const {
  const auto end_of = [](const GroupMatch& each) { return each.first + each.count; };
  const auto holds_it = [&](const GroupMatch& other) {
    return other.count > match.count && other.first <= match.first && end_of(other) >= end_of(match) &&
           groups_.contains(other.group);
  };
  const auto crosses = [&](const GroupMatch& other) {
    return other.count > 1 && other.first < match.first && end_of(other) > match.first &&
           end_of(other) < end_of(match) && !groups_.contains(other.group);
  };
  return std::ranges::any_of(all, crosses) && std::ranges::none_of(all, holds_it);
}

// "rotor bolt" of the flywheel's, for "disc bolt", which is called so too.
bool Ranker::means_another(const GroupMatch& match, const std::vector<GroupMatch>& all) const {
  return match.count > 1 && std::ranges::any_of(all, [&](const GroupMatch& other) {
           return other.first == match.first && other.count == match.count && !groups_.contains(other.group);
         });
}

bool Ranker::is_asked(const std::string& word, const std::string& stem) const {
  return stems_.contains(stem) || is_noise(word);
}

Ranker::Names Ranker::names_of(const EntryRecord& entry) {
  Names names = {&lexicon_.read_name(entry.name)};
  for (const auto& field : entry.fields)
    if (field.key == "also") names.push_back(&lexicon_.read_name(field.text));
  return names;
}

double Ranker::cost_of_name(const NameRead& name, const EntryRecord& entry, Context& context) const {
  std::vector<double> costs(name.words.size(), 1);
  const bool only_measures = std::ranges::all_of(name.words, is_size);  // "10wt", of what was not said
  const auto is_asked_for = [&](const FieldRecord& field) { return asks_for(field.key); };
  const bool is_row_asked =
      !kind_named(entry.kind) && std::ranges::any_of(entry.fields, is_asked_for);  // "glycol 40 % freezes at"
  for (std::size_t i = 0; i < name.words.size(); ++i) {
    const std::string& word = name.words[i];
    const std::string& stem = name.stems[i];
    const bool is_act = entry.kind == "step" && !stems_.contains(stem) && word.size() > longest_article;
    if (is_asked(word, stem) && !is_act)
      costs[i] = 0;
    else if (is_side_of(entry, word) || (is_size(word) && !only_measures))
      costs[i] = side_too_many;
    else if (asks_of_fluid_ && entry.kind == "fluid" && is_fluid_word(word))
      costs[i] = context_too_many;  // "fork level", of the oil in it
    else if (is_row_asked || is_dimension(word) || (asks_least_or_most_ && word == "length") ||
             (reading_.unread.empty() && context.holds(stem)))
      costs[i] = context_too_many;  // beside a word that nobody knows nothing goes without saying
  }
  double sum = 0;
  for (const auto& match : name.groups) {
    const bool asked = groups_.contains(match.group);
    if (!asked && side_of_group(match.group).empty()) continue;
    for (std::size_t i = match.first; i < match.first + match.count; ++i)
      costs[i] = std::min(costs[i], asked ? 0 : side_too_many);
    if (asked && crosses_another(match, name.groups)) sum += other_part_too;
    if (asked && means_another(match, name.groups)) sum += other_meaning;
  }
  const bool asks_torque = asks_for("torque") || asks_for("stage");
  const double of_fastener = asks_torque                ? fastener_too_many
                             : reading_.figures.empty() ? fastener_unasked
                                                        : 1;
  for (std::size_t i = 0; i < costs.size(); ++i) {
    const std::string joined = i > 0 ? name.words[i - 1] + name.words[i] : "";  // "run-out", "runout"
    if (i > 0 && is_asked(joined, stem_of(joined))) costs[i - 1] = costs[i] = 0;
    if (costs[i] == 1 && of_fastener < 1 && is_fastener_word(name.words[i])) costs[i] = of_fastener;
  }
  for (std::size_t i = 0; i < costs.size(); ++i) sum += i < name.thing ? costs[i] : costs[i] * place_share;
  std::size_t last = name.thing;  // word of the thing that is no side
  while (last > 0 && costs[last - 1] == side_too_many) --last;
  const bool is_other_thing = last > 0 && costs[last - 1] == 1;
  return sum + (is_other_thing ? other_thing : 0);
}

// A part that none of the entry's names holds was found on its sheet or in its notes; "bolt" and "screw"
// are said of anything that is tightened.
double Ranker::cost_of_absent_parts(const EntryRecord& entry, const SheetRecord& sheet, Names names,
                                    Context& context) {
  for (const auto& field : entry.fields)
    if (field.key == "load")
      names.push_back(&lexicon_.read_name(field.text));  // "rider alone" tells two pressures apart
  double sum = 0;
  bool names_one = false, lacks_one = false;  // of the parts that are known by their name alone
  bool names_any = false;
  aspects_absent_ = 0;
  for (const auto& part : reading_.parts) {
    const auto has_stem = [&](const std::string& word) {
      const std::string stem = stem_of(word);
      return std::ranges::any_of(names, [&](const NameRead* name) { return contains(name->stems, stem); });
    };
    const auto has_group = [&](const std::string& group) {
      const auto is_it = [&](const GroupMatch& match) { return match.group == group; };
      return entry.kind == group || std::ranges::any_of(names, [&](const NameRead* name) {
               return std::ranges::any_of(name->groups, is_it);
             });
    };
    const bool is_held =
        std::ranges::all_of(part.words, has_stem) || std::ranges::any_of(part.groups, has_group);
    const bool is_there = is_held || is_of_sheet(part, sheet, context);
    names_any = names_any || is_held;
    if (names_a_part(part)) (is_there ? names_one : lacks_one) = true;
    if (std::ranges::all_of(part.words, has_stem)) continue;
    const auto goes_without_saying = [&](const std::string& word) {
      return has_stem(word) || context.holds(stem_of(word));
    };
    const bool is_of_context =
        std::ranges::any_of(part.words, has_stem) && std::ranges::all_of(part.words, goes_without_saying);
    if (is_of_context || std::ranges::any_of(part.groups, has_group))
      sum += other_words;
    else if (part.is_aspect)
      ++aspects_absent_;
    else if (is_generic_fastener(part) && entry.kind == "fastener")
      sum += generic_elsewhere;
    else
      sum += is_there ? part_of_sheet : part_elsewhere;
  }
  names_some_ = names_any;
  return sum + (names_any && lacks_one && !names_one ? nameless : 0);
}

// "swing arm pivot" is not the pivot of a lever, though that too is a pivot bolt.
double Ranker::cost_of_assembly(const NameRead& name, const SheetRecord& sheet) const {
  if (assemblies_.empty() || assemblies_.contains(sheet.assembly)) return 0;
  for (const auto& match : name.groups)
    if (assemblies_.contains(match.group)) return 0;
  return other_assembly;
}

double Ranker::cost_of_side(const EntryRecord& entry) const {
  double sum = 0;
  for (const auto& side : reading_.sides)
    if ((side == "front" || side == "rear") && !is_side_of(entry, side) && !is_called(entry, side))
      sum += side_of_place;
  for (const auto& hint : side_hints_)
    for (const auto& field : entry.fields)
      if (field.key == "side" && field.text == opposite_of(hint)) sum += opposite_side;
  return sum;
}

double Ranker::cost_of_kind(const EntryRecord& entry) const {
  if (!kind_named(entry.kind)) return reading_.has_designation() ? table_row : unasked_table_row;
  const bool is_any_fastener = !reading_.parts.empty() && reading_.machines.empty() &&
                               std::ranges::all_of(reading_.parts, names_fastener_alone);
  if (is_any_fastener && entry.fits.size() == 1) return of_one_machine;
  const bool is_asked = asks_for(entry.kind) || !reading_.kinds.empty();
  if (is_asked) return 0;
  if (entry.kind == "seal" && asks_oil_) return other_fluid;
  if (entry.kind == "step") return step_of_job;
  if (entry.kind == "tool") return tool;
  if (!kinds_.empty() && !kinds_.contains(entry.kind)) return other_kind;
  const bool is_thing =
      entry.kind == "bushing" || entry.kind == "bearing" || entry.kind == "part" || entry.kind == "spring";
  if (asks_least_or_most_ && is_thing) return no_bound;
  if (reading_.figures.empty() && !asks_bound_ && (entry.kind == "limit" || entry.kind == "clearance"))
    return unasked_wear;
  return entry.kind == "part" && !asks_for("part-number") ? bought_part : 0;
}

double Ranker::cost_of_stages(const EntryRecord& entry) const {
  if (!asks_for("stage") && !asks_for("angle")) return 0;
  const auto torque = std::ranges::find(entry.fields, "torque", &FieldRecord::key);
  if (torque == entry.fields.end()) return 0;
  const auto statement = parse_statement(torque->text, Dimension::torque, Input::sheet);
  return statement && statement->stages.size() > 1 ? 0 : unstaged;
}

// "pinch bolts, which leg first": what says nothing of an order.
double Ranker::cost_of_order(const EntryRecord& entry) const {
  if (!asks_for("pattern") && !asks_for("order")) return 0;
  const auto tells = [](const FieldRecord& field) {
    return field.key == "pattern" ||
           (field.key.starts_with("notes") && fold(field.text).find("first") != std::string::npos);
  };
  return std::ranges::any_of(entry.fields, tells) ? 0 : no_order;
}

double Ranker::cost_of_limit(const EntryRecord& entry) const {
  if (!asks_for("limit") || entry.kind != "clearance") return 0;
  return std::ranges::find(entry.fields, "limit", &FieldRecord::key) == entry.fields.end() ? no_limit : 0;
}

double Ranker::cost_of_hand(const EntryRecord& entry) const {
  return reading_.hand.empty() || has_hand(entry, reading_.hand) ? 0 : other_hand;
}

Rank Ranker::rank(const EntryRecord& entry, const SheetRecord& sheet) {
  const double cost = cost_of_kind(entry) + cost_of_side(entry) + cost_of_stages(entry) +
                      cost_of_order(entry) + cost_of_limit(entry) + cost_of_hand(entry);
  if (reading_.parts.empty()) return {cost};
  Context context(entry, sheet);
  const auto names = names_of(entry);
  double least = std::numeric_limits<double>::max();
  for (const NameRead* name : names) least = std::min(least, cost_of_name(*name, entry, context));
  least *= share_of_name_;
  const double absent = cost_of_absent_parts(entry, sheet, names, context);
  const bool by_name = absent < generic_elsewhere;
  return {cost + least + absent + cost_of_assembly(*names.front(), sheet), by_name, names_some_,
          aspects_absent_};
}

}  // namespace sheaf
