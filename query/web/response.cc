// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/response.h"

#include <cstdint>

#include "query/web/styles.h"

namespace sheaf {
namespace {

std::string_view reason_of(int status) {
  switch (status) {
    case 200:
      return "OK";
    case 304:
      return "Not Modified";
    case 400:
      return "Bad Request";
    case 404:
      return "Not Found";
    case 405:
      return "Method Not Allowed";
    case 408:
      return "Request Timeout";
    case 413:
      return "Content Too Large";
    case 414:
      return "URI Too Long";
    case 421:
      return "Misdirected Request";
    case 431:
      return "Request Header Fields Too Large";
    case 503:
      return "Service Unavailable";
    case 505:
      return "HTTP Version Not Supported";
    default:
      return "Internal Server Error";
  }
}

const std::string& strict_headers() {
  static const std::string headers =
      "Content-Security-Policy: default-src 'none'; script-src 'self'; style-src " + allowed_styles() +
      "; img-src 'self'; "
      "connect-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'\r\n"
      "X-Content-Type-Options: nosniff\r\n"
      "X-Frame-Options: DENY\r\n"
      "Referrer-Policy: no-referrer\r\n"
      "Cross-Origin-Opener-Policy: same-origin\r\n"
      "Cross-Origin-Resource-Policy: same-origin\r\n"
      "Permissions-Policy: camera=(), microphone=(), geolocation=()\r\n"
      "Cache-Control: no-cache\r\n"
      "Vary: Accept-Encoding\r\n";
  return headers;
}

void add(std::string& head, std::string_view name, std::string_view value) {
  head.append(name).append(": ").append(value).append("\r\n");
}

}  // namespace

// FNV-1a, 64 bits: it tells versions of a page apart, and guards nothing.
std::string entity_tag(std::string_view body) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char sign : body) hash = (hash ^ static_cast<unsigned char>(sign)) * 1099511628211ULL;
  constexpr std::string_view digits = "0123456789abcdef";
  std::string tag = "\"";
  for (int shift = 60; shift >= 0; shift -= 4) tag += digits[(hash >> shift) & 15];
  return tag + "\"";
}

std::string bytes_of(const Response& response, const Delivery& delivery) {
  const std::string tag = entity_tag(response.body);
  const bool known = response.status == 200 && delivery.if_none_match == tag;
  const int status = known ? 304 : response.status;
  std::string bytes = "HTTP/1.1 " + std::to_string(status) + " " + std::string(reason_of(status)) + "\r\n";
  bytes += strict_headers();
  if (status == 405) add(bytes, "Allow", "GET, HEAD");
  if (status == 200 || known) add(bytes, "ETag", tag);
  if (!known) {
    add(bytes, "Content-Type", response.type);
    if (response.gzip) add(bytes, "Content-Encoding", "gzip");
    add(bytes, "Content-Length", std::to_string(response.body.size()));
  }
  if (!response.save_as.empty())
    add(bytes, "Content-Disposition", "attachment; filename=\"" + response.save_as + "\"");
  add(bytes, "Connection", delivery.keep_alive ? "keep-alive" : "close");
  bytes += "\r\n";
  if (!known && !delivery.head_only) bytes += response.body;
  return bytes;
}

}  // namespace sheaf
