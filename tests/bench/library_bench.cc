// SPDX-License-Identifier: GPL-2.0-or-later
// Writing, opening and reading libraries of a synthetic fleet, beside the bare loads of the same rows and
// terms.
//
//   library_bench ROUNDS SHEETS...
//
// Each round writes once and loads once, in processes of their own, so that neither warms the other's memory.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <thread>
#include <vector>

#include "compiler/emit/library_writer.h"
#include "query/library/library.h"
#include "tests/bench/bare_load.h"
#include "tests/bench/measured.h"
#include "tests/content/synthetic_fleet.h"
#include "tests/content/temporary_folder.h"

using namespace sheaf;
using namespace sheaf::bench;

namespace {

const unsigned threads = std::max(1u, std::thread::hardware_concurrency());

void require(const std::optional<Failure>& fault) {
  if (!fault) return;
  std::fprintf(stderr, "library_bench: error: %s\n", fault->message.c_str());
  std::exit(1);
}

// The records are made beforehand, as those of the bare loads are; or one by one, where memory is what is
// asked.
Measured write_fleet(const std::string& path, int sheets, bool made_beforehand) {
  std::vector<SheetRecord> made;
  for (int i = 0; made_beforehand && i < sheets; ++i) made.push_back(test::synthetic_sheet(i));
  return measured([&] {
    auto begun = sheafc::LibraryWriter::begin(path, "synthetic", test::synthetic_words(), {threads, nullptr});
    if (!begun) require(begun.failure());
    sheafc::LibraryWriter writer = std::move(begun).value();
    for (int i = 0; i < sheets; ++i) {
      require(writer.add(made_beforehand ? std::move(made[static_cast<std::size_t>(i)])
                                         : test::synthetic_sheet(i)));
    }
    const auto receipt = writer.finish();
    if (!receipt) require(receipt.failure());
  });
}

void measure_writing(const std::string& path, int sheets, int rounds) {
  std::vector<double> written, bare, ratio, processor_ratio;
  const double memory = in_a_process([&] { return write_fleet(path, sheets, false); }).memory_mb;
  for (int round = 0; round < rounds; ++round) {
    const Measured writing = in_a_process([&] { return write_fleet(path, sheets, true); });
    const Measured loading = in_a_process([&] {
      const BareLoad load(path, sheets);
      const test::TemporaryFolder scratch;
      return measured([&] { load.run(scratch.path(), threads); });
    });
    written.push_back(writing.seconds);
    bare.push_back(loading.seconds);
    ratio.push_back(writing.seconds / loading.seconds);
    processor_ratio.push_back(writing.processor / loading.processor);
  }
  const double entries = static_cast<double>(sheets) * test::entries_per_synthetic_sheet;
  std::printf(
      "%6d sheets  written %7.2f s %7.0f entries/s  bare loads %7.2f s  ratio %.2f (processor time %.2f)  "
      "memory %4.0f MB  file %6.1f MB\n",
      sheets, median(written), entries / median(written), median(bare), median(ratio),
      median(processor_ratio), memory, static_cast<double>(std::filesystem::file_size(path)) / 1e6);
}

double median_microseconds(int times, const std::function<void()>& work) {
  std::vector<double> took;
  for (int i = 0; i < times; ++i) took.push_back(1e6 * seconds_of(work));
  return median(took);
}

void measure_reading(const std::string& path, int sheets) {
  auto opened = open_library(path);
  if (!opened) require(opened.failure());
  Library library = std::move(opened).value();
  const auto entries = static_cast<EntryId>(sheets * test::entries_per_synthetic_sheet);
  EntryId id = 1;
  std::vector<std::string> addresses;
  for (int i = 0; i < 1000; ++i) {
    addresses.push_back(test::synthetic_sheet(i * 7919 % sheets).entries[3].address);
  }
  const double open = median_microseconds(300, [&] { (void)open_library(path); });
  const double by_id =
      median_microseconds(5000, [&] { (void)library.entry_by_id(1 + (id += 7919) % entries); });
  const double by_address =
      median_microseconds(5000, [&] { (void)library.entries_at(addresses[++id % addresses.size()]); });
  const double verify = seconds_of([&] {
    if (!library.verify().empty()) require(Failure{"the library is damaged"});
  });
  std::printf("%6d sheets  open %5.0f us  entry by number %4.1f us, by address %4.1f us  verify %.2f s\n",
              sheets, open, by_id, by_address, verify);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fputs("usage: library_bench ROUNDS SHEETS...\n", stderr);
    return 2;
  }
  const int rounds = std::max(1, std::atoi(argv[1]));
  for (int i = 2; i < argc; ++i) {
    const test::TemporaryFolder folder;
    const int sheets = std::max(1, std::atoi(argv[i]));
    measure_writing(folder / "made.sheaf", sheets, rounds);
    measure_reading(folder / "made.sheaf", sheets);
  }
}
