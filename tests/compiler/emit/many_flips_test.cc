// SPDX-License-Identifier: GPL-2.0-or-later
// Ten thousand flipped bits, one at a time, in rows, index and trailer; the index is asked too. A crash or
// a hang ends the test.
#include <doctest/doctest.h>
#include <unistd.h>

#include <random>
#include <string>
#include <vector>

#include "query/library/index.h"
#include "tests/compiler/emit/written_library.h"
#include "tests/content/files.h"
#include "tests/content/random_content.h"
#include "tests/content/synthetic_fleet.h"

using namespace sheaf;

namespace {

constexpr int flips = 10'000;

// What the index says to some questions: an answer each, or that it cannot be read.
std::vector<std::string> ask_index(const Xapian::Database& index) {
  std::vector<std::string> answers;
  for (const char* word : {"Zplug", "XOdamper", "XKfastener", "Zfork", "Zn"}) {
    std::string answer;
    try {
      Xapian::Enquire enquire(index);
      const Xapian::Query range(Xapian::Query::OP_VALUE_GE, 16, Xapian::sortable_serialise(3));
      enquire.set_query(Xapian::Query(Xapian::Query::OP_OR, Xapian::Query(word), range));
      for (const Xapian::docid id : enquire.get_mset(0, 20)) answer += ' ' + std::to_string(id);
      answer += index.get_spelling_suggestion(std::string(word) + "q");
      for (auto term = index.allterms_begin("XM"); term != index.allterms_end("XM"); ++term) answer += *term;
    } catch (const Xapian::Error&) {
      answer = "refused";
    }
    answers.push_back(answer);
  }
  return answers;
}

bool right_or_refused(const std::vector<std::string>& answers, const std::vector<std::string>& right) {
  for (std::size_t i = 0; i < answers.size(); ++i) {
    if (answers[i] != right[i] && answers[i] != "refused") return false;
  }
  return true;
}

void flip_many(const LibraryContent& content, unsigned seed) {
  const test::TemporaryFolder folder;
  const std::string path = folder / "made.sheaf";
  test::write(content, path);
  const std::string whole = test::read_file(path);
  const auto right = [&] {
    Library library = test::open(path);
    return ask_index(index_of(library).database());
  }();
  std::mt19937 random(seed);
  int refused = 0, noticed = 0;
  for (int flip = 0; flip < flips / 2; ++flip) {
    std::string bytes = whole;
    const std::size_t at = random() % bytes.size();
    const auto bit = random() % 8;
    bytes[at] = static_cast<char>(bytes[at] ^ (1 << bit));
    test::write_file(path, bytes);
    alarm(60);
    const test::Answers answers = test::ask_for_everything(path, content);
    if (answers.wrong != 0) FAIL("bit ", bit, " of byte ", at, " gave a wrong record");
    if (!answers.opened) {
      ++refused;
      continue;
    }
    Library library = test::open(path);
    if (!right_or_refused(ask_index(index_of(library).database()), right)) {
      FAIL("bit ", bit, " of byte ", at, " gave another answer of the index");
    }
    noticed += !library.verify().empty();
  }
  alarm(0);
  CHECK(refused + noticed == flips / 2);
}

}  // namespace

TEST_CASE("ten thousand flipped bits give no wrong record, no crash, and all are found") {
  flip_many(test::random_content(31, 12), 1);
  LibraryContent fleet{"fleet", {}, test::synthetic_words()};
  for (int i = 0; i < 4; ++i) fleet.sheets.push_back(test::synthetic_sheet(i));
  flip_many(fleet, 2);
}
