// SPDX-License-Identifier: GPL-2.0-or-later
// One response and its bytes. Every response carries the same strict headers: no script but from this
// server, no style but its own, nothing sniffed, framed, sent on, or cached without asking again. No header
// is ever built from what a request said.
#pragma once

#include <string>
#include <string_view>

namespace sheaf {

struct Response {
  int status = 200;
  std::string_view type = "text/html; charset=utf-8";
  std::string body;
  std::string save_as = {};  // a file name, of letters, digits, "-", ".": to be saved, not shown
  bool gzip = false;         // the body is packed (packing.h)
};

// Status line, headers and, unless only the head was asked for, the body. A body that the asker already
// has, by its `if_none_match`, is answered with 304.
struct Delivery {
  bool head_only = false;
  bool keep_alive = true;
  std::string_view if_none_match = {};
};
std::string bytes_of(const Response& response, const Delivery& delivery);

// "\"5f0c…\"": the same for the same bytes.
std::string entity_tag(std::string_view body);

}  // namespace sheaf
