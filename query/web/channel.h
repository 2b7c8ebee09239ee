// SPDX-License-Identifier: GPL-2.0-or-later
// The two ways in which bytes pass a connected socket that never blocks: plainly, or through TLS.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

#include "query/quantity/result.h"

namespace sheaf {

// What became of one attempt: some bytes passed, or the socket must first be readable or writable, or the
// connection has ended.
struct Passed {
  enum class State { some, wants_read, wants_write, ended };
  State state = State::ended;
  std::size_t bytes = 0;
};

class Channel {
 public:
  virtual ~Channel() = default;
  virtual Passed read(char* into, std::size_t most) = 0;
  virtual Passed write(std::string_view bytes) = 0;
};

std::unique_ptr<Channel> plain_channel(int socket);

// A certificate and its key, ready to speak TLS 1.2 or later. The library for it (OpenSSL's libssl) is looked
// for only when this is asked for, so that no other command waits for it to be loaded.
class Tls {
 public:
  virtual ~Tls() = default;
  virtual std::unique_ptr<Channel> channel(int socket) = 0;
};

// Fails if the library is missing, or the files hold no certificate (in PEM, its chain behind it) and its
// key.
Result<std::unique_ptr<Tls>> open_tls(const std::string& certificate, const std::string& key);

}  // namespace sheaf
