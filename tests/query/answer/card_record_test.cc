// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/answer/card_record.h"

#include <doctest/doctest.h>

#include "query/answer/count.h"
#include "query/answer/record_check.h"

using namespace sheaf;

namespace {

CardEntry entry_with(std::string key, std::string text) {
  CardEntry entry;
  entry.name = "thing";
  entry.answer.name = "thing";
  entry.answer.entry.fields = {{std::move(key), std::move(text), {}}};
  return entry;
}

CardRecord full_record() {
  CardRecord record;
  record.sheet = "sorvane-41-rod";
  record.library = "orrindale";
  record.digest = "0123";
  record.machine = {"Haldrek", "Muleback 380", "HK4-000123", "north", 2013};
  record.job = {{"by", "N."}, {"note", "a \"quoted\"\n line, 5 µm"}};
  record.ticked = {"top-plug/tightened/left"};
  record.written = {{"preload/found/left", "5 turns"}};
  record.figures = {{"top-plug", "28 ± 3 N·m"}};
  return record;
}

}  // namespace

TEST_CASE("a record comes back as it was kept") {
  const CardRecord kept = full_record();
  const auto back = parse_record(to_json(kept));
  REQUIRE(back);
  CHECK(to_json(*back) == to_json(kept));
  CHECK(back->ticked == kept.ticked);
  CHECK(back->written == kept.written);
  CHECK(back->machine.year == 2013);
  CHECK(back->job.at("note") == kept.job.at("note"));
}

TEST_CASE("what is no record is refused and says why") {
  const auto refused = [](std::string_view text) {
    const auto record = parse_record(text);
    return record ? std::string() : record.failure().message;
  };
  const std::string head = R"({"schema":1,"kind":"card-record","sheet":"s")";
  CHECK(refused(head + "}").empty());
  CHECK(refused("").find("no JSON") != std::string::npos);
  CHECK(refused("[]").find("no JSON object") != std::string::npos);
  CHECK(refused("{}").find("kind") != std::string::npos);
  CHECK(refused(R"({"schema":2,"kind":"card-record","sheet":"s"})").find("another version") !=
        std::string::npos);
  CHECK(refused(R"({"schema":1,"kind":"card-record"})").find("no sheet") != std::string::npos);
  CHECK(refused(head + R"(,"more":1})").find("'more'") != std::string::npos);
  CHECK(refused(head + R"(,"items":{"a":3}})").find("items.a") != std::string::npos);
  CHECK(refused(head + R"(,"machine":{"year":"2013"}})").find("machine.year") != std::string::npos);
  CHECK(refused(head + R"(,"job":{"wage":"1"}})").find("job.wage") != std::string::npos);
  CHECK(refused(head + R"(,"sheet":")" + std::string(3000, 'x') + "\"}").find("too long") !=
        std::string::npos);
  CHECK_FALSE(refused(std::string(longest_record + 1, ' ')).empty());
  CHECK_FALSE(refused(std::string(200000, '[')).empty());
}

TEST_CASE("a measured value is judged exactly, in any unit of its dimension") {
  const auto max = entry_with("limit", "max 0.2 mm");
  CHECK(judge(max, "0.2 mm") == Judgement::within);
  CHECK(judge(max, "0.2") == Judgement::within);  // a bare number has the unit of the sheet
  CHECK(judge(max, "0.2000001 mm") == Judgement::beyond);
  CHECK(judge(max, "200 µm") == Judgement::within);
  CHECK(judge(max, "0.01 in") == Judgement::beyond);
  CHECK(judge(max, "5 N·m") == Judgement::unreadable);
  CHECK(judge(max, "about right") == Judgement::unreadable);
  const auto min = entry_with("limit", "min 488 mm");
  CHECK(judge(min, "488") == Judgement::within);
  CHECK(judge(min, "487.99") == Judgement::beyond);
  const auto range = entry_with("value", "0.10..0.15 mm");
  CHECK(judge(range, "0.1") == Judgement::within);
  CHECK(judge(range, "0.16") == Judgement::beyond);
  CHECK(judge(entry_with("value", "1.5 bar"), "1.5") == Judgement::unlimited);
  CHECK(judge(entry_with("notes", "none"), "1.5") == Judgement::unlimited);
}

TEST_CASE("what there is of a thing, and where") {
  CHECK(count_of("").total() == 1);
  CHECK(count_of("4").total() == 4);
  CHECK(count_of("2 per leg").total() == 4);
  CHECK(count_of("2 per leg").places == std::vector<std::string>{"left", "right"});
  CHECK_FALSE(count_of("2 per cylinder").is_known());
  CHECK(count_of("2 per cylinder").total() == 2);
}
