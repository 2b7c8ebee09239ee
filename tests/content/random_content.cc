// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/content/random_content.h"

#include <algorithm>
#include <array>
#include <random>
#include <string_view>

#include "query/library/vocabulary.h"

namespace sheaf::test {
namespace {

constexpr std::array<std::string_view, 24> texts = {"fork top plug",
                                                    "M8x1.25",
                                                    "28 ± 3 N·m",
                                                    "41x54x11",
                                                    "512 mL per leg",
                                                    "6203-2RS C3",
                                                    "hexagon 27 mm",
                                                    "dry",
                                                    "",
                                                    "it's \"quoted\"; -- really",
                                                    "Gabelöl",
                                                    "bouchon de fourche",
                                                    "ΔΩ Ж 漢字",
                                                    "20 N·m, 40 N·m + 90°",
                                                    "50 %",
                                                    "a\nb",
                                                    "NULL",
                                                    "0010",
                                                    "1e309",
                                                    "' OR 1=1 --",
                                                    "%s%n",
                                                    "-40 °C",
                                                    "x",
                                                    "5/16-18 UNC"};

class Source {
 public:
  explicit Source(unsigned seed) : random_(seed) {}
  // std::uniform_int_distribution gives other numbers with other standard libraries.
  int below(int bound) { return static_cast<int>(random_() % static_cast<unsigned>(bound)); }
  bool one_in(int count) { return below(count) == 0; }
  std::string text() {
    std::string made(texts[static_cast<std::size_t>(below(static_cast<int>(texts.size())))]);
    if (one_in(4)) made += ' ' + std::to_string(below(1000));
    if (one_in(200)) made.append(static_cast<std::size_t>(below(9000)), 'w');
    return made;
  }
  std::string name() { return "n" + std::to_string(below(100000)); }
  template <typename Make>
  auto some(int most, Make make) {
    std::vector<decltype(make())> list;
    for (int count = below(most + 1); count > 0; --count) list.push_back(make());
    return list;
  }

  Place place() { return {"demo/" + name() + ".yaml", below(2000)}; }
  FieldRecord field();
  FitRecord fit();
  SourceRecord source();
  CheckRecord checked();
  CautionRecord caution() { return {name(), text()}; }
  EntryRecord entry(const std::string& sheet, int number);
  SheetRecord sheet(const std::string& name);

 private:
  std::mt19937 random_;
};

FieldRecord Source::field() {
  constexpr std::array<std::string_view, 8> keys = {
      "torque", "size", "thread", "volume", "also", "notes", "other-numbers.1.number", "no-such-key"};
  return {std::string(keys[static_cast<std::size_t>(below(8))]), text(), place()};
}

FitRecord Source::fit() {
  return {"Haldrek" + std::to_string(below(3)),
          text(),
          one_in(3) ? 0 : 1980 + below(20),
          one_in(3) ? 0 : 2000 + below(30),
          one_in(3) ? text() : "",
          one_in(4) ? name() : "",
          one_in(4) ? name() : "",
          one_in(5) ? text() : ""};
}

SourceRecord Source::source() {
  if (one_in(4)) return {};
  return {text(), text(), text(), text(), text(), below(2030)};
}

CheckRecord Source::checked() {
  if (one_in(4)) return {};
  return {"20" + std::to_string(10 + below(20)) + "-0" + std::to_string(1 + below(9)) + "-11", name(), text(),
          ""};
}

EntryRecord Source::entry(const std::string& sheet, int number) {
  const auto kinds = all_kinds();
  EntryRecord made;
  made.address = sheet + "/e" + std::to_string(number / 2);  // two variants each
  made.variant = std::to_string(number % 2);
  made.kind = one_in(5)
                  ? "thread-size"
                  : std::string(kinds[static_cast<std::size_t>(below(static_cast<int>(kinds.size())))].name);
  made.name = text();
  made.fields = some(9, [&] { return field(); });
  made.fits = some(3, [&] { return fit(); });
  made.cautions = some(2, [&] { return caution(); });
  made.source = source();
  made.checked = checked();
  made.status = one_in(5) ? "disputed" : "";
  if (one_in(9)) made.withdrawn.push_back({"2026-01-02", text(), one_in(2) ? "other/entry" : ""});
  made.formerly = some(2, [&] { return sheet + "/old-" + name(); });
  made.critical = one_in(3);
  made.place = place();
  return made;
}

SheetRecord Source::sheet(const std::string& name) {
  constexpr std::array<std::string_view, 4> forms = {"assembly", "table", "words", "crib"};
  SheetRecord made;
  made.name = name;
  made.form = forms[static_cast<std::size_t>(below(4))];
  made.title = text();
  made.assembly = one_in(2) ? "fork" : "";
  made.maker = text();
  made.row_kind = one_in(2) ? "thread-size" : "";
  made.fields = some(5, [&] { return field(); });
  made.fits = some(3, [&] { return fit(); });
  made.source = source();
  made.checked = checked();
  made.cautions = some(2, [&] { return caution(); });
  made.invented = one_in(2);
  made.place = place();
  for (int i = 0, count = below(12); i < count; ++i) made.entries.push_back(entry(name, i));
  return made;
}

}  // namespace

LibraryContent random_content(unsigned seed, int sheets) {
  Source random(seed);
  LibraryContent content;
  content.name = "random-" + std::to_string(seed);
  for (int i = 0; i < sheets; ++i) {
    content.sheets.push_back(random.sheet("sheet-" + std::to_string(100000 + i)));
  }
  constexpr std::array<std::string_view, 5> languages = {"en", "de", "fr", "es", "it"};
  for (int i = 0; i < sheets; ++i) {
    content.words.push_back({"group-" + std::to_string(i / 5), random.text(),
                             std::string(languages[static_cast<std::size_t>(i % 5)]), i % 5 == 0,
                             random.one_in(9)});
  }
  return content;
}

}  // namespace sheaf::test
