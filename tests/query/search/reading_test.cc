// SPDX-License-Identifier: GPL-2.0-or-later
#include <doctest/doctest.h>

#include "query/search/question.h"
#include "query/search/read.h"
#include "query/search/spoken_numbers.h"
#include "tests/query/search/small_library.h"

using namespace sheaf;

namespace {

QuestionReading read(const std::string& text) {
  static test::SmallLibrary made;
  Lexicon lexicon({&made.library()});
  return read_question(text, lexicon);
}

}  // namespace

TEST_CASE("a question is words with their places; signs around them fall away") {
  const Question question = question_of("  (Top plug), \"O-ring\"? 1/4\"-20  9.5. ");
  REQUIRE(question.tokens.size() == 5);
  CHECK(question.tokens[0].typed == "Top");
  CHECK(question.tokens[2].words == std::vector<std::string>{"o", "ring"});
  CHECK(question.tokens[3].typed == "1/4\"-20");
  CHECK(question.tokens[4].typed == "9.5");
  CHECK(question.from(3).starts_with("1/4"));
}

TEST_CASE("commas part words, but not the digits of a number") {
  CHECK(question_of("muleback,380,2016,top plug").tokens.size() == 5);
  CHECK(question_of("43x55x9,5 seal,fork").tokens.size() == 3);
  CHECK(question_of("9,5").tokens.size() == 1);
  CHECK(question_of("a,,b, ,").tokens.size() == 2);
}

TEST_CASE("a question is bounded, and cut between signs") {
  std::string text;
  for (int i = 0; i < 400; ++i) text += "ö";
  CHECK(question_of(text).text.size() <= longest_question);
  CHECK(question_of(text).text.size() % 2 == 0);
  std::string many;
  for (int i = 0; i < 290; ++i) many += "a ";
  CHECK(question_of(many).tokens.size() == most_words);
}

TEST_CASE("machines by any words of their names; a number belongs to one beside it") {
  CHECK(read("muleback").machine == "Haldrek Muleback 380");
  CHECK(read("380 muleback").machine == "Haldrek Muleback 380");
  CHECK(read("muleback380 top plug").machine == "Haldrek Muleback 380");
  CHECK(read("mule top plug").machine == "Haldrek Muleback 380");
  CHECK(read("haldrek").machine == "Haldrek");
  CHECK(read("haldrek").machines.size() == 2);
  CHECK(read("muleback 450").unread == std::vector<std::string>{});  // 450 is read as a measure or unread
  CHECK(read("top plug").machines.empty());
}

TEST_CASE("years, alone and in ranges") {
  CHECK(read("top plug 2013").year == 2013);
  CHECK(read("top plug '13").year == 2013);
  const auto range = read("2011-2014 top plug");
  CHECK(range.year == 2011);
  CHECK(range.year_to == 2014);
  CHECK(read("top plug 1200").year == 0);
  CHECK(read("2013 outer plug").year == 2013);  // no measure of the outside
  CHECK(read("2013 outer plug").lengths.empty());
}

TEST_CASE("a frame number is read behind the word for it, and is no year nor part") {
  CHECK(read("pad pin muleback 2013 frame HK4-005000").frame == "HK4-005000");
  CHECK(read("pad pin muleback 2013 frame HK4-005000").year == 2013);
  CHECK(read("chassis no. HK4-005000 muleback").frame == "HK4-005000");
  CHECK(read("frame bolt muleback 380").frame.empty());
}

TEST_CASE("what is asked of a thing leaves the thing to be read") {
  const auto reading = read("oil level");
  CHECK(reading.figures == std::vector<std::string>{"level"});
  REQUIRE(reading.parts.size() == 1);
  CHECK(reading.parts[0].typed == "oil");
  REQUIRE(read("air gap").parts.size() == 1);  // of the fork, where nothing else was named
  CHECK(read("air gap").parts[0].typed == "fork oil");
}

TEST_CASE("what comes later in the job is not asked for") {
  CHECK(read("top plug muleback before the oil").parts.size() == 1);
  CHECK(read("top plug muleback before the oil").left_out.front() == "oil");
  CHECK(read("before the oil").parts.size() == 1);
  CHECK(read("top plug before 2016").year == 2016);
}

TEST_CASE("a tool beside a part asks what fits it, alone it is sought") {
  CHECK(read("top plug hex key").figures == std::vector<std::string>{"drive"});
  CHECK(read("top plug hex key").parts.size() == 1);
  CHECK(read("hex key").parts.size() == 1);
}

