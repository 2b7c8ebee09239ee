// SPDX-License-Identifier: GPL-2.0-or-later
// One connection as the server's thread sees it: what came in, what goes out, and until when. Internal to the
// server.
#pragma once

#include <chrono>
#include <cstdint>
#include <memory>
#include <string>

#include "query/library/file_descriptor.h"
#include "query/web/channel.h"
#include "query/web/server.h"

namespace sheaf {

using Clock = std::chrono::steady_clock;

class Connection {
 public:
  // listening: for a request. waiting: for a worker. replying: bytes go out. draining: all is said, and what
  // still comes is thrown away, so that the end of the response is not lost to a reset. over: to be closed.
  enum class State { listening, waiting, replying, draining, over };

  Connection(FileDescriptor socket, std::unique_ptr<Channel> channel, std::string peer,
             const ServerLimits& limits);

  State state() const { return state_; }
  int socket() const { return socket_.number(); }
  short wishes() const { return wishes_; }  // of poll(2)
  Clock::time_point deadline() const { return deadline_; }
  Clock::time_point since() const { return since_; }
  const std::string& peer() const { return peer_; }
  // Costs nobody an answer if it is given up.
  bool may_be_given_up() const { return state_ == State::listening || state_ == State::draining; }

  // The socket is ready, or may be.
  void go_on();
  // The head of a request, if a whole one has come; it is then waiting.
  std::string take_head();
  bool head_is_too_long() const;

  void reply(std::string bytes, bool keep_alive);
  void close() { state_ = State::over; }

 private:
  void read();
  void write();
  void drain();
  void listen_again();
  bool pass(const Passed& passed);  // whether bytes passed
  void become(State state, std::chrono::milliseconds time);

  FileDescriptor socket_;
  std::unique_ptr<Channel> channel_;  // goes before its socket
  std::string peer_;
  const ServerLimits& limits_;
  State state_ = State::listening;
  short wishes_ = 0;
  Clock::time_point since_, deadline_;
  std::string in_, out_;
  std::size_t sent_ = 0;
  bool keep_alive_ = false;
};

}  // namespace sheaf
