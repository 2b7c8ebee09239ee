// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/listening.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <optional>

namespace sheaf {
namespace {

// Either family's address, in the form that bind(2) takes.
struct SocketAddress {
  sockaddr_storage storage{};
  socklen_t length = 0;

  sockaddr* pointer() { return reinterpret_cast<sockaddr*>(&storage); }
  sockaddr_in& v4() { return reinterpret_cast<sockaddr_in&>(storage); }
  sockaddr_in6& v6() { return reinterpret_cast<sockaddr_in6&>(storage); }
};

std::optional<SocketAddress> read_address(const std::string& text, int port) {
  SocketAddress address;
  if (::inet_pton(AF_INET, text.c_str(), &address.v4().sin_addr) == 1) {
    address.v4().sin_family = AF_INET;
    address.v4().sin_port = htons(static_cast<std::uint16_t>(port));
    address.length = sizeof(sockaddr_in);
    return address;
  }
  address = {};
  if (::inet_pton(AF_INET6, text.c_str(), &address.v6().sin6_addr) != 1) return std::nullopt;
  address.v6().sin6_family = AF_INET6;
  address.v6().sin6_port = htons(static_cast<std::uint16_t>(port));
  address.length = sizeof(sockaddr_in6);
  return address;
}

int port_of(int socket) {
  SocketAddress address;
  address.length = sizeof(address.storage);
  if (::getsockname(socket, address.pointer(), &address.length) != 0) return 0;
  return ntohs(address.storage.ss_family == AF_INET6 ? address.v6().sin6_port : address.v4().sin_port);
}

}  // namespace

Result<Listening> listen_on(const std::string& text, int port) {
  const std::string name = text + ", port " + std::to_string(port);
  auto address = read_address(text, port);
  if (!address) return Failure{"'" + text + "' is no address in numbers, such as 127.0.0.1 or ::1"};
  FileDescriptor socket(::socket(address->storage.ss_family, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0));
  const int yes = 1;
  if (socket.number() < 0) return Failure{name + ": " + std::strerror(errno)};
  ::setsockopt(socket.number(), SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  if (::bind(socket.number(), address->pointer(), address->length) != 0 ||
      ::listen(socket.number(), SOMAXCONN) != 0)
    return Failure{"cannot listen on " + name + ": " + std::strerror(errno)};
  const int bound = port_of(socket.number());
  return Listening{std::move(socket), bound};
}

bool is_loopback(const std::string& text) {
  auto address = read_address(text, 0);
  if (!address) return false;
  if (address->storage.ss_family == AF_INET) return ntohl(address->v4().sin_addr.s_addr) >> 24 == 127;
  return IN6_IS_ADDR_LOOPBACK(&address->v6().sin6_addr) != 0;
}

bool is_address(const std::string& text) { return read_address(text, 0).has_value(); }

std::string peer_of(int socket) {
  SocketAddress address;
  address.length = sizeof(address.storage);
  std::array<char, INET6_ADDRSTRLEN> text{};
  if (::getpeername(socket, address.pointer(), &address.length) != 0) return "?";
  const void* number = address.storage.ss_family == AF_INET6
                           ? static_cast<const void*>(&address.v6().sin6_addr)
                           : static_cast<const void*>(&address.v4().sin_addr);
  const char* written = ::inet_ntop(address.storage.ss_family, number, text.data(), text.size());
  return written ? written : "?";
}

}  // namespace sheaf