TEST_CASE("a word for a side and a part is the side beside another part") {
  CHECK(read("lower drain plug").sides == std::vector<std::string>{"lower"});
  CHECK(read("lower drain plug").parts.size() == 1);
  CHECK(read("lower").parts.size() == 1);
}

TEST_CASE("designations are read for what they are") {
  CHECK(to_text(read("m8 x 1,25").threads.at(0)) == "M8x1.25");
  CHECK(to_text(read("1/4\"-20").threads.at(0)) == "1/4-20");
  CHECK(to_text(read("46mm socket").drives.at(0)) == "hexagon 46 mm");
  CHECK(to_text(read("43*55*9.5/10.5").sizes.at(0)) == "43x55x9.5/10.5");
  CHECK(to_text(read("43 55 9,5").sizes.at(0)) == "43x55x9.5");
  CHECK(to_text(read("6203 2RS C3").bearings.at(0)) == "6203-2RS C3");
  CHECK(read("5wt or 10wt").labels.size() == 2);
}

TEST_CASE("a word that only says which of its kind a figure is costs nothing where nobody knows it") {
  CHECK(read("min seal dia").units.empty());  // "min" is least, and no minute
  CHECK(read("min seal dia").unread.empty());
  CHECK(read("min seal gudgeon").unread == std::vector<std::string>{"gudgeon"});
}

TEST_CASE("quantities with their bounds, and lengths with what they measure") {
  const auto range = read("20..30 Nm").quantities;
  REQUIRE(range.size() == 1);
  CHECK(range[0].is_range);
  CHECK(read("over 40 nm").quantities.at(0).figures.at(0).least.has_value());
  CHECK_FALSE(read("24nm").quantities.at(0).is_range);
  CHECK(read("17.5 oz").quantities.at(0).figures.size() == 2);  // US and imperial
  CHECK(read("8mm bolt").lengths.at(0).of == LengthOf::diameter);
  CHECK(read("12mm bolt head").lengths.at(0).of == LengthOf::across_flats);
  CHECK(read("55.3 od seal").lengths.at(0).of == LengthOf::outside);
  CHECK(read("1.69 inch").lengths.at(0).mm == doctest::Approx(42.926));
}

TEST_CASE("a question is said back in one line") {
  CHECK(in_words(read("top plug torque muleback 2013")) ==
        "part “top plug”, asking for torque, machine Haldrek Muleback 380, year 2013");
  CHECK(in_words(read("ft lb top plug")) == "part “top plug”, asking for torque, in lbf·ft");
}

TEST_CASE("parts are found in any order of their words, with words of no meaning between") {
  const auto reading = read("plug of the drain");
  REQUIRE(reading.parts.size() == 1);
  CHECK(reading.parts[0].groups == std::vector<std::string>{"drain-plug"});
}

TEST_CASE("a word of everyday speech is no slip for one of ours, and a short form is the whole word") {
  CHECK(read("top plug sticks muleback").corrections.empty());
  CHECK(read("top nub muleback").parts.size() == 1);
  const auto brief = read("frk top plug");
  REQUIRE(brief.corrections.size() == 1);
  CHECK(brief.corrections.front().read == "fork");
}

TEST_CASE("left-out spaces are put in, between words, machines and years") {
  const auto reading = read("forktopplug muleback2013");
  REQUIRE(reading.parts.size() == 1);
  CHECK(reading.parts.front().words == std::vector<std::string>{"fork", "top", "plug"});
  CHECK(reading.machine == "Haldrek Muleback 380");
  CHECK(reading.year == 2013);
}

TEST_CASE("a machine is found within what it grew together with") {
  CHECK(read("top plug forkmuleback").machine == "Haldrek Muleback 380");
  CHECK(read("mule380 top plug").machine == "Haldrek Muleback 380");
  CHECK(read("mule450 top plug").machine.empty());
}

TEST_CASE("a fraction alone is of inches") {
  const auto reading = read("top plug 7/16");
  REQUIRE(reading.lengths.size() == 1);
  CHECK(reading.lengths.front().mm == doctest::Approx(11.1125));
}

TEST_CASE("how many there are, and stages of an angle, are no unknown words") {
  CHECK(read("top plugs x2 muleback").unread.empty());
  CHECK(read("2x top plug muleback").unread.empty());
  CHECK(read("clutch nut 60+60 muleback").unread.empty());
  CHECK_FALSE(read("clutch nut x2000 muleback").unread.empty());
}

