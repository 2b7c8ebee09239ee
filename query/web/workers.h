// SPDX-License-Identifier: GPL-2.0-or-later
// Threads that answer requests, each with its own opened libraries. What is done waits until the server's one
// thread comes for it.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

#include "query/web/server.h"

namespace sheaf {

struct Job {
  std::uint64_t connection = 0;
  HttpRequest request;
  std::chrono::steady_clock::time_point since;  // its head was whole
};

struct DoneJob {
  Job job;
  Response response;
};

class Workers {
 public:
  // `notice` is called, from any thread, when something is done.
  Workers(unsigned count, const std::function<Answering()>& new_worker, std::function<void()> notice);
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;
  ~Workers();  // after what is being answered; what only waits is left

  void add(Job job, bool goes_first);
  std::vector<DoneJob> take_done();

 private:
  void work(const Answering& answer);

  std::function<void()> notice_;
  std::mutex mutex_;
  std::condition_variable waiting_;
  std::deque<Job> jobs_;
  std::vector<DoneJob> done_;
  bool ending_ = false;
  std::vector<std::thread> threads_;
};

}  // namespace sheaf
