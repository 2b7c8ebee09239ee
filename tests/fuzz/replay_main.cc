// SPDX-License-Identifier: GPL-2.0-or-later
// Replays a corpus through a fuzz target in an ordinary build: every regular file of the folders named on the
// command line, in name order. A fault shows as a crash, an assert or a sanitizer's report. An empty corpus
// is refused, so that a lost folder cannot pass.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& item : std::filesystem::directory_iterator(folder)) {
    if (item.is_regular_file()) files.push_back(item.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

void replay(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  const std::string bytes{std::istreambuf_iterator<char>(in), {}};
  std::cerr << file.filename().string() << '\n';
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

}  // namespace

int main(int argc, char** argv) {
  std::size_t replayed = 0;
  for (int i = 1; i < argc; ++i) {
    for (const auto& file : files_in(argv[i])) {
      replay(file);
      ++replayed;
    }
  }
  std::cerr << "replayed " << replayed << " inputs\n";
  return replayed > 0 ? 0 : 1;
}
