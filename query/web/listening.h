// SPDX-License-Identifier: GPL-2.0-or-later
// A socket that listens on an address written in numbers: no name is looked up.
#pragma once

#include <string>

#include "query/library/file_descriptor.h"
#include "query/quantity/result.h"

namespace sheaf {

struct Listening {
  FileDescriptor socket;
  int port = 0;
};

Result<Listening> listen_on(const std::string& address, int port);

bool is_loopback(const std::string& address);
// "127.0.0.1", "::1"; without brackets.
bool is_address(const std::string& text);

// Who is at the other end, in numbers.
std::string peer_of(int socket);

}  // namespace sheaf
