// SPDX-License-Identifier: GPL-2.0-or-later
#include "tests/bench/bare_parse.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <atomic>
#include <fstream>
#include <sstream>
#include <thread>

namespace sheaf::bench {
namespace {

// Counts, so that nothing can be left out as unused.
class Counter : public YAML::EventHandler {
 public:
  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark&, YAML::anchor_t) override { ++events; }
  void OnAlias(const YAML::Mark&, YAML::anchor_t) override { ++events; }
  void OnScalar(const YAML::Mark&, const std::string&, YAML::anchor_t, const std::string&) override {
    ++events;
  }
  void OnSequenceStart(const YAML::Mark&, const std::string&, YAML::anchor_t,
                       YAML::EmitterStyle::value) override {
    ++events;
  }
  void OnSequenceEnd() override {}
  void OnMapStart(const YAML::Mark&, const std::string&, YAML::anchor_t, YAML::EmitterStyle::value) override {
    ++events;
  }
  void OnMapEnd() override {}

  std::size_t events = 0;
};

}  // namespace

std::size_t parse_bare(const std::vector<std::string>& paths, unsigned threads) {
  std::atomic<std::size_t> next = 0, events = 0;
  std::vector<std::jthread> workers;
  for (unsigned i = 0; i < threads; ++i) {
    workers.emplace_back([&] {
      for (std::size_t at = next++; at < paths.size(); at = next++) {
        std::stringstream text;
        text << std::ifstream(paths[at]).rdbuf();
        Counter counter;
        YAML::Parser parser(text);
        while (parser.HandleNextDocument(counter)) continue;
        events += counter.events;
      }
    });
  }
  workers.clear();
  return events;
}

}  // namespace sheaf::bench
