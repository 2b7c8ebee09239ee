// SPDX-License-Identifier: GPL-2.0-or-later
// One request, read from the bytes of its head. Only what the page needs is understood: GET and HEAD of a
// path, over HTTP/1.0 or 1.1 (RFC 9112), without a body. Everything else is refused with the status that
// says why, and nothing is repaired: a head that two readers could take differently is no request.
//
//   auto read = read_request("GET /find?q=top+plug HTTP/1.1\r\nHost: localhost:8427\r\n\r\n");
//   if (!read) answer with read.refusal()
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sheaf {

inline constexpr std::size_t longest_head = 16 * 1024;   // bytes, with the empty line that ends it
inline constexpr std::size_t longest_target = 4 * 1024;  // bytes of path and query
inline constexpr std::size_t most_headers = 64;

struct Refusal {
  int status = 400;
  std::string_view why;  // a sentence for a person
};

// Names and values of a query, decoded, in their order.
using Parameters = std::vector<std::pair<std::string, std::string>>;

struct HttpRequest {
  bool head_only = false;
  std::string target;  // as sent: visible ASCII, fit for a log
  std::string path;    // decoded, begins with '/'
  Parameters parameters;
  std::string host;  // name or address, without port, small letters; "[::1]" keeps its brackets
  std::string if_none_match;
  std::string accept_encoding;  // in small letters
  bool keep_alive = true;

  // The first value of that name; empty if there is none.
  std::string_view parameter(std::string_view name) const;
  std::vector<std::string_view> all(std::string_view name) const;  // in their order
  bool has(std::string_view name) const;
};

class ReadRequest {
 public:
  ReadRequest(HttpRequest request) : request_(std::move(request)) {}
  ReadRequest(Refusal refusal) : refusal_(refusal) {}

  explicit operator bool() const { return !refusal_; }
  const HttpRequest& operator*() const { return request_; }
  const HttpRequest* operator->() const { return &request_; }
  const Refusal& refusal() const { return *refusal_; }

 private:
  HttpRequest request_;
  std::optional<Refusal> refusal_;
};

// `head` ends with the empty line.
ReadRequest read_request(std::string_view head);

// Bytes of the head at the beginning of `received`, its empty line included; 0 if it has not ended yet.
std::size_t head_length(std::string_view received);

// "%C2%B7" -> "·", and "+" -> " " in a query. Nothing if an escape is broken or the text is not clean
// UTF-8 without control characters.
enum class Plus { plus, space };
std::optional<std::string> decoded(std::string_view text, Plus plus);

// For a link: everything but letters, digits and "-._~/" is escaped.
std::string encoded(std::string_view text);

}  // namespace sheaf
