// SPDX-License-Identifier: GPL-2.0-or-later
#include "query/web/request.h"

#include <algorithm>

#include "query/answer/text.h"

namespace sheaf {
namespace {

constexpr Refusal malformed{400, "This is no request that is understood here."};

bool is_letter(char sign) { return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z'); }
bool is_digit(char sign) { return sign >= '0' && sign <= '9'; }
bool is_visible(char sign) { return sign > ' ' && sign < '\x7f'; }

// RFC 9110, 5.6.2: what a header's name is made of.
bool is_name_sign(char sign) {
  return is_letter(sign) || is_digit(sign) ||
         std::string_view("!#$%&'*+-.^_`|~").find(sign) != std::string_view::npos;
}

char small(char sign) { return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign; }

std::string small_letters(std::string_view text) {
  std::string result(text);
  std::ranges::transform(result, result.begin(), small);
  return result;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

int hex_value(char sign) {
  if (is_digit(sign)) return sign - '0';
  const char letter = small(sign);
  return letter >= 'a' && letter <= 'f' ? letter - 'a' + 10 : -1;
}

bool is_clean_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto byte = static_cast<unsigned char>(text[at]);
    const std::size_t length = sign_length(text, at);
    if (length == 0 || byte < 0x20 || byte == 0x7f) return false;
    at += length;
  }
  return true;
}

// A line without its end; the rest begins behind it.
std::string_view take_line(std::string_view& rest) {
  const std::size_t end = rest.find("\r\n");
  const std::string_view line = rest.substr(0, end);
  rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 2);
  return line;
}

std::optional<Parameters> read_query(std::string_view query) {
  Parameters parameters;
  while (!query.empty()) {
    const std::size_t end = std::min(query.find('&'), query.size());
    const std::string_view pair = query.substr(0, end);
    query.remove_prefix(std::min(end + 1, query.size()));
    if (pair.empty()) continue;
    const std::size_t equals = std::min(pair.find('='), pair.size());
    auto name = decoded(pair.substr(0, equals), Plus::space);
    auto value = decoded(pair.substr(std::min(equals + 1, pair.size())), Plus::space);
    if (!name || !value) return std::nullopt;
    parameters.emplace_back(std::move(*name), std::move(*value));
  }
  return parameters;
}

std::optional<Refusal> read_target(std::string_view target, HttpRequest& request) {
  if (target.size() > longest_target) return Refusal{414, "The address is too long."};
  if (!target.starts_with('/') || !std::ranges::all_of(target, is_visible)) return malformed;
  request.target = target;
  const std::size_t question = std::min(target.find('?'), target.size());
  auto path = decoded(target.substr(0, question), Plus::plus);
  auto parameters = read_query(target.substr(std::min(question + 1, target.size())));
  if (!path || !parameters) return malformed;
  request.path = std::move(*path);
  request.parameters = std::move(*parameters);
  return std::nullopt;
}

std::optional<Refusal> read_first_line(std::string_view line, HttpRequest& request) {
  const std::size_t first = line.find(' ');
  const std::size_t last = line.rfind(' ');
  if (first == std::string_view::npos || first == last || first == 0) return malformed;
  const std::string_view method = line.substr(0, first);
  const std::string_view version = line.substr(last + 1);
  if (!std::ranges::all_of(method, is_name_sign)) return malformed;
  if (version != "HTTP/1.1" && version != "HTTP/1.0") {
    if (version.starts_with("HTTP/")) return Refusal{505, "Only HTTP/1.0 and HTTP/1.1 are spoken here."};
    return malformed;
  }
  request.keep_alive = version == "HTTP/1.1";
  if (method != "GET" && method != "HEAD") return Refusal{405, "Only GET and HEAD are answered here."};
  request.head_only = method == "HEAD";
  return read_target(line.substr(first + 1, last - first - 1), request);
}

// "Shop.local:8427" -> "shop.local"; nothing if it is no host.
std::optional<std::string> host_of(std::string_view value) {
  std::size_t end = value.starts_with('[') ? value.find(']') : value.find(':');
  if (value.starts_with('[')) {
    if (end == std::string_view::npos) return std::nullopt;
    ++end;
  }
  end = std::min(end, value.size());
  const std::string_view name = value.substr(0, end), port = value.substr(end);
  const auto is_host_sign = [](char sign) {
    return is_letter(sign) || is_digit(sign) ||
           std::string_view("-._[]:").find(sign) != std::string_view::npos;
  };
  const bool port_is_number =
      port.empty() || (port.front() == ':' && std::ranges::all_of(port.substr(1), is_digit));
  if (name.empty() || !port_is_number || !std::ranges::all_of(name, is_host_sign)) return std::nullopt;
  return small_letters(name);
}

std::optional<Refusal> read_header(std::string_view line, HttpRequest& request) {
  const std::size_t colon = line.find(':');
  if (colon == 0 || colon == std::string_view::npos) return malformed;
  const std::string name = small_letters(line.substr(0, colon));
  const std::string_view value = trimmed(line.substr(colon + 1));
  const auto is_text = [](char sign) { return sign == '\t' || static_cast<unsigned char>(sign) >= 0x20; };
  if (!std::ranges::all_of(name, is_name_sign) || !std::ranges::all_of(value, is_text)) return malformed;
  if (name == "host") {
    auto host = host_of(value);
    if (!host || !request.host.empty()) return malformed;
    request.host = std::move(*host);
  } else if (name == "connection") {
    const std::string wish = small_letters(value);
    if (wish.find("close") != std::string::npos) request.keep_alive = false;
    if (wish.find("keep-alive") != std::string::npos) request.keep_alive = true;
  } else if (name == "if-none-match") {
    request.if_none_match = value;
  } else if (name == "accept-encoding") {
    request.accept_encoding = small_letters(value);
  } else if (name == "transfer-encoding" || (name == "content-length" && value != "0")) {
    return Refusal{413, "A request here has no body."};
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::string_view> HttpRequest::all(std::string_view name) const {
  std::vector<std::string_view> values;
  for (const auto& [each, value] : parameters)
    if (each == name) values.push_back(value);
  return values;
}

std::string_view HttpRequest::parameter(std::string_view name) const {
  const auto found = std::ranges::find(parameters, name, &std::pair<std::string, std::string>::first);
  return found == parameters.end() ? std::string_view() : std::string_view(found->second);
}

bool HttpRequest::has(std::string_view name) const {
  return std::ranges::find(parameters, name, &std::pair<std::string, std::string>::first) != parameters.end();
}

std::size_t head_length(std::string_view received) {
  const std::size_t end = received.find("\r\n\r\n");
  return end == std::string_view::npos ? 0 : end + 4;
}

ReadRequest read_request(std::string_view head) {
  HttpRequest request;
  if (auto refusal = read_first_line(take_line(head), request)) return *refusal;
  std::size_t headers = 0;
  for (std::string_view line = take_line(head); !line.empty(); line = take_line(head)) {
    if (++headers > most_headers) return Refusal{431, "The request has too many headers."};
    if (auto refusal = read_header(line, request)) return *refusal;
  }
  if (request.host.empty()) return Refusal{400, "The request names no host."};
  return request;
}

std::optional<std::string> decoded(std::string_view text, Plus plus) {
  std::string result;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '+' && plus == Plus::space) {
      result += ' ';
    } else if (text[at] != '%') {
      result += text[at];
    } else {
      if (at + 2 >= text.size()) return std::nullopt;
      const int high = hex_value(text[at + 1]), low = hex_value(text[at + 2]);
      if (high < 0 || low < 0) return std::nullopt;
      result += static_cast<char>(high * 16 + low);
      at += 2;
    }
  }
  return is_clean_utf8(result) ? std::optional(std::move(result)) : std::nullopt;
}

std::string encoded(std::string_view text) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string result;
  for (const char sign : text) {
    const auto byte = static_cast<unsigned char>(sign);
    if (is_letter(sign) || is_digit(sign) || std::string_view("-._~/").find(sign) != std::string_view::npos)
      result += sign;
    else
      result += std::string("%") + digits[byte >> 4] + digits[byte & 15];
  }
  return result;
}

}  // namespace sheaf
