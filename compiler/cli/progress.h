// SPDX-License-Identifier: GPL-2.0-or-later
// How far the work has come, on a terminal, once it has lasted a second. Gone again when the work is done.
//
//   Progress progress;
//   progress.stage("reading", files);
//   for (...) ++progress.done();
#pragma once

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <string>
#include <thread>

namespace sheafc {

class Progress {
 public:
  Progress();   // nothing happens unless standard error is a terminal
  ~Progress();  // erases what it showed

  // `total` 0: not known.
  void stage(std::string name, std::size_t total = 0);
  std::atomic<std::size_t>& done() { return done_; }
  void erase();  // before anything else is written; shown again at the next stage

 private:
  void show(const std::stop_token& stop);
  std::string line() const;

  std::atomic<std::size_t> done_{0};
  std::mutex mutex_;  // guards what follows
  std::condition_variable_any changed_;
  std::string stage_;
  std::size_t total_ = 0;
  bool shown_ = false;
  std::jthread shower_;
};

}  // namespace sheafc
