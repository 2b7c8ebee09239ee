// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/content/synthetic_fleet.h"

#include <array>
#include <cstdint>
#include <cstdio>
#include <map>
#include <string_view>

#include "query/library/vocabulary.h"

namespace sheaf::test {
namespace {

template <std::size_t n>
using Words = std::array<std::string_view, n>;

constexpr Words<12> places = {"front", "rear",  "left", "right",  "upper", "lower",
                              "inner", "outer", "main", "centre", "side",  "end"};
constexpr Words<30> fastened = {
    "pinch bolt",  "axle nut",     "top plug",       "drain plug",   "caliper bolt", "union bolt",
    "clamp screw", "pivot nut",    "mounting bolt",  "sprocket nut", "cover screw",  "filler plug",
    "stem nut",    "spindle bolt", "disc bolt",      "lever screw",  "bracket bolt", "hub nut",
    "cap screw",   "banjo screw",  "linkage bolt",   "rocker nut",   "holder screw", "flange nut",
    "plate bolt",  "guard screw",  "tensioner bolt", "pump screw",   "case bolt",    "ring nut"};
constexpr Words<10> parts = {"spring", "seal",   "bearing", "ring",   "bushing",
                             "oil",    "damper", "filter",  "gasket", "chain"};
constexpr Words<6> assemblies = {"fork", "shock", "front-wheel", "rear-wheel", "swingarm", "chain-drive"};
constexpr Words<6> adjusted = {"plunger", "roller", "spindle", "hub", "rocker", "sleeve"};
constexpr Words<8> verbs = {"clean", "grease", "inspect", "hold", "support", "turn", "mark", "measure"};

struct Screw {
  std::string_view thread, hexagon;
  int torque;  // N·m, about what the thread bears in steel
};
constexpr std::array<Screw, 5> screws = {{{"M5x0.8", "8", 5},
                                          {"M6x1", "10", 9},
                                          {"M8x1.25", "12", 22},
                                          {"M10x1.25", "14", 40},
                                          {"M12x1.25", "17", 70}}};

// A stream of numbers that depends on nothing but its start (splitmix64).
class Stream {
 public:
  explicit Stream(std::uint64_t start) : state_(start * 0x9E3779B97F4A7C15u + 1) {}
  int below(int bound) {
    std::uint64_t mixed = state_ += 0x9E3779B97F4A7C15u;
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9u;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBu;
    return static_cast<int>((mixed ^ (mixed >> 31)) % static_cast<std::uint64_t>(bound));
  }
  template <std::size_t n>
  std::string of(const Words<n>& words) {
    return std::string(words[static_cast<std::size_t>(below(static_cast<int>(n)))]);
  }

 private:
  std::uint64_t state_;
};

// One of 20 000 words that mean nothing.
std::string made_up_word(int number) {
  constexpr std::string_view consonants = "bdfgklmnprstvz", vowels = "aeiou";
  std::string word;
  for (auto rest = static_cast<unsigned>(number % 20000) + 70 * 70; rest > 0; rest /= 70) {
    word += consonants[rest % 70 / 5];
    word += vowels[rest % 5];
  }
  return word + 'n';
}

std::string capital(std::string word) {
  word[0] = static_cast<char>(word[0] - 'a' + 'A');
  return word;
}

std::string number_text(int number) { return std::to_string(number); }

// Puts one sheet together; its lines are counted as synthetic_yaml writes them, roughly.
class Maker {
 public:
  explicit Maker(int number) : number_(number), random_(static_cast<std::uint64_t>(number)) {}
  SheetRecord sheet();

 private:
  EntryRecord& entry(const char* kind, const std::string& name);
  void field(const char* key, std::string text) {
    sheet_.entries.back().fields.push_back({key, std::move(text), {sheet_.place.file, ++line_}});
  }
  void note() {
    field("notes", "See " + made_up_word(random_.below(20000)) + ", and " + random_.of(verbs) + " the " +
                       random_.of(fastened) + " first.");
  }
  void fastener();
  void fluid();
  void seals();
  void bearing();
  void others();

