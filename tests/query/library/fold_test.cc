// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/library/fold.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "query/library/latin_letters.h"

using namespace sheaf;
using Words = std::vector<std::string>;

TEST_CASE("case and accents are folded away") {
  CHECK(fold("Fork CAP") == "fork cap");
  CHECK(fold("Gabelöl ÉTRIER Łoś ñandú") == "gabelol etrier los nandu");
  CHECK(fold("Maß œuf Ægir ﬁlter") == "mass oeuf aegir filter");
  CHECK(fold("e\u0301trier u\u0308ber") == "etrier uber");  // letters and marks apart
}

TEST_CASE("the many signs for one thing become one") {
  CHECK(fold("M8×1.25") == "m8x1.25");
  CHECK(fold("2011–2015 — x−y") == "2011-2015 - x-y");
  CHECK(fold("N·m N⋅m") == "n m n m");
  CHECK(fold("µm μm mm² cm³") == "um um mm2 cm3");
  CHECK(fold("a\u00a0b\u2009c\u202fd\te\nf") == "a b c d e f");
  CHECK(fold("don’t d'axe") == "dont daxe");
  CHECK(fold("soft\u00adhyphen zero\u200bwidth") == "softhyphen zerowidth");
}

TEST_CASE("other scripts stay, and bytes that are no UTF-8 part words") {
  CHECK(fold("Ж漢字") == "Ж漢字");
  CHECK(fold("a\xff"
             "b") == "a b");
  CHECK(fold("\xc3") == " ");
  CHECK(fold("\xed\xa0\x80") == "   ");       // a surrogate
  CHECK(fold("\xc0\xaf") == "  ");            // overlong
  CHECK(fold("\xf4\x90\x80\x80") == "    ");  // beyond Unicode
  CHECK(fold("") == "");
}

TEST_CASE("folding a folded text changes nothing") {
  for (const LatinLetter& letter : latin_letters) CHECK(fold(letter.plain) == letter.plain);
  const std::string once = fold("Öl-Ablaßschraube №7 ½ 5/16-18 \"x\" 漢");
  CHECK(fold(once) == once);
}

TEST_CASE("every Latin letter with a mark loses it, upper and lower case alike") {
  CHECK(std::ranges::is_sorted(latin_letters, {}, &LatinLetter::code));
  CHECK(fold("ÀÁÂÃÄÅ ÈÉÊË ÌÍÎÏ ÒÓÔÕÖØ ÙÚÛÜ Ý Ç Ñ Ð") == "aaaaaa eeee iiii oooooo uuuu y c n d");
  CHECK(fold("àáâãäå èéêë ìíîï òóôõöø ùúûü ý ç ñ ð") == "aaaaaa eeee iiii oooooo uuuu y c n d");
}

TEST_CASE("words are runs of letters and digits, decimals whole") {
  CHECK(words_of("fork top plug") == Words{"fork", "top", "plug"});
  CHECK(words_of("o-ring 5/16-18 m8x1.25") == Words{"o", "ring", "5", "16", "18", "m8x1.25"});
  CHECK(words_of("9,5 and 9.5. dot 5.1, x") == Words{"9.5", "and", "9.5", "dot", "5.1", "x"});
  CHECK(words_of("  ") == Words{});
  CHECK(words_of("Ж漢字 °c ½") == Words{"Ж漢字", "c"});
}

TEST_CASE("a text has every spelling that people type") {
  CHECK(spellings_of("O-ring") == std::vector<Words>{{"o", "ring"}, {"oring"}});
  CHECK(spellings_of("Gabelöl") == std::vector<Words>{{"gabelol"}, {"gabeloel"}});
  CHECK(spellings_of("u\u0308ber-Öl") ==
        std::vector<Words>{{"uber", "ol"}, {"uberol"}, {"ueber", "oel"}, {"ueberoel"}});
  CHECK(spellings_of("SAE 10W-40") == std::vector<Words>{{"sae", "10w", "40"}, {"sae", "10w40"}});
  CHECK(spellings_of("5/16-18") ==
        std::vector<Words>{{"5", "16", "18"}});  // hyphens between digits part numbers
  CHECK(spellings_of(" - ") == std::vector<Words>{});
}

TEST_CASE("codes and part numbers are squeezed") {
  CHECK(squeeze("HK-40732-20") == "hk4073220");
  CHECK(squeeze("SAE 10W-40") == "sae10w40");
  CHECK(squeeze("DOT 5.1") == "dot5.1");
  CHECK(squeeze("DOT 5") != squeeze("DOT 5.1"));
  CHECK(squeeze("--") == "");
}

TEST_CASE("words are stemmed, numbers never") {
  CHECK(stem_of("nuts") == "nut");
  CHECK(stem_of("bearings") == "bear");
  CHECK(stem_of("6203s") == "6203s");
  CHECK(stem_of("m8") == "m8");
  CHECK(stem_of("") == "");
}
