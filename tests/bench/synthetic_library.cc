// SPDX-License-Identifier: GPL-2.0-or-later
// Writes the library of a synthetic fleet straight from its records, as sheafc build would from the sheets of
// synthetic_sheets: a million entries without their YAML in memory.
//
//   synthetic_library SHEETS LIBRARY
#include <charconv>
#include <cstdio>
#include <cstring>
#include <thread>

#include "compiler/emit/library_writer.h"
#include "tests/content/synthetic_fleet.h"

namespace {

std::optional<sheaf::Failure> write_fleet(const char* path, int sheets) {
  const sheafc::EmitOptions options{std::thread::hardware_concurrency(), nullptr};
  auto begun = sheafc::LibraryWriter::begin(path, "synthetic", sheaf::test::synthetic_words(), options);
  if (!begun) return begun.failure();
  sheafc::LibraryWriter writer = std::move(begun).value();
  for (int i = 0; i < sheets; ++i)
    if (auto fault = writer.add(sheaf::test::synthetic_sheet(i))) return fault;
  const auto receipt = writer.finish();
  if (!receipt) return receipt.failure();
  return std::nullopt;
}

}  // namespace

int main(int argc, char** argv) {
  int sheets = 0;
  if (argc != 3 || std::from_chars(argv[1], argv[1] + std::strlen(argv[1]), sheets).ec != std::errc{})
    return std::fputs("usage: synthetic_library SHEETS LIBRARY\n", stderr), 2;
  const auto fault = write_fleet(argv[2], sheets);
  if (fault) std::fprintf(stderr, "synthetic_library: error: %s\n", fault->message.c_str());
  return fault ? 1 : 0;
}
