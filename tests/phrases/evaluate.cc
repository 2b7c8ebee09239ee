// SPDX-License-Identifier: GPL-2.0-or-later
// Asks every question of the phrase files and says how well it was answered.
//
//   evaluate LIBRARY [--misspelt LIST] [--baselines] [--failures] [--require] FILE...
//
// --failures names the questions that were not answered by the first answer; --require ends with status 1
// below 95 % at 1 or 99 % at 3, or with any wrong answer.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <string>

#include "tests/phrases/engine.h"
#include "tests/phrases/phrase.h"

namespace phrases {
namespace {

struct Options {
  std::string library, misspellings;
  std::vector<std::string> files;
  bool baselines = false, failures = false, require = false;
};

struct Score {
  std::size_t asked = 0, at_one = 0, at_three = 0, wrong = 0, false_nothing = 0;
  double reciprocal_ranks = 0;
};

bool all_wanted(const Phrase& phrase, const Reply& reply) {
  return std::ranges::all_of(reply.answers,
                             [&](const Given& given) { return matches_any(given.address, phrase.wanted); });
}

// "22.23 mm" where 22.2 mm was wanted: the same, to the digits wanted.
bool says(const std::string& figure, const std::string& wanted) {
  const std::string number = wanted.substr(0, wanted.find(' ')),
                    unit = wanted.substr(std::min(wanted.size(), number.size() + 1));
  const std::size_t point = number.find('.');
  const auto digits = static_cast<int>(point == std::string::npos ? 0 : number.size() - point - 1);
  const double half = std::pow(10.0, -digits) / 2;
  return figure.find(unit) != std::string::npos &&
         std::abs(std::atof(figure.c_str()) - std::atof(number.c_str())) <= half * 1.001;
}

// Nothing, or what begins with saying that what was asked for is not recorded of it.
bool says_none(const Reply& reply) { return std::ranges::all_of(reply.answers, &Given::says_none); }

// From 1; 0 if it was not given among the first ten.
std::size_t rank_of(const Phrase& phrase, const Reply& reply) {
  if (phrase.nothing) return says_none(reply) ? 1 : 0;
  if (!phrase.converts.empty()) {
    for (const auto& figure : reply.converted)
      if (says(figure, phrase.converts)) return 1;
    return 0;
  }
  if (phrase.near) {
    if (!reply.answers.empty())
      return says_none(reply) && matches_any(reply.answers.front().address, phrase.wanted);
    return !reply.near.empty() && matches_any(reply.near.front(), phrase.wanted) ? 1 : 0;
  }
  if (phrase.which) return reply.answers.size() > 1 && all_wanted(phrase, reply) ? 1 : 0;
  for (std::size_t i = 0; i < reply.answers.size() && i < 10; ++i)
    if (matches_any(reply.answers[i].address, phrase.wanted)) return i + 1;
  return 0;
}

bool fits(const Given& given, const Phrase& phrase) {
  if (phrase.model.empty() && phrase.year == 0) return true;
  for (const auto& fit : given.fits) {
    const bool is_model = phrase.model.empty() || fit.model == phrase.model;
    const bool is_year = phrase.year == 0 || ((fit.year_from == 0 || fit.year_from <= phrase.year) &&
                                              (fit.year_to == 0 || phrase.year <= fit.year_to));
    if (is_model && is_year) return true;
  }
  return false;
}

// An answer that looks right and is not.
bool is_wrong(const Phrase& phrase, const Reply& reply) {
  if (phrase.nothing) return !says_none(reply);
  if (phrase.near && !says_none(reply)) return true;
  for (const auto& given : reply.answers)
    if (!fits(given, phrase) || matches_any(given.address, phrase.unwanted)) return true;
  if (phrase.which) return reply.answers.size() == 1;
  return reply.answers.size() == 1 && phrase.converts.empty() &&
         !matches_any(reply.answers.front().address, phrase.wanted);
}

void say_failure(const Phrase& phrase, const Reply& reply, std::size_t rank) {
  std::cout << "  " << phrase.file << ':' << phrase.line << ": " << phrase.question << "\n      rank " << rank
            << (is_wrong(phrase, reply) ? ", WRONG" : "") << ", given";
  for (std::size_t i = 0; i < reply.answers.size() && i < 3; ++i)
    std::cout << ' ' << reply.answers[i].address;
  if (!reply.near.empty()) std::cout << " | near " << reply.near.front();
  std::cout << '\n';
}

Score score(Engine& engine, const std::vector<Phrase>& all, bool failures) {
  Score sum;
  for (const auto& phrase : all) {
    const Reply reply = engine.ask(phrase.question);
    const std::size_t rank = rank_of(phrase, reply);
    const bool wrong = is_wrong(phrase, reply);
    ++sum.asked;
    sum.at_one += rank == 1;
    sum.at_three += rank >= 1 && rank <= 3;
    sum.wrong += wrong;
    sum.false_nothing += !phrase.wanted.empty() && !phrase.near && reply.answers.empty();
    if (rank > 0) sum.reciprocal_ranks += 1.0 / static_cast<double>(rank);
    if (failures && (rank != 1 || wrong)) say_failure(phrase, reply, rank);
  }
  return sum;
}

void print(const std::string& what, const std::string& engine, const Score& sum) {
  const double asked = static_cast<double>(sum.asked);
  const auto percent = [&](std::size_t part) { return 100 * static_cast<double>(part) / asked; };
  std::printf("%-14s %-13s %5zu  %6.1f %%  %6.1f %%  %5.3f  %5zu %6.1f %%  %5zu\n", what.c_str(),
              engine.c_str(), sum.asked, percent(sum.at_one), percent(sum.at_three),
              sum.reciprocal_ranks / asked, sum.wrong, percent(sum.wrong), sum.false_nothing);
}

bool is_enough(const Score& sum) {
  return sum.wrong == 0 && sum.at_one * 100 >= sum.asked * 95 && sum.at_three * 100 >= sum.asked * 99;
}

Options read_options(int count, char** words) {
  Options options;
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    if (word == "--baselines")
      options.baselines = true;
    else if (word == "--failures")
      options.failures = true;
    else if (word == "--require")
      options.require = true;
    else if (word == "--misspelt" && i + 1 < count)
      options.misspellings = words[++i];
    else if (options.library.empty())
      options.library = word;
    else
      options.files.push_back(word);
  }
  return options;
}

int run(const Options& options) {
  auto opened = sheaf::open_library(options.library);
  if (!opened) {
    std::cerr << "evaluate: " << opened.failure().message << '\n';
    return 2;
  }
  sheaf::Library library = std::move(opened).value();
  std::vector<std::unique_ptr<Engine>> engines;
  engines.push_back(make_sheaf(library));
  if (options.baselines) {
    engines.push_back(make_plain_xapian(library));
    engines.push_back(make_plain_fts(library));
  }
  std::printf("%-14s %-13s %5s  %8s  %8s  %5s  %14s  %s\n", "questions", "engine", "asked", "first",
              "first 3", "MRR", "wrong", "none");
  bool enough = true;
  const auto all = read_phrases(options.files);
  const auto report = [&](const std::string& what, const std::vector<Phrase>& some) {
    for (auto& engine : engines) {
      const Score sum = score(*engine, some, options.failures && engine == engines.front());
      print(what, engine->name(), sum);
      if (engine == engines.front() && what != "misspelt")
        enough = enough && (what != "all" || is_enough(sum)) && sum.wrong == 0;
    }
  };
  for (const auto& file : options.files) {
    std::vector<Phrase> some;
    for (const auto& phrase : all)
      if (phrase.file == file) some.push_back(phrase);
    report(std::filesystem::path(file).stem().string(), some);
  }
  if (!options.misspellings.empty()) report("misspelt", misspelt(all, options.misspellings, 400));
  Options quiet = options;
  report("all", all);
  return options.require && !enough ? 1 : 0;
}

}  // namespace
}  // namespace phrases

int main(int count, char** words) { return phrases::run(phrases::read_options(count, words)); }
