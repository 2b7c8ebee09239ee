// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/workers.h"

#include <exception>

#include "query/web/packing.h"

namespace sheaf {
namespace {

// Whatever goes wrong in one answer, memory included, the others are still answered.
Response answered(const Answering& answer, const HttpRequest& request) {
  try {
    Response response = answer(request);
    return accepts_gzip(request.accept_encoding) ? packed(std::move(response)) : response;
  } catch (const std::exception&) {
    return {500, "text/plain; charset=utf-8", "This could not be answered.\n"};
  }
}

}  // namespace

Workers::Workers(unsigned count, const std::function<Answering()>& new_worker, std::function<void()> notice)
    : notice_(std::move(notice)) {
  for (unsigned i = 0; i < count; ++i) threads_.emplace_back([this, answer = new_worker()] { work(answer); });
}

Workers::~Workers() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  waiting_.notify_all();
  for (auto& thread : threads_) thread.join();
}

void Workers::add(Job job, bool goes_first) {
  {
    const std::lock_guard lock(mutex_);
    goes_first ? jobs_.push_front(std::move(job)) : jobs_.push_back(std::move(job));
  }
  waiting_.notify_one();
}

std::vector<DoneJob> Workers::take_done() {
  const std::lock_guard lock(mutex_);
  return std::exchange(done_, {});
}

void Workers::work(const Answering& answer) {
  std::unique_lock lock(mutex_);
  while (true) {
    waiting_.wait(lock, [this] { return ending_ || !jobs_.empty(); });
    if (ending_) return;
    Job job = std::move(jobs_.front());
    jobs_.pop_front();
    lock.unlock();
    Response response = answered(answer, job.request);
    lock.lock();
    done_.push_back({std::move(job), std::move(response)});
    notice_();
  }
}

}  // namespace sheaf
