// SPDX-License-Identifier: GPL-2.0-or-later
#include "compiler/cli/progress.h"

#include <unistd.h>

#include <chrono>

#include "compiler/cli/console.h"

namespace sheafc {
namespace {

constexpr auto patience = std::chrono::seconds(1);
constexpr auto step = std::chrono::milliseconds(100);
constexpr std::string_view erase_line = "\r\x1b[K";

}  // namespace

Progress::Progress() {
  if (!is_terminal(STDERR_FILENO)) return;
  shower_ = std::jthread([this](const std::stop_token& stop) { show(stop); });
}

Progress::~Progress() {
  shower_ = {};
  erase();
}

void Progress::stage(std::string name, std::size_t total) {
  const std::lock_guard lock(mutex_);
  stage_ = std::move(name);
  total_ = total;
  done_ = 0;
}

void Progress::erase() {
  const std::lock_guard lock(mutex_);
  if (shown_) say_as_is(erase_line);
  shown_ = false;
  stage_.clear();
}

std::string Progress::line() const {
  std::string text = "sheafc: " + stage_;
  if (total_ > 0) text += " " + std::to_string(done_) + " of " + std::to_string(total_) + " sheets";
  return text;
}

void Progress::show(const std::stop_token& stop) {
  std::unique_lock lock(mutex_);
  const auto begun = std::chrono::steady_clock::now();
  while (!stop.stop_requested()) {
    changed_.wait_for(lock, stop, step, [] { return false; });
    if (stop.stop_requested() || stage_.empty()) continue;
    if (std::chrono::steady_clock::now() - begun < patience) continue;
    say_as_is(std::string(erase_line) + line());
    shown_ = true;
  }
}

}  // namespace sheafc
