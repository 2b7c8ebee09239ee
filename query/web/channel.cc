// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/channel.h"

#include <sys/socket.h>

#include <cerrno>

namespace sheaf {
namespace {

class PlainChannel : public Channel {
 public:
  explicit PlainChannel(int socket) : socket_(socket) {}

  Passed read(char* into, std::size_t most) override {
    return passed(::recv(socket_, into, most, 0), Passed::State::wants_read);
  }

  Passed write(std::string_view bytes) override {
    return passed(::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL), Passed::State::wants_write);
  }

 private:
  static Passed passed(ssize_t count, Passed::State wish) {
    if (count > 0) return {Passed::State::some, static_cast<std::size_t>(count)};
    if (count < 0 && (errno == EAGAIN || errno == EWOULDBLOCK || errno == EINTR)) return {wish, 0};
    return {Passed::State::ended, 0};
  }

  int socket_;
};

}  // namespace

std::unique_ptr<Channel> plain_channel(int socket) { return std::make_unique<PlainChannel>(socket); }

}  // namespace sheaf
