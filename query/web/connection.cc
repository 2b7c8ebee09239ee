// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/connection.h"

#include <poll.h>
#include <sys/socket.h>

#include <array>

namespace sheaf {
namespace {

constexpr std::size_t piece = 16 * 1024;  // bytes read at once
constexpr std::chrono::milliseconds time_to_drain{1'000};
constexpr std::size_t most_pieces_drained = 64;  // at one go

}  // namespace

Connection::Connection(FileDescriptor socket, std::unique_ptr<Channel> channel, std::string peer,
                       const ServerLimits& limits)
    : socket_(std::move(socket)), channel_(std::move(channel)), peer_(std::move(peer)), limits_(limits) {
  become(State::listening, limits_.head);
  wishes_ = POLLIN;
}

void Connection::become(State state, std::chrono::milliseconds time) {
  state_ = state;
  since_ = Clock::now();
  deadline_ = since_ + time;
}

void Connection::go_on() {
  switch (state_) {
    case State::listening:
      return read();
    case State::replying:
      return write();
    case State::draining:
      return drain();
    case State::waiting:
    case State::over:
      return;
  }
}

bool Connection::pass(const Passed& passed) {
  if (passed.state == Passed::State::ended) state_ = State::over;
  if (passed.state == Passed::State::wants_read) wishes_ = POLLIN;
  if (passed.state == Passed::State::wants_write) wishes_ = POLLOUT;
  return passed.state == Passed::State::some;
}

// Never more than one head's worth is kept, whatever is sent.
void Connection::read() {
  std::array<char, piece> buffer{};
  while (in_.size() < longest_head && head_length(in_) == 0) {
    const Passed passed = channel_->read(buffer.data(), std::min(buffer.size(), longest_head - in_.size()));
    if (!pass(passed)) return;
    if (in_.empty()) become(State::listening, limits_.head);
    in_.append(buffer.data(), passed.bytes);
    while (in_.starts_with("\r\n"))
      in_.erase(0, 2);  // RFC 9112, 2.2: empty lines before a request mean nothing
  }
}

std::string Connection::take_head() {
  const std::size_t length = state_ == State::listening ? head_length(in_) : 0;
  if (length == 0) return {};
  std::string head = in_.substr(0, length);
  in_.erase(0, length);
  state_ = State::waiting;
  return head;
}

bool Connection::head_is_too_long() const {
  return state_ == State::listening && in_.size() >= longest_head && head_length(in_) == 0;
}

void Connection::reply(std::string bytes, bool keep_alive) {
  out_ = std::move(bytes);
  sent_ = 0;
  keep_alive_ = keep_alive;
  become(State::replying, limits_.reply);
  write();
}

void Connection::write() {
  while (sent_ < out_.size()) {
    const Passed passed = channel_->write(std::string_view(out_).substr(sent_));
    if (!pass(passed)) return;
    sent_ += passed.bytes;
  }
  out_.clear();
  if (keep_alive_) return listen_again();
  ::shutdown(socket_.number(), SHUT_WR);
  become(State::draining, time_to_drain);
  wishes_ = POLLIN;
  drain();
}

void Connection::listen_again() {
  become(State::listening, in_.empty() ? limits_.idle : limits_.head);
  wishes_ = POLLIN;
  read();
}

void Connection::drain() {
  std::array<char, piece> buffer{};
  for (std::size_t pieces = 0; pieces < most_pieces_drained; ++pieces)
    if (!pass(channel_->read(buffer.data(), buffer.size()))) return;
}

}  // namespace sheaf
