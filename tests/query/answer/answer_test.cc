// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/answer.h"

#include <doctest/doctest.h>

#include "query/answer/answer_json.h"
#include "query/answer/answer_text.h"

using namespace sheaf;

namespace {

SheetRecord fork_sheet() {
  SheetRecord sheet;
  sheet.name = "sorvane-41-rod";
  sheet.title = "41 mm conventional fork, damper rods";
  sheet.assembly = "fork";
  sheet.invented = true;
  return sheet;
}

EntryRecord top_plug() {
  EntryRecord entry;
  entry.address = "sorvane-41-rod/top-plug";
  entry.kind = "fastener";
  entry.name = "fork top plug";
  entry.fields = {{"thread", "M36x1.5", {}},    {"drive", "hexagon 27 mm", {}},
                  {"torque", "28 ± 3 N·m", {}}, {"state", "dry", {}},
                  {"reuse", "no", {}},          {"hand", "left", {}},
                  {"count", "1 per leg", {}},   {"notes", "Weight off.", {}}};
  entry.fits = {{"Haldrek", "Muleback 380", 2011, 2015, "", "", "", ""},
                {"Haldrek", "Packlet 125", 2008, 0, "north", "HP1-000100", "", ""}};
  entry.cautions = {{"spring-load", "Spring under load."}};
  entry.source = {"Sorvane fork service leaflet 41", "Sorvane", "2", "5", "", 2012};
  entry.checked = {"2026-10-02", "workshop", "source", "N."};
  return entry;
}

std::string text_of(const Answer& answer, int width = 80) {
  Page page({.width = width});
  write_text(page, answer, Extent::bench);
  return page.take();
}

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

bool has(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("the first line carries the figure, its band and what changes the act") {
  const std::string line = first_line(text_of(build_answer(fork_sheet(), top_plug()), 120));
  CHECK(has(line, "28\u00A0N·m"));
  CHECK(has(line, "25–31"));
  CHECK(has(line, "left-hand thread"));
  CHECK(has(line, "fit new"));
  CHECK(has(line, "1 per leg"));
  CHECK(has(line, "dry"));
}

TEST_CASE("both units, source, edition, date, cautions, address and the demo notice are said") {
  const std::string text = text_of(build_answer(fork_sheet(), top_plug()), 200);
  for (const char* part :
       {"20.7\u00A0lbf·ft", "18.5–22.8", "hexagon 27 mm", "M36x1.5", "Haldrek Muleback 380, 2011–2015",
        "Spring under load.", "ed. 2 (2012)", "p. 5", "checked 2026-10-02", "second reader",
        "sorvane-41-rod/top-plug", "Invented demonstration figure."})
    CHECK_MESSAGE(has(text, part), part);
}

TEST_CASE("machines are said with years, market and frame numbers; the one asked for first") {
  Asked asked;
  asked.model = "Packlet 125";
  const Answer answer = build_answer(fork_sheet(), top_plug(), asked);
  CHECK(answer.machines.at(0) == "Haldrek Packlet 125, 2008 on, market north, frames HP1-000100 on");
  CHECK(years_text(0, 2010) == "to 2010");
  CHECK(years_text(2012, 2012) == "2012");
  CHECK(years_text(0, 0) == "all years");
}

TEST_CASE("what was asked for is said first, or missed aloud") {
  Asked drive;
  drive.figures = {{"drive", {"drive"}}};
  CHECK(build_answer(fork_sheet(), top_plug(), drive).figures.at(0).key == "drive");
  Asked gap;
  gap.figures = {{"gap", {"gap"}}};
  const Answer answer = build_answer(fork_sheet(), top_plug(), gap);
  CHECK(answer.missing == std::vector<std::string>{"gap"});
  CHECK(has(first_line(text_of(answer)), "no gap recorded"));
}

TEST_CASE("one of several fields that may hold it is enough") {
  Asked volume;
  volume.figures = {{"volume", {"volume", "dry-fill"}}};
  EntryRecord oil = top_plug();
  oil.kind = "fluid";
  oil.fields = {{"dry-fill", "540 mL per leg", {}}};
  const Answer answer = build_answer(fork_sheet(), oil, volume);
  CHECK(answer.missing.empty());
  CHECK(answer.figures.at(0).key == "dry-fill");
}

TEST_CASE("a fastener without a torque says so") {
  EntryRecord bare = top_plug();
  std::erase_if(bare.fields, [](const FieldRecord& field) { return field.key == "torque"; });
  CHECK(has(first_line(text_of(build_answer(fork_sheet(), bare))), "no torque recorded"));
}

TEST_CASE("a withdrawn figure is not shown, neither to people nor to programs") {
  EntryRecord wrong = top_plug();
  wrong.withdrawn = {{"2026-05-01", "inch-pounds read as foot-pounds", "sorvane-43-rod/top-plug"}};
  const Answer answer = build_answer(fork_sheet(), wrong);
  const std::string text = text_of(answer);
  CHECK(has(first_line(text), "Withdrawn 2026-05-01"));
  CHECK(has(text, "sorvane-43-rod/top-plug"));
  CHECK_FALSE(has(text, "28\u00A0N·m"));
  JsonWriter json;
  write_json(json, answer);
  CHECK(has(json.text(), "\"figures\":[]"));
  CHECK(has(json.text(), "\"reason\":\"inch-pounds read as foot-pounds\""));
  CHECK_FALSE(has(json.text(), "28"));
}

TEST_CASE("a disputed figure shows what the other source states, and no value between") {
  EntryRecord disputed = top_plug();
  disputed.status = "disputed";
  disputed.fields.push_back({"also-stated.1.field", "torque", {}});
  disputed.fields.push_back({"also-stated.1.value", "32 N·m", {}});
  disputed.fields.push_back({"also-stated.1.source.title", "Haldrek bulletin 7", {}});
  const std::string text = text_of(build_answer(fork_sheet(), disputed));
  CHECK(has(text, "32 N·m by Haldrek bulletin 7"));
  CHECK(has(text, "take no value between"));
}

TEST_CASE("on a narrow page nothing is lost and nothing stands before the figure") {
  const std::string text = text_of(build_answer(fork_sheet(), top_plug()), 40);
  CHECK(first_line(text).starts_with("  28\u00A0N·m"));
  CHECK(has(text, "left-hand thread"));
  CHECK(has(text, "Spring under load."));
}

TEST_CASE("JSON keeps the figure's numbers, units and words, and says what is derived") {
  JsonWriter json;
  write_json(json, build_answer(fork_sheet(), top_plug()));
  const std::string& text = json.text();
  for (const char* part :
       {R"("address":"sorvane-41-rod/top-plug")", R"("text":"28 ± 3 N·m")",
        R"("value":28,"least":25,"most":31,"unit":"N·m")", R"("dimension":"torque")", R"("derived":true)",
        R"("year-from":2011,"year-to":2015)", R"("hand":"left")",
        R"("cautions":[{"name":"spring-load","text":"Spring under load."}])", R"("invented":true)"})
    CHECK_MESSAGE(has(text, part), part);
}