TEST_CASE("numbers in words, from ten on or before a unit") {
  CHECK(with_digits("over fifteen links") == "over 15 links");
  CHECK(with_digits("twenty-seven mil socket") == "27 mil socket");
  CHECK(with_digits("six mm, two bolts, one of them") == "6 mm, two bolts, one of them");
}

TEST_CASE("a frame number without a word for it, unless a part has that number") {
  CHECK(read("pad pin HK4-002100").frame == "HK4-002100");
  CHECK(read("seal 41-2237-A").frame.empty());
  CHECK(read("bolt AB-123").frame.empty());
}

TEST_CASE("how many of a unit is how much, and a machine's number before a unit is no quantity") {
  const auto much = read("fork oil how many ml muleback");
  CHECK(much.figures == std::vector<std::string>{"volume"});
  REQUIRE(much.units.size() == 1);
  CHECK(read("top plug on the 380 nm").quantities.empty());
  CHECK(read("seal 41x54x11 in the fork").sizes.front().unit == "mm");
}

TEST_CASE("short forms with a stroke, years of two digits and places behind a number are read as meant") {
  CHECK(read("l/h thread nut").hand == "left");
  CHECK(read("an 09 muleback").year == 2009);
  CHECK(read("muleback 09").year == 2009);
  CHECK(read("09").year == 0);
  CHECK(read("6205 in the fork").bearings.size() == 1);
  CHECK(read("2 in the tube").lengths.size() == 1);
  CHECK(read("tyre 160/60-17").threads.empty());
}

TEST_CASE("years are read as they are said, and a machine in its possessive") {
  CHECK(with_digits("uh twenty fourteen model") == "uh 2014 model");
  CHECK(with_digits("nineteen ninety five") == "1995");
  CHECK(with_digits("two thousand and nine, two thousand thirteen") == "2009, 2013");
  CHECK(with_digits("two thousand") == "two thousand");
  CHECK(with_digits("a quarter inch hose") == "a 1/4 inch hose");
  CHECK(with_digits("the quarter inch torque wrench") == "the quarter inch torque wrench");
  CHECK(with_digits("three eighths unc, five sixteenths") == "3/8 unc, 5/16");
  CHECK(with_digits("quarter turn") == "quarter turn");
  CHECK(with_digits("five thousand revs") == "5000 revs");
  CHECK(with_digits("twenty five thousand") == "25000");
  CHECK(with_digits("two thousand rpm") == "2000 rpm");
  CHECK(with_digits("twenty two socket") == "22 socket");
  CHECK(read("the muleback's top plug").machine == "Haldrek Muleback 380");
  CHECK(read("top plug on mulebacks").machine == "Haldrek Muleback 380");
}

TEST_CASE("'back', 'left' and 'top' are sides only where they say where something is") {
  CHECK(read("half a turn back").sides.empty());
  CHECK(read("back caliper pin").sides == std::vector<std::string>{"rear"});
  CHECK(read("on top of the fork").sides.empty());
}

TEST_CASE("what is excluded, and figures between which the asker doubts, are not asked for") {
  const auto nut = read("top plug not the drain plug muleback");
  REQUIRE(nut.parts.size() == 1);
  CHECK(nut.parts.front().typed == "top plug");
  CHECK(read("fork oil without the seal").parts.size() == 1);
  CHECK(read("top plug 25 or 28 muleback").lengths.empty());
  const auto doubted = read("top plug 25 or 28 nm");
  CHECK(doubted.quantities.empty());
  REQUIRE(doubted.units.size() == 1);
  CHECK(doubted.units.front()->symbol == "N·m");
  CHECK(read("muleback 2013 or 2014").year == 2013);
  CHECK(read("it's not a top plug").parts.size() == 1);
  CHECK(read("drain plug not the fork top plug with the big old washer").parts.size() >
        1);  // more than is excluded in a breath
}

TEST_CASE("machines cut short to their letters, and a machine's number beside a year") {
  CHECK(read("mlbck top plug").machine == "Haldrek Muleback 380");
  CHECK(read("mlbck top plug").corrections.front().read == "muleback");
  CHECK(read("mk top plug").machines.empty());
  CHECK(read("have you seen the top plug").machines.empty());
  CHECK(read("top plug 380 2013").machine == "Haldrek Muleback 380");
  CHECK(read("top plug 380 2013").year == 2013);
  CHECK(read("top plug 380 41").machine == "Haldrek Muleback 380");  // what is tightened has no such size
}