  int number_;
  int made_ = 0;  // fasteners so far
  int line_ = 12;
  Stream random_;
  SheetRecord sheet_;
};

SheetRecord Maker::sheet() {
  std::array<char, 24> name{};
  std::snprintf(name.data(), name.size(), "synthetic-%06d", number_);
  sheet_.name = name.data();
  sheet_.form = "assembly";
  sheet_.assembly = assemblies[static_cast<std::size_t>(number_) % assemblies.size()];
  const int machine = number_ / 6;
  sheet_.maker = capital(made_up_word(machine / 40 + 7000));
  sheet_.title = capital(made_up_word(machine)) + " " + sheet_.assembly + " " + number_text(number_);
  const int first = 1985 + machine % 35;
  sheet_.fits = {{sheet_.maker, capital(made_up_word(machine)) + " " + number_text(125 + 25 * (machine % 30)),
                  first, first + 4, "", "", "", ""}};
  sheet_.source = {
      sheet_.maker + " service leaflet " + number_text(number_), sheet_.maker, "2", "5", "", first + 1};
  sheet_.checked = {"2026-0" + number_text(1 + number_ % 9) + "-1" + number_text(number_ % 9), "workshop",
                    "source", ""};
  sheet_.cautions = {{"mind-the-danger", "Weight off, heat off, pressure off, and a second look."}};
  sheet_.invented = true;
  sheet_.place = {"synthetic/" + sheet_.name + ".yaml", 1};
  for (int i = 0; i < 10; ++i) fastener();
  fluid();
  seals();
  bearing();
  others();
  return std::move(sheet_);
}

EntryRecord& Maker::entry(const char* kind, const std::string& name) {
  EntryRecord& made = sheet_.entries.emplace_back();
  made.address = sheet_.name + '/' + kind + '-' + number_text(static_cast<int>(sheet_.entries.size()));
  made.kind = kind;
  made.name = name;
  made.fits = sheet_.fits;
  made.source = sheet_.source;
  made.checked = sheet_.checked;
  made.cautions = sheet_.cautions;
  made.status = "maker-paper";
  made.place = {sheet_.place.file, ++line_};
  return made;
}

void Maker::fastener() {
  // A part of one name has one thread everywhere, and stands on a sheet once.
  const int role = (number_ * 7 + made_ * 11) % static_cast<int>(fastened.size());
  ++made_;
  const Screw& screw = screws[static_cast<std::size_t>(role) % screws.size()];
  entry("fastener", random_.of(places) + " " + std::string(fastened[static_cast<std::size_t>(role)]));
  field("count", number_text(1 + random_.below(3)));
  field("part-number",
        number_text(10 + random_.below(90)) + "-" + number_text(1000 + random_.below(9000)) + "-A");
  field("thread", std::string(screw.thread));
  field("class", "8.8");
  field("drive", "hexagon " + std::string(screw.hexagon) + " mm");
  const int torque = screw.torque + random_.below(1 + screw.torque / 5);
  field("torque", number_text(torque) + " ± " + number_text(1 + torque / 12) + " N·m");
  field("state", "dry");
  field("reuse", random_.below(5) == 0 ? "no" : "yes");
  if (random_.below(3) == 0) note();
}

void Maker::fluid() {
  entry("fluid", "damper oil");
  field("purpose", "damper-oil");
  field("viscosity", number_text(15 + random_.below(60)) + " mm²/s at 40 °C");
  field("volume", number_text(300 + random_.below(300)) + " mL");
  note();
}

void Maker::seals() {
  const int inside = 30 + random_.below(20);
  entry("seal", random_.of(places) + " shaft seal");
  field("size",
        number_text(inside) + "x" + number_text(inside + 12) + "x" + number_text(7 + random_.below(4)));
  field("use", "shaft");
  field("tube", number_text(inside) + " mm");
  field("material", "NBR");
  entry("o-ring", random_.of(places) + " O-ring");
  field("size", number_text(20 + random_.below(40)) + "." + number_text(random_.below(9)) + "x2.4");
  field("material", "NBR");
}

void Maker::bearing() {
  constexpr std::array<std::array<std::string_view, 2>, 3> bearings = {
      {{"6203-2RS", "17x40x12"}, {"6204-2RS", "20x47x14"}, {"6302-2RS", "15x42x13"}}};
  const auto& [designation, size] = bearings[static_cast<std::size_t>(random_.below(3))];
  entry("bearing", random_.of(places) + " wheel bearing");
  field("designation", std::string(designation));
  field("size", std::string(size));
  field("count", "2");
}

void Maker::others() {
  entry("spring", random_.of(places) + " spring");
  field("rate", number_text(5 + random_.below(9)) + "." + number_text(random_.below(9)) + " N/mm");
  field("free-length", number_text(200 + random_.below(200)) + " mm");
  entry("setting", random_.of(places) + " rebound");
  field("standard", number_text(8 + random_.below(8)) + " clicks out");
  field("range", "0..20 clicks");
  field("count-from", "fully in");
  entry("limit", random_.of(places) + " " + random_.of(parts) + " wear");
  field("new", "4.5 mm");
  field("limit", "min 4.0 mm");
  field("wear", "shrinks");
  entry("clearance", random_.of(places) + " " + random_.of(adjusted) + " clearance");
  field("value", "0.10..0.15 mm, cold");
  entry("pressure", random_.of(places) + " pressure");
  field("value", "2." + number_text(random_.below(9)) + " bar, cold");
  entry("part", random_.of(places) + " " + random_.of(parts));
  field("part-number",
        number_text(10 + random_.below(90)) + "-" + number_text(1000 + random_.below(9000)) + "-B");
  field("description",
        capital(made_up_word(random_.below(20000))) + " " + random_.of(parts) + ", sold singly");
}

// A scalar in double quotes where YAML or the sheet's grammar could take it for something else.
std::string scalar(const std::string& text) {
  const bool plain = text.find_first_of("#:\",[]{}") == std::string::npos &&
                     text.find_first_not_of("0123456789.") != std::string::npos;
  return plain ? text : '"' + text + '"';
}

void write_entry(std::string& yaml, const EntryRecord& entry) {
  yaml +=
      "  " + entry.address.substr(entry.address.find('/') + 1) + ":\n    name: " + scalar(entry.name) + '\n';
  for (const FieldRecord& field : entry.fields) yaml += "    " + field.key + ": " + scalar(field.text) + '\n';
}

}  // namespace

SheetRecord synthetic_sheet(int number) { return Maker(number).sheet(); }

std::vector<WordRecord> synthetic_words() {
  std::vector<WordRecord> words;
  for (const std::string_view name : fastened) {
    std::string group(name);
    group.replace(group.find(' '), 1, "-");
    words.push_back({group, std::string(name), "en", true, false});
    for (int i = 0; i < 4; ++i) {
      words.push_back({group, made_up_word(static_cast<int>(words.size()) * 31) + " " + made_up_word(i),
                       i % 2 ? "de" : "en", false, false});
    }
  }
  return words;
}

std::string synthetic_yaml(const SheetRecord& sheet) {
  const FitRecord& fit = sheet.fits.front();
  std::string yaml = "sheet: " + sheet.name + "\ntitle: " + sheet.title + "\nassembly: " + sheet.assembly +
                     "\nmaker: " + sheet.maker + "\ninvented: yes\nfits:\n  - { make: " + fit.make +
                     ", model: " + fit.model + ", years: " + number_text(fit.year_from) + ".." +
                     number_text(fit.year_to) + " }\nsource: { title: " + sheet.source.title +
                     ", publisher: " + sheet.source.publisher +
                     ", edition: 2, year: " + number_text(sheet.source.year) +
                     ", page: 5 }\nchecked: { on: " + sheet.checked.on +
                     ", by: workshop, against: source, second: N. }\nstatus: maker-paper\ncautions: [" +
                     sheet.cautions.front().name + "]\n";
  for (const KindDeclaration& kind : all_kinds()) {
    bool section_begun = false;
    for (const EntryRecord& entry : sheet.entries) {
      if (entry.kind != kind.name) continue;
      if (!section_begun) yaml += std::string(kind.section) + ":\n";
      section_begun = true;
      write_entry(yaml, entry);
    }
  }
  return yaml;
}

std::string synthetic_words_yaml() {
  std::map<std::string, std::vector<WordRecord>> groups;
  for (const WordRecord& word : synthetic_words()) groups[word.group].push_back(word);
  std::string yaml =
      "sheet: synthetic-words\ntitle: Words of a fleet that was never built\n"
      "cautions:\n  mind-the-danger:\n    text: Weight off, heat off, pressure off, and a second look.\n"
      "    about: [brake, steering, wheel, spring, pressure, heat, fuel]\nwords:\n";
  for (const auto& [group, words] : groups) {
    std::string same, german;
    for (const WordRecord& word : words) {
      std::string& list = word.language == "de" ? german : same;
      list += (list.empty() ? "" : ", ") + word.word;
    }
    yaml += "  " + group + ":\n    same: [" + same + "]\n    de: [" + german + "]\n";
  }
  return yaml;
}

}  // namespace sheaf::test
