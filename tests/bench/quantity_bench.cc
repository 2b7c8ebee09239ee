// SPDX-License-Identifier: GPL-2.0-or-later
// How many figures a second are read, converted and written, on one core and without allocation; and what
// GNU units makes of the same lines on one standard input.
//
//   quantity_bench [LINES]     200 000 lines unless told otherwise
//
// Every line is a figure and a unit, "35 N·m" and "lbf·ft": workshop units of every dimension, one to five
// digits, the same lines in every run. units reads plain numbers only, so all lines here are plain. Its time
// includes its start, which it is also asked for alone. All times are processor time, user and system, so
// that a busy machine does not blur them.
#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <map>
#include <new>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "query/quantity/convert.h"

namespace {

std::atomic<std::size_t> allocations{0};

}  // namespace

// Not inlined, so that the compiler does not see new and free as a mismatched pair.
[[gnu::noinline]] void* operator new(std::size_t size) {
  ++allocations;
  if (void* memory = std::malloc(size)) return memory;
  throw std::bad_alloc();
}
[[gnu::noinline]] void operator delete(void* memory) noexcept { std::free(memory); }
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

namespace {

using namespace sheaf;

struct Line {
  std::string figure;
  std::string unit;
  Dimension dimension;
  std::string number, from;  // the figure's parts, for other programs
};

std::vector<Line> make_lines(int count) {
  std::mt19937 random(20261125);
  const auto below = [&](std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random);
  };
  std::vector<std::vector<const Unit*>> groups;
  for (int i = 0; i <= static_cast<int>(Dimension::density); ++i) {
    std::vector<const Unit*> units;
    for (const Unit& unit : units_of(static_cast<Dimension>(i))) {
      const bool plain =
          unit.dimension != Dimension::temperature && unit.dimension != Dimension::temperature_difference;
      if (unit.workshop && plain && unit.symbol != "months" && unit.symbol != "years") units.push_back(&unit);
    }
    if (units.size() >= 2) groups.push_back(units);
  }
  std::vector<Line> lines;
  for (int i = 0; i < count; ++i) {
    const auto& units = groups[below(groups.size())];
    const std::size_t from = below(units.size()), to = (from + 1 + below(units.size() - 1)) % units.size();
    const Number number{static_cast<std::int64_t>(1 + below(below(2) == 0 ? 100 : 100000)),
                        static_cast<std::uint8_t>(below(3)), 1};
    const std::string text = to_text(number), symbol(units[from]->symbol);
    lines.push_back(
        {text + " " + symbol, std::string(units[to]->symbol), units[from]->dimension, text, symbol});
  }
  return lines;
}

// Processor seconds of this program, or of the programs it has run.
double processor_seconds(int who) {
  rusage usage{};
  getrusage(who, &usage);
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
  };
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

// Reads, converts and writes every line once; the sum of the lengths keeps the work from being dropped.
std::size_t convert_all(const std::vector<Line>& lines) {
  FigureBuffer buffer;
  std::size_t written = 0;
  for (const Line& line : lines) {
    const auto figure = parse_figure(line.figure, line.dimension, Input::sheet);
    const auto unit = unit_from(line.unit, line.dimension);
    const auto converted = convert(*figure, **unit);
    written += to_text(converted->figure, buffer).size();
  }
  return written;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

void measure_ours(const std::vector<Line>& lines) {
  convert_all(lines);
  std::vector<double> rates;
  const std::size_t before = allocations;
  std::array<double, 9> runs{};
  std::size_t written = 0;
  for (double& run : runs) {
    const double start = processor_seconds(RUSAGE_SELF);
    written += convert_all(lines);
    run = static_cast<double>(lines.size()) / (processor_seconds(RUSAGE_SELF) - start);
  }
  const std::size_t allocated = allocations - before;
  rates.assign(runs.begin(), runs.end());
  std::cout << "sheaf quantity: " << std::setprecision(3) << median(rates) / 1e6
            << " million a second (median of 9), " << *std::min_element(rates.begin(), rates.end()) / 1e6
            << " the slowest, " << allocated << " allocations, " << written / runs.size()
            << " bytes written a run\n";
}

// What units calls our units (tests/outside/unit_names.csv).
std::map<std::string, std::string> names_in_units() {
  std::ifstream file("tests/outside/unit_names.csv");
  std::map<std::string, std::string> names;
  for (std::string line; std::getline(file, line);) {
    std::stringstream fields(line);
    std::string dimension, symbol, name;
    if (line.empty() || line.front() == '#') continue;
    std::getline(fields, dimension, ',');
    std::getline(fields, symbol, ',');
    std::getline(fields, name, ',');
    names[symbol] = name;
  }
  return names;
}

double time_of(const std::string& command) {
  const double start = processor_seconds(RUSAGE_CHILDREN);
  const int status = std::system(command.c_str());
  return WIFEXITED(status) && WEXITSTATUS(status) == 0 ? processor_seconds(RUSAGE_CHILDREN) - start : -1;
}

void measure_units(const std::vector<Line>& lines) {
  const auto folder = std::filesystem::temp_directory_path();
  const auto input = folder / "quantity_bench.in", empty = folder / "quantity_bench.empty";
  auto names = names_in_units();
  std::ofstream file(input);
  for (const Line& line : lines)
    file << line.number << " (" << names[line.from] << ")\n" << names[line.unit] << '\n';
  file.close();
  std::ofstream(empty).close();
  const std::string run = "LC_ALL=C.UTF-8 units -q -t ";
  const double start = time_of(run + "<" + empty.string() + " >/dev/null");
  const double all = time_of(run + "<" + input.string() + " >" + (folder / "quantity_bench.out").string());
  if (all < 0) {
    std::cout << "GNU units: not installed, or it failed\n";
    return;
  }
  std::cout << "GNU units, one standard input: " << std::setprecision(3)
            << static_cast<double>(lines.size()) / (all - start) / 1e6
            << " million a second after its start of " << start * 1000 << " ms\n";
}

}  // namespace

int main(int argc, char** argv) {
  const int count = argc > 1 ? std::max(1, std::atoi(argv[1])) : 200'000;
  const auto lines = make_lines(count);
  std::cout << lines.size() << " lines\n";
  measure_ours(lines);
  measure_units(lines);
}
