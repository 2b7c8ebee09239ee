// SPDX-License-Identifier: GPL-2.0-or-later
// How long a question takes inside the program, on a library of the synthetic fleet: the whole way from words
// to what is said, a fresh Lexicon each time; and type-ahead, letter by letter. Of each question the least of
// the rounds counts: what the machine did besides is no property of the question.
//
//   search_bench LIBRARY ROUNDS [QUESTION...]    these questions instead, to profile them
#include <sys/resource.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "query/answer/findings.h"
#include "query/search/complete.h"
#include "tests/content/synthetic_fleet.h"

namespace {

using Times = std::vector<double>;

// Of the processor, so that what else the machine does counts little; nothing here waits for a disk, since
// every question was asked once before.
double processor_microseconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e6 + static_cast<double>(now.tv_nsec) / 1e3;
}

double microseconds(const std::function<void()>& run) {
  const double start = processor_microseconds();
  run();
  return processor_microseconds() - start;
}

double share(Times times, double part) {
  std::ranges::sort(times);
  return times[static_cast<std::size_t>(part * static_cast<double>(times.size() - 1))];
}

// What people type, with machines of the fleet from all over it.
std::vector<std::string> questions(int sheets) {
  std::vector<std::string> all = {"axle nut",        "front axle nut torque",
                                  "M8x1.25",         "12mm socket",
                                  "6203-2RS",        "drain plug",
                                  "43x55x9",         "over 40 nm",
                                  "pinch bolt 9 nm", "frnt axel nut",
                                  "damper oil",      "union bolt m10",
                                  "seal 41 mm tube", "rear wheel bearing",
                                  "lower top plug",  "gasket"};
  for (int i = 0; i < 24; ++i) {
    const auto sheet = sheaf::test::synthetic_sheet(i * (sheets / 24));
    const auto& fit = sheet.fits.front();
    const std::string model = fit.model.substr(0, fit.model.find(' '));
    const auto& entry = sheet.entries[static_cast<std::size_t>(i) % sheet.entries.size()];
    all.push_back(entry.name + " " + model);
    all.push_back(model + " " + std::to_string(fit.year_from + 1) + " " + entry.name);
    all.push_back("torque " + entry.name + " " + fit.make + " " + fit.model);
    all.push_back(entry.name + " " + model + " 1971");
    for (const auto& field : entry.fields)
      if (field.key == "part-number") all.push_back(field.text);
  }
  return all;
}

void ask(sheaf::Library& library, const std::string& words, bool offers_near = true) {
  sheaf::Lexicon lexicon({&library});
  sheaf::Request request;
  request.words = words;
  request.offers_near = offers_near;
  auto found = sheaf::find(request, lexicon);
  if (!found) std::fprintf(stderr, "%s: %s\n", words.c_str(), found.failure().message.c_str()), std::exit(1);
  const auto said = sheaf::say_findings(std::move(found).value(), words, {});
  if (said.answers.size() > 1000) std::exit(1);
}

// A question, or what was typed of one, and the least that it took.
using Least = std::map<std::string, double>;

void note(Least& least, const std::string& text, double took) {
  const auto [known, is_new] = least.try_emplace(text, took);
  if (!is_new) known->second = std::min(known->second, took);
}

void report(const char* what, const Least& least) {
  Times times;
  std::vector<std::pair<double, std::string>> slowest;
  for (const auto& [text, took] : least) times.push_back(took), slowest.emplace_back(took, text);
  std::printf("%-22s %6zu  p50 %8.0f us  p99 %8.0f us  most %8.0f us\n", what, times.size(),
              share(times, 0.5), share(times, 0.99), share(times, 1));
  std::ranges::sort(slowest, std::greater());
  for (std::size_t i = 0; i < 6 && i < slowest.size(); ++i)
    std::printf("    slow: %8.0f us  %s\n", slowest[i].first, slowest[i].second.c_str());
  std::fflush(stdout);
}

void type_ahead(sheaf::Library& library, const std::vector<std::string>& all, int rounds) {
  Least words, figures;
  for (int round = 0; round < rounds; ++round) {
    for (std::size_t i = 0; i < all.size(); i += 4) {
      const std::string& text = all[i];
      for (std::size_t end = 1; end <= std::min<std::size_t>(text.size(), 24); ++end) {
        const std::string typed = text.substr(0, end);
        sheaf::Lexicon lexicon({&library});
        note(words, typed, microseconds([&] { sheaf::complete(typed, lexicon, 8); }));
        if (end >= 3)
          note(figures, typed, microseconds([&] { ask(library, sheaf::completed(typed, lexicon), false); }));
      }
    }
  }
  report("type-ahead, words", words);
  report("type-ahead, figures", figures);
}

}  // namespace

int main(int count, char** words) {
  if (count < 3) return std::fputs("usage: search_bench LIBRARY ROUNDS [QUESTION...]\n", stderr), 2;
  auto opened = sheaf::open_library(words[1]);
  if (!opened) return std::fprintf(stderr, "%s\n", opened.failure().message.c_str()), 2;
  sheaf::Library library = std::move(opened).value();
  const auto all = count > 3 ? std::vector<std::string>(words + 3, words + count)
                             : questions(static_cast<int>(library.facts().sheets));
  for (const auto& text : all) ask(library, text);  // once, to warm the file
  const int rounds = std::max(1, std::atoi(words[2]));
  Least least;
  for (int round = 0; round < rounds; ++round)
    for (const auto& text : all) note(least, text, microseconds([&] { ask(library, text); }));
  report("questions", least);
  type_ahead(library, all, rounds);
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  std::printf("memory %ld kB\n", used.ru_maxrss);
  std::fflush(stdout);
  std::_Exit(0);
}