TEST_CASE("a sign for 'and' parts words, a sum is of stages") {
  const Question question = question_of("oil + filter & seal");
  REQUIRE(question.tokens.size() == 5);
  CHECK(question.tokens[1].words == std::vector<std::string>{"plus"});
  CHECK(question_of("60 + 60").tokens.size() == 2);
  CHECK(read("pin bolts 60 + 60 + 60 deg").quantities.empty());
  CHECK(read("top plug stage 2 nm").quantities.empty());
  CHECK(read("top plug 2 nm").quantities.size() == 1);
}

TEST_CASE("stages around a loosening") {
  using Stages = std::vector<std::string>;
  CHECK(read("top plug 25, back off 180").stages == Stages{"25", "180"});
  CHECK(read("52 nm, slacken off, 18").stages == Stages{"52", "18"});
  CHECK(read("30nm + 60 + 60").stages == Stages{"30", "60", "60"});
  CHECK(read("top plug loosen 90deg").stages == Stages{"90"});
  CHECK(read("top plug back 45 deg").stages == Stages{"45"});
  CHECK(read("loosen 17 nut").stages.empty());  // its width
  CHECK(read("top plug 380 back off 30 mm").stages.empty());
  CHECK(read("back off 380").stages.empty());  // a machine
}

TEST_CASE("sizes with strokes, and no sizes of a tyre") {
  REQUIRE(read("26/40/6").sizes.size() == 1);
  CHECK(to_text(read("26/40/6").sizes.front()) == "26x40x6");
  REQUIRE(read("43 55 9,5/10,5").sizes.size() == 1);
  CHECK(to_text(read("43 55 9,5/10,5").sizes.front()) == "43x55x9.5/10.5");
  CHECK(read("110/100-18 64M").threads.empty());
  CHECK(read("110/100-18 64M").lengths.empty());
}

TEST_CASE("a sentence is told from a look-up, and the clause that asks from those beside it") {
  CHECK_FALSE(read("front axle nut torque muleback 2013 in ft lb please").is_spoken);
  const auto spoken = read("the axle nut is dirty, what do the fork top plugs get on a muleback");
  CHECK(spoken.is_spoken);
  REQUIRE(std::ranges::any_of(spoken.parts, &PartAsked::is_context));
  for (const auto& part : spoken.parts)
    CHECK(part.is_context == (part.typed == "axle" || part.typed == "nut"));
  const auto done = read("the axle nut is on, what do the fork top plugs get on a muleback");
  CHECK(std::ranges::none_of(done.parts, [](const PartAsked& part) { return part.typed == "axle"; }));
  const auto under = read("brake pedal, how far below the fork top plug should it be on a muleback");
  for (const auto& part : under.parts) CHECK_FALSE(part.is_context);  // below it, not of it
}

TEST_CASE("what is not there, not counted or not meant is no part that is asked for") {
  const auto has_part = [](const QuestionReading& reading, std::string_view word) {
    return std::ranges::any_of(reading.parts, [&](const PartAsked& part) {
      return std::ranges::find(part.words, word) != part.words.end();
    });
  };
  CHECK_FALSE(has_part(read("fork spring muleback, no plug there"), "plug"));
  CHECK_FALSE(has_part(read("fork oil muleback, plug not counted"), "plug"));
  const auto excluded = read("top plug muleback, not the nut");
  CHECK(excluded.excluded == std::vector<std::string>{"nut"});
  CHECK(read("the wheel is back on the muleback, what does the nut get").sides.empty());
  CHECK(read("what pressure goes in the tyre at the back on the muleback").sides ==
        std::vector<std::string>{"rear"});
  CHECK(read("tyre front and back on the muleback").sides.empty());  // of both
}

TEST_CASE("what was measured is held against a limit, unless the thing is bought by its size") {
  const auto measured = read("top plug muleback measures 39.6, still usable");
  CHECK(measured.lengths.empty());
  CHECK(measured.asks("limit"));
  CHECK(measured.doubts.size() == 1);
  CHECK(read("seal that measures 43 mm").lengths.size() == 1);
}

TEST_CASE("nothing typed behind or before a trigger word is read beyond the ends") {
  for (const char* text :
       {"no",           "back",       "both",         "not",       "over",         "side",     "weight",
        "aside",        "counted",    "thread above", "left hand", "up and",       "and down", "in bits",
        "on the phone", "of an inch", "5 of an inch", "quarter",   "two thousand", "five",     "how much",
        "no figure",    "dot",        "notch",        "behind",    "a leg"})
    CHECK_NOTHROW(read(text));
}
