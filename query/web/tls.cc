// SPDX-License-Identifier: GPL-2.0-or-later
// OpenSSL, taken by name when a certificate is given. Linked the usual way, it and what it brings would be
// loaded by every command, and cost each answer of `sheaf find` more than the search itself.
#include <dlfcn.h>
#include <openssl/err.h>
#include <openssl/ssl.h>

#include <algorithm>

#include "query/web/channel.h"

namespace sheaf {
namespace {

// Those functions that are needed, with the types that OpenSSL's own headers give them.
struct Functions {
  decltype(&::TLS_server_method) server_method = nullptr;
  decltype(&::SSL_CTX_new) new_context = nullptr;
  decltype(&::SSL_CTX_free) free_context = nullptr;
  decltype(&::SSL_CTX_ctrl) control = nullptr;
  decltype(&::SSL_CTX_use_certificate_chain_file) use_certificate = nullptr;
  decltype(&::SSL_CTX_use_PrivateKey_file) use_key = nullptr;
  decltype(&::SSL_CTX_check_private_key) check_key = nullptr;
  decltype(&::SSL_new) new_session = nullptr;
  decltype(&::SSL_free) free_session = nullptr;
  decltype(&::SSL_set_fd) set_socket = nullptr;
  decltype(&::SSL_set_accept_state) set_accept = nullptr;
  decltype(&::SSL_read) read = nullptr;
  decltype(&::SSL_write) write = nullptr;
  decltype(&::SSL_get_error) error = nullptr;
  decltype(&::ERR_clear_error) clear_errors = nullptr;
};

template <typename Function>
bool take(void* library, const char* name, Function& into) {
  into = reinterpret_cast<Function>(::dlsym(library, name));
  return into != nullptr;
}

// The library stays loaded: what it registered must not vanish under it.
bool load(Functions& ssl) {
  void* library = ::dlopen("libssl.so.3", RTLD_NOW | RTLD_LOCAL);
  return library && take(library, "TLS_server_method", ssl.server_method) &&
         take(library, "SSL_CTX_new", ssl.new_context) && take(library, "SSL_CTX_free", ssl.free_context) &&
         take(library, "SSL_CTX_ctrl", ssl.control) &&
         take(library, "SSL_CTX_use_certificate_chain_file", ssl.use_certificate) &&
         take(library, "SSL_CTX_use_PrivateKey_file", ssl.use_key) &&
         take(library, "SSL_CTX_check_private_key", ssl.check_key) &&
         take(library, "SSL_new", ssl.new_session) && take(library, "SSL_free", ssl.free_session) &&
         take(library, "SSL_set_fd", ssl.set_socket) &&
         take(library, "SSL_set_accept_state", ssl.set_accept) && take(library, "SSL_read", ssl.read) &&
         take(library, "SSL_write", ssl.write) && take(library, "SSL_get_error", ssl.error) &&
         take(library, "ERR_clear_error", ssl.clear_errors);
}

class TlsChannel : public Channel {
 public:
  TlsChannel(const Functions& ssl, SSL* session) : ssl_(ssl), session_(session) {}
  TlsChannel(const TlsChannel&) = delete;
  TlsChannel& operator=(const TlsChannel&) = delete;
  ~TlsChannel() override { ssl_.free_session(session_); }

  Passed read(char* into, std::size_t most) override {
    ssl_.clear_errors();
    return passed(ssl_.read(session_, into, static_cast<int>(most)));
  }

  Passed write(std::string_view bytes) override {
    ssl_.clear_errors();
    constexpr std::size_t most_at_once = 1 << 20;
    return passed(ssl_.write(session_, bytes.data(), static_cast<int>(std::min(bytes.size(), most_at_once))));
  }

 private:
  Passed passed(int count) {
    if (count > 0) return {Passed::State::some, static_cast<std::size_t>(count)};
    const int error = ssl_.error(session_, count);
    if (error == SSL_ERROR_WANT_READ) return {Passed::State::wants_read, 0};
    if (error == SSL_ERROR_WANT_WRITE) return {Passed::State::wants_write, 0};
    return {Passed::State::ended, 0};
  }

  const Functions& ssl_;
  SSL* session_;
};

class NeverSpeaks : public Channel {
 public:
  Passed read(char*, std::size_t) override { return {}; }
  Passed write(std::string_view) override { return {}; }
};

class OpenSsl : public Tls {
 public:
  OpenSsl(const Functions& ssl, SSL_CTX* context) : ssl_(ssl), context_(context) {}
  OpenSsl(const OpenSsl&) = delete;
  OpenSsl& operator=(const OpenSsl&) = delete;
  ~OpenSsl() override { ssl_.free_context(context_); }

  std::unique_ptr<Channel> channel(int socket) override {
    SSL* session = ssl_.new_session(context_);
    if (!session) return std::make_unique<NeverSpeaks>();
    ssl_.set_socket(session, socket);
    ssl_.set_accept(session);
    return std::make_unique<TlsChannel>(ssl_, session);
  }

 private:
  Functions ssl_;
  SSL_CTX* context_;
};

}  // namespace

Result<std::unique_ptr<Tls>> open_tls(const std::string& certificate, const std::string& key) {
  Functions ssl;
  if (!load(ssl)) return Failure{"https needs OpenSSL's libssl.so.3, which is not here (Debian: libssl3)"};
  SSL_CTX* context = ssl.new_context(ssl.server_method());
  if (!context) return Failure{"OpenSSL could not be started"};
  auto tls = std::make_unique<OpenSsl>(ssl, context);
  // As the macros of OpenSSL's headers do it. A write may come again from another buffer, and may be partial.
  ssl.control(context, SSL_CTRL_SET_MIN_PROTO_VERSION, TLS1_2_VERSION, nullptr);
  ssl.control(context, SSL_CTRL_MODE, SSL_MODE_ENABLE_PARTIAL_WRITE | SSL_MODE_ACCEPT_MOVING_WRITE_BUFFER,
              nullptr);
  if (ssl.use_certificate(context, certificate.c_str()) != 1)
    return Failure{certificate + " holds no certificate in PEM that can be used"};
  if (ssl.use_key(context, key.c_str(), SSL_FILETYPE_PEM) != 1)
    return Failure{key + " holds no key in PEM that belongs to the certificate"};
  if (ssl.check_key(context) != 1) return Failure{key + " is not the key of " + certificate};
  return std::unique_ptr<Tls>(std::move(tls));
}

}  // namespace sheaf
