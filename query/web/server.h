// SPDX-License-Identifier: GPL-2.0-or-later
// Sockets, and nothing of what is said through them. One thread waits for all connections at once and never
// blocks; a request goes to a worker only when its whole head is there, and its response comes back as bytes
// to be sent as fast as the other side takes them. So a slow or silent asker costs a place, never a worker;
// when all places are taken, the one that has been waited for longest is given up.
#pragma once

#include <atomic>
#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "query/quantity/result.h"
#include "query/web/channel.h"
#include "query/web/request.h"
#include "query/web/response.h"

namespace sheaf {

struct ServerLimits {
  std::size_t connections = 400;
  std::chrono::milliseconds idle{30'000};   // between requests
  std::chrono::milliseconds head{10'000};   // from its first byte to its end
  std::chrono::milliseconds reply{30'000};  // until the last byte of the response is taken
  std::chrono::milliseconds finish{3'000};  // for what is under way when the server is to stop
};

// Answers one worker's requests, one after the other; each worker has its own.
using Answering = std::function<Response(const HttpRequest&)>;

struct ServerSettings {
  std::string address = "127.0.0.1";  // IPv4 or IPv6, as numbers
  int port = 0;                       // 0: any that is free
  unsigned workers = 2;
  ServerLimits limits = {};
  std::unique_ptr<Tls> tls = {};  // none: plain http
  std::function<Answering()> new_worker;
  std::function<bool(std::string_view path)> goes_first = {};  // before whatever waits for a worker
  std::function<void(const std::string& line)> log = {};       // one line for each request
};

class Server {
 public:
  // Fails, with the address in the message, if it cannot be listened on.
  static Result<std::unique_ptr<Server>> listen(ServerSettings settings);
  virtual ~Server() = default;

  virtual int port() const = 0;
  // Until stop(), or until `signals`, a descriptor from signalfd(2), can be read; -1: none.
  virtual void run(int signals) = 0;
  virtual void stop() = 0;  // from any thread
};

}  // namespace sheaf
